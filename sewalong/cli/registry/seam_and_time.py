"""The commands about the seam and about time. Their arguments and their work are elsewhere."""

from __future__ import annotations

from sewalong.cli.frame import arguments as a
from sewalong.cli.frame.command import Command
from sewalong.cli.registry import seam_and_time_arguments as shape

SEAM = "Seam and rows"
TIME = "Time"

STANDING_COMMANDS: tuple[Command, ...] = (
    Command(
        "measure", SEAM, "measure a piece: is the seam right, and what if it is not",
        "sewalong.cli.sewing.measuring:measure", shape.measure,
        "sewalong measure unit 6 1/4, 6 3/8",
        about="The measurement is kept with the machine's settings, and proves them when it is "
        "right. A bare number is in the quilt's own unit.",
    ),
    Command(
        "proof", SEAM, "what proved the machine, whether it still holds, what is at risk",
        "sewalong.cli.sewing.proof:proof", shape.proof, "sewalong proof",
    ),
    Command(
        "go-on", SEAM, "go on at a stage without measuring again",
        "sewalong.cli.sewing.proof:go_on", shape.stage, "sewalong go-on sew-around",
        about="It is kept, and nothing more is said until the machine is changed again.",
    ),
    Command(
        "bobbin", SEAM, "the bobbin was empty: the last ones counted were not sewn",
        "sewalong.cli.sewing.bobbin:bobbin", shape.bobbin, "sewalong bobbin sew 12",
    ),
    Command(
        "press", SEAM, "which way the seams of a stage are pressed, in your words",
        "sewalong.cli.sewing.pressing:press", shape.press, "sewalong press sew towards the dark cloth",
    ),
    Command(
        "join", SEAM, "join two rows by their tags; alone: which joins come next",
        "sewalong.cli.sewing.joining:join", shape.join, "sewalong join R1 R2",
        about="Only neighbours are joined. Tags have the letter first and the number underlined, "
        "so that no row is misread upside down.",
    ),
    Command(
        "forecast", TIME, "how long the rest takes, as a range of hours and sessions",
        "sewalong.cli.sewing.pacing:forecast", shape.forecast, "sewalong forecast --by 2026-12-24",
        about="The range holds the truth in about 80 of 100 cases. Stages not begun are in it.",
    ),
    Command(
        "tonight", TIME, "what to do in the minutes there are, and where to stop",
        "sewalong.cli.sewing.tonight:tonight", shape.tonight, "sewalong tonight 45 --without cutting",
    ),
    Command(
        "pace", TIME, "your sessions, the time of each stage, and what took the time",
        "sewalong.cli.sewing.pacing:pace", a.quilt_by_place_or_option, "sewalong pace",
    ),
)  # fmt: skip
