"""Commands about cloth: her fabrics, what they look like beside each other, and sets of squares."""

from __future__ import annotations

from sewalong.cli.registry.argument import Argument, flag, whole
from sewalong.cli.registry.command import Command
from sewalong.cli.registry.shared import WHICH_QUILT

GROUP = "Cloth"

COMMANDS = (
    Command(
        "fabrics",
        GROUP,
        "the fabrics you have, said or read off a photograph",
        "sewalong.cli.cloth.fabrics:fabrics",
        'sewalong fabrics --say "lights 60, mediums 70, darks 38"',
        (
            Argument(
                "--say",
                "fabrics, each with its number of squares: “rust dots 4 #a0522d small print”; "
                "said again it is changed, with 0 squares taken out",
                "FABRICS",
                repeated=True,
            ),
            Argument("--photo", "one pack laid out on plain cloth, photographed", "FILE", "path"),
            Argument(
                "--grid", "with --photo: rows, and squares in a row: 6x7", "GRID", nargs="+"
            ),
            Argument(
                "--corners",
                "with --photo: four points x,y in pixels, from row 1 place 1 round by the end of "
                "row 1 (default: they are found)",
                "POINT",
                nargs="+",
            ),
            whole("--packs", "with --photo: how many packs like it there are (default: 1)"),
            Argument("--sheet", "with --photo: write what was seen as a PNG picture", "FILE", "path"),
            flag("--replace", "with --sheet: a picture that is there is written over"),
            Argument("--split", "with --photo: a square that is another fabric: 2.5", "PLACE",
                     repeated=True),
            Argument("--merge", "with --photo: letters that are one fabric: A,F", "LETTERS",
                     repeated=True),
            Argument("--rename", "with --photo: a letter and its name: “A rust dots”", "NAMED",
                     repeated=True),
            flag("--keep", "with --photo: take these fabrics into the plan"),
            flag("--instead", "with --keep: in place of the fabrics that are there"),
            flag("--beside", "with --keep: beside the fabrics that are there"),
            *WHICH_QUILT,
        ),
        about="Alone it tells every fabric, how light and of which colour it is, and what can be "
        "had of them. All of this can be left out; nothing else needs it. A photograph is only "
        "looked at: nothing of the file is kept.",
    ),
    Command(
        "contrast",
        GROUP,
        "how fabrics read side by side; alone: what meets what",
        "sewalong.cli.cloth.contrast:contrast",
        'sewalong contrast "#a0522d" "dark olive green"',
        (
            Argument(
                "fabric",
                "two fabrics or more, by letter or name; or colours, “#a0522d” or a CSS name",
                "FABRIC",
                nargs="*",
            ),
            whole("--set", "the seams of this set, the weakest first"),
            Argument(
                "--turned",
                "places of the set whose squares lie half turned, as the back of a stack does that "
                "was turned over its top edge: 5,6,7,8",
                "PLACES",
            ),
            *WHICH_QUILT,
        ),
        about="Contrast is told by value, how light or dark a fabric is, for only that shows from "
        "afar. About 20 apart a pattern begins to be readable.",
    ),
    Command(
        "sets",
        GROUP,
        "which squares make a set: proposed, kept, found again",
        "sewalong.cli.cloth.sets:sets",
        'sewalong sets --rule "light on dark"',
        (
            Argument(
                "--rule",
                "what they are chosen by: by value (as usual), by colour, light on dark, one "
                "background, scrappy",
                "RULE",
            ),
            Argument("--background", "with --rule “one background”: which fabric", "FABRIC"),
            whole("--seed", "another number, another choice (default: 1)"),
            whole("--seconds", "how long to look for better ones"),
            Argument("--without", "fabrics to leave out: A,F", "FABRICS"),
            flag("--accept", "keep the sets proposed"),
            flag("--anew", "choose those again that are not begun, locked or held back"),
            flag("--next", "the set in hand at the stage in hand"),
            Argument("--with", "which sets have all of these: A,F", "FABRICS", dest="with_fabrics"),
            Argument("--swap", "two squares, each as its set and place: “7:2 9:5”", "TWO"),
            Argument("--own", "a set as you laid it, by place: “7: A B C D E F G H”", "SET"),
            whole("--skip", "lay this set last", metavar="SET"),
            whole("--hold-back", "do not lay this set for now", metavar="SET"),
            whole("--let-in", "a set held back comes back in", metavar="SET"),
            whole("--take-up", "this set is the one in hand, whatever was thought", metavar="SET"),
            Argument("--at", "with --next, --take-up: which stage (default: the one in hand)", "STAGE"),
            whole("--lock", "a set that stays when the rest is chosen anew", metavar="SET"),
            whole("--unlock", "a set that stays no longer", metavar="SET"),
            Argument(
                "--picture",
                "write the top with all these sets as a picture, .svg or .png",
                "FILE",
                "path",
            ),
            whole("--of", "with --picture: the units of this set, not the top", metavar="SET"),
            flag("--replace", "with --picture: a file that is there is written over"),
            *WHICH_QUILT,
        ),
        about="Alone it proposes sets until some are accepted, then it lists them. A set is the "
        "squares of one run of the method, its places numbered as squares are taken.",
    ),
)  # fmt: skip
