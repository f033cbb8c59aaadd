"""How the machine was set, in the owner's words."""

from __future__ import annotations

from msgspec import Struct


class Settings(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """How the machine was set, and the test that proved it.

    A setting without the reason is not believed a year later, so `proof` says what
    was measured ("three 1 1/2 in strips came out at 3 1/2 in").
    """

    machine: str = ""
    foot: str = ""
    needle: str = ""
    needle_position: str = ""
    stitch_length: str = ""
    thread: str = ""
    proof: str = ""

    def in_words(self) -> str:
        """What was written down, one after the other: "foot quarter-inch, tested by 3 strips"."""
        return ", ".join(
            f"{'tested by' if name == 'proof' else name.replace('_', ' ')} {value}"
            for name in self.__struct_fields__
            if (value := getattr(self, name))
        )
