"""One plain command: its name, its words, its arguments, and where its work is done."""

from __future__ import annotations

import argparse
import importlib
from collections.abc import Callable

from msgspec import Struct

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.report import Report

Runner = Callable[[argparse.Namespace, Context], Report]


class Command(Struct, frozen=True):
    """`help` is one line for lists; `about` says more; `example` is a line to type.

    `run` names the function that does it ("module:function"), loaded only when wanted.
    `json` is false for the few commands that tell nothing themselves.
    """

    name: str
    group: str
    help: str
    run: str
    arguments: Callable[[argparse.ArgumentParser], None]
    example: str
    about: str = ""
    json: bool = True

    def load(self) -> Runner:
        """The function that carries the command out."""
        module, function = self.run.split(":")
        runner: Runner = getattr(importlib.import_module(module), function)
        return runner
