"""The desk of the plain commands, to look at old records with."""

from tests.cli.conftest import desk, utc

__all__ = ["desk", "utc"]
