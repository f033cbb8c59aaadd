"""What cannot be: the one refusal of the record and the acts."""

from __future__ import annotations


class Refused(ValueError):
    """It would not be true or is not possible. Nothing changed.

    `str()` is one plain sentence (or two) that says why and what to do next.
    """
