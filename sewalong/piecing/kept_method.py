"""A method with its counts, kept from one start to the next so that they aren't worked out anew.

What is kept is never trusted over its source: it goes with a fingerprint of the method file,
of the code that worked the counts out and of the sizes they hold for. When the fingerprint
differs, the counts are worked out again.

    mark = fingerprint(key)
    remember(key, method_from_json(kept))       when something is kept under that mark
    method_to_json(method_for(key))             to keep, when nothing is
"""

from __future__ import annotations

from importlib.util import source_hash

import msgspec

from sewalong import __version__
from sewalong.piecing.method import Method, MethodKey
from sewalong.piecing.method_files import read_beside, read_method_file

COUNTED_BY = (
    "catalogue.py",
    "cloth.py",
    "definition.py",
    "faults.py",
    "flow.py",
    "geometry.py",
    "method.py",
    "method_counts.py",
    "method_files.py",
    "method_rules.py",
    "method_tables.py",
    "operation_words.py",
    "operations.py",
    "primitive.py",
    "start_sizes.py",
)
"""The files of this room that counts come out of. The version stands for the rest."""


def fingerprint(key: MethodKey) -> str:
    """Text that differs when the counts for `key` may differ.

    It never fails: a method there is none of has a fingerprint too, and nothing is kept under
    it. It holds the version, a hash of the method file and of COUNTED_BY, the sizes and the id.
    The hash is the one Python itself tells stale compiled code by; `hashlib` would cost a start
    ten times as much. Someone could make a text to deceive it, so a method file that came with a
    quilt stands there whole: from an archive it may be anyone's.
    """
    own = read_method_file(key.id) if key.text is None else b""
    check = source_hash(
        b"\0".join([own or b"", *(read_beside(f) or b"" for f in COUNTED_BY)])
    ).hex()
    sizes = f"{key.start} {key.strip_length} {key.seam}"
    return f"{__version__} {check} {sizes} {key.id}" + ("" if key.text is None else f"\n{key.text}")


def method_to_json(method: Method) -> bytes:
    """`method` as JSON, to be kept under `fingerprint`."""
    return msgspec.json.encode(method)


def method_from_json(kept: bytes | str) -> Method:
    """The method that `method_to_json` gave as `kept`; raises ValueError if it did not."""
    return msgspec.json.decode(kept, type=Method)
