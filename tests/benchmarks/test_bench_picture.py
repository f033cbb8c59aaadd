"""How long a 30 x 30 top takes to draw, against building as large a grid of lists.

Prints ratios measured in one run (`pytest -s`); it asserts no times.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from functools import partial

from sewalong.piecing.derive import derive
from sewalong.wall.on_point import on_point_picture
from sewalong.wall.picture import Picture
from sewalong.wall.runs import rows_of_runs
from sewalong.wall.textures import textures
from sewalong.wall.tops import top_picture
from tests.benchmarks.timing import best


def _report(name: str, draw: Callable[[], Picture]) -> None:
    picture = draw()
    across, down = picture.across, picture.down
    floor = best(lambda: [[(None, None) for _ in range(across)] for _ in range(down)])
    frame = best(lambda: rows_of_runs(draw()))
    plain = best(lambda: textures(draw()))
    label = f"{name} {across}x{down}"
    print(
        f"{label:36}{floor * 1000:7.2f}ms{frame * 1000:7.2f}ms{plain * 1000:8.2f}ms"
        f"{frame / floor:12.0f}"
    )
    assert rows_of_runs(picture)


def test_print_the_time_to_draw_a_top_against_building_its_grid() -> None:
    print(f"\n{'30 x 30 units':36}{'grid':>9}{'frame':>9}{'texture':>10}{'frame/grid':>12}")
    for method in ("stacked-four-patch", "hourglass", "nine-patch"):
        units = derive(method, Fraction(5))
        for across, down in ((60, 30), (200, 60)):
            bordered = partial(
                top_picture, units, 30, 30, across=across, down=down, borders=(2, 4.5)
            )
            slanting = partial(on_point_picture, units, 30, 30, across=across, down=down)
            _report(method, bordered)
            _report(f"{method} on point", slanting)
