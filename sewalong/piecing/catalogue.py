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

__all__ = ["UnknownMethod", "method", "method_for", "method_ids", "remember", "written_method"]

_REMEMBERED: dict[MethodKey, Method] = {}


def written_method(method: str | Method | Definition) -> Definition:
    """The method file behind an id, a method or itself, its flow checked.

    Raises UnknownMethod, naming the nearest one, for an id that there is none of.
    """
    if isinstance(method, str):
        return _known(method)
    if isinstance(method, Method):
        return _known(method.id)
    from sewalong.piecing.flow import check_flow

    check_flow(method)
    return method


@cache
def _known(id: str) -> Definition:
    from sewalong.piecing.definition import definition
    from sewalong.piecing.flow import check_flow

    try:
        written = definition(id)
    except KeyError:
        from difflib import get_close_matches

        near = get_close_matches(id, method_ids(), n=1, cutoff=0.0)
        raise UnknownMethod(f"No method is called {id!r}. The nearest is {near[0]!r}.") from None
    check_flow(written)
    return written


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

    Raises UnknownMethod, naming the nearest one, and SizeRefused for strips that give no
    segment.
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

    return count_out(written_method(key.id), key)
