"""What a first word means: a command, something that is reckoned, or a mistake with a way out."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from sewalong.cli.registry import index

if TYPE_CHECKING:
    from tests.cli.conftest import Desk

OTHER_NAMES = [
    (word, name)
    for names in index.RECKONED.values()
    for name, others in names.items()
    for word in (name, *others)
]


@pytest.mark.parametrize(("word", "name"), OTHER_NAMES)
def test_the_trade_s_own_word_says_where_it_is_reckoned(word: str, name: str, desk: Desk) -> None:
    said = desk.refused(word, "--top", "60").err
    assert said == f"“{word}” is worked out by reckon. Type: sewalong reckon {name}\n"


@pytest.mark.parametrize(("word", "name"), OTHER_NAMES)
def test_every_other_name_is_understood_behind_reckon(word: str, name: str, desk: Desk) -> None:
    assert desk.ok("reckon", word, "--help").out == desk.ok("reckon", name, "--help").out


@pytest.mark.parametrize(
    ("line", "sentence"),
    [
        (
            "yardage",
            "“yardage” is worked out by reckon, one thing at a time. Type: sewalong reckon "
            "squares, fit, binding, backing, border, batting or thread",
        ),
        ("yardage backing --top 60", "Type: sewalong reckon backing"),
        ("setting sashed --rows 2", "Type: sewalong reckon sashing"),
        ("setting around --size 3", "Type: sewalong reckon framed"),
        ("setting --help", "Type: sewalong reckon straight, sashing, on-point or framed"),
        ("reckon setting", "Type: sewalong reckon straight, sashing, on-point or framed"),
        ("reckon yardage wadding", "Type: sewalong reckon batting"),
        ("reckon backng", "Did you mean reckon backing?"),
        ("reckon zzz", "“zzz” is nothing that can be reckoned. All that can be: sewalong reckon"),
        ("backng", "Did you mean reckon backing?"),
        ("help wadding", "Type: sewalong reckon batting"),
        ("help cuont", "Did you mean count?"),
        ("hlep", "Did you mean help?"),
        ("--quilt Gate count", "“--quilt” is not understood here."),
        ("reckon --wrong", "“--wrong” is not understood here."),
    ],
)
def test_a_word_that_is_no_command_is_told_its_place(line: str, sentence: str, desk: Desk) -> None:
    assert sentence in desk.refused(*line.split()).err


def test_reckon_alone_lists_what_it_can_reckon_one_a_line(desk: Desk) -> None:
    said = desk.ok("reckon")
    names = [name for names in index.RECKONED.values() for name in names]
    assert [line.split(":")[0] for line in said.lines] == names
    assert [one["name"] for one in desk.ok("reckon", "--json").data["reckons"]] == names
