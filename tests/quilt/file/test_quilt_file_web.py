"""`joined` in a quilt file: units put together row by row, or as a web."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from sewalong.quilt.file.commented import commented_file
from sewalong.quilt.file.faults import QuiltFileFaults
from sewalong.quilt.file.reader import read_quilt
from sewalong.quilt.file.writer import quilt_file
from sewalong.quilt.plan_faults import why_not_a_plan
from sewalong.quilt.plan_words import differences
from tests.quilt.file.own_method import OWN

LINE = 9


def squares(more: str, *, rows: int = 4, columns: int = 5) -> str:
    """Plain squares of 5 in; `more` begins on line 9, under [layout]."""
    return (
        'name = "Test"\nmethod = "plain-squares"\n[squares]\nsize = 5\ncount = 20\n'
        f"[layout]\nrows = {rows}\ncolumns = {columns}\n{more}\n"
    )


def test_units_are_put_together_row_by_row_unless_something_else_is_said() -> None:
    assert not read_quilt(squares("")).is_web
    assert read_quilt(squares('joined = "rows"')) == read_quilt(squares(""))
    assert read_quilt(squares('joined = "web"')).is_web


def test_what_is_written_is_read_again_and_rows_are_not_written_at_all() -> None:
    web = read_quilt(squares('joined = "web"'))
    assert 'columns = 5\njoined = "web"\n' in quilt_file(web)
    assert read_quilt(quilt_file(web)) == read_quilt(commented_file(web)) == web
    assert "joined" not in quilt_file(replace(web, joined="rows"))


ON_POINT = '[setting]\nkind = "on point"\ncloth = "oat"'
SASHED = '[setting]\nkind = "sashed"\nsash = 2\ncloth = "oat"'


@pytest.mark.parametrize(
    ("more", "rows", "columns", "said"),
    [
        ('joined = "net"', 4, 5, "'net' is not one of these. Write one of"),
        ("joined = true", 4, 5, "This is not one of these"),
        ('joined = "web"', 1, 5, "A web has at least two rows and two columns"),
        ('joined = "web"', 4, 1, "A web has at least two rows and two columns"),
        (f'joined = "web"\n{ON_POINT}', 4, 5, "A web is for units set edge to edge"),
        (f'joined = "web"\n{SASHED}', 4, 5, "A web is for units set edge to edge"),
    ],
)
def test_every_fault_with_its_line_and_what_to_do(
    more: str, rows: int, columns: int, said: str
) -> None:
    with pytest.raises(QuiltFileFaults) as caught:
        read_quilt(squares(more, rows=rows, columns=columns))
    (fault,) = caught.value.faults
    assert (fault.line, fault.key) == (LINE, "layout.joined")
    assert said in fault.sentence


@pytest.mark.parametrize("name", ["web-row", "web-unit", "start-web", "sew-web"])
def test_a_method_of_her_own_may_use_a_name_of_the_web_and_then_has_none(name: str) -> None:
    """Methods were written before there were webs: their files are read as ever."""
    was = "two" if name.startswith("web") else "sew-twos"
    text = OWN.replace(f'"{was}"', f'"{name}"').replace(f"take {was}", f"take {name}")
    file = squares("").replace('method = "plain-squares"', 'method_file = "mine.toml"')
    rows = read_quilt(file, lambda _: text.encode())
    assert why_not_a_plan(rows) == ""
    said = f"has a stage or pile of its own called {name}"
    assert said in why_not_a_plan(replace(rows, joined="web"))
    with pytest.raises(QuiltFileFaults, match=said):
        read_quilt(
            file.replace("columns = 5", 'columns = 5\njoined = "web"'), lambda _: text.encode()
        )


def test_the_log_says_how_they_are_put_together() -> None:
    web = read_quilt(squares('joined = "web"'))
    rows = replace(web, joined="rows")
    assert differences(rows, web) == ("put together: row by row → as a web",)
    assert differences(web, rows) == ("put together: as a web → row by row",)
