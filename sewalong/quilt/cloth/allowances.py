"""What is added to a finished size to cut for it: squares, and triangles cut from squares.

Plane geometry, for any seam allowance s. At 1/4 in these are the trade's 1/2, 7/8 and 1 1/4 in,
the last two rounded up from 0.8536 and 1.2071; at 0.75 cm they are 1.5, 2.56 and 3.62 cm.
"""

from sewalong.lengths import Length
from sewalong.quilt.as_fraction import ROOT_TWO


def square_adds(seam: Length) -> Length:
    """Added to the finished side of a square or strip: one allowance each side."""
    return 2 * seam


def half_square_adds(seam: Length) -> float:
    """Added to the finished short side of a triangle cut once from a square, s * (2 + root 2)."""
    return float(seam) * (2 + ROOT_TWO)


def quarter_square_adds(seam: Length) -> float:
    """Added to the finished long side of a triangle when a square is cut twice corner to corner.

    s * (2 + 2 * root 2).
    """
    return float(seam) * (2 + 2 * ROOT_TWO)
