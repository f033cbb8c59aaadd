"""Commands that count what was done, take it back, and close the session."""

from __future__ import annotations

from sewalong.cli.registry.argument import Argument
from sewalong.cli.registry.command import Command
from sewalong.cli.registry.shared import CAUTION_READ, STAGE, WHICH_QUILT

GROUP = "Count"

COMMANDS = (
    Command(
        "count",
        GROUP,
        "count what was done at a stage",
        "sewalong.cli.sewing.counting:count",
        "sewalong count sew-around 5",
        (
            STAGE,
            Argument(
                "n", "how many were done at the stage (default: 1)", "N", "whole", "?", default=1
            ),
            CAUTION_READ,
            Argument(
                "--by", "done elsewhere by somebody else: a number, none of your sewing", "NAME"
            ),
            Argument(
                "--place", "done elsewhere, where piles were put: what was made lies there", "PLACE"
            ),
            *WHICH_QUILT,
        ),
        about="A caution that is due is shown first; nothing is counted until it was read. With --by or "
        "--place the count comes in from elsewhere: no caution, no time of yours, no seam of yours.",
    ),
    Command(
        "unpick",
        GROUP,
        "take apart what was sewn; the pieces go back to their pile",
        "sewalong.cli.sewing.counting:unpick",
        "sewalong unpick sew-around 2",
        (
            STAGE,
            Argument(
                "n", "how many were taken apart again (default: 1)", "N", "whole", "?", default=1
            ),
            *WHICH_QUILT,
        ),
    ),
    Command(
        "undo",
        GROUP,
        "take back the last thing recorded, and again for the one before",
        "sewalong.cli.sewing.counting:undo",
        "sewalong undo",
        WHICH_QUILT,
    ),
    Command(
        "redo",
        GROUP,
        "put back what was undone last, and again for the one before",
        "sewalong.cli.sewing.counting:redo",
        "sewalong redo",
        WHICH_QUILT,
        about="Until something else is done, all that was undone in a row can be put back.",
    ),
    Command(
        "close",
        GROUP,
        "close the session: what to check, what to pick up next time",
        "sewalong.cli.sewing.closing:close",
        "sewalong close --answer iron=yes --answer machine=yes --next press",
        (
            Argument(
                "--answer",
                "iron=yes, blade=no, machine=did-not-look; once for each thing asked about",
                "THING=ANSWER",
                repeated=True,
            ),
            Argument(
                "--put", "where a pile was put; once for each pile", "PILE=PLACE", repeated=True
            ),
            Argument("--next", "what to pick up next time", "TEXT", default=""),
            *WHICH_QUILT,
        ),
        about="Iron, blade, machine and pins are asked about if they were used. The answers "
        "are kept as you give them; the program cannot know.",
    ),
    Command(
        "answer",
        GROUP,
        "answer about the iron on leaving the board",
        "sewalong.cli.sewing.closing:answer",
        "sewalong answer iron yes",
        (
            Argument("question", "what was asked about", choices=("iron",)),
            Argument("text", "yes, no, or did not look", "ANSWER", nargs="+"),
            *WHICH_QUILT,
        ),
    ),
)
