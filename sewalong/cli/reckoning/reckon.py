"""`reckon` alone: what it can reckon, one a line."""

from __future__ import annotations

import argparse

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.report import Report
from sewalong.cli.registry.index import reckoners


def reckon(args: argparse.Namespace, context: Context) -> Report:
    """`reckon`"""
    listed = {one.name.removeprefix("reckon "): one.help for one in reckoners()}
    lines = tuple(f"{name}: {help}" for name, help in listed.items())
    return Report(lines, {"reckons": [{"name": n, "help": h} for n, h in listed.items()]})
