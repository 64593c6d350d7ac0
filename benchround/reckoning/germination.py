"""`benchround reckon germination`: what a germination count says."""

from __future__ import annotations

import argparse
import re
from collections.abc import Callable, Iterator, Mapping
from types import MappingProxyType

from benchround.core.errors import InputError
from benchround.core.seed import germination_indices as indices
from benchround.core.seed.germination import GerminationSummary, germination_summary
from benchround.core.seed.looks import Looks
from benchround.plain import JsonValue
from benchround.reckoning.answer import Answer, rounded, said
from benchround.reckoning.figures import count
from benchround.reckoning.germination_more import further_figures

HELP = "germination share, time, speed and evenness from counts"
EXAMPLE = 'benchround reckon germination "0 0 0 0 4 17 10 7 1 0 1 0 0 0" --sown 50'
SOURCE = (
    "t50 Farooq et al. 2005 (t50_days) and Coolbear et al. 1984; mean Labouriau 1983; speed "
    "Maguire 1962; uniformity Heydecker 1972; synchrony Primack 1985; 95 % range Wilson 1927; fit: "
    "log-normal interval likelihood"
)
INDICES: Mapping[str, Callable[[Looks], float | None]] = MappingProxyType(
    {
        index.__name__: index
        for index in (
            indices.last_day,
            indices.peak_percent,
            indices.variance_days,
            indices.standard_error_days,
            indices.variation_of_days,
            indices.mean_rate,
            indices.rate_variance,
            indices.rate_standard_error,
            indices.kotowski_velocity,
            indices.percent_speed,
            indices.corrected_speed,
            indices.accumulated_speed,
            indices.weighted_percent,
            indices.germination_index,
            indices.emergence_rate_index,
            indices.uncertainty_bits,
            indices.mean_percent_per_day,
            indices.mean_number_per_day,
            indices.peak_value,
        )
    }
)
"""Figures trials report, which no grower asks for by name."""
OF_ALL_SOWN = frozenset(
    {
        "peak_percent",
        "percent_speed",
        "weighted_percent",
        "germination_index",
        "mean_percent_per_day",
        "peak_value",
    }
)
"""Those that cannot be told where the number sown was not given."""
MOST_LOOKS = 1000
_ON_DAY = re.compile(r"([0-9]+(?:\.[0-9]+)?):([0-9]+)")


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    parser.add_argument(
        "counts",
        metavar="COUNTS",
        nargs="+",
        help="newly up, one count a day from day 1, or day:count pairs as 5:4 6:17",
    )
    parser.add_argument("--sown", type=count, metavar="N", help="seeds sown")
    parser.add_argument(
        "--taken",
        nargs="+",
        default=[],
        metavar="DAY:N",
        help="seeds taken away on a day before they came up, as 8:5",
    )


def reckon(given: argparse.Namespace) -> Answer:
    """The indices of one sowing; those the counts do not define are null."""
    days, counts = read_counts(" ".join(given.counts))
    up = sum(counts)
    sown = max(1, up) if given.sown is None else given.sown
    looks = Looks.on_days(days, counts, sown)
    found = germination_summary(looks)
    known = given.sown is not None
    further = further_figures(looks, _taken(given.taken), known)
    low, high = (found.low, found.high) if known else (None, None)
    share = found.final_share if known else None
    told = f"{up} up of {sown} sown: {share:.1%}" if share is not None else f"{up} up"
    if low is not None and high is not None:
        told += (
            f"; of such seed between {100 * low:.0f} and {100 * high:.0f} of a hundred come up "
            "(95 % range)"
        )
    return Answer(
        value={
            "sown": given.sown,
            "up": up,
            "final_share": rounded(share, 6),
            "low": rounded(low, 6),
            "high": rounded(high, 6),
            "first_day": rounded(found.first_day, 6),
            "t50_days": rounded(found.t50_days, 6),
            "t50_farooq": rounded(found.t50_farooq, 6),
            "t50_coolbear": rounded(found.t50_coolbear, 6),
            "mean_days": rounded(found.mean_days, 6),
            "mean_days_middle": rounded(found.mean_days_middle, 6),
            "speed": rounded(found.speed, 6),
            "uniformity": rounded(found.uniformity, 6),
            "synchrony": rounded(found.synchrony, 6),
            "spread_days": rounded(found.spread_days, 6),
            "fit_median_days": rounded(found.median_fit, 4),
            "fit_median_se_days": rounded(found.median_fit_error, 4),
            "fit_sigma": rounded(found.sigma_fit, 4),
            **further.value(),
            "indices": _indices(looks, known),
            "source": SOURCE,
        },
        lines=(
            told,
            *(_time_lines(found) if up else ("  none is up: there is no day to tell",)),
            *further.lines(),
            f"  formulas: {SOURCE}",
        ),
        remarks=() if known else ("The number sown was not given: no germination share.",),
    )


