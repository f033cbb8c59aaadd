"""Commands that look at what is recorded and change nothing."""

from __future__ import annotations

from sewalong.cli.registry.argument import whole
from sewalong.cli.registry.command import Command
from sewalong.cli.registry.shared import DEMO, QUILT_NAMED

GROUP = "Look"

COMMANDS = (
    Command(
        "list",
        GROUP,
        "every quilt, the last touched first",
        "sewalong.cli.quilts.listing:list_quilts",
        "sewalong list",
        (DEMO,),
    ),
    Command(
        "status",
        GROUP,
        "where a quilt stands and what comes next",
        "sewalong.cli.quilts.listing:status",
        "sewalong status --json",
        QUILT_NAMED,
    ),
    Command(
        "places",
        GROUP,
        "what lies at each place, and the next thing to do there",
        "sewalong.cli.quilts.listing:places",
        "sewalong places",
        QUILT_NAMED,
        about="For work that lies in several places or was carried to somebody: put-away says where "
        "it went. What was done there comes back as counts, with a measured piece of its own.",
    ),
    Command(
        "log",
        GROUP,
        "everything that happened to a quilt, one a line",
        "sewalong.cli.quilts.listing:log",
        "sewalong log --last 20",
        (whole("--last", "only the last N (default: all)"), *QUILT_NAMED),
    ),
)
