"""How strong the weakest contact can be at best, whatever the strengths are: a matching."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from math import inf


def matching_bound(
    strength: Sequence[Sequence[float]], counts: Sequence[int], pairs: int
) -> float | None:
    """What the weakest of so many pairs of squares cannot pass, either way round; None where
    nothing known holds it down, or there are too few squares.

    `counts` has the squares of each print. Where a strength can be reached by all pairs, the
    squares can be matched so, and twice the pairs be sent through a network from squares to
    squares; where that cannot be sent, no choice reaches it. (This is the fractional matching: it
    passes the whole one only where prints of odd numbers of squares part in odd circles.)
    """
    prints = range(len(counts))
    either = [[max(strength[a][b], strength[b][a]) for b in prints] for a in prints]
    steps = sorted({one for row in either for one in row if one > -inf})
    # The first step that is too much; the one before it can be reached.
    too_much = bisect_left(
        steps, True, key=lambda least: _sent(_parting(either, least), counts) < 2 * pairs
    )
    best = steps[too_much - 1] if too_much else inf
    return best if best < inf else None


def _parting(strength: Sequence[Sequence[float]], least: float) -> list[list[int]]:
    """For each print those that part from it so strongly or more."""
    return [[b for b, one in enumerate(row) if one >= least] for row in strength]


def _sent(reached: Sequence[Sequence[int]], counts: Sequence[int]) -> int:
    """The most that goes from squares to squares, each square sending and taking one at most."""
    sending, taking = list(counts), list(counts)
    flow = [[0] * len(counts) for _ in counts]
    for a, others in enumerate(reached):
        for b in others:
            n = min(sending[a], taking[b])
            flow[a][b] += n
            sending[a] -= n
            taking[b] -= n
    while any(sending):
        way = _way(reached, flow, sending, taking)
        if way is None:
            break
        # To b from a, back to an a that sent there, to another b, and so on.
        forth = list(zip(way[::2], way[1::2], strict=True))
        back = list(zip(way[2::2], way[1::2], strict=False))
        n = min(sending[way[0]], taking[way[-1]], *(flow[a][b] for a, b in back))
        for a, b in forth:
            flow[a][b] += n
        for a, b in back:
            flow[a][b] -= n
        sending[way[0]] -= n
        taking[way[-1]] -= n
    return sum(counts) - sum(sending)


def _way(
    reached: Sequence[Sequence[int]],
    flow: Sequence[Sequence[int]],
    sending: Sequence[int],
    taking: Sequence[int],
) -> list[int] | None:
    """A way on which more can be sent: sender, taker, sender, … taker; None where there is none."""
    came_from: dict[int, int] = {}
    sent_back: dict[int, int | None] = {a: None for a, n in enumerate(sending) if n}
    waiting = list(sent_back)
    for a in waiting:
        for b in reached[a]:
            if b in came_from:
                continue
            came_from[b] = a
            if taking[b]:
                return _walked(b, came_from, sent_back)
            for other in range(len(flow)):
                if flow[other][b] and other not in sent_back:
                    sent_back[other] = b
                    waiting.append(other)
    return None


def _walked(last: int, came_from: dict[int, int], sent_back: dict[int, int | None]) -> list[int]:
    way: list[int] = []
    b: int | None = last
    while b is not None:
        a = came_from[b]
        way = [a, b, *way]
        b = sent_back[a]
    return way
