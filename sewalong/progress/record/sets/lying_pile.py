"""A pile that is worked off piece by piece, as long as it may be."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Iterable, Iterator
from itertools import count, islice

from sewalong.progress.record.sets.laid import Lying


class LyingPile:
    """The pieces of a pile in the order in which they lie.

    One is taken in the same time however many there are, so that a record is read in a time that
    grows as it does.
    """

    def __init__(self, pieces: Iterable[Lying] = ()) -> None:
        self._places = count()
        # A plain dict walks over all that was taken from its front.
        self._pieces: OrderedDict[int, Lying] = OrderedDict()
        self._known: dict[tuple[int, int], list[int]] = {}
        self._unknown: OrderedDict[int, None] = OrderedDict()
        self._sure = 0
        self.lay(pieces)

    def __iter__(self) -> Iterator[Lying]:
        return iter(self._pieces.values())

    def lay(self, pieces: Iterable[Lying]) -> None:
        """Lay pieces behind all that lie there."""
        for place, piece in zip(self._places, pieces, strict=False):
            self._pieces[place] = piece
            if piece.set:
                self._known.setdefault((piece.set, piece.index), []).append(place)
                self._sure += piece.sure
            else:
                self._unknown[place] = None

    def take(self, number: int, index: int) -> Lying | None:
        """Take this piece of a set; None where it does not lie there.

        It may seem to lie there twice, where something else was counted for it: then the later.
        """
        places = self._known.get((number, index))
        return self._take(places[-1]) if places else None

    def take_unknown(self) -> bool:
        """Take the first of which nobody knows the set; false where there is none."""
        place = next(iter(self._unknown), None)
        if place is not None:
            self._take(place)
        return place is not None

    def take_first(self, n: int) -> None:
        """Take so many from the front, or all there are."""
        for place in list(islice(self._pieces, n)):
            self._take(place)

    def shrink_to(self, n: int) -> None:
        """No more than `n` lie there: what is surely there leaves so much room for unknown ones."""
        if n <= 0:
            self.take_first(len(self._pieces))
        while len(self._unknown) + self._sure > n and self.take_unknown():
            pass

    def _take(self, place: int) -> Lying:
        piece = self._pieces.pop(place)
        if piece.set:
            self._known[piece.set, piece.index].remove(place)
            self._sure -= piece.sure
        else:
            del self._unknown[place]
        return piece
