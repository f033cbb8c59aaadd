"""Every plain command, in the order a person meets them.

The help, the table in the README and the tests are made from this list.
"""

from __future__ import annotations

import argparse

from sewalong.cli.frame import arguments as a
from sewalong.cli.frame.command import Command
from sewalong.cli.registry.reckoning import NUMBERS, NUMBERS_COMMANDS
from sewalong.cli.registry.seam_and_time import SEAM, STANDING_COMMANDS, TIME

Parser = argparse.ArgumentParser

OPENING = "Open a quilt"
LOOKING = "Look"
COUNTING = "Count"
PILES = "Piles"
KEEPING = "Write down"
ROAD = "Where to go"
SHELF = "Files"

GROUPS = (OPENING, LOOKING, COUNTING, PILES, SEAM, TIME, KEEPING, ROAD, NUMBERS, SHELF)


def _demo(parser: Parser) -> None:
    parser.add_argument("name", metavar="NAME", nargs="?", type=a.words, help="which demo quilt")
    parser.add_argument("--list", action="store_true", help="only list the demo quilts")
    parser.add_argument(
        "--afresh", action="store_true", help="begin all demo quilts again as they were"
    )


def _count(parser: Parser) -> None:
    a.stage(parser)
    a.number(parser, "how many were done at the stage", default=1)
    a.caution_read(parser)
    a.which_quilt(parser)


def _unpick(parser: Parser) -> None:
    a.stage(parser)
    a.number(parser, "how many were taken apart again", default=1)
    a.which_quilt(parser)


def _spoil(parser: Parser) -> None:
    a.pile(parser)
    a.number(parser, "how many are spoiled")
    parser.add_argument(
        "--reason", required=True, metavar="TEXT", type=a.words, help="what went wrong"
    )
    a.which_quilt(parser)


def _find(parser: Parser) -> None:
    a.pile(parser)
    a.number(parser, "how many came to the pile")
    parser.add_argument("--bought", action="store_true", help="bought or cut new, not found again")
    a.which_quilt(parser)


def _recount(parser: Parser) -> None:
    a.pile(parser)
    a.number(parser, "how many lie there now")
    parser.add_argument(
        "--place", metavar="PLACE", type=a.words, help="only what lies there was counted"
    )
    parser.add_argument(
        "--as",
        dest="how",
        choices=("made", "found", "lost", "spoiled", "missing"),
        help="what the difference is: made (counted wrongly at its stage), found, lost, "
        "spoiled, or missing (made, whereabouts unknown, until found)",
    )
    a.which_quilt(parser)


def _put_away(parser: Parser) -> None:
    a.pile(parser)
    a.text(parser, "PLACE", "where the pile lies now")
    parser.add_argument(
        "--part", metavar="N", type=a.whole_number, help="only so many of it (default: all)"
    )
    a.which_quilt(parser)


def _note(parser: Parser) -> None:
    a.text(parser, "TEXT", "what to remember")
    a.which_quilt(parser)


SETTINGS = {
    "machine": "which machine",
    "foot": "which foot",
    "needle": "which needle",
    "needle-position": "where the needle stands",
    "stitch-length": "how long the stitch is",
    "thread": "which thread",
    "proof": "the test that proved the settings, and what it measured",
}


def _settings(parser: Parser) -> None:
    for name, what in SETTINGS.items():
        parser.add_argument(f"--{name}", metavar="TEXT", type=a.words, help=what)
    a.which_quilt(parser)


def _changed(parser: Parser) -> None:
    parser.add_argument(
        "tool",
        choices=("blade", "needle", "foot", "bobbin", "power"),
        help="what was changed; power: the machine was switched off and on",
    )
    a.which_quilt(parser)


def _answer(parser: Parser) -> None:
    parser.add_argument("question", choices=("iron",), help="what was asked about")
    a.text(parser, "ANSWER", "yes, no, or did not look")
    a.which_quilt(parser)


