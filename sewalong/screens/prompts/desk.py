"""What the questions asked over a screen need of it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Protocol

from textual.app import App

from sewalong.progress.acts.act import Act
from sewalong.progress.acts.begun import BeginRows
from sewalong.progress.acts.counting import Count
from sewalong.progress.acts.joining import JoinRows
from sewalong.service.acting import Outcome
from sewalong.service.open_quilt import OpenQuilt
from sewalong.service.unsaved import Unsaved


class Asker(Protocol):
    """A screen on which something can be asked and carried out."""

    quilt: OpenQuilt

    @property
    def app(self) -> App[Any]:
        """The app that puts dialogs up."""

    def attempt(self, act: Act, *, say: bool = True) -> str | None:
        """Carry out an act and, with `say`, say so; the refusal is returned."""


class Desk(Asker, Protocol):
    """The screen of the sewing, on which everything can."""

    unsaved: Unsaved

    @property
    def outcome(self) -> Outcome:
        """How things stand after what was done last."""

    def count(self, act: Count | JoinRows | BeginRows) -> str | None:
        """Carry out a count; a caution that is due is put up, and read first."""

    def carry(self, work: Callable[[], Outcome], *, say: bool = True) -> str | None:
        """As `attempt`, for an act that the service carries out in its own way."""

    def tell(self, text: str, *, refused: bool = False) -> None:
        """Say one thing; a refusal is marked."""
