"""Germination samples of published worked examples, as looks."""

from benchround.core.seed.looks import Looks

GERMINATIONMETRICS = "Aravind et al. 2026, germinationmetrics 0.1.10.9000, tests/testthat"
VIGNETTE = "germinationmetrics vignette Introduction.pdf pp. 41-45"
SEEDCALC = "da Silva et al. 2018, SeedCalc 1.0.0, GermCalc example output"
LOBELIA = "Onofri, Piepho & Kozak, agriCensData docs/Example2.html (Lobelia erinus)"

_COUNTS = {
    "G1 rep 1": ("0 0 0 0 4 17 10 7 1 0 1 0 0 0", 50),
    "G2 rep 1": ("0 0 0 1 3 15 13 6 2 1 0 1 0 0", 51),
    "G3 rep 1": ("0 0 0 2 3 18 9 8 2 1 1 1 0 0", 48),
    "G4 rep 1": ("0 0 0 0 4 19 12 6 2 1 1 1 0 0", 51),
    "G5 rep 1": ("0 0 0 0 5 20 12 8 1 0 0 1 1 0", 50),
    "G1 rep 2": ("0 0 0 0 3 21 11 7 1 1 1 1 0 0", 49),
    "G2 rep 2": ("0 0 0 0 4 18 11 7 1 0 1 0 0 0", 48),
    "G3 rep 2": ("0 0 0 1 3 14 12 6 2 1 0 1 0 0", 47),
    # seeds sown of the next two were not read; they do not enter times or curves
    "G4 rep 2": ("0 0 0 1 3 19 10 8 1 1 1 1 0 0", 52),
    "G5 rep 3": ("0 0 0 0 4 17 10 8 1 1 1 0 0 0", 51),
}
# counts from memory, confirmed by the printed figures: b and c of the Hill curve of each come out
# to every digit printed (G710-G714); seeds sown do not enter them and are not claimed
_RECALLED = {
    "G5 rep 2": ("0 0 0 0 4 18 13 6 2 1 0 1 0 0", 50),
    "G1 rep 3": ("0 0 0 0 5 21 11 8 1 0 0 1 1 0", 50),
    "G2 rep 3": ("0 0 0 0 3 20 10 7 1 1 1 1 0 0", 50),
    "G3 rep 3": ("0 0 0 0 4 19 12 8 1 1 0 1 1 0", 50),
    "G4 rep 3": ("0 0 0 0 3 21 11 6 1 0 1 1 0 0", 50),
}


def daily(counts: str, sown: int) -> Looks:
    """Return looks on days 1, 2, 3 ... from newly-up counts."""
    numbers = [int(word) for word in counts.split()]
    return Looks.on_days(range(1, len(numbers) + 1), numbers, sown)


def daily_total(totals: str, sown: int) -> Looks:
    """Return looks on days 1, 2, 3 ... from cumulative counts."""
    numbers = [int(word) for word in totals.split()]
    new = [b - a for a, b in zip([0, *numbers], numbers, strict=False)]
    return Looks.on_days(range(1, len(new) + 1), new, sown)


SAMPLES = {name: daily(*counts) for name, counts in (_COUNTS | _RECALLED).items()}
REFERENCE = SAMPLES["G1 rep 1"]
SEEDCALC_1 = daily_total("0 2 4 15 25 38 45 50 50 50", 50)
SEEDCALC_2 = daily_total("0 4 6 18 22 39 40 48 50 50", 50)

_LOOK_DAYS = range(1, 40, 2)
LOBELIA_15 = Looks.on_days(
    _LOOK_DAYS, [2, 12, 11, 13, 14, 4, 6, 4, 5, 5, 2, 1, 2, 1, 3, 2, 2, 2, 0, 1], 100
)
LOBELIA_25 = Looks.on_days(
    _LOOK_DAYS, [10, 26, 13, 9, 10, 3, 6, 4, 1, 2, 2, 3, 0, 1, 2, 2, 0, 0, 1, 1], 100
)