def _close(parser: Parser) -> None:
    parser.add_argument(
        "--answer",
        action="append",
        default=[],
        metavar="THING=ANSWER",
        type=a.words,
        help="iron=yes, blade=no, machine=did-not-look; once for each thing asked about",
    )
    parser.add_argument(
        "--put",
        action="append",
        default=[],
        metavar="PILE=PLACE",
        type=a.words,
        help="where a pile was put; once for each pile",
    )
    parser.add_argument(
        "--next", default="", metavar="TEXT", type=a.words, help="what to pick up next time"
    )
    a.which_quilt(parser)


def _stage(parser: Parser) -> None:
    a.stage(parser)
    a.which_quilt(parser)


def _target(parser: Parser) -> None:
    parser.add_argument("rows", metavar="ROWS", type=a.whole_number, help="rows down")
    parser.add_argument("columns", metavar="COLUMNS", type=a.whole_number, help="columns across")
    a.which_quilt(parser)


def _lay_aside(parser: Parser) -> None:
    parser.add_argument("--reason", default="", metavar="TEXT", type=a.words, help="why")
    a.which_quilt(parser)


def _file(parser: Parser) -> None:
    parser.add_argument("file", metavar="FILE", help="a quilt file (TOML)")


def _export(parser: Parser) -> None:
    parser.add_argument(
        "name", metavar="QUILT", nargs="?", type=a.words, help="which quilt, as with --quilt"
    )
    parser.add_argument("file", metavar="FILE", help="the file to write; - for the terminal")
    parser.add_argument(
        "--replace", action="store_true", help="write over the file if it is there already"
    )
    a.which_quilt(parser)


def _import(parser: Parser) -> None:
    parser.add_argument("file", metavar="FILE", help="an exported quilt; - for standard input")
    parser.add_argument(
        "--name",
        metavar="NAME",
        type=a.words,
        help="take it in under another name, as a quilt of its own",
    )


def _log(parser: Parser) -> None:
    parser.add_argument(
        "--last", metavar="N", type=a.whole_number, help="only the last N (default: all)"
    )
    a.quilt_by_place_or_option(parser)


