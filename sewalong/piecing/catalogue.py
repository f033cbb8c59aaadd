"""The methods the program knows, each with its counts worked out from its operations.

The geometry is loaded when counts are worked out: a start that is given them ready (see
`kept_method`) does without.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache, lru_cache
from typing import TYPE_CHECKING

from sewalong.piecing.faults import UnknownMethod
from sewalong.piecing.method import Method, MethodKey
from sewalong.piecing.method_files import method_ids

if TYPE_CHECKING:
    from sewalong.piecing.definition import Definition

__all__ = [
    "UnknownMethod",
    "method",
    "method_for",
    "method_ids",
    "remember",
    "written_for",
    "written_method",
]

_REMEMBERED: dict[MethodKey, Method] = {}


def written_method(method: str | Definition) -> Definition:
    """The program's own method of this id, or the method itself.

    Raises UnknownMethod, naming the nearest one, for an id that there is none of.
    """
    return _known(method) if isinstance(method, str) else method


def written_for(key: MethodKey) -> Definition:
    """The method file of `key`: its text, or the program's own of its id.

    Raises UnknownMethod, and MethodFault for a text that is no method of this id.
    """
    return _known(key.id) if key.text is None else _read(key.id, key.text)


@lru_cache(maxsize=16)
def _read(id: str, text: str) -> Definition:
    from sewalong.piecing.definition import read_definition
    from sewalong.piecing.faults import MethodFault

    written = read_definition(f"the method {id}", text)
    if written.id != id:
        raise MethodFault(f"the method {id}: its own id is {written.id}; they must agree.")
    return written


@cache
def _known(id: str) -> Definition:
    from sewalong.piecing.definition import definition

    try:
        return definition(id)
    except KeyError:
        from difflib import get_close_matches

        near = get_close_matches(id, method_ids(), n=1, cutoff=0.0)
        raise UnknownMethod(f"No method is called {id!r}. The nearest is {near[0]!r}.") from None


def method(
    id: str,
    *,
    start: Fraction | None = None,
    strip_length: Fraction = Fraction(40),
    seam: Fraction = Fraction(1, 4),
) -> Method:
    """The method called `id`, its counts worked out for these sizes (see MethodKey).

    Raises as `method_for` does.
    """
    return method_for(MethodKey(id, start, strip_length, seam))


def method_for(key: MethodKey) -> Method:
    """The method of `key`, its counts worked out.

    Raises UnknownMethod, naming the nearest one, MethodFault for a text that is no method, and
    SizeRefused for strips that give no segment.
    """
    return _REMEMBERED.get(key) or _counted_out(key)


def remember(key: MethodKey, method: Method) -> None:
    """From now on `method_for(key)` is `method`, which was worked out for `key` before.

    Raises ValueError if it is another method.
    """
    if method.id != key.id:
        raise ValueError(f"{method.id!r} is not the method {key.id!r}")
    _REMEMBERED[key] = method


@lru_cache(maxsize=64)
def _counted_out(key: MethodKey) -> Method:
    from sewalong.piecing.method_counts import count_out

    return count_out(written_for(key), key)
