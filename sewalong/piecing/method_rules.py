"""What the parts of a method file must be to each other: piles to stages, names to names.

The rules read the file's plain tables, where None stands for what a key can't hold: so all that is
wrong comes out together, and nothing is said of what hangs on something already named.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from typing import Any

from sewalong.lengths.fault import quoted
from sewalong.piecing.method import FINAL_PILE, Hazard, Station
from sewalong.piecing.method_tables import Wrong
from sewalong.piecing.operation_words import TRIM, WORDS, taken

LATER_STAGES = frozenset(
    {
        "cut-standing-sashes",
        "cut-lying-sashes",
        "cut-long-sashes",
        "cut-cornerstones",
        "cut-side-triangles",
        "cut-corner-triangles",
        "sew-rows",
        "sew-sash-rows",
        "add-sashes",
        "add-side-triangles",
        "join-rows",
        "add-corners",
        "add-borders",
        "layer",
        "quilt",
        "bind",
    }
)
"""Ids of the stages that can follow the units in a quilt, which a method can't use too."""

LATER_LABELS = frozenset(id.replace("-", " ") for id in LATER_STAGES) | {
    "cut triangles",
    "cut corners",
    "add triangles",
}
"""What those stages are called."""

LATER_PILES = frozenset(
    {
        "standing-sash",
        "lying-sash",
        "long-sash",
        "cornerstone",
        "sash-row",
        "side-triangle",
        "corner-triangle",
        "set-unit",
        "set-side",
        "row",
    }
)
"""Ids of the piles that can follow the units in a quilt."""

MEASURED = frozenset({"column", "centre", "top", "strips", "middle", "border", "allowance"})
"""What can be measured in every quilt besides piles, by these names."""

HAZARD_AT = {
    Station.IRON: Hazard.IRON,
    Station.MAT: Hazard.CUTTER,
    Station.MACHINE: Hazard.NEEDLE,
}
"""What can hurt wherever one stands there."""

_Tables = list[dict[str, Any]]


def broken_rules(document: dict[str, Any]) -> Iterator[Wrong]:
    """Everything in the tables of a method file that does not go together."""
    piles: _Tables = document.get("piles") or []
    stages: _Tables = document.get("stages") or []
    yield from _names("piles", "id", "pile", piles, LATER_PILES | MEASURED)
    yield from _names("stages", "id", "stage", stages, LATER_STAGES)
    yield from _nouns(piles)
    yield from _names("stages", "label", "stage", stages, LATER_LABELS)
    yield from _ids_of_others("stages", "label", stages)
    yield from _ids_of_others("piles", "noun", piles)
    if piles:
        yield from _starts(piles)
    for index, stage in enumerate(stages):
        yield from _hazards(index, stage)
    if piles and stages:
        yield from _flow(piles, stages)


def _names(
    table: str, key: str, what: str, tables: _Tables, later: Collection[str]
) -> Iterator[Wrong]:
    """Each name once, and none that every quilt uses besides."""
    seen: set[str] = set()
    for index, entry in enumerate(tables):
        name = entry.get(key)
        if name is None:
            continue
        if name.casefold() in later:
            yield (table, index, key), f"{quoted(name)} is used in every quilt; choose another."
        if name.casefold() in seen:
            yield (
                (table, index, key),
                f"two {what}s are called {quoted(name)}; give each its own {key}.",
            )
        seen.add(name.casefold())


def _nouns(piles: _Tables) -> Iterator[Wrong]:
    taken_up = {"row": -1, "rows": -1}
    for index, pile in enumerate(piles):
        nouns = {name.casefold() for name in pile.get("noun") or ()}
        twice = [noun for noun in sorted(nouns) if taken_up.setdefault(noun, index) != index]
        if twice:
            yield (
                ("piles", index, "noun"),
                f"another pile is called {quoted(twice[0])} too; give each a noun of its own.",
            )


def _ids_of_others(table: str, key: str, tables: _Tables) -> Iterator[Wrong]:
    """A stage or a pile may be asked for by its id or its words, so these must mean the same one."""
    ids = {entry.get("id"): index for index, entry in enumerate(tables)}
    for index, entry in enumerate(tables):
        words = entry.get(key) or ()
        for word in [words] if isinstance(words, str) else words:
            if ids.get("-".join(word.casefold().split()), index) != index:
                yield (
                    (table, index, key),
                    f"{quoted(word)} is the id of another; choose other words.",
                )