COMMANDS: tuple[Command, ...] = (
    Command(
        "open", OPENING, "open a quilt in the app", "sewalong.cli.quilts.opening:open_quilt",
        a.quilt_by_place_or_option, "sewalong open", json=False,
        about="Without a name the quilt last touched is opened. Where there is no terminal, "
        "its plain status is printed instead.",
    ),
    Command(
        "demo", OPENING, "open a demo quilt (invented; kept apart from yours)",
        "sewalong.cli.quilts.opening:demo", _demo, "sewalong demo",
        about="The demo quilts have a record of their own; yours are never touched. Every "
        "other command works on them too, with --demo.",
    ),
    Command(
        "list", LOOKING, "every quilt, the last touched first", "sewalong.cli.quilts.listing:list_quilts",
        a.among_demos, "sewalong list",
    ),
    Command(
        "status", LOOKING, "where a quilt stands and what comes next",
        "sewalong.cli.quilts.listing:status", a.quilt_by_place_or_option, "sewalong status --json",
    ),
    Command(
        "log", LOOKING, "everything that happened to a quilt, one a line",
        "sewalong.cli.quilts.listing:log", _log, "sewalong log --last 20",
    ),
    Command(
        "count", COUNTING, "count what was done at a stage", "sewalong.cli.sewing.counting:count",
        _count, "sewalong count sew-around 5",
        about="A caution that is due is shown first; nothing is counted until it was read.",
    ),
    Command(
        "unpick", COUNTING, "take apart what was sewn; the pieces go back to their pile",
        "sewalong.cli.sewing.counting:unpick", _unpick, "sewalong unpick sew-around 2",
    ),
    Command(
        "undo", COUNTING, "take back the last thing recorded, and again for the one before",
        "sewalong.cli.sewing.counting:undo", a.which_quilt, "sewalong undo",
    ),
    Command(
        "close", COUNTING, "close the session: what to check, what to pick up next time",
        "sewalong.cli.sewing.closing:close", _close,
        "sewalong close --answer iron=yes --next 'press the rest'",
        about="Iron, blade, machine and pins are asked about if they were used. The answers "
        "are kept as you give them; the program cannot know.",
    ),
    Command(
        "answer", COUNTING, "answer about the iron on leaving the board",
        "sewalong.cli.sewing.closing:answer", _answer, "sewalong answer iron yes",
    ),
    Command(
        "spoil", PILES, "pieces are spoiled, and why", "sewalong.cli.sewing.piles:spoil", _spoil,
        "sewalong spoil unit 2 --reason 'cut off square'",
    ),
    Command(
        "find", PILES, "pieces were found again, bought or cut new", "sewalong.cli.sewing.piles:find",
        _find, "sewalong find square 8 --bought",
        about="What was missing and is found again is no longer missing.",
    ),
    Command(
        "recount", PILES, "a pile was counted by hand; your count stands",
        "sewalong.cli.sewing.piles:recount", _recount, "sewalong recount four-patch 31",
        about="Whatever the difference is said to be, the count is what lies there from now on.",
    ),
    Command(
        "put-away", PILES, "say where a pile lies now", "sewalong.cli.sewing.piles:put_away",
        _put_away, "sewalong put-away stack blue tin, top shelf",
    ),
    *STANDING_COMMANDS,
    Command(
        "note", KEEPING, "write a note for yourself", "sewalong.cli.sewing.notes_and_settings:note", _note,
        "sewalong note blue fabric frays, handle by the middle",
    ),
    Command(
        "settings", KEEPING, "the machine's settings and the test that proved them",
        "sewalong.cli.sewing.notes_and_settings:settings", _settings,
        "sewalong settings --foot 'quarter-inch' --proof '3 strips, 3 1/2 in'",
        about="What is not named stays as it was, but a test that proved other settings is "
        "not carried over. Without any option the settings are printed.",
    ),
    Command(
        "changed", KEEPING, "a new blade, needle, foot or bobbin; or switched off and on",
        "sewalong.cli.sewing.notes_and_settings:changed", _changed, "sewalong changed blade",
    ),
    Command(
        "stage", ROAD, "turn to another stage", "sewalong.cli.sewing.stage_and_target:stage", _stage,
        "sewalong stage press",
    ),
    Command(
        "target", ROAD, "change the rows and columns wanted; nothing done is lost",
        "sewalong.cli.sewing.stage_and_target:target", _target, "sewalong target 8 9",
    ),
    Command(
        "lay-aside", ROAD, "lay the quilt aside for now", "sewalong.cli.sewing.stage_and_target:lay_aside",
        _lay_aside, "sewalong lay-aside --reason 'waiting for backing cloth'",
    ),
    Command(
        "pick-up", ROAD, "go on with a quilt that was laid aside or done",
        "sewalong.cli.sewing.stage_and_target:pick_up", a.which_quilt, "sewalong pick-up",
    ),
    Command(
        "done", ROAD, "mark the quilt done", "sewalong.cli.sewing.stage_and_target:done", a.which_quilt,
        "sewalong done",
    ),
    Command(
        "start", SHELF, "begin a quilt from a quilt file", "sewalong.cli.quilts.quilt_files:start", _file,
        "sewalong start my-quilt.toml",
    ),
    Command(
        "check", SHELF, "check a quilt file: every fault with its line",
        "sewalong.cli.quilts.quilt_files:check", _file, "sewalong check my-quilt.toml",
    ),
    Command(
        "export", SHELF, "write a quilt with its whole record to one file",
        "sewalong.cli.quilts.quilt_files:export", _export, "sewalong export my-quilt.json",
    ),
    Command(
        "import", SHELF, "take in an exported quilt", "sewalong.cli.quilts.quilt_files:import_quilt", _import,
        "sewalong import my-quilt.json",
    ),
    *NUMBERS_COMMANDS,
)  # fmt: skip


def command(name: str) -> Command | None:
    """The command called `name`, or None."""
    return next((command for command in COMMANDS if command.name == name), None)
