"""Arguments that many commands share, under one name each."""

from __future__ import annotations

from sewalong.cli.registry.argument import Argument, flag, length

DEMO = flag("--demo", "among the demo quilts, not among your own")

WHICH_QUILT = (
    Argument(
        "--quilt",
        "the quilt's name, its beginning, or its number in the list "
        "(default: the one last touched)",
        "NAME",
    ),
    DEMO,
)
"""The quilt a command is about, as an option."""

QUILT_NAMED = (
    Argument("name", "which quilt, as with --quilt", "QUILT", nargs="?"),
    *WHICH_QUILT,
)
"""The same, and also in a place of its own."""

STAGE = Argument(
    "stage", "a stage of the quilt, such as sew-around; sewalong status names them", "STAGE"
)

PILE = Argument("pile", "a pile of the quilt, such as square or “pressed four-patches”", "PILE")

CAUTION_READ = flag("--caution-read", "say that you have read the caution now due")

METHOD = Argument("--method", "which method; sewalong methods lists them", "M", required=True)

UNIT = Argument(
    "--unit",
    "the unit to work in (default: cm when a length is typed in it, else inch)",
    choices=("inch", "cm"),
)

SEAM = length("--seam", "seam allowance (default: 1/4 in)")

STRIP = length("--strip", "width of the strip, cut first", dest="start")

STRIP_LENGTH = length("--strip-length", "usable length of a strip (default: 40 in)")

USABLE = length("--usable", "width of cloth that can be used (default: 40 in)")

JOINS_AND_CORNERS = (
    Argument("--joins", "how strips are joined", choices=("diagonal", "straight")),
    Argument(
        "--corners",
        "how borders turn the corner",
        choices=("sides first", "ends first", "mitred"),
    ),
)
"""What the owner chooses about strips, in place of what is usual."""
