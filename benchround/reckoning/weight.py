"""`benchround reckon weight`: seed by weight, from weighings, a printed weight or an ounce."""

from __future__ import annotations

import argparse
from collections.abc import Iterator

from benchround.core.seed.weight import (
    CV_LIMIT,
    CV_LIMIT_CHAFFY,
    WORKING_SAMPLE_SEEDS,
    SeedWeight,
    grams_of_seeds,
    seeds_in_grams,
    seeds_per_gram,
    seeds_per_gram_of_ounce,
    seeds_per_ounce,
    sowing_rate_kg_per_ha,
    weigh,
    working_sample_g,
)
from benchround.reckoning.answer import Answer, rounded
from benchround.reckoning.figures import number, share

HELP = "seeds in a gram and grams of seeds, from weighings of 100 seeds or a printed weight"
EXAMPLE = "benchround reckon weight --hundreds 0.21 0.215 0.209 0.22 --seeds 2500"
SOURCE = (
    "FRSA tutorial on AOSA Appendix 4, 2001; variation allowed ISTA Rules ch. 10 (from memory); "
    "working sample AOSA 2019; kg/ha Plant Science Consulting"
)
M2_PER_HA = 10_000


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    known = parser.add_mutually_exclusive_group(required=True)
    known.add_argument(
        "--hundreds", type=number, nargs="+", metavar="G", help="weights of 100 seeds each, g"
    )
    known.add_argument("--thousand", type=number, metavar="G", help="thousand-seed weight, g")
    known.add_argument("--per-ounce", type=number, metavar="N", help="seeds in an ounce")
    parser.add_argument("--chaffy", action="store_true", help="seed with chaff or hairs")
    parser.add_argument("--seeds", type=number, metavar="N", help="weight of so many seeds")
    parser.add_argument("--grams", type=number, metavar="G", help="seeds in so many grams")
    parser.add_argument("--plants-per-m2", type=number, metavar="N", help="plants wanted, in rows")
    parser.add_argument(
        "--germination", type=share, default=1.0, metavar="G", help="with --plants-per-m2 (1)"
    )


def reckon(given: argparse.Namespace) -> Answer:
    """Seeds per gram and ounce, whether the weighings agree, and what is asked of them."""
    found = weigh(given.hundreds) if given.hundreds else None
    per_gram = _per_gram(given, found)
    even = found.is_even(chaffy=given.chaffy) if found is not None else None
    grams = None if given.seeds is None else grams_of_seeds(given.seeds, per_gram)
    seeds = None if given.grams is None else seeds_in_grams(given.grams, per_gram)
    wanted = given.plants_per_m2
    rate = (
        None
        if wanted is None
        else sowing_rate_kg_per_ha(1000.0 / per_gram, wanted, given.germination)
    )
    return Answer(
        value={
            "seeds_per_gram": rounded(per_gram),
            "seeds_per_ounce": rounded(seeds_per_ounce(per_gram), 2),
            "thousand_g": rounded(1000.0 / per_gram, 6),
            "mean_g": rounded(found.mean_g, 7) if found else None,
            "variance": rounded(found.variance, 9) if found else None,
            "variation_percent": rounded(found.variation_percent) if found else None,
            "even": even,
            "working_sample_g": working_sample_g(per_gram),
            "grams": rounded(grams),
            "seeds": seeds,
            "kg_per_ha": rounded(rate),
            "source": SOURCE,
        },
        lines=(
            f"{per_gram:.0f} seeds in a gram, {seeds_per_ounce(per_gram):.0f} in an ounce, "
            f"{1000.0 / per_gram:.3f} g a thousand",
            *_weighings(given, found, even),
            f"  a sample of {WORKING_SAMPLE_SEEDS} seeds weighs {working_sample_g(per_gram)} g",
            *([f"  {given.seeds:g} seeds weigh {grams:.3f} g"] if grams is not None else []),
            *([f"  {given.grams:g} g hold {seeds} seeds"] if seeds is not None else []),
            *(
                [f"  {wanted:g} plants/m2: {rate:.1f} kg/ha, {1000 * rate / M2_PER_HA:.2f} g/m2"]
                if rate is not None
                else []
            ),
            f"  formulas: {SOURCE}",
        ),
    )


def _per_gram(given: argparse.Namespace, found: SeedWeight | None) -> float:
    if found is not None:
        return found.seeds_per_gram
    if given.thousand is not None:
        return seeds_per_gram(given.thousand)
    return seeds_per_gram_of_ounce(given.per_ounce)


def _weighings(
    given: argparse.Namespace, found: SeedWeight | None, even: bool | None
) -> Iterator[str]:
    if found is None:
        return
    allowed = CV_LIMIT_CHAFFY if given.chaffy else CV_LIMIT
    verdict = "even enough" if even else "too uneven: weigh eight more"
    yield (f"  weighings vary by {found.variation_percent:.1f} %, allowed {allowed:g} %: {verdict}")
