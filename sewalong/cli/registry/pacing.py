"""Commands about time: what is left, what fits into an evening, what took it."""

from __future__ import annotations

from sewalong.cli.registry.argument import Argument, whole
from sewalong.cli.registry.command import Command
from sewalong.cli.registry.shared import QUILT_NAMED, WHICH_QUILT

GROUP = "Time"

COMMANDS = (
    Command(
        "forecast",
        GROUP,
        "how long the rest takes, as a range of hours and sessions",
        "sewalong.cli.sewing.pacing:forecast",
        "sewalong forecast --by 2026-12-24",
        (
            Argument("--by", "the day it is wanted, such as 2026-12-24", "DATE"),
            whole(
                "--session", "minutes of a session (default: as you prefer, or like yours so far)"
            ),
            whole("--times", "sessions a week, with --session: how many weeks that takes"),
            *QUILT_NAMED,
        ),
        about="What was measured and what is guessed are told apart; each range holds the truth in "
        "about 80 of 100 cases. A day is held against the habit of --session and --times where "
        "they are given, else against your fullest week.",
    ),
    Command(
        "tonight",
        GROUP,
        "what to do in the minutes there are, and where to stop",
        "sewalong.cli.sewing.tonight:tonight",
        "sewalong tonight 45 --without cutting",
        (
            whole("minutes", "how long you have", metavar="MINUTES"),
            Argument(
                "--without",
                "leave out cutting, ironing, machine, hands (cutter and pins), pins, table or "
                "wall; may be given again",
                "WORD",
                repeated=True,
            ),
            *WHICH_QUILT,
        ),
    ),
    Command(
        "pace",
        GROUP,
        "your sessions, the time of each stage, and what took the time",
        "sewalong.cli.sewing.pacing:pace",
        "sewalong pace",
        QUILT_NAMED,
    ),
)
