"""Loading msgspec lightly: the first thing a command takes, and the dearest."""

from __future__ import annotations

import sys

from sewalong.interrupts import interrupts_held_back


def load_msgspec() -> None:
    """Load msgspec without typing_extensions, which takes longer to load than msgspec itself.

    msgspec takes three names from it where it is installed, and the same names from `typing`
    where it is not. Whatever wants typing_extensions later still finds it.
    """
    if "typing_extensions" in sys.modules or "msgspec" in sys.modules:
        return
    sys.modules["typing_extensions"] = None  # type: ignore[assignment]
    try:
        with interrupts_held_back():
            import msgspec  # noqa: F401
    finally:
        del sys.modules["typing_extensions"]
