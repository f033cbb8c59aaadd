"""What `reckon` works out of cloth, batting and thread, each a command of its own."""

from __future__ import annotations

from sewalong.cli.registry.argument import Argument, flag, length, size, whole
from sewalong.cli.registry.command import Command
from sewalong.cli.registry.shared import SEAM, UNIT, USABLE

GROUP = "Reckon cloth and thread"

_JOINS = Argument(
    "--joins",
    "how strips are joined (default: diagonal); none: joins take nothing",
    choices=("diagonal", "straight", "none"),
    default="diagonal",
)

COMMANDS = (
    Command(
        "reckon squares",
        GROUP,
        "cloth for squares or other pieces, or pieces from cloth",
        "sewalong.cli.reckoning.squares:squares",
        "sewalong reckon squares --size 5 --count 168",
        (
            size("--size", "size to cut, a square or across x down", required=True),
            whole("--count", "how many are needed"),
            length("--cloth", "a length of cloth, to see how many it gives"),
            flag("--fat-quarter", "from a fat quarter, 22 x 18 in"),
            USABLE,
            UNIT,
        ),
    ),
    Command(
        "reckon strips",
        GROUP,
        "strips of one width joined to a length, and the cloth for them",
        "sewalong.cli.reckoning.strips:strips",
        "sewalong reckon strips --length 280 --width 2 1/2",
        (
            length("--length", "how long they are to be when joined", required=True),
            length("--width", "width to cut strips at", required=True),
            USABLE,
            _JOINS,
            SEAM,
            UNIT,
        ),
    ),
    Command(
        "reckon fit",
        GROUP,
        "whether several cuts come out of one cloth",
        "sewalong.cli.reckoning.squares:fit",
        "sewalong reckon fit --cut 52 of 4 --cut 20 of 3 --cloth 1 yd",
        (
            length("--cut", "such as: 52 of 4; once for each kind", required=True, repeated=True),
            length("--cloth", "length of the cloth", required=True),
            USABLE,
            length("--widest", "usable width at the most, when it is not sure"),
            UNIT,
        ),
    ),
    Command(
        "reckon backing",
        GROUP,
        "the back, its seams both ways",
        "sewalong.cli.reckoning.backing:backing",
        "sewalong reckon backing --top 60 x 80",
        (
            size("--top", "the top, raw edge to raw edge", required=True),
            length("--margin", "more than the top, each side (default: 4 in)"),
            length("--have", "cloth in hand, to see whether it is enough"),
            length("--seam", "seam allowance in the back (default: 1/2 in)"),
            USABLE,
            UNIT,
        ),
    ),
    Command(
        "reckon batting",
        GROUP,
        "batting for a top, or the top a batting allows",
        "sewalong.cli.reckoning.batting:batting",
        "sewalong reckon batting --top 60 x 80",
        (
            size("--top", "the top, raw edge to raw edge"),
            size("--batting", "a batting in hand, to see the largest top it allows"),
            length("--margin", "more than the top, each side (default: 4 in)"),
            UNIT,
        ),
    ),
    Command(
        "reckon binding",
        GROUP,
        "binding, straight or bias, or from a piece in hand",
        "sewalong.cli.reckoning.binding:binding",
        "sewalong reckon binding --top 60 x 80",
        (
            size("--top", "the quilt, trimmed", required=True),
            length("--strip", "width to cut strips at (default: 2 1/2 in)"),
            length("--allowance", "for corners and the last join (default: 12 in)"),
            flag("--bias", "cut on the bias"),
            size("--remnant", "a piece in hand, to see whether it is enough"),
            USABLE,
            _JOINS,
            SEAM,
            UNIT,
        ),
    ),
    Command(
        "reckon border",
        GROUP,
        "one border or several, and the top they make",
        "sewalong.cli.reckoning.border:border",
        "sewalong reckon border --top 48 1/2 x 60 1/2 --cut 2 --cut 5 1/2",
        (
            size("--top", "the top before its borders, raw edge to raw edge"),
            size("--centre-finishes", "the same without its seams"),
            length(
                "--cut", "width its strips are cut at; once for each, inner first", repeated=True
            ),
            length("--finishes", "width it finishes at; once for each, inner first", repeated=True),
            Argument(
                "--corners",
                "how it turns the corner (default: sides-first)",
                choices=("sides-first", "ends-first", "mitred"),
                default="sides-first",
            ),
            USABLE,
            _JOINS,
            SEAM,
            UNIT,
        ),
    ),
    Command(
        "reckon thread",
        GROUP,
        "thread for seams of one length",
        "sewalong.cli.reckoning.thread:thread",
        "sewalong reckon thread --each 36 --times 120 --spool 200",
        (
            length("--each", "length of one seam", required=True),
            whole("--times", "how many such seams (default: 1)"),
            length("--thickness", "of all layers sewn through, for the formula"),
            whole("--stitches", "stitches to an inch, for the formula"),
            whole("--waste", "in 100 parts (default: 15)"),
            whole("--spool", "metres on a spool, off the label"),
            whole("--bobbin", "metres on a bobbin"),
            UNIT,
        ),
    ),
    Command(
        "reckon packs",
        GROUP,
        "packs for a number of pieces, and the spare",
        "sewalong.cli.reckoning.packs:packs",
        "sewalong reckon packs --need 140 --in-a-pack 42",
        (
            whole("--need", "pieces needed", required=True),
            Argument(
                "--in-a-pack",
                "pieces in a pack, counted; several counts to compare",
                "N",
                "whole",
                "+",
                required=True,
            ),
        ),
    ),
)
