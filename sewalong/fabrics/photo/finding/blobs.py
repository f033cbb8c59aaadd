"""Pixels that hang together, found and measured without a picture library."""

from __future__ import annotations

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from sewalong.fabrics.photo.tones import Flags, Numbers


class Blobs(Struct, frozen=True):
    """What hangs together, one entry each: pixels, middle (x, y; from the corner of the first
    pixel) and the second moments about it (xx, xy, yy), as mean squares."""

    areas: Numbers
    middles: Numbers
    moments: Numbers

    def squarish(self) -> Flags:
        """Which of them may be a square seen askew.

        A filled parallelogram has area² = 144 · (xx · yy - xy²) whatever its sides and angles, a
        disc five in a hundred more, a ragged thing or one with holes less; and a square is not
        seen half as wide again one way as the other. The limits about that are own choices.
        """
        xx, xy, yy = self.moments.T
        spread = np.maximum(xx * yy - xy * xy, 1e-9)
        filled = self.areas / (12 * np.sqrt(spread))
        half, apart = (xx + yy) / 2, np.hypot((xx - yy) / 2, xy)
        longer = np.sqrt((half + apart) / np.maximum(half - apart, 1e-9))
        found: Flags = (filled > 0.85) & (filled < 1.03) & (longer < 1.5)
        return found


def blobs(mask: Flags) -> Blobs:
    """The blobs of true pixels, joined along their edges."""
    before = np.zeros_like(mask)
    before[:, 1:] = mask[:, :-1]
    runs = np.cumsum(mask & ~before, dtype=np.intp).reshape(mask.shape)
    both = mask[:-1] & mask[1:]
    touching: NDArray[np.intp] = np.stack([runs[:-1][both], runs[1:][both]], axis=1)
    pairs = np.unique(touching, axis=0)
    label = _joined(int(runs[-1, -1]), pairs)
    rows, columns = np.nonzero(mask)
    owner = label[runs[rows, columns]]
    count = int(label.max()) + 1
    area = np.bincount(owner, minlength=count).astype(np.float64)
    x, y = columns + 0.5, rows + 0.5
    middle_x = np.bincount(owner, x, count) / np.maximum(area, 1)
    middle_y = np.bincount(owner, y, count) / np.maximum(area, 1)
    x, y = x - middle_x[owner], y - middle_y[owner]
    moments = [
        np.bincount(owner, part, count) / np.maximum(area, 1) for part in (x * x, x * y, y * y)
    ]
    there = area > 0
    return Blobs(
        area[there],
        np.column_stack([middle_x, middle_y])[there],
        np.column_stack(moments)[there],
    )


def narrower(mask: Flags, by: int) -> Flags:
    """The same less `by` pixels at every edge, so that what just touches comes apart."""
    lost = ~mask
    for _ in range(by):
        lost = wider(lost)
    return ~lost


def without_lines(mask: Flags) -> Flags:
    """The same without what is at most two pixels wide, as the lines of a cutting mat that would
    join one square to the next: an opening by 3 × 3 pixels."""
    return wider(narrower(mask, 1))


def _joined(runs: int, pairs: NDArray[np.intp]) -> NDArray[np.intp]:
    """For each run, from 1, the number of its blob; runs of a pair are of one."""
    root = list(range(runs + 1))

    def top(of: int) -> int:
        while root[of] != of:
            root[of] = root[root[of]]
            of = root[of]
        return of

    for one, other in pairs.tolist():
        a, b = top(one), top(other)
        root[max(a, b)] = min(a, b)
    return np.array([top(run) for run in range(runs + 1)], dtype=np.intp)


def wider(mask: Flags) -> Flags:
    """With all eight neighbours of each true pixel."""
    tall = mask.copy()
    tall[1:] |= mask[:-1]
    tall[:-1] |= mask[1:]
    wide = tall.copy()
    wide[:, 1:] |= tall[:, :-1]
    wide[:, :-1] |= tall[:, 1:]
    return wide
