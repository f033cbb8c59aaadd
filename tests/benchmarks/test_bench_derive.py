"""How long the engine takes to derive each method, against reading the method's file.

Prints ratios measured in one run (`pytest -s`); it asserts no times.
"""

from __future__ import annotations

import tomllib
from fractions import Fraction
from importlib import resources

from sewalong.piecing import derive as engine
from sewalong.piecing import start_sizes as starts
from sewalong.piecing.catalogue import method_ids, written_method
from tests.benchmarks.timing import best


def test_print_the_time_to_derive_against_parsing_the_file() -> None:
    print(f"\n{'method':24}{'parse':>10}{'derive':>10}{'ratio':>8}")
    for id in method_ids():
        text = (resources.files("sewalong.piecing") / "methods" / f"{id}.toml").read_text("utf-8")
        size = Fraction(5, 2) if written_method(id).starts[0].strip else Fraction(5)

        def work(id: str = id, size: Fraction = size) -> engine.Derivation:
            engine._derive.cache_clear()
            starts.main_for.cache_clear()
            starts._suited.cache_clear()
            return engine.derive(id, size)

        floor = best(lambda text=text: tomllib.loads(text))  # type: ignore[misc]
        taken = best(work)
        print(f"{id:24}{floor * 1000:8.2f}ms{taken * 1000:8.2f}ms{taken / floor:8.1f}")
        assert work().units
