"""What can be wrong with a method or with the sizes asked of it."""

from __future__ import annotations


class MethodFault(ValueError):
    """A method file whose words or operations do not fit together.

    The sentence names the file and, where there is one, the stage.
    """


class SizeRefused(ValueError):
    """Sizes that cannot be: the sentence says why and what to do next."""


class UnknownMethod(ValueError):
    """No method goes by this id; the sentence names the nearest one."""
