"""`sheets`: a quilt on paper."""

from __future__ import annotations

import argparse
import os

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.run import REFUSED
from sewalong.cli.frame.selection import chosen_quilt


def sheets(args: argparse.Namespace, context: Context) -> Report:
    """`sheets [QUILT] FOLDER`: pages to print, and the top as pictures."""
    from sewalong.service.sheets import write_sheets

    with chosen_quilt(args, context) as quilt:
        names, why_not = write_sheets(
            quilt, args.folder, only=args.only or "", replace=args.replace
        )
    files = [os.path.join(args.folder, name) for name in names]
    return Report(
        (*(f"Written: {file}" for file in files), f"Open {files[0]} in a browser and print it."),
        {"quilt": quilt.entry.name, "files": files, "damaged": quilt.damage or None},
        tuple(filter(None, (why_not, quilt.damage))),
        exit_status=REFUSED if quilt.damage else 0,
        recorded=True,
    )
