"""Whether a whole record is sound, as far as its bytes tell: what SQLite says, and the marks."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager

from msgspec import Struct

from sewalong.store.chain import EVENTS, PLANS, mark_of_plan, marks_after
from sewalong.store.faults import Damaged, Newer, StoreFault, Trouble, fault_from, means_damage
from sewalong.store.schema import STEPS, checked_version, version_of


class Fault(Struct, frozen=True):
    """Something that is not as it should be: in the quilt of number `quilt`, or with None in the
    file as a whole, and then nothing should be written to it. `detail` is what SQLite says of it."""

    what: str
    quilt: int | None = None
    detail: str = ""


def trouble_of(faults: Sequence[Fault]) -> str:
    """What is wrong with the file as a whole; empty for nothing, whatever is wrong in a quilt."""
    return next((fault.what for fault in faults if fault.quilt is None), "")


def faults_of_file(path: str) -> tuple[Fault, ...]:
    """Whatever is wrong with the record at `path`, of this version or an older one. Raises
    StoreFault where it cannot be opened."""
    try:
        connection = sqlite3.connect(path, isolation_level=None)
    except sqlite3.Error as error:
        raise fault_from(error, path) from error
    with closing(connection):
        return faults_of(connection, path)


def faults_of(connection: sqlite3.Connection, path: str) -> tuple[Fault, ...]:
    """Whatever is wrong with an open record. Raises StoreFault where it cannot be looked at, because
    another window writes to it just now."""
    try:
        if found := faults_of_whole(connection, path):
            return found
        with as_of_one_moment(connection):
            marked = version_of(connection) == len(STEPS)
            return tuple(_faults_of_quilts(connection, marked=marked))
    except Trouble as error:
        return (_unreadable(error, path),)


@contextmanager
def as_of_one_moment(connection: sqlite3.Connection) -> Iterator[None]:
    """Nobody else's write comes between several questions."""
    if connection.in_transaction:
        yield
        return
    connection.execute("BEGIN")
    try:
        yield
    finally:
        if connection.in_transaction:
            connection.execute("ROLLBACK")


def faults_of_whole(connection: sqlite3.Connection, path: str) -> tuple[Fault, ...]:
    """What is wrong with an open record as a whole, asked of SQLite alone."""
    try:
        if checked_version(connection, path) == 0:
            return (Fault("there is no quilt and no table in it"),)
    except Newer:
        pass  # what SQLite says of it holds for any version
    except Damaged as fault:
        return (Fault(fault.what),)
    except StoreFault:
        return (Fault("it is no record of quilts"),)
    said = [text for (text,) in connection.execute("PRAGMA integrity_check(3)").fetchall()]
    if said != ["ok"]:
        detail = " ".join(" ".join(said).split())
        return (Fault("its pages do not fit together", detail=detail),)
    return ()


def _unreadable(error: Exception, path: str) -> Fault:
    if not means_damage(error):
        raise fault_from(error, path) from error
    if isinstance(error, UnicodeDecodeError):
        return Fault("the description of its tables is no text")
    return Fault("it cannot be read", detail=str(error))


def _faults_of_quilts(connection: sqlite3.Connection, *, marked: bool) -> list[Fault]:
    quilts = [id for (id,) in connection.execute("SELECT id FROM quilt ORDER BY id").fetchall()]
    known = [id for (id,) in connection.execute(_NAMED).fetchall()]
    if marked:
        known += [id for (id,) in connection.execute("SELECT quilt FROM plan_mark").fetchall()]
    missing = sorted(set(known) - set(quilts))
    found = [Fault("its plan is missing", id) for id in missing]
    for id in quilts:
        wrong = _broken_chain(connection, id) if marked else _gap(connection, id)
        if wrong:
            found.append(Fault(wrong, id))
    return found


_NAMED = "SELECT DISTINCT quilt FROM event"


def _gap(connection: sqlite3.Connection, id: int) -> str:
    """What is missing in a record that has no marks yet; empty for nothing."""
    sql = "SELECT COUNT(*), COALESCE(MAX(seq), 0) FROM event WHERE quilt = ?"
    there, last = connection.execute(sql, (id,)).fetchone()
    return "" if there == last else f"of its {last} events only {there} are there"


def _broken_chain(connection: sqlite3.Connection, id: int) -> str:
    """The first link in the chain of a quilt's marks that does not hold; empty for none."""
    ((_, *plan),) = connection.execute(f"{PLANS} FROM quilt WHERE id = ?", (id,)).fetchall()
    sql = "SELECT mark FROM plan_mark WHERE quilt = ?"
    mark = mark_of_plan(*plan)
    if connection.execute(sql, (id,)).fetchall() != [(mark,)]:
        return "its plan is not as it was written"
    sql = "SELECT mark FROM event_mark WHERE quilt = ? ORDER BY seq"
    marked = [mark for (mark,) in connection.execute(sql, (id,)).fetchall()]
    rows = connection.execute(f"{EVENTS} WHERE quilt = ? ORDER BY seq", (id,)).fetchall()
    marks = marks_after(mark, (row[1:] for row in rows))
    if marks == marked and (not rows or rows[-1][0] == len(rows)):
        return ""
    for n, (row, should) in enumerate(zip(rows, marks, strict=True), start=1):
        if row[0] != n:
            return f"event {n} is missing"
        if n > len(marked) or marked[n - 1] != should:
            return f"event {n} is not as it was written"
    return f"event {len(rows) + 1} is missing"
