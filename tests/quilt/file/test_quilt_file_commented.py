"""The commented quilt file: right as it is, and with any of what is left out put in."""

from __future__ import annotations

import re

import pytest
from msgspec import Struct

from sewalong.lengths import Unit
from sewalong.piecing.catalogue import method_ids
from sewalong.piecing.method_files import text_of
from sewalong.quilt.beginning.answers import Answers
from sewalong.quilt.beginning.filled_in import fill_in
from sewalong.quilt.file.commented import commented_file
from sewalong.quilt.file.models import QuiltFile, keys_of, tables_of
from sewalong.quilt.file.reader import read_quilt
from sewalong.quilt.quilt import Quilt

LEFT_OUT = re.compile(r"^# (?=[a-z_]+ = |\[)", re.MULTILINE)

SAID: tuple[dict[str, str], ...] = (
    {},
    {"setting": "on point"},
    {"setting": "sashes 2", "layout": "3 x 1", "borders": "none", "finishing": "none"},
    {"setting": "sashes 3, frame, cornerstones", "seam": "3/8", "trim": "2"},
    {"count": "16", "borders": "1, 2, 3 cream linen"},
)


def quilts() -> list[Quilt]:
    """Quilts of every method, and of every setting."""
    found = [fill_in(Answers(unit, {"method": id})) for id in method_ids() for unit in Unit]
    found += [fill_in(Answers(said=said)) for said in SAID]
    assert all(one.quilt for one in found)
    return [one.quilt for one in found if one.quilt]


QUILTS = quilts()


@pytest.mark.parametrize("quilt", QUILTS)
def test_as_it_is_it_says_the_quilt(quilt: Quilt) -> None:
    assert read_quilt(commented_file(quilt)) == quilt


@pytest.mark.parametrize("quilt", QUILTS)
def test_every_line_left_out_can_be_put_in(quilt: Quilt) -> None:
    """Alone under a heading that is there, and a heading with all its keys."""
    text = commented_file(quilt)
    blocks = text.split("\n\n")
    for place, block in enumerate(blocks):
        heads = LEFT_OUT.findall(block)
        if not heads:
            continue
        if block.splitlines()[-1].startswith("# ") and "\n# [" in f"\n{block}":
            changes = [LEFT_OUT.sub("", block)]
        else:
            at = [found.span() for found in LEFT_OUT.finditer(block)]
            changes = [block[:start] + block[end:] for start, end in at]
        for changed in changes:
            assert changed != block
            read_quilt("\n\n".join([*blocks[:place], changed, *blocks[place + 1 :]]))


@pytest.mark.parametrize("quilt", QUILTS)
def test_all_that_is_left_out_can_be_put_in_together(quilt: Quilt) -> None:
    assert read_quilt(LEFT_OUT.sub("", commented_file(quilt))) != quilt


def test_it_has_every_key_a_quilt_file_may_have() -> None:
    """Those that stand in place of others are in a remark."""
    together = "".join(map(commented_file, QUILTS))
    tables: list[type[Struct]] = [QuiltFile, *tables_of(QuiltFile).values()]
    for table in tables:
        for key in keys_of(table):
            assert re.search(rf"(?:^|\W){key}\b", together), key


def test_a_method_file_is_named() -> None:
    own = (text_of("paired-squares") or "").replace('"paired-squares"', '"my-own"', 1)

    def load(name: str) -> bytes:
        assert name == 'me & "you".toml'
        return own.encode()

    found = fill_in(Answers(said={"method": 'me & "you".toml'}), load=load)
    assert found.quilt is not None
    text = commented_file(found.quilt, 'me & "you".toml')
    assert read_quilt(text, load) == found.quilt