def _starts(piles: _Tables) -> Iterator[Wrong]:
    """What is cut from cloth: there is some, and only that has sizes."""
    first: dict[str, Any] | None = None
    for index, pile in enumerate(piles):
        keys = [key for key in ("letter", "strip", "share", "shape") if pile.get(key)]
        if not pile.get("start"):
            for key in keys:
                yield (
                    ("piles", index, key),
                    f"'{key}' is only for a pile that is cut from cloth; take it out, or add "
                    "start = true.",
                )
            continue
        for key in ("share", "shape"):
            if first is None and key in keys:
                yield (
                    ("piles", index, key),
                    f"this is the first pile cut from cloth, whose size the owner chooses; take "
                    f"'{key}' out.",
                )
        first = first or pile
        if "share" in keys and "shape" in keys:
            yield ("piles", index, "shape"), "give 'share' or 'shape', not both."
        if pile.get("strip") and not first.get("strip"):
            yield (
                ("piles", index, "strip"),
                "where strips are cut, the first pile cut from cloth must be strips.",
            )
    if first is None and not any("start" in pile and pile["start"] is None for pile in piles):
        yield ("piles",), "no pile has start = true, so there is nothing to cut."


def _hazards(index: int, stage: dict[str, Any]) -> Iterator[Wrong]:
    """Where there is an iron, a blade or a needle, its caution is due."""
    hazards = stage.get("hazards", [])
    if stage.get("station") is None or hazards is None:
        return
    station = Station(stage["station"])
    needed = [HAZARD_AT[station]] if station in HAZARD_AT else []
    if Hazard.CROSS_CUT in hazards:
        needed.append(Hazard.CUTTER)
    if len(set(hazards)) < len(hazards):
        yield ("stages", index, "hazards"), "a hazard stands here twice; write each once."
    for hazard in dict.fromkeys(needed):
        if hazard not in hazards:
            why = Hazard.CROSS_CUT if hazard is not HAZARD_AT.get(station) else station
            yield (
                ("stages", index, "hazards"),
                f'where it says {why}, the caution for {hazard} is due: add "{hazard}" to hazards.',
            )


def _flow(piles: _Tables, stages: _Tables) -> Iterator[Wrong]:
    """Every stage takes what is cut or made before it, and everything is taken in the end."""
    ids = [pile["id"] for pile in piles if pile.get("id")]
    ready = {pile.get("id") for pile in piles if pile.get("start", False) is not False}
    makers = {stage.get("makes") for stage in stages}
    used: set[str] = set()
    for index, stage in enumerate(stages):
        path = ("stages", index)
        for key in ("makes", "counts"):
            if stage.get(key) is not None and stage[key] not in ids:
                yield (*path, key), _no_pile(stage[key], ids)
        words = stage.get("operations") or ()
        # What a stage makes whose pile isn't known may be any.
        unmade = set() if None in makers else set(ids) - ready
        yield from (((*path, "operations"), one) for one in _operations(words, ids, unmade, makers))
        makes = stage.get("makes")
        if TRIM in words and (makes != FINAL_PILE or len(words) != 2):
            yield (
                (*path, "operations"),
                "what is trimmed to a size are the units, last of all and in a stage of its own: "
                f'["take PILE", "{TRIM}"], which makes \'{FINAL_PILE}\'.',
            )
        if makes in ready and makes is not None:
            yield (*path, "makes"), f"the pile {quoted(makes)} is cut or made already."
        used.update(taken(words))
        ready.add(makes)
    if (stages[-1].get("makes") or FINAL_PILE) != FINAL_PILE:
        yield (
            ("stages", len(stages) - 1, "makes"),
            f"the last stage must make the pile '{FINAL_PILE}'.",
        )
    if all(stage.get("operations") for stage in stages) and used.issubset(ids):
        for index, pile in enumerate(piles):
            if (pile.get("id") or FINAL_PILE) not in used | {FINAL_PILE}:
                yield ("piles", index), f"nothing takes from the pile {quoted(pile['id'])}."


def _operations(
    words: Sequence[str], ids: Sequence[str], unmade: set[str], makers: set[str | None]
) -> Iterator[str]:
    takes = list(dict.fromkeys(taken(words)))
    if words and not takes:
        yield "the stage takes nothing; begin with 'take PILE'."
    for pile in takes:
        if pile not in ids:
            yield f"takes {quoted(pile)}, and {_no_pile(pile, ids)}"
        elif pile in unmade:
            said = "only this or a later stage makes" if pile in makers else "nothing makes"
            yield f"takes {quoted(pile)}, which {said}. A stage takes what is cut or made before it."
    for word in dict.fromkeys(words):
        if word not in WORDS and not taken([word]):
            near = _nearest(word, [*WORDS, "take PILE"])
            yield f"the operation {quoted(word)} is not known.{near}"


def _no_pile(name: str, ids: Sequence[str]) -> str:
    return f"no pile is called {quoted(name)}.{_nearest(name, ids)}"


def _nearest(name: str, known: Sequence[str]) -> str:
    from difflib import get_close_matches

    near = get_close_matches(name, known, n=1, cutoff=0.0)
    return f" The nearest is {quoted(near[0])}." if near else ""
