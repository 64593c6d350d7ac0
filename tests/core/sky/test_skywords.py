import math

import pytest

from benchround.core.errors import OutOfRangeError
from benchround.core.sky import skywords, vapour
from benchround.core.sky.skywords import DampRisk, RainScheme, RainWord
from tests.core.published import Seen

UK = "UK Met Office, in The Independent, 5 Jan 1998"
US = "AMS Glossary of Meteorology, Rain"
WMO = "a secondary page, the WMO guide was not seen"
OHIO = "Prenger & Ling, AEX-804"

CASES = [
    ("R01", UK, Seen.READ, RainScheme.UK_RAIN,
     {0.4: "slight", 0.5: "slight", 0.6: "moderate", 4.0: "moderate", 4.1: "heavy"}),
    ("R02", UK, Seen.READ, RainScheme.UK_SHOWER,
     {1.0: "slight", 1.9: "slight", 2.0: "moderate", 5.0: "moderate", 10.0: "moderate",
      20.0: "heavy", 50.0: "heavy", 60.0: "violent"}),
    ("R03", US, Seen.READ, RainScheme.US,
     {2.4: "light", 2.5: "light", 2.6: "moderate", 7.6: "moderate", 7.7: "heavy"}),
    ("WMO", WMO, Seen.SECOND_HAND, RainScheme.WMO,
     {2.4: "slight", 5.0: "moderate", 20.0: "heavy", 60.0: "violent"}),
]  # fmt: skip
RAIN = [
    pytest.param(scheme, rate, word, id=f"{check} {rate} mm/h: {source} ({seen})")
    for check, source, seen, scheme, words in CASES
    for rate, word in words.items()
]


@pytest.mark.parametrize(("scheme", "rate", "word"), RAIN)
def test_rain_words(scheme: RainScheme, rate: float, word: str) -> None:
    assert skywords.rain_word(rate, scheme).value == word


@pytest.mark.parametrize("scheme", RainScheme)
def test_no_rain_is_dry_in_every_scheme(scheme: RainScheme) -> None:
    assert skywords.rain_word(0.0, scheme) is RainWord.DRY
    assert skywords.rain_word(0.01, scheme) is not RainWord.DRY


def test_the_same_rain_has_two_names() -> None:
    assert skywords.rain_word(5.0, RainScheme.UK_RAIN) is RainWord.HEAVY
    assert skywords.rain_word(5.0, RainScheme.US) is RainWord.MODERATE


@pytest.mark.parametrize("rate", [-1.0, 900.0, math.nan])
def test_impossible_rain_is_named(rate: float) -> None:
    with pytest.raises(OutOfRangeError, match=r"rain is .* outside 0 to 500 mm/h"):
        skywords.rain_word(rate)


@pytest.mark.parametrize(
    ("deficit_kpa", "risk"),
    [
        (0.19, DampRisk.HIGH),
        (0.20, DampRisk.RAISED),
        (0.42, DampRisk.RAISED),
        (0.43, DampRisk.LOW),
        (1.4, DampRisk.LOW),
    ],
    ids=[f"V04 {kpa} kPa: {OHIO} ({Seen.FROM_MEMORY})" for kpa in (0.19, 0.20, 0.42, 0.43, 1.4)],
)
def test_damp_risk(deficit_kpa: float, risk: DampRisk) -> None:
    assert skywords.damp_risk(deficit_kpa) is risk


def test_risk_of_airs_of_known_deficit() -> None:
    # V03: 5 degC 90 % is 0.087 kPa, 10 degC 80 % 0.246, 20 degC 60 % 0.935 (derived)
    airs = ((5.0, 90.0, DampRisk.HIGH), (10.0, 80.0, DampRisk.RAISED), (20.0, 60.0, DampRisk.LOW))
    for temp_c, humidity_pct, risk in airs:
        assert skywords.damp_risk(vapour.deficit_kpa(temp_c, humidity_pct)) is risk


@pytest.mark.parametrize(
    ("shut_h", "deficit_kpa", "wet_h", "cold", "word"),
    [
        (25.0, 0.1, 0.0, False, "air it"),
        (0.0, 1.0, 49.0, True, "let it dry"),
        (25.0, 0.1, 49.0, True, "air it"),
    ],
    ids=[f"{case} ({Seen.PRACTICE})" for case in ("shut and damp", "wet and cold", "both")],
)
def test_damping_off_note(
    shut_h: float, deficit_kpa: float, wet_h: float, cold: bool, word: str
) -> None:
    note = skywords.damping_off_note(
        shut_h=shut_h, deficit_kpa=deficit_kpa, wet_since_up_h=wet_h, colder_than_best=cold
    )
    assert note is not None
    assert word in note.text
    assert "rule of thumb" in note.text
    assert note.standing == "rule of thumb"


@pytest.mark.parametrize(
    ("shut_h", "deficit_kpa", "wet_h", "cold"),
    [(24.0, 0.1, 0.0, False), (72.0, 0.2, 0.0, False), (0.0, 1.0, 48.0, True),
     (0.0, 1.0, 90.0, False)],
    ids=["a day shut is not too long", "not damp enough", "two days wet are not too long",
         "wet but warm"],
)  # fmt: skip
def test_no_note_within_the_limits(
    shut_h: float, deficit_kpa: float, wet_h: float, cold: bool
) -> None:
    note = skywords.damping_off_note(
        shut_h=shut_h, deficit_kpa=deficit_kpa, wet_since_up_h=wet_h, colder_than_best=cold
    )
    assert note is None


def test_impossible_damp_figures_are_named() -> None:
    with pytest.raises(OutOfRangeError, match="vapour pressure deficit is nan kPa"):
        skywords.damp_risk(math.nan)
    with pytest.raises(OutOfRangeError, match="hours shut is -1 h"):
        skywords.damping_off_note(
            shut_h=-1.0, deficit_kpa=0.1, wet_since_up_h=0.0, colder_than_best=False
        )
