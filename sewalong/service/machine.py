"""The machine, for both faces: settings written down, pieces measured, pieces at risk seen to."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from sewalong.lengths import parse_several
from sewalong.progress.acts.seam import Measure, RecordSettings, SeeTo, settings_after
from sewalong.progress.measuring.at_risk import AtRisk, at_risk, speaks_for_them
from sewalong.progress.measuring.beside import beside
from sewalong.progress.measuring.diagnosis import Diagnosis, diagnose
from sewalong.progress.record.measurable import Unmeasurable
from sewalong.progress.record.refused import Refused
from sewalong.service.acting import Outcome, do
from sewalong.service.open_quilt import OpenQuilt

PROOF_LOST = "The test noted before was sewn with other settings, so it is not carried over. "
"""What is told of `proof_lost`, before how to note the next test."""

NOTHING_CHANGED = "Nothing was changed, so nothing was recorded."

ALL_SEEN_TO = "The pieces that may have been wrong are seen to."


def still_in_doubt(risk: AtRisk) -> str:
    """What is asked when one of the pieces measured right."""
    return f"This one is right. These were sewn like the wrong one: {risk.what}."


class SettingsWritten(Struct, frozen=True):
    """What came of it; `proof_lost`: the test noted before proved other settings."""

    outcome: Outcome
    proof_lost: bool


class Measurement(Struct, frozen=True):
    """A measurement and what it means. `outcome` is None where it was only looked at; `risk`
    is what is in doubt because of it, and `may_clear` what was in doubt before and may be right
    as well, since one of it is."""

    outcome: Outcome | None
    found: Diagnosis
    risk: AtRisk | None
    may_clear: AtRisk | None


def write_settings(quilt: OpenQuilt, given: Mapping[str, str]) -> SettingsWritten:
    """Write down the settings `given` by name; what is not given stays as it was.

    Raises Refused where nothing is given and some are written down already, and StoreFault.
    """
    quilt.refresh()
    if not given and quilt.state.settings is not None:
        raise Refused(NOTHING_CHANGED)
    settings, proof_lost = settings_after(quilt.state.settings, given)
    return SettingsWritten(do(quilt, RecordSettings(settings)), proof_lost)


def measure(
    quilt: OpenQuilt,
    piece: str,
    readings: str,
    *,
    alike: int | None = None,
    record: bool = True,
    by: str = "",
) -> Measurement:
    """Take what the tape says of a piece, record it, and say what it means.

    `readings` is as typed, several with commas between; `alike` how many pieces there are like
    it. What was measured beside it within the hour is taken into account. `by` is who sewed it, where
    that is not the owner: nothing of hers is in doubt by it then. With `record` false nothing is
    recorded. Raises LengthFault, Refused and StoreFault.
    """
    quilt.refresh()
    state = quilt.state
    lengths = parse_several(readings, state.quilt.unit)
    try:
        also = beside(state, piece, quilt.now(), by)
        found = diagnose(
            state.quilt,
            state.target,
            piece,
            lengths,
            pieces=alike,
            other_way=also.other_way,
            seam_read=also.seam_read,
        )
    except Unmeasurable as error:
        raise Refused(str(error)) from error
    outcome = do(quilt, Measure(piece, lengths, by)) if record else None
    hers = not by and found.piece.allowances > 0 and outcome is not None
    risk = in_doubt(quilt) if hers else None
    if risk is None or not found.passed:
        return Measurement(outcome, found, risk, None)
    asks = not risk.none and speaks_for_them(quilt.state, risk, found.piece.id)
    return Measurement(outcome, found, None, risk if asks else None)


def in_doubt(quilt: OpenQuilt) -> AtRisk | None:
    """The pieces at risk that nobody has seen to yet; None for none."""
    risk = at_risk(quilt.state, quilt.record)
    return None if risk is None or risk.seen_to else risk


def saw_to_them(quilt: OpenQuilt) -> Outcome:
    """The pieces at risk were looked through; raises Refused where none are."""
    quilt.refresh()
    risk = at_risk(quilt.state, quilt.record)
    if risk is None or risk.none:
        raise Refused("Nothing is in doubt. Nothing was recorded.")
    if risk.seen_to:
        raise Refused("You said already that they are seen to. Nothing was recorded.")
    return do(quilt, SeeTo(risk.failed.seq))
