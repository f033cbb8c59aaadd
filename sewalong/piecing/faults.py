"""What can be wrong with a method or with the sizes asked of it."""

from __future__ import annotations

from sewalong.misfit import Path


class MethodFault(ValueError):
    """A method file whose words or operations do not fit together.

    The sentence names the file and, where there is one, the stage. `bare` is the sentence without
    them, and `path` leads to the key in the file, where they are known.
    """

    def __init__(self, sentence: str, bare: str = "", path: Path = ()) -> None:
        super().__init__(sentence)
        self.bare = bare or sentence
        self.path = path


class SizeRefused(ValueError):
    """Sizes that cannot be: the sentence says why and what to do next."""


class UnknownMethod(ValueError):
    """No method goes by this id; the sentence names the nearest one."""
