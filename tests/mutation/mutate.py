"""Do the tests bite? Small changes to a module, one at a time, and which of them no test notices.

    python -m tests.mutation.mutate tests/quilt sewalong/quilt/size.py sewalong/quilt/cloth

The changed module exists in memory only: nothing is written to the tree. Each change runs the
tests of the folder in a process of its own, those that call the changed function first, until
one fails. A test that starts the program anew runs it unchanged.
"""

import argparse
import ast
import json
import math
import os
import random
import resource
import sys
import tempfile
import time
import tomllib
from collections import defaultdict
from collections.abc import Iterator
from importlib.abc import Loader, MetaPathFinder
from importlib.machinery import ModuleSpec
from importlib.util import spec_from_file_location
from pathlib import Path
from types import CodeType, FrameType, ModuleType
from typing import Any, NamedTuple

import hypothesis
import pytest

CANNOT_MATTER = Path(__file__).with_name("cannot_matter.toml")
MEMORY = 4 * 2**30
NOTHING_FAILED = (
    pytest.ExitCode.OK,
    pytest.ExitCode.USAGE_ERROR,
    pytest.ExitCode.NO_TESTS_COLLECTED,
)
VERDICTS = ("caught", "cannot matter", "MISSED")

OTHERS: dict[type[ast.AST], type[ast.AST]] = {
    ast.Lt: ast.LtE,
    ast.LtE: ast.Lt,
    ast.Gt: ast.GtE,
    ast.GtE: ast.Gt,
    ast.Eq: ast.NotEq,
    ast.NotEq: ast.Eq,
    ast.Is: ast.IsNot,
    ast.IsNot: ast.Is,
    ast.In: ast.NotIn,
    ast.NotIn: ast.In,
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.FloorDiv,
    ast.Div: ast.Mult,
    ast.FloorDiv: ast.Mult,
    ast.Mod: ast.FloorDiv,
    ast.Pow: ast.Mult,
    ast.USub: ast.UAdd,
    ast.And: ast.Or,
    ast.Or: ast.And,
}


class Change(NamedTuple):
    """One change: `field` of the node at `place` in the walk becomes `value`."""

    place: int
    field: str
    value: Any
    line: int
    function: int
    """First line of the outermost function it is in; 0 outside all."""
    was: str
    becomes: str


def walk(node: ast.AST, above: ast.AST, function: int) -> Iterator[tuple[ast.AST, ast.AST, int]]:
    """Every node that does something, with the one above it and the function it is in.

    Left out: annotations, sentences, the flags of a class, whether a zip is strict, and how much
    a cache keeps.
    """
    if isinstance(node, ast.keyword) and node.arg in ("strict", "maxsize"):
        return
    yield node, above, function
    if isinstance(node, ast.FunctionDef) and not function:
        function = node.decorator_list[0].lineno if node.decorator_list else node.lineno
    left_out = {"annotation", "returns"} | (
        {"keywords"} if isinstance(node, ast.ClassDef) else set()
    )
    for name, value in ast.iter_fields(node):
        if name not in left_out:
            for one in value if isinstance(value, list) else [value]:
                if isinstance(one, ast.AST):
                    yield from walk(one, node, function)


def variants(node: ast.AST) -> Iterator[tuple[str, Any]]:
    """What may be changed of one node: its field and the new value."""
    match node:
        case ast.Compare(ops=ops):
            for n, op in enumerate(ops):
                yield "ops", [*ops[:n], OTHERS[type(op)](), *ops[n + 1 :]]
        case ast.BinOp(op=op) | ast.AugAssign(op=op) | ast.BoolOp(op=op) | ast.UnaryOp(op=op):
            if type(op) in OTHERS:
                yield "op", OTHERS[type(op)]()
        case ast.Constant(value=bool(value)):
            yield "value", not value
        case ast.Constant(value=int(value)):
            yield from (("value", value + 1), ("value", value - 1))
        case ast.If(test=test) | ast.While(test=test) | ast.IfExp(test=test):
            yield "test", ast.UnaryOp(ast.Not(), test)
        case ast.comprehension(ifs=ifs):
            for n, one in enumerate(ifs):
                yield "ifs", [*ifs[:n], ast.UnaryOp(ast.Not(), one), *ifs[n + 1 :]]
        case ast.Return(value=ast.AST() as value) if ast.unparse(value) != "None":
            yield "value", ast.Constant(None)


def shown(node: ast.AST, field: str) -> str:
    """The changed piece of code on one line; of a condition, the condition alone."""
    if isinstance(node, ast.If | ast.While) or (isinstance(node, ast.IfExp) and field == "test"):
        node = node.test
    return " ".join(ast.unparse(node).split())


def changes(source: str) -> Iterator[Change]:
    """Every change to a module, in the order of its text."""
    tree = ast.parse(source)
    for place, (node, above, function) in enumerate(walk(tree, tree, 0)):
        for field, value in variants(node):
            before = getattr(node, field)
            piece = above if isinstance(node, ast.Constant) else node
            was = shown(piece, field)
            setattr(node, field, value)
            line = getattr(node, "lineno", getattr(getattr(node, "iter", above), "lineno", 0))
            yield Change(place, field, value, line, function, was, shown(piece, field))
            setattr(node, field, before)


def changed(path: Path, change: Change) -> CodeType:
    """The module with one change in it."""
    tree = ast.parse(path.read_bytes())
    for place, (node, _, _) in enumerate(walk(tree, tree, 0)):
        if place == change.place:
            setattr(node, change.field, change.value)
    return compile(ast.fix_missing_locations(tree), str(path), "exec")


