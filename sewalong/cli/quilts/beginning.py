"""`new`: a quilt by a few questions, in the app or in plain lines, or a quilt file to edit."""

from __future__ import annotations

import argparse
import os

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.input_files import STDIN
from sewalong.cli.frame.report import Report
from sewalong.cli.quilts.opening import DUMB, in_the_app
from sewalong.service.preferences import own_preferences
from sewalong.store.home import record_path


def new(args: argparse.Namespace, context: Context) -> Report:
    """`new [--plain | --file FILE]`"""
    if args.file is not None:
        if args.plain:
            raise CommandError("Give --file or --plain, not both.")
        return _file(args.file)
    if args.plain or args.json or not context.interactive or os.environ.get("TERM") == DUMB:
        from sewalong.cli.quilts.plain_questions import PlainQuestions

        return PlainQuestions(context).ask_all()
    return in_the_app(record_path(), None, False, new=True)


def _file(file: str) -> Report:
    """A quilt as it is with no question answered, written out to be edited."""
    from sewalong.lengths import Unit
    from sewalong.quilt.beginning.answers import Answers
    from sewalong.quilt.beginning.filled_in import fill_in
    from sewalong.quilt.file.commented import commented_file
    from sewalong.store.quilt_files import write_quilt_file

    quilt = fill_in(Answers(own_preferences()[0].unit or Unit.INCH)).quilt
    assert quilt is not None
    text = commented_file(quilt)
    if file == STDIN:
        return Report(data={"file": text}, whole=text)
    write_quilt_file(file, text)
    lines = (
        f"Written: {file}",
        "Edit it, then: sewalong check FILE, and to begin: sewalong start FILE",
    )
    return Report(lines, {"file": file}, recorded=True)
