"""A photograph that cannot be read."""

from __future__ import annotations


class PhotoRefused(ValueError):
    """The message says in plain sentences what is wrong, where, and what to do next."""
