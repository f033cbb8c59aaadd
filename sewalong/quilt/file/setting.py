"""What a quilt file says of the setting of its units, each fault with its key."""

from __future__ import annotations

from fractions import Fraction

from sewalong.lengths import Length
from sewalong.quilt.file.faults import FaultList
from sewalong.quilt.file.models import QuiltFile, Setting, keys_of
from sewalong.quilt.file.starting_piles import show_finely
from sewalong.quilt.quilt import Target
from sewalong.quilt.setting import Cornerstones, Sashing, SetOnPoint
from sewalong.quilt.setting import Setting as SetSo

_OF_STONES = ("cornerstone_cloth", "cornerstone_colour")
_OF_KIND = {
    "straight": (),
    "sashed": ("sash", "cloth", "colour", "frame", "cornerstones", *_OF_STONES),
    "on point": ("cloth", "colour", "larger"),
}
"""The keys that may stand beside each kind."""

_TAKES_NONE = {
    "straight": "Units set straight have nothing between them. Take this out, or write another kind.",
    "sashed": "Sashes have no triangles. Take this out.",
    "on point": "Units on point have triangles around them and no sashes. Take this out.",
}


def setting_of(
    written: QuiltFile, seam: Length, target: Target | None, faults: FaultList
) -> SetSo | None:
    """The setting, None for units set straight; what is wrong with it goes to `faults`."""
    said = written.setting
    if said is None:
        return None
    if said.kind is None:
        faults.missing(
            ("setting", "kind"),
            'The kind of setting is missing. Write kind = "sashed" or kind = "on point", or leave '
            "[setting] out for units set straight.",
        )
        return None
    for key in keys_of(Setting):
        if key not in ("kind", *_OF_KIND[said.kind]) and getattr(said, key) is not None:
            faults.add(("setting", key), _TAKES_NONE[said.kind])
    if said.kind == "sashed":
        return _sashed(written, said, seam, target, faults)
    return _on_point(said, faults) if said.kind == "on point" else None


def _on_point(said: Setting, faults: FaultList) -> SetOnPoint | None:
    if said.cloth is None:
        faults.missing(
            ("setting", "cloth"),
            'The cloth of the triangles is missing. Name it, such as cloth = "cream linen".',
        )
        return None
    return SetOnPoint(said.cloth, said.colour, said.larger or Fraction(0))


def _sashed(
    written: QuiltFile, said: Setting, seam: Length, target: Target | None, faults: FaultList
) -> Sashing | None:
    if said.sash is None:
        faults.missing(
            ("setting", "sash"),
            'The width sashes are cut at is missing. Add it, such as sash = "2 in".',
        )
    elif said.sash <= 2 * seam:
        faults.add(
            ("setting", "sash"),
            f"A sash cut at {show_finely(said.sash, written.unit)} is used up by its seam "
            f"allowances. Cut it at more than {show_finely(2 * seam, written.unit)}.",
        )
    if said.cloth is None:
        faults.missing(
            ("setting", "cloth"),
            'The cloth of the sashes is missing. Name it, such as cloth = "cream linen".',
        )
    stones = _cornerstones(said, faults)
    if said.sash is None or said.cloth is None:
        return None
    sashing = Sashing(said.sash, said.cloth, said.colour, said.frame or False, stones)
    if target is not None and (sentence := sashing.why_not(target.columns)):
        faults.add(("setting", "cornerstones"), sentence)
    return sashing


def _cornerstones(said: Setting, faults: FaultList) -> Cornerstones | None:
    if not said.cornerstones:
        for key in _OF_STONES:
            if getattr(said, key) is not None:
                faults.add(
                    ("setting", key),
                    "There are no cornerstones. Take this out, or write cornerstones = true.",
                )
        return None
    if said.cornerstone_cloth is None:
        faults.missing(
            ("setting", "cornerstone_cloth"),
            "The cloth of the cornerstones is missing. Name it, such as "
            'cornerstone_cloth = "coral dots"; it may be that of the sashes.',
        )
        return None
    return Cornerstones(said.cornerstone_cloth, said.cornerstone_colour)