def _taken(words: list[str]) -> list[tuple[float, int]]:
    """Days and seeds taken away.

    Raises:
        InputError: a word is no pair.
    """
    if not words:
        return []
    days, seeds = read_counts(" ".join(words))
    if not all(_ON_DAY.fullmatch(word) for word in words):
        raise InputError("--taken wants day:number pairs such as 8:5.")
    return list(zip(days, seeds, strict=True))


def _indices(looks: Looks, known: bool) -> dict[str, JsonValue]:
    """Each index by its name; None where it is not defined, or the number sown is not known."""
    return {
        name: rounded(index(looks), 6) if known or name not in OF_ALL_SOWN else None
        for name, index in INDICES.items()
    }


def _time_lines(found: GerminationSummary) -> Iterator[str]:
    """When they came, in words, each formula's name in brackets."""
    yield (
        f"  half of those that came were up after {said(found.t50_days, 'days')} (T50 by Farooq "
        f"{said(found.t50_farooq, places=2)}, by Coolbear {said(found.t50_coolbear, places=2)})"
    )
    if found.spread_days is not None:
        yield f"  from a tenth to nine tenths of them took {found.spread_days:.1f} days"
    yield (
        f"  on average they were found after {said(found.mean_days, 'days', 2)}, "
        f"{said(found.mean_days_middle, places=2)} by the middle between looks"
    )
    if found.median_fit is not None:
        yield (
            f"  reckoned from look to look, half were up after {found.median_fit:.2f} days, give "
            f"or take {said(found.median_fit_error, places=2)} (log-normal fit, standard error)"
        )
    yield (
        f"  {said(found.speed, places=3)} seedlings a day (speed), evenness "
        f"{said(found.uniformity, places=3)} (uniformity), together on one day "
        f"{said(found.synchrony, places=3)} (synchrony, 1: all at one look)"
    )


def read_counts(text: str) -> tuple[list[float], list[int]]:
    """Days and newly-up counts, from counts a day or day:count pairs.

    Raises:
        InputError: a word is neither, the two are mixed, or there are too many.
    """
    words = text.replace(",", " ").split()
    if not words or len(words) > MOST_LOOKS:
        raise InputError(f"{len(words)} counts were given: give 1 to {MOST_LOOKS}.")
    pairs = [_ON_DAY.fullmatch(word) for word in words]
    if any(pairs):
        bad = next((w for w, found in zip(words, pairs, strict=True) if found is None), None)
        if bad is not None:
            raise InputError(f"{bad[:20]!r} is no day:count pair such as 6:17: write all as pairs.")
        found = sorted((float(p[1]), int(p[2])) for p in pairs if p is not None)
        return [day for day, _ in found], [newly for _, newly in found]
    for word in words:
        if not re.fullmatch(r"[0-9]{1,9}", word):
            raise InputError(f"{word[:20]!r} is no count: write whole numbers, or pairs as 6:17.")
    return [float(n) for n in range(1, len(words) + 1)], [int(word) for word in words]
