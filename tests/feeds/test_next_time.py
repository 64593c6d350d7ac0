"""What to do differently: from counts made by hand, with figures reckoned outside the program."""

from __future__ import annotations

from datetime import timedelta

import pytest
from scipy.stats import betabinom

from benchround.core.crop.crop import COMMON_PRACTICE
from benchround.core.record import Cause, Figure, Kind, Record
from benchround.core.season import Season
from benchround.crops.library import load_library
from benchround.feeds.cause_words import NEXT_TIME
from benchround.feeds.next_time import Finding, findings
from tests.feeds.seasons import empty_season, hostile_season, many_season, sample_season
from tests.folding import fold_season
from tests.sample.story import DAY_0

SOWN = DAY_0 - timedelta(days=60)
Event = tuple[str, int, Kind, dict[str, Figure]]


def tell(*events: Event) -> Season:
    return fold_season(
        [
            Record(f"0T{number:04d}", SOWN + timedelta(days=after), kind, about, figures)
            for number, (about, after, kind, figures) in enumerate(events)
        ],
        load_library(),
    )


def sown(name: str, seeds: int, wanted: int = 0, crop: str = "zinnia") -> Event:
    figures: dict[str, Figure] = {"crop": crop, "seeds": seeds, "raising": "tray"}
    return name, 0, Kind.SOWN, {**figures, **({"wanted": wanted} if wanted else {})}


def counted(name: str, count: int, after: int = 20) -> Event:
    return name, after, Kind.COUNTED, {"count": count, "final": True}


def about(season: Season, words: str) -> Finding:
    found = [finding for finding in findings(season) if words in finding.found]
    assert len(found) == 1, [finding.found for finding in findings(season)]
    return found[0]


def test_every_cause_but_the_unknown_teaches_something_and_has_a_source() -> None:
    assert set(NEXT_TIME) == set(Cause) - {Cause.UNKNOWN}
    for therefore, source in NEXT_TIME.values():
        assert therefore
        assert source == COMMON_PRACTICE or "(read)" in source or "from memory" in source


@pytest.mark.parametrize(
    ("cause", "words"),
    [
        # what an experienced grower does next time, by trouble (trade notes; status in the table)
        (Cause.DAMPING_OFF, "from below"),  # Michigan State University (read)
        (Cause.SLUG, "dusk"),  # pests page (read), remedies from memory
        (Cause.MOUSE, "mesh"),  # The Telegraph; a nursery page (read)
        (Cause.DROWNED, "half an hour"),  # University of New Hampshire Extension (read)
        (Cause.DRAWN, "light"),  # UC Santa Cruz (read)
    ],
)
def test_the_advice_fits_the_cause(cause: Cause, words: str) -> None:
    season = tell(sown("b01", 40), counted("b01", 30),
                  ("b01", 30, Kind.LOST, {"count": 7, "cause": str(cause)}))  # fmt: skip
    finding = about(season, "7 lost in b01 Zinnia")
    assert words in finding.therefore


def test_causes_come_by_plants_lost() -> None:
    found = [finding.found for finding in findings(sample_season())]
    # the story: mice took 5 and 2, slugs 4 and 2, water 2
    assert found[0] == "Mouse: 7 lost in b07 Sweet pea, b21 Runner bean"
    assert found[1] == "Slug: 6 lost in b19 Cabbage, b29 Viola"
    assert found[2] == "Drowned: 2 lost in b10 Sweet william"


def test_a_sowing_nobody_had_counted_is_no_nought() -> None:
    season = tell(sown("b01", 40), ("b01", 9, Kind.FIRST_UP, {}),
                  ("b01", 12, Kind.LOST, {"cause": "damping off"}))  # fmt: skip
    found = about(season, "Damping off").found
    assert found == "Damping off: all lost, never counted, in b01 Zinnia"


def test_a_share_outside_its_range_is_told_both_ways() -> None:
    # zinnia: the library says 85 %; 20 of 40: 35 to 65 %, 100 of 100: 96 to 100 % (Wilson 1927)
    few = about(tell(sown("b01", 40), counted("b01", 20)), "20 of 40 seeds")
    assert "35% to 65%; the library says 85%" in few.found
    assert "sow more" in few.therefore
    many = about(tell(sown("b01", 100), counted("b01", 100)), "100 of 100 seeds")
    assert "96% to 100%" in many.found
    assert "fewer seeds will do" in many.therefore


def test_a_share_within_its_range_is_no_lesson() -> None:
    assert findings(tell(sown("b01", 40), counted("b01", 34))) == ()


def test_too_few_asks_for_as_many_seeds_as_the_own_count_takes() -> None:
    season = tell(sown("b01", 40, wanted=24), counted("b01", 16),
                  ("b01", 50, Kind.PLANTED_OUT, {"count": 14}))  # fmt: skip
    finding = about(season, "b01 Zinnia: 24 wanted, 14 planted")
    share = season.learned("zinnia").share
    assert share is not None
    enough = int(finding.therefore.split()[1])
    # beta-binomial of scipy, thinned by the two survivals: nine times in ten, and not with fewer
    for seeds, least in ((enough, True), (enough - 1, False)):
        assert (_chance(share.belief.a, share.belief.b, seeds, 24) >= 0.9) is least


def _chance(a: float, b: float, seeds: int, wanted: int) -> float:
    """The chance of so many plants, each that comes up kept with 0.9 * 0.9, summed with scipy."""
    from scipy.stats import binom

    up = betabinom(seeds, a, b)
    return float(
        sum(up.pmf(k) * binom.sf(wanted - 1, k, 0.9 * 0.9) for k in range(wanted, seeds + 1))
    )


def test_too_many_is_said_only_where_fewer_would_have_done() -> None:
    season = tell(sown("b01", 200, wanted=20), counted("b01", 170))
    finding = about(season, "b01 Zinnia: 170 alive for 20 wanted")
    assert "are enough nine times in ten; 200 were sown" in finding.therefore
    assert not findings(tell(sown("b01", 40, wanted=30), counted("b01", 34)))


def test_two_seeds_fewer_are_no_lesson() -> None:
    """46 would have done where 48 were sown: nobody sows differently for that."""
    assert not [one for one in findings(sample_season()) if one.found.startswith("b20 ")]


def test_seed_that_slept_in_heat_is_told() -> None:
    season = tell(sown("b01", 40, crop="lettuce"), ("b01", 6, Kind.STALLED, {"cause": "heat"}))
    finding = about(season, "Heat stalled b01 Lettuce")
    assert "in the evening" in finding.therefore


def test_what_was_never_counted_is_asked_for_once_it_is_up() -> None:
    waiting = tell(sown("b01", 40))
    assert findings(waiting) == ()
    up = tell(sown("b01", 40), ("b01", 9, Kind.FIRST_UP, {}), ("b01", 20, Kind.TRUE_LEAVES, {}))
    assert about(up, "Never counted: b01 Zinnia").therefore.startswith("count once")


def test_an_empty_season_teaches_nothing() -> None:
    assert findings(empty_season()) == ()


def test_hostile_names_and_many_batches_are_borne() -> None:
    assert all(finding.found and finding.source for finding in findings(hostile_season()))
    assert len(findings(many_season())) > 3
