"""`alter`: the plan changed after the start. `quilt-file`: the plan as it stands, to be edited."""

from __future__ import annotations

import argparse

from msgspec.structs import replace

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.input_files import read_bytes
from sewalong.cli.frame.length_arguments import changed, read, read_or_none, read_size
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt, pile_id
from sewalong.cli.sewing.outcome import aftermath
from sewalong.progress.acts.replanning import ChangePlan
from sewalong.progress.record.events.replanning import planned
from sewalong.progress.record.route import Route
from sewalong.quilt import rules
from sewalong.quilt.choices import Fabric
from sewalong.quilt.file import writer
from sewalong.quilt.file.reader import QuiltFileFaults, read_quilt_bytes
from sewalong.quilt.file.toml_errors import LONGEST_FILE
from sewalong.quilt.quilt import Border, Quilt, StartPile, with_more
from sewalong.service.acting import do
from sewalong.service.plan_change import follows_from, would_change

_PARTS = (
    "call", "seam", "start", "trim_to", "bought", "border", "drop_border", "finishing", "fabric",
    "joined", "usable", "margin", "own_seam", "binding", "joins", "corners",
)  # fmt: skip
"""What can be changed on the line, each by itself or with others."""


def quilt_file(args: argparse.Namespace, context: Context) -> Report:
    """`quilt-file [QUILT]`"""
    with chosen_quilt(args, context) as quilt:
        text = writer.quilt_file(planned(quilt.state))
        return Report(data={"quilt": quilt.entry.name, "file": text}, whole=text)


def alter(args: argparse.Namespace, context: Context) -> Report:
    """`alter FILE` or `alter --PART …`: what differs, and what follows from it."""
    with chosen_quilt(args, context) as quilt:
        was = planned(quilt.state)
        now = _wanted(args, was, quilt.state.route)
        act = ChangePlan(was, now, args.as_sewn)
        if args.look:
            found = would_change(quilt, act)
            data = {
                "quilt": quilt.entry.name,
                "changes": list(found.changes),
                "refused": found.refused or None,
            }
            return Report(found.lines, data)
        outcome = do(quilt, act)
        return aftermath(quilt, outcome, first=follows_from(was, now))


def _wanted(args: argparse.Namespace, was: Quilt, route: Route) -> Quilt:
    given = [part for part in _PARTS if getattr(args, part) is not None]
    if args.file is not None:
        if given:
            raise CommandError("Give an edited quilt file, or parts to change; not both.")
        return _from_file(args.file, was)
    if not given:
        raise CommandError(
            "Give an edited quilt file (quilt-file writes one), or what to change, such as "
            "--border 2 --cut 4. See: sewalong alter --help"
        )
    # A bare number is in the quilt's own unit.
    args.unit = was.unit.value
    try:
        return _with_parts(args, was, route)
    except ValueError as error:
        raise CommandError(str(error)) from error


def _from_file(file: str, was: Quilt) -> Quilt:
    try:
        return read_quilt_bytes(read_bytes(file, LONGEST_FILE), kept=was.method_key)
    except QuiltFileFaults as faults:
        raise CommandError(f"{faults}\nNothing was changed.") from faults


def _with_parts(args: argparse.Namespace, was: Quilt, route: Route) -> Quilt:
    now = replace(was, choices=changed(was.choices, args))
    if args.call is not None:
        now = replace(now, name=rules.a_name(args.call.strip()))
    if args.seam is not None:
        now = replace(now, seam=read(args, "seam"))
    if args.start is not None:
        now = replace(now, starts=(_resized(now.starts[0], args), *now.starts[1:]))
    if args.trim_to is not None:
        now = replace(now, trim=read_size(args, "trim-to"))
    if args.bought is not None:
        now = replace(now, starts=_with_lot(now.starts, args, route))
    if args.finishing is not None:
        listed = [word.strip() for word in args.finishing.split(",")]
        now = replace(now, finishing=rules.finishing([] if listed == ["none"] else listed))
    if args.joined is not None:
        now = replace(now, joined=rules.joined(args.joined))
    if args.fabric is not None:
        now = replace(now, fabrics=_with_fabric(now.fabrics, args.fabric))
    return replace(now, borders=_borders(now.borders, args))


def _resized(start: StartPile, args: argparse.Namespace) -> StartPile:
    if start.lots:
        raise CommandError(
            "Its squares are of several sizes. Edit them in the quilt file: sewalong quilt-file"
        )
    return replace(start, size=read(args, "start"))


def _with_lot(
    starts: tuple[StartPile, ...], args: argparse.Namespace, route: Route
) -> tuple[StartPile, ...]:
    pile = starts[0].pile if args.pile is None else pile_id(route, args.pile)
    start = next((start for start in starts if start.pile == pile), None)
    if start is None:
        known = ", ".join(start.pile for start in starts)
        raise CommandError(f"The quilt does not begin with “{pile[:40]}”. It does with: {known}.")
    if start.length is not None:
        raise CommandError("Strips of one pile are all of one width. Cut these to that, then: find")
    size, count = read(args, "of"), rules.whole(args.bought, rules.MOST_PIECES)
    grown = with_more(start, size, count)
    rules.whole(grown.count, rules.MOST_PIECES)
    return tuple(grown if one is start else one for one in starts)


def _borders(borders: tuple[Border, ...], args: argparse.Namespace) -> tuple[Border, ...]:
    if args.border is None and (args.cut is not None or args.cloth is not None):
        raise CommandError("Say which border is meant, such as --border 2.")
    kept = list(borders)
    if args.border is not None:
        at = _place(args.border, len(kept) + 1, "--border")
        old = kept[at] if at < len(kept) else None
        cut = read_or_none(args, "cut") or (old.cut if old else None)
        cloth = rules.a_name(args.cloth) if args.cloth is not None else (old.cloth if old else None)
        if cut is None or cloth is None:
            raise CommandError(
                f"Border {args.border} is a new one. Give its --cut and its --cloth."
            )
        kept[at:] = [Border(cut, cloth, old.colour if old else None), *kept[at + 1 :]]
    if args.drop_border is not None:
        del kept[_place(args.drop_border, len(kept), "--drop-border")]
    if len(kept) > rules.MOST_BORDERS:
        raise CommandError(
            f"A quilt has at most {rules.MOST_BORDERS} borders. Change one, or take one out "
            "first with --drop-border."
        )
    return tuple(kept)


def _place(number: int, most: int, option: str) -> int:
    if not 1 <= number <= most:
        there = f"a whole number from 1 to {most}" if most else "no number: there is no border"
        raise CommandError(f"{option} takes {there}.")
    return number - 1


def _with_fabric(fabrics: tuple[Fabric, ...], typed: str) -> tuple[Fabric, ...]:
    letter, _, name = typed.strip().partition(" ")
    named = {fabric.letter: fabric for fabric in fabrics}
    before = named.get(rules.letter(letter), Fabric(letter, ""))
    named[letter] = replace(before, name=rules.a_name(name.strip()))
    return tuple(named[one] for one in sorted(named, key=rules.by_letter))
