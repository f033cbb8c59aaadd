"""Commands about the seam, what proved it, and the joining of rows."""

from __future__ import annotations

from sewalong.cli.registry.argument import Argument, flag, length, whole
from sewalong.cli.registry.command import Command
from sewalong.cli.registry.shared import CAUTION_READ, QUILT_NAMED, STAGE, WHICH_QUILT

GROUP = "Seam and rows"

COMMANDS = (
    Command(
        "measure",
        GROUP,
        "measure a piece: is the seam right, and what if it is not",
        "sewalong.cli.sewing.measuring:measure",
        "sewalong measure unit 6 1/4, 6 3/8",
        (
            Argument(
                "piece",
                "a pile's piece (unit, four-patch …), row, column, centre, top, strip-test, or "
                "middle-strip (the middle one of three, seam to seam), allowance (one, at the back), or border "
                "(a strip for top or bottom; with --down for a side)",
                "PIECE",
            ),
            Argument(
                "readings",
                "what the tape reads; commas between several: 6 1/4, 6 3/8",
                "READING",
                nargs="+",
            ),
            flag("--down", "measured from row 1 down, not across"),
            whole("--of", "units in the row, rows in the column, strips in the test, which border"),
            length("--cut", "how wide the strips of the test were cut"),
            whole("--alike", "how many there are like it, for what resewing costs"),
            Argument(
                "--by", "who sewed it, at another machine: it tells of that seam alone", "NAME"
            ),
            flag("--look", "only say what it means; nothing is recorded"),
            *WHICH_QUILT,
        ),
        about="What to do comes first, then what it comes of, the likeliest first, and what one "
        "further measurement would tell. What was measured within the hour, the same piece the other "
        "way or an allowance, is taken into account. It is all kept with the machine's settings, and "
        "proves them when it is right. A bare number is in the quilt's own unit.",
    ),
    Command(
        "trim",
        GROUP,
        "say what all units are trimmed to; every size after them follows",
        "sewalong.cli.sewing.sizing:trim",
        "sewalong trim 5 1/2",
        (
            Argument(
                "size",
                "raw edge to raw edge, across x down or one length for a square; none: what is "
                "decided now",
                "SIZE",
                nargs="*",
            ),
            flag("--usual", "what the method gives, as if no size had been said"),
            *WHICH_QUILT,
        ),
        about="Rows, centre, borders, back, batting and what is measured follow it. It can be "
        "decided anew until the first row is sewn. A bare number is in the quilt's own unit.",
    ),
    Command(
        "proof",
        GROUP,
        "how the seam was tested, whether that still holds, what may be wrong",
        "sewalong.cli.sewing.proof:proof",
        "sewalong proof",
        (
            flag("--seen-to", "say that the pieces that may be wrong were measured and seen to"),
            *QUILT_NAMED,
        ),
    ),
    Command(
        "go-on",
        GROUP,
        "go on at a stage without measuring again",
        "sewalong.cli.sewing.proof:go_on",
        "sewalong go-on sew-around",
        (STAGE, *WHICH_QUILT),
        about="It is kept, and nothing more is said until the machine is changed again.",
    ),
    Command(
        "bobbin",
        GROUP,
        "how long one lasts; or it was empty, the last counted not sewn",
        "sewalong.cli.sewing.counting:bobbin",
        "sewalong bobbin sew 12",
        (
            Argument(
                "stage", f"{STAGE.help}; none: every stage at the machine", "STAGE", nargs="?"
            ),
            Argument(
                "unsewn", "how many counted are not sewn; none: only look", "UNSEWN", "whole", "?"
            ),
            *WHICH_QUILT,
        ),
    ),
    Command(
        "press",
        GROUP,
        "which way the seams of a stage are pressed, in your words",
        "sewalong.cli.sewing.notes_and_settings:press",
        "sewalong press sew towards the dark cloth",
        (
            STAGE,
            Argument("text", "which way its seams are pressed", "WORDS", nargs="+"),
            *WHICH_QUILT,
        ),
    ),
    Command(
        "begun",
        GROUP,
        "what is sewn of rows that are not whole yet; alone: what was said",
        "sewalong.cli.sewing.begun:begun",
        "sewalong begun 8 pairs",
        (
            Argument(
                "text",
                "what lies sewn now: 5 (units sewn together), 16 pairs, 3 of 4; commas between "
                "several; 0: nothing",
                "PIECES",
                nargs="*",
            ),
            flag("--next", "with a wall laid: the next unit of the row in hand is sewn on"),
            CAUTION_READ,
            *WHICH_QUILT,
        ),
        about="Its units count as made and wait for no other row. Counting a row takes what is "
        "begun first, and the rest of its units. With a wall laid it says which unit comes next and how it "
        "lies; --next counts that one, and says the one after.",
    ),
    Command(
        "join",
        GROUP,
        "join two rows by their tags; alone: which joins come next",
        "sewalong.cli.sewing.joining:join",
        "sewalong join R1 R2",
        (
            Argument(
                "rows",
                "the tags of the two rows, such as R6 R7; none: which come next",
                "ROW",
                nargs="*",
            ),
            flag(
                "--exchange",
                "only say which joins no longer nest if the two rows change places",
            ),
            flag("--unsettled", "where units go is not settled yet, so seams are pressed open"),
            CAUTION_READ,
            *WHICH_QUILT,
        ),
        about="Only neighbours are joined. Tags have the letter first and the number underlined, "
        "so that no row is misread upside down.",
    ),
)
