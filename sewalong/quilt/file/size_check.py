"""Whether the sizes in a quilt go together: of its piles, of what they are trimmed to, of borders."""

from __future__ import annotations

from collections.abc import Mapping

from sewalong.lengths import Length, Rounding, Unit, as_given, show
from sewalong.piecing.derive import STRIP_LENGTH, derive
from sewalong.piecing.faults import MethodFault, SizeRefused
from sewalong.quilt.derived import derived
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.web import why_names_clash, why_no_web


def why_sizes_fail(quilt: Quilt) -> Mapping[str, str]:
    """A sentence for each pile whose size will not do, by the name of the pile; none if all will.

    Sizes can each be sensible and still not go together. It is the main pile's fault when it
    will not do even with the others cut to suit it; else it is theirs.
    """
    try:
        derived(quilt)
    except SizeRefused as fault:
        refusal = str(fault)
    else:
        return {}
    main, *others = quilt.starts
    length = STRIP_LENGTH if main.length is None else main.length
    sizes = {start.pile: quilt.cut_at(start) for start in quilt.starts}
    unit = quilt.unit
    try:
        suited = derive(
            quilt.written_method,
            sizes[main.pile],
            quilt.seam,
            strip_length=length,
            fineness=unit.step,
            unit=unit,
        )
    except (SizeRefused, MethodFault) as fault:
        return {main.pile: _refusal(fault)}
    piles = {pile.id: pile.noun.many for pile in quilt.method.piles}
    wrong: dict[str, str] = {}
    for start in others:
        right = suited.starts[start.pile].cutting
        if sizes[start.pile] != right:
            cut_at = show(right, unit, rounding=Rounding.UP)
            wrong[start.pile] = (
                f"These do not go together with {piles[main.pile]} of {show(main.size, unit)}. "
                f"Cut the {piles[start.pile]} at {cut_at}, which is what the geometry asks for."
            )
    return wrong or {main.pile: refusal}


def _refusal(fault: SizeRefused | MethodFault) -> str:
    """In words for the sizes: that the operations can be done at all was tried before."""
    if isinstance(fault, SizeRefused):
        return str(fault)
    return f"Cut at this size, no unit comes of the pieces: {fault.bare}"


def why_trim_fails(quilt: Quilt) -> str:
    """Why the units cannot be trimmed to what the quilt says, in a sentence; empty when they can.

    Only for sizes that make a unit.
    """
    if quilt.trim is None:
        return ""
    # Only a quilt that says a trim needs what is known of one.
    from sewalong.quilt.unit_size import why_not_trimmed_to

    return why_not_trimmed_to(derived(quilt).unit, quilt.trim, quilt.unit)


def why_setting_fails(quilt: Quilt) -> str:
    """Why the units cannot be set so, in a sentence; empty when they can.

    Only for sizes that make a unit.
    """
    if not quilt.is_on_point:
        return ""
    # Only a quilt on point needs what is known of its units.
    from sewalong.quilt.unit_size import decided_unit, trim_text

    unit = decided_unit(quilt, derived(quilt))
    if unit.width == unit.length:
        return ""
    return (
        f"Only square units are set on point here, and these are {trim_text(unit, quilt.unit)}. "
        "Set them straight or with sashes."
    )


def why_web_fails(quilt: Quilt) -> str:
    """Why the units cannot be put together as a web, in a sentence; empty when they can, or none is
    wanted."""
    if not quilt.is_web:
        return ""
    target = quilt.target
    return why_no_web(quilt.setting, target.rows, target.columns) or why_names_clash(quilt.method)


def why_border_fails(cut: Length, seam: Length, unit: Unit) -> str:
    """Why a border cut at so much is used up by its two seams, in a sentence; empty when not."""
    if cut > 2 * seam:
        return ""
    return (
        f"A border cut at {as_given(cut, unit)} is used up by its seam allowances. Cut it at more "
        f"than {as_given(2 * seam, unit)}, or sew narrower seams."
    )
