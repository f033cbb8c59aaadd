"""A method kept with its counts is the method worked out, and is not used once anything changed."""

from __future__ import annotations

import subprocess
import sys
from fractions import Fraction as F

import pytest
from msgspec.structs import replace

from sewalong.piecing import kept_method
from sewalong.piecing.catalogue import UnknownMethod, method_for, method_ids, remember
from sewalong.piecing.faults import MethodFault
from sewalong.piecing.kept_method import (
    COUNTED_BY,
    fingerprint,
    method_from_json,
    method_to_json,
)
from sewalong.piecing.method import MethodKey
from sewalong.piecing.method_files import read_beside, read_method_file, text_of

SIZES = [
    MethodKey(""),
    MethodKey("", F(5, 2)),
    MethodKey("", F(2), F(42)),
    MethodKey("", F(7, 4), F(41, 3), F(100, 254)),
]
KEYS = [
    replace(sizes, id=id, text=text)
    for id in method_ids()
    for sizes in SIZES
    for text in (None, text_of(id))
]


def python(script: str) -> set[str]:
    """The words a fresh interpreter prints."""
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True, timeout=60
    )
    return set(done.stdout.split())


@pytest.mark.parametrize("key", KEYS, ids=lambda key: key.id)
def test_a_kept_method_is_the_one_worked_out(key: MethodKey) -> None:
    worked_out = method_for(key)
    kept = method_to_json(worked_out)
    assert method_from_json(kept) == worked_out
    assert method_from_json(kept.decode()) == worked_out


def test_strips_of_another_size_are_kept_apart_because_they_give_other_counts() -> None:
    narrow, wide = (MethodKey("rail-fence", F(width), F(40)) for width in (2, 3))
    made = [method_for(key).stage("cut-squares").makes.count for key in (narrow, wide)]
    assert made == [8, 5]
    assert fingerprint(narrow) != fingerprint(wide)


def test_no_two_methods_or_sizes_have_one_fingerprint() -> None:
    assert len({fingerprint(key) for key in KEYS}) == len(KEYS)
    assert fingerprint(KEYS[0]) == fingerprint(MethodKey(KEYS[0].id))


KEY = MethodKey("four-patch")


def test_another_version_has_another_fingerprint(monkeypatch: pytest.MonkeyPatch) -> None:
    before = fingerprint(KEY)
    monkeypatch.setattr(kept_method, "__version__", "0.0.1")
    assert fingerprint(KEY) != before


def test_a_changed_method_file_has_another_fingerprint(monkeypatch: pytest.MonkeyPatch) -> None:
    before = fingerprint(KEY)
    written = read_method_file(KEY.id)
    assert written is not None
    monkeypatch.setattr(kept_method, "read_method_file", lambda id: written + b"\n")
    assert fingerprint(KEY) != before
    monkeypatch.setattr(kept_method, "read_method_file", lambda id: written)
    assert fingerprint(KEY) == before


@pytest.mark.parametrize("name", COUNTED_BY)
def test_changed_code_has_another_fingerprint(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    before = fingerprint(KEY)

    def changed(path: str) -> bytes | None:
        code = read_beside(path)
        assert code
        return code + b"#" if path == name else code

    monkeypatch.setattr(kept_method, "read_beside", changed)
    assert fingerprint(KEY) != before


def test_all_the_code_of_this_room_that_counts_is_in_the_fingerprint() -> None:
    used = python(
        "import sys\n"
        "from fractions import Fraction\n"
        "from sewalong.piecing.catalogue import method, method_ids\n"
        "for id in method_ids():\n"
        "    method(id, start=Fraction(2), strip_length=Fraction(40))\n"
        "room = 'sewalong.piecing.'\n"
        "print(*(name.removeprefix(room) + '.py' for name in sys.modules if room in name))"
    )
    assert used == set(COUNTED_BY)


@pytest.mark.parametrize("id", ["from-a-later-version", "../definition", "a/b", "", "x\n"])
def test_a_method_there_is_none_of_has_a_fingerprint_and_no_counts(id: str) -> None:
    assert fingerprint(MethodKey(id)).endswith(id)
    with pytest.raises(UnknownMethod):
        method_for(MethodKey(id))


def test_a_remembered_method_is_the_one_given() -> None:
    # A size that no other test asks for, since what is remembered stays for the whole run.
    key = MethodKey("rail-fence", F(977, 400), F(39))
    given = replace(method_for(key), about="given")
    remember(key, given)
    assert method_for(key) is given
    assert method_for(replace(key, start=F(2))).about != "given"


def test_a_method_is_not_remembered_as_another() -> None:
    key = MethodKey("nine-patch", F(977, 400))
    with pytest.raises(ValueError, match="'four-patch' is not the method 'nine-patch'"):
        remember(key, method_for(KEY))
    assert method_for(key).id == "nine-patch"


@pytest.mark.parametrize(
    "kept",
    [
        b"",
        b"null",
        b"[]",
        b"{}",
        method_to_json(method_for(KEY)).replace(b'"about"', b'"abut"'),
        method_to_json(method_for(KEY)).replace(b'"count":2', b'"count":"2"'),
    ],
)
def test_what_is_no_kept_method_is_refused(kept: bytes) -> None:
    with pytest.raises(ValueError, match=r"."):
        method_from_json(kept)


def test_methods_of_one_id_and_different_texts_are_kept_apart() -> None:
    texts = [
        None,
        text_of("four-patch"),
        (text_of("four-patch") or "") + "\n",
        text_of("nine-patch"),
    ]
    marks = [fingerprint(replace(KEY, text=text)) for text in texts]
    assert len(set(marks)) == len(texts)
    other = replace(
        KEY, text=(text_of("nine-patch") or "").replace('id = "nine-patch"', 'id = "four-patch"', 1)
    )
    assert method_for(other).name == "Nine-patch"
    assert method_for(KEY).name == method_for(replace(KEY, text=text_of(KEY.id))).name
    with pytest.raises(MethodFault, match="its own id is nine-patch; they must agree"):
        method_for(replace(KEY, text=texts[3]))


@pytest.mark.parametrize("text", [None, text_of(KEY.id)], ids=["by its id", "by its text"])
def test_a_start_that_is_given_its_method_loads_no_geometry_and_reads_no_toml(
    text: str | None,
) -> None:
    kept = method_to_json(method_for(KEY)).decode()
    loaded = python(
        "import sys\n"
        "from fractions import Fraction\n"
        "from sewalong.lengths import Unit\n"
        "from sewalong.piecing.catalogue import remember\n"
        "from sewalong.piecing.kept_method import fingerprint, method_from_json\n"
        "from sewalong.quilt.quilt import Quilt, StartPile, Target\n"
        "starts = (StartPile('square', Fraction(5), 8),)\n"
        "quilt = Quilt('x', 'four-patch', Unit.INCH, Fraction(1, 4), starts, Target(1, 2),\n"
        f"    method_text={text!r})\n"
        "fingerprint(quilt.method_key)\n"
        f"remember(quilt.method_key, method_from_json({kept!r}))\n"
        "assert quilt.method.stage('join').takes[0].count == 2\n"
        "print(*sys.modules)"
    )
    assert "sewalong.piecing.kept_method" in loaded
    heavy = ("definition", "flow", "geometry", "method_counts", "start_sizes")
    assert not loaded & {f"sewalong.piecing.{name}" for name in heavy}
    assert not loaded & {"tomllib", "difflib", "hashlib", "importlib.resources", "pkgutil"}
