"""Commands that read or write a file: quilt files, exported quilts, and a quilt on paper."""

from __future__ import annotations

from sewalong.cli.registry.argument import Argument, flag
from sewalong.cli.registry.command import Command
from sewalong.cli.registry.shared import QUILT_NAMED

GROUP = "Files"

_QUILT_FILE = Argument("file", "a quilt file (TOML)", "FILE", "path")

COMMANDS = (
    Command(
        "start",
        GROUP,
        "begin a quilt from a quilt file",
        "sewalong.cli.quilts.quilt_files:start",
        "sewalong start my-quilt.toml",
        (_QUILT_FILE,),
    ),
    Command(
        "check",
        GROUP,
        "check a quilt file: every fault with its line",
        "sewalong.cli.quilts.quilt_files:check",
        "sewalong check my-quilt.toml",
        (_QUILT_FILE,),
    ),
    Command(
        "export",
        GROUP,
        "write a quilt with its whole record to one file",
        "sewalong.cli.quilts.quilt_files:export",
        "sewalong export my-quilt.json",
        (
            QUILT_NAMED[0],
            Argument(
                "file",
                "the file to write; - for the terminal; with --all a folder",
                "FILE",
                "path",
            ),
            flag("--replace", "write over the file if it is there already"),
            flag("--all", "every quilt, each to a file of its own in a folder"),
            *QUILT_NAMED[1:],
        ),
    ),
    Command(
        "sheets",
        GROUP,
        "the quilt on paper: top, stages to tick, row cards, lists, labels",
        "sewalong.cli.quilts.sheets:sheets",
        "sewalong sheets my-paper",
        (
            QUILT_NAMED[0],
            Argument("folder", "the folder to write in; it is made if need be", "FOLDER", "path"),
            Argument(
                "--only",
                "one part of the pages, not all",
                choices=("top", "stages", "layout", "rows", "sets", "cloth", "labels"),
            ),
            flag("--replace", "write over what is there already"),
            *QUILT_NAMED[1:],
        ),
        about="It writes sheets.html, which a browser prints on A4 or Letter, and the top alone as "
        "top.svg and top.png. The pages say how things stand at that moment.",
    ),
    Command(
        "import",
        GROUP,
        "take in an exported quilt",
        "sewalong.cli.quilts.quilt_files:import_quilt",
        "sewalong import my-quilt.json",
        (
            Argument("file", "an exported quilt; - for standard input", "FILE", "path"),
            Argument("--name", "take it in under another name, as a quilt of its own", "NAME"),
        ),
    ),
)
