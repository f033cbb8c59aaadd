"""The machine: settings, what was changed, measuring, pieces at risk."""

from __future__ import annotations

from sewalong.progress.record.settings import Settings
from tests.progress import every_act as c
from tests.story.twins.histories import MEASURED_WRONG, METRIC, PROVED, SAT_DOWN, SEWN
from tests.story.twins.twin import Case, fill, pick, press, read_what_it_means


def _changed(tool: str, label: str) -> Case:
    return Case(
        f"changed: {tool}",
        c.ChangeTool,
        (press("b"), pick(label)),
        (f"changed {tool}",),
        ("tool changed",),
        SAT_DOWN,
    )


def _measured(what: str, piece: str, label: str, read: str) -> Case:
    """`read` is what the tape says, typed alike on both sides."""
    return Case(
        f"measure: {what}",
        c.Measure,
        (press("i"), pick(label), fill(read), read_what_it_means),
        (f"measure {piece} {read}",),
        ("checked",),
        SEWN,
    )


_SETTINGS = (
    Case(
        "settings, the first",
        c.RecordSettings,
        (press("m"), fill("the old black one", None, "80/12", None, "2.2", None, "3 strips")),
        (
            "settings --machine 'the old black one' --needle 80/12 --stitch-length 2.2 "
            "--proof '3 strips'",
        ),
        ("settings recorded",),
        SAT_DOWN,
    ),
    Case(
        "settings, the same once more with another test",
        c.RecordSettings,
        (press("m"), fill(*[None] * 6, "a unit of 6 3/8")),
        ("settings --proof 'a unit of 6 3/8'",),
        ("settings recorded",),
        PROVED,
    ),
    Case(
        "settings changed, and the test is not carried over",
        c.RecordSettings,
        (press("m"), fill(None, "walking foot", *[None] * 5)),
        ("settings --foot 'walking foot'",),
        ("settings recorded",),
        PROVED,
    ),
    Case(
        "a setting taken out",
        c.RecordSettings,
        (press("m"), fill(None, None, "", *[None] * 4)),
        ("settings --needle ''",),
        ("settings recorded",),
        (c.RecordSettings(Settings(foot="quarter inch", needle="80/12")),),
    ),
)

_TOOLS = (
    _changed("blade", "a new blade in the cutter"),
    _changed("needle", "a new needle"),
    _changed("foot", "another foot on the machine"),
    _changed("bobbin", "a full bobbin"),
    _changed("power", "the machine was switched off and on"),
)

_METRIC = (
    Case(
        "measure: decimal commas in a metric quilt",
        c.Measure,
        (press("i"), pick("four-patch"), fill("24,1, 24,2"), read_what_it_means),
        ("measure four-patch 24,1, 24,2",),
        ("checked",),
        SEWN,
        METRIC,
    ),
    Case(
        "measure: millimetres in a metric quilt",
        c.Measure,
        (press("i"), pick("four-patch"), fill("241; 242 mm"), read_what_it_means),
        ("measure four-patch '241;' 242 mm",),
        ("checked",),
        SEWN,
        METRIC,
    ),
)

MACHINE = (
    *_SETTINGS,
    *_TOOLS,
    _measured("right", "four-patch", "four-patch", "9 1/2"),
    _measured("wrong", "four-patch", "four-patch", "9 1/8"),
    _measured("several readings", "four-patch", "four-patch", "9 1/2, 9 5/8, 9.5"),
    _measured("a comma without a space", "four-patch", "four-patch", "9.5,9 5/8"),
    _measured("centimetres in an inch quilt", "four-patch", "four-patch", "24.1, 24.2 cm"),
    _measured("a row", "row", "row of 5 units", "29 3/4"),
    _measured("down the centre", "centre", "centre across", "29 3/4"),
    _measured("a strip test", "strip-test", "3 strips", "3 1/2"),
    _measured("the middle strip", "middle-strip", "middle strip of three", "1"),
    _measured("a strip for a border", "border", "strip for top or bottom of border 1", "34 3/4"),
    _measured("an allowance at the back", "allowance", "seam allowance at the back", "3/8"),
    *_METRIC,
    Case(
        "measure: what somebody else sewed",
        c.Measure,
        (
            press("i"),
            pick("a piece that somebody else sewed"),
            pick("four-patch"),
            fill("9 1/2", "Jo"),
            read_what_it_means,
        ),
        ("measure four-patch 9 1/2 --by Jo",),
        ("checked",),
        SEWN,
    ),
    Case(
        "trim all units to another size",
        c.DecideUnit,
        (press("i"), pick("nothing: say what all units are trimmed to"), fill("6 1/4")),
        ("trim 6 1/4",),
        ("unit decided",),
        SEWN,
    ),
    Case(
        "the pieces at risk were seen to",
        c.SeeTo,
        (press("i"), pick("the pieces that may be wrong were all looked through")),
        ("proof --seen-to",),
        ("seen to",),
        MEASURED_WRONG,
    ),
    Case(
        "one of the pieces in doubt measured right, and so are the others",
        c.SeeTo,
        (
            press("i"),
            pick("four-patch"),
            fill("9 1/2"),
            read_what_it_means,
            pick("all are right, or put right"),
        ),
        ("measure four-patch 9 1/2", "proof --seen-to"),
        ("checked", "seen to"),
        MEASURED_WRONG,
    ),
)
