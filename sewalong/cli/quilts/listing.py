"""Looking without touching: the list, where a quilt stands, everything that happened to it."""

from __future__ import annotations

import argparse
import os
from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError, sentence_of
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.run import REFUSED
from sewalong.cli.frame.selection import NO_QUILT, any_library, chosen_quilt, where
from sewalong.progress.record.time_words import ago, day_and_time
from sewalong.service.listing import drafts_in, summary
from sewalong.store.library import Library, Shelved

if TYPE_CHECKING:
    from sewalong.service.open_quilt import OpenQuilt
    from sewalong.store.drafts import Draft


def places(args: argparse.Namespace, context: Context) -> Report:
    """`places [QUILT]`"""
    from sewalong.progress.plan.plan import plan
    from sewalong.progress.resuming.by_place import by_place, in_words

    with chosen_quilt(args, context) as quilt:
        state = quilt.state
        found = by_place(state, plan(state))
        lines = [line for one in found for line in in_words(state, one)]
        if any(check.by for check in state.checks):
            from sewalong.progress.measuring.by_others import others_measured

            lines += [f"{label}: {said}" for label, said in others_measured(state, context.clock())]
        data = [
            {
                "place": one.place,
                "there": dict(one.there),
                "next_there": one.next_there and one.next_there[0].id,
                **({"by": one.by or None} if one.elsewhere else {}),
            }
            for one in found
        ]
        return Report(
            tuple(lines or ("Nothing lies anywhere.",)), {"quilt": quilt.entry.name, "places": data}
        )


def list_quilts(args: argparse.Namespace, context: Context) -> Report:
    """`list`: a few lines a quilt; one that cannot be read says so and hides no other."""
    with any_library(args, context) as library:
        entries = library.entries() if library else ()
        gone = library.missing() if library else ""
        if library and not entries:
            library.refuse_damage()
        drafts, unread = drafts_in(os.path.dirname(where(args, context)))
        told = [_told(library, entry, context) for entry in entries] if library else []
    lines, data = [line for some, _ in told for line in some], [data for _, data in told]
    lines += [] if lines or gone else NO_QUILT.splitlines()
    for draft in drafts:
        lines += _draft_told(draft, context)
    aside = tuple(filter(None, (gone, unread)))
    all_of_it: dict[str, object] = {"quilts": data}
    if drafts:
        all_of_it["drafts"] = [_draft_data(draft) for draft in drafts]
    bad = gone or any("unreadable" in one for one in data)
    return Report(tuple(lines), all_of_it, aside, exit_status=REFUSED if bad else 0)


def _draft_told(draft: Draft, context: Context) -> tuple[str, str]:
    name, last = _draft_name(draft), ago(draft.at, context.clock())
    return f"A draft, not begun: {name}, {last}.", "Go on with it: sewalong new --plain"


def _draft_data(draft: Draft) -> dict[str, object]:
    return {"name": _draft_name(draft), "kept_at": draft.at.isoformat()}


def _draft_name(draft: Draft) -> str:
    return draft.answers.said.get("name", "a new quilt")


def _told(
    library: Library, entry: Shelved, context: Context
) -> tuple[list[str], dict[str, object]]:
    data: dict[str, object] = {
        "number": entry.id,
        "name": entry.name,
        "key": entry.key,
        "started": entry.started.isoformat(),
        "last_at": entry.last_at.isoformat(),
    }
    try:
        found = summary(library, entry)
    except Exception as error:
        sentence = sentence_of(error)
        if sentence is None:
            raise
        return [f"{entry.id}. {entry.name}: {sentence}"], {**data, "unreadable": sentence}
    data |= {
        "standing": found.standing,
        "work_done": found.work_done,
        "suggested_stage": found.next_stage,
    }
    lines = [f"{entry.id}. {entry.name}: {found.standing}."]
    if found.label is not None:
        lines.append(f"Next: {found.label}.")
    lines.append(f"Work done: {found.work_done:.0%}.")
    last = f"{ago(entry.last_at, context.clock())} ({day_and_time(entry.last_at)})"
    return [*lines, f"Last touched: {last}."], data


def status(args: argparse.Namespace, context: Context) -> Report:
    """`status [QUILT]`"""
    from sewalong.cli.quilts.status_report import status_data, status_lines

    with chosen_quilt(args, context) as quilt:
        lines = status_lines(quilt.state, context.clock(), quilt.record)
        return as_far_as_whole(quilt, lines, status_data(quilt.state, quilt.entry.key))


def as_far_as_whole(quilt: OpenQuilt, lines: Iterable[str], data: Mapping[str, object]) -> Report:
    """A look at a quilt; where its record is damaged that is said, and the exit status says it."""
    if not quilt.damage:
        return Report(tuple(lines), data)
    data = {**data, "damaged": quilt.damage}
    return Report(tuple(lines), data, aside=(quilt.damage,), exit_status=REFUSED)


def log(args: argparse.Namespace, context: Context) -> Report:
    """`log [QUILT]`: number, local time, session, words; what was undone is marked.

    What the program once said is no doing of the person's, and only in the data.
    """
    if args.last is not None and args.last < 1:
        raise CommandError("--last takes a number from 1.")
    from sewalong.cli.sewing.outcome import event_data
    from sewalong.progress.record.events.every_kind import Mentioned
    from sewalong.progress.record.events.undoing import undone_in

    with chosen_quilt(args, context) as quilt:
        record, state = quilt.record, quilt.state
    undone = undone_in(record)
    lines = []
    data = []
    for one in record[-args.last :] if args.last else record:
        session = f"session {one.event.session}" if one.event.session else "between sessions"
        mark = " (undone)" if one.seq in undone else ""
        data.append({**event_data(one, state, record), "undone": one.seq in undone})
        if isinstance(one.event, Mentioned):
            continue
        words = one.event.in_full(state, record)
        lines.append(f"{one.seq}, {day_and_time(one.event.at)}, {session}: {words}{mark}")
    if not (lines or quilt.damage):
        lines.append("Nothing has happened to this quilt yet.")
    return as_far_as_whole(quilt, lines, {"quilt": quilt.entry.name, "events": data})
