"""Commands about the plan of a quilt under way: changed, or written out as a quilt file."""

from __future__ import annotations

from sewalong.cli.registry.argument import Argument, flag, length, size, whole
from sewalong.cli.registry.command import Command
from sewalong.cli.registry.shared import JOINS_AND_CORNERS, QUILT_NAMED, WHICH_QUILT

GROUP = "The plan"

COMMANDS = (
    Command(
        "alter",
        GROUP,
        "change the plan after the start: a part, or an edited quilt file",
        "sewalong.cli.quilts.altering:alter",
        "sewalong alter --border 1 --cut 4 --cloth linen",
        (
            Argument("file", "an edited quilt file; quilt-file writes one", "FILE", "path", "?"),
            Argument("--call", "another name", "NAME"),
            length("--seam", "another seam allowance"),
            length("--square", "another size of the squares it begins with", dest="start"),
            length("--strip", "another width of the strips it begins with", dest="start"),
            size("--trim-to", "another size to trim all units to"),
            whole("--bought", "more squares, of another size; with --of"),
            length("--of", "with --bought: their size"),
            Argument("--pile", "with --bought: which pile, if not the first", "PILE"),
            whole("--border", "which border, 1 the inner one; one past the last adds one"),
            length("--cut", "with --border: the width its strips are cut at"),
            Argument("--cloth", "with --border: the name of its cloth", "NAME"),
            whole("--drop-border", "leave this border out"),
            Argument("--finishing", "stages after the top: “layer, bind”, or none", "STAGES"),
            Argument("--joined", "how units are put together: rows, or web", "HOW"),
            Argument("--fabric", "a letter of the units and its name: “A indigo print”", "NAMED"),
            length("--usable", "usable width of the cloth"),
            length("--margin", "margin of back and batting, each side"),
            length("--own-seam", "the allowance your own seams measure"),
            length("--binding", "width binding strips are cut at"),
            *JOINS_AND_CORNERS,
            flag("--as-sewn", "what is made so far was made so; the plan had it wrong"),
            flag("--look", "only say what would change; nothing is recorded"),
            *WHICH_QUILT,
        ),
        about="Everything but the method can change. It is refused only where it contradicts what "
        "is sewn, and undo takes it back. Rows and columns alone: target.",
    ),
    Command(
        "quilt-file",
        GROUP,
        "print the plan as it stands as a quilt file, to be edited",
        "sewalong.cli.quilts.altering:quilt_file",
        "sewalong quilt-file",
        QUILT_NAMED,
    ),
)