class Instead(MetaPathFinder, Loader):
    """Gives the changed module to whoever imports it."""

    def __init__(self, path: Path, code: CodeType) -> None:
        self.name, self.path, self.code = ".".join(path.with_suffix("").parts), path, code

    def find_spec(self, name: str, path: object, target: object = None) -> ModuleSpec | None:
        if name != self.name:
            return None
        return spec_from_file_location(name, self.path.resolve(), loader=self)

    def exec_module(self, module: ModuleType) -> None:
        exec(self.code, vars(module))


class Callers:
    """Which tests call which function of which file, by the function's first line."""

    def __init__(self) -> None:
        self.tests: defaultdict[str, dict[str, float]] = defaultdict(dict)
        """Of each function: the tests, and the seconds each takes in all."""

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        def called(frame: FrameType, event: str, value: object) -> None:
            code = frame.f_code
            functions.add((code.co_filename, code.co_firstlineno))

        functions: set[tuple[str, int]] = set()
        began = time.perf_counter()
        sys.settrace(called)
        try:
            return (yield)
        finally:
            sys.settrace(None)
            seconds = time.perf_counter() - began
            for file, line in functions:
                if "/sewalong/" in file:
                    self.tests[key(Path(file), line)][item.nodeid] = seconds


class First:
    """Runs the tests that call the changed function before the others, the quickest first."""

    def __init__(self, tests: dict[str, float]) -> None:
        self.tests = tests

    @pytest.hookimpl(trylast=True)
    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        items.sort(key=lambda item: self.tests.get(item.nodeid, math.inf))


def key(path: Path, line: int) -> str:
    return f"{path.resolve()}:{line}"


def run(tests: list[str], plugin: object, instead: Instead | None = None) -> int:
    """How pytest ends with these tests, in this process."""
    if instead is not None:
        sys.meta_path.insert(0, instead)
    quick = ["-x", "-q", "-p", "no:cacheprovider", "--assert=plain", "--hypothesis-seed=1"]
    already_imported = ["-W", "ignore::pytest.PytestAssertRewriteWarning"]
    return pytest.main([*quick, *already_imported, *tests], plugins=[plugin])


def apart(
    tests: list[str],
    plugin: object,
    instead: Instead | None = None,
    told: Path | None = None,
    seconds: int = 600,
) -> int:
    """The same in a process of its own, quietly; below zero for one that never ends."""
    child = os.fork()
    if child == 0:
        resource.setrlimit(resource.RLIMIT_CPU, (seconds, seconds))
        resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, 1)
        os.dup2(nowhere, 2)
        ended = run(tests, plugin, instead)
        if told is not None and isinstance(plugin, Callers):
            told.write_text(json.dumps(plugin.tests))
        os._exit(ended)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


def noticed(
    folder: str, callers: dict[str, float], instead: Instead, seconds: int, quick: bool
) -> bool:
    """Whether a test fails with the changed module: a few quick ones are asked before all."""
    few = sorted(callers, key=lambda test: callers[test])[:10]
    if few and apart(few, First(callers), instead, seconds=seconds) not in NOTHING_FAILED:
        return True
    files = sorted({test.partition("::")[0] for test in callers})
    rest = files if quick and files else [folder]
    return apart(rest, First(callers), instead, seconds=seconds) != pytest.ExitCode.OK


def sampled(path: Path, size: int, seed: int) -> list[Change]:
    """So many changes of a module, the same for the same seed and text."""
    found = list(changes(path.read_text()))
    chosen = random.Random(f"{seed} {path}").sample(found, min(size, len(found)))
    return sorted(chosen, key=lambda change: change.place)


def cannot_matter() -> set[tuple[str, str, str]]:
    """The changes that are named as such: module, was, becomes."""
    return {
        (one["module"], one["was"], becomes)
        for one in tomllib.loads(CANNOT_MATTER.read_text())["change"]
        for becomes in one["becomes"]
    }


def main() -> None:
    asked = argparse.ArgumentParser(description="Which small changes does no test notice?")
    asked.add_argument("tests", help="the folder of tests to run")
    asked.add_argument("modules", nargs="+", type=Path, help="files or folders to change")
    asked.add_argument("--sample", type=int, default=20, help="changes of each module")
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--quick", action="store_true",
                       help="ask only the files whose tests call the changed function")  # fmt: skip
    given = asked.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        os.environ["HYPOTHESIS_STORAGE_DIRECTORY"] = folder
        phases = (hypothesis.Phase.explicit, hypothesis.Phase.generate)
        hypothesis.settings.register_profile("mutation", database=None, phases=phases)
        hypothesis.settings.load_profile("mutation")
        told = Path(folder) / "callers.json"
        if apart([given.tests], Callers(), told=told) != pytest.ExitCode.OK:
            sys.exit(f"{given.tests} fails with nothing changed. Mend that first.")
        callers = json.loads(told.read_text())
        seconds = 5 + round(resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime)
        named = cannot_matter()
        for place in given.modules:
            for path in sorted(place.rglob("*.py")) if place.is_dir() else [place]:
                verdicts = []
                for change in sampled(path, given.sample, given.seed):
                    tests = callers.get(key(path, change.function), {})
                    instead = Instead(path, changed(path, change))
                    if noticed(given.tests, tests, instead, seconds, given.quick):
                        verdict = "caught"
                    else:
                        known = (str(path), change.was, change.becomes) in named
                        verdict = "cannot matter" if known else "MISSED"
                    verdicts.append(verdict)
                    said = f"{path}:{change.line}: {change.was} -> {change.becomes}"
                    print(f"{verdict} {said}", flush=True)
                counts = ", ".join(f"{verdicts.count(one)} {one}" for one in VERDICTS)
                print(f"== {path}: {counts}", flush=True)


if __name__ == "__main__":
    main()
