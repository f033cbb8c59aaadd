"""Commands that turn to another stage, another size, or lay the quilt aside."""

from __future__ import annotations

from sewalong.cli.registry.argument import Argument, whole
from sewalong.cli.registry.command import Command
from sewalong.cli.registry.shared import STAGE, WHICH_QUILT

GROUP = "Where to go"

COMMANDS = (
    Command(
        "stage",
        GROUP,
        "turn to another stage",
        "sewalong.cli.sewing.stage_and_target:stage",
        "sewalong stage press",
        (STAGE, *WHICH_QUILT),
    ),
    Command(
        "target",
        GROUP,
        "change the rows and columns wanted; nothing done is lost",
        "sewalong.cli.sewing.stage_and_target:target",
        "sewalong target 8 9",
        (
            whole("rows", "rows down", metavar="ROWS"),
            whole("columns", "columns across", metavar="COLUMNS"),
            *WHICH_QUILT,
        ),
    ),
    Command(
        "lay-aside",
        GROUP,
        "lay the quilt aside for now",
        "sewalong.cli.sewing.stage_and_target:lay_aside",
        "sewalong lay-aside --reason 'waiting for backing cloth'",
        (Argument("--reason", "why", "TEXT", default=""), *WHICH_QUILT),
    ),
    Command(
        "pick-up",
        GROUP,
        "go on with a quilt that was laid aside or done",
        "sewalong.cli.sewing.stage_and_target:pick_up",
        "sewalong pick-up",
        WHICH_QUILT,
    ),
    Command(
        "done",
        GROUP,
        "mark the quilt done",
        "sewalong.cli.sewing.stage_and_target:done",
        "sewalong done",
        WHICH_QUILT,
    ),
)
