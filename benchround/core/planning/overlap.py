"""What flowers together, and when nothing does."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import timedelta
from itertools import combinations

from benchround.core.dates import Span
from benchround.core.frozen import dataclass

ONE_DAY = timedelta(days=1)


@dataclass(frozen=True, slots=True)
class Overlap:
    """Two flowerings side by side.

    Attributes:
        first, second: their names, in the order given.
        together: the days both are in flower; None where they never meet.
        days_together: how many days that is.
        gap_days: days between the end of the one and the start of the other; 0 where they meet or
            follow without a break.
    """

    first: str
    second: str
    together: Span | None
    days_together: int
    gap_days: int


def flowering_overlap(spans: Sequence[tuple[str, Span]]) -> tuple[Overlap, ...]:
    """Every pair of flowerings, with the days they share or the gap between them.

    Args:
        spans: (name, days in flower); pairs come in the order given.
    """
    return tuple(_pair(one, other) for one, other in combinations(spans, 2))


def _pair(one: tuple[str, Span], other: tuple[str, Span]) -> Overlap:
    opens = max(one[1].opens, other[1].opens)
    closes = min(one[1].closes, other[1].closes)
    if opens <= closes:
        both = Span(opens, closes)
        return Overlap(one[0], other[0], both, both.days, 0)
    return Overlap(one[0], other[0], None, 0, (opens - closes).days - 1)


def flowerless(spans: Iterable[Span], over: Span) -> tuple[Span, ...]:
    """The stretches of `over` in which nothing is in flower, in order."""
    gaps: list[Span] = []
    bare_from = over.opens
    for span in sorted(spans, key=lambda span: span.opens):
        if span.opens > over.closes:
            break
        if span.opens > bare_from:
            gaps.append(Span(bare_from, span.opens - ONE_DAY))
        bare_from = max(bare_from, span.closes + ONE_DAY)
    if bare_from <= over.closes:
        gaps.append(Span(bare_from, over.closes))
    return tuple(gaps)
