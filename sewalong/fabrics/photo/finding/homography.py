"""How a flat grid looks to a camera that is held askew, as one projective map."""

from __future__ import annotations

import numpy as np
from msgspec import Struct

from sewalong.fabrics.photo.tones import Numbers

_FAR_AWAY = 1e9


class Homography(Struct, frozen=True):
    """Takes points of the grid (column, row) to points of the picture (x, y): a matrix, 3 × 3."""

    matrix: Numbers

    def __call__(self, points: Numbers) -> Numbers:
        """The points of the picture for these of the grid; the last axis holds the two."""
        return _mapped(self.matrix, points)

    def back(self, points: Numbers) -> Numbers:
        """The points of the grid for these of the picture."""
        return _mapped(np.linalg.inv(self.matrix).astype(np.float64), points)

    def pitch(self, point: Numbers) -> float:
        """Pixels that one step of the grid takes about this point: root of the area of one cell."""
        half = np.eye(2) / 2
        x, y = self(point + half) - self(point - half)
        return float(np.sqrt(abs(x[0] * y[1] - x[1] * y[0])))


def _mapped(matrix: Numbers, points: Numbers) -> Numbers:
    """Points at the horizon, which have no image, are put very far away."""
    flat: Numbers = points @ matrix[:, :2].T + matrix[:, 2]
    with np.errstate(divide="ignore", invalid="ignore"):
        seen = flat[..., :2] / flat[..., 2:]
    return np.clip(np.nan_to_num(seen, nan=_FAR_AWAY), -_FAR_AWAY, _FAR_AWAY)


def fitted(grid: Numbers, seen: Numbers) -> Homography:
    """The map that takes `grid` nearest to `seen`, n × 2 each, n at least 4 and not in one line.

    Least squares of the algebraic error after both are scaled about their middle. Source: Hartley
    and Zisserman, Multiple View Geometry, 2nd edition, algorithm 4.2.
    """
    from_grid, to_seen = _scaling(grid), _scaling(seen)
    at, to = _mapped(from_grid, grid), _mapped(to_seen, seen)
    ones, zeros = np.ones((len(at), 1)), np.zeros((len(at), 3))
    known = np.hstack([at, ones])
    rows = np.vstack(
        [
            np.hstack([known, zeros, -to[:, :1] * known]),
            np.hstack([zeros, known, -to[:, 1:] * known]),
        ]
    )
    least = np.linalg.svd(rows)[2][-1].reshape(3, 3)
    return Homography(np.linalg.inv(to_seen) @ least @ from_grid)


def square_on(grid: Numbers, seen: Numbers) -> Homography:
    """The map without perspective, cells square, that takes `grid` nearest to `seen`: turned,
    scaled and moved. For squares that all lie in one line, two at least."""
    count = len(grid)
    along = np.column_stack([grid[:, 0], -grid[:, 1], np.ones(count), np.zeros(count)])
    down = np.column_stack([grid[:, 1], grid[:, 0], np.zeros(count), np.ones(count)])
    wanted = np.concatenate([seen[:, 0], seen[:, 1]])
    a, b, x, y = np.linalg.lstsq(np.vstack([along, down]), wanted, rcond=None)[0]
    return Homography(np.array([[a, -b, x], [b, a, y], [0, 0, 1.0]]))


def _scaling(points: Numbers) -> Numbers:
    middle = points.mean(axis=0)
    far = np.hypot(*(points - middle).T).mean() or 1.0
    by = np.sqrt(2) / far
    return np.array([[by, 0, -by * middle[0]], [0, by, -by * middle[1]], [0, 0, 1.0]])
