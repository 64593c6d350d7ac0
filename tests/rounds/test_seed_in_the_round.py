"""What is known of the seed drives the round: looking, late, how many, packets, too few."""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchround.core.crop.crop import Crop
from benchround.core.errors import InputError
from benchround.core.record import Draft, Figure, Kind, Record
from benchround.core.season import Season
from benchround.core.seed.waiting import Waiting, forecast
from benchround.core.task import Family, Slot, Standing, Task
from benchround.crops.library import load_library
from benchround.rounds.answers import drafts_for
from benchround.rounds.build import build_round
from tests.core.seed_stories import TENBELL
from tests.folding import fold_season
from tests.rounds.small_season import LONDON

F, S = Family, Standing
DAY = date(2027, 6, 1)
CROPS: dict[str, Crop] = {**load_library(), "tenbell": TENBELL}


class Year:
    """A garden with a warm box, a shaded frame and a bed; days count from 1 June."""

    def __init__(self, **extra: Crop) -> None:
        self.records: list[Record] = []
        self.crops: Mapping[str, Crop] = {**CROPS, **extra}
        self.on(-150, Kind.SITE, "", **LONDON)
        self.place("warm", name="Warm box", kind="propagator", set_c=20.0, order=1)
        self.place("cool", name="Frame C", kind="frame", glazing="slats", shade_share=0.5, order=2)
        self.place("bed", name="Bed 1", kind="bed", order=3)

    def place(self, code: str, /, **figures: Figure) -> None:
        self.on(-150, Kind.PLACE, code, **figures)

    def on(self, day: int, kind: Kind, about: str, /, **figures: Figure) -> None:
        number = len(self.records)
        when = DAY + timedelta(days=day)
        self.records.append(Record(f"Y{number:05d}", when, kind, about, dict(figures)))

    def sown(self, name: str, day: int, crop: str, **figures: Figure) -> None:
        said: dict[str, Figure] = {"crop": crop, "place": "warm", "raising": "tray", "seeds": 80}
        self.on(day, Kind.SOWN, name, **{**said, **figures})

    def take(self, drafts: tuple[Draft, ...], day: int) -> None:
        for draft in drafts:
            self.on(day, draft.kind, draft.about, **dict(draft.figures))

    def season(self) -> Season:
        return fold_season(self.records, self.crops)

    def task(self, family: Family, about: str, day: int) -> Task | None:
        a_round = build_round(self.season(), DAY + timedelta(days=day))
        return a_round.find(f"{family}:{about}:")

    def must(self, family: Family, about: str, day: int) -> Task:
        task = self.task(family, about, day)
        assert task is not None, f"no task '{family}' for {about}"
        return task


def early_sowings(year: Year, crop: str, days: int, how_many: int = 3) -> None:
    """Earlier sowings of a crop that all came up late, looked at every day."""
    for number in range(how_many):
        begun, name = -100 + 20 * number, f"a{number}"
        year.sown(name, begun, crop)
        year.on(begun + days - 1, Kind.LOOKED, name)
        year.on(begun + days, Kind.FIRST_UP, name, count=2)
        year.on(begun + days + 9, Kind.COUNTED, name, count=60, final=True)
        year.on(begun + days + 15, Kind.COMPOSTED, name)


def standing_by_day(year: Year, name: str, days: int) -> list[Standing]:
    return [year.must(F.LOOK, name, day).standing for day in range(1, days)]


def test_a_wallflower_is_looked_for_from_day_7_and_late_after_day_14() -> None:
    """Wallflower, 7 to 14 days near 20 C (common practice, no source)."""
    year = Year()
    year.sown("b01", 0, "wallflower")
    seen = standing_by_day(year, "b01", 18)
    assert seen == [S.EARLY] * 6 + [S.DUE] * 8 + [S.LATE] * 3


def test_own_sowings_shift_the_look_and_the_why_names_both() -> None:
    """Library 7 to 14 days, own three at 13: looked for later (rule of the shrunk median)."""
    year = Year()
    early_sowings(year, "wallflower", 13)
    year.sown("b01", 0, "wallflower")
    seen = standing_by_day(year, "b01", 18)
    assert seen.count(S.EARLY) > 6
    figures = year.must(F.LOOK, "b01", 3).why.figures
    assert "library 10 days at 20 C, yours 11 from 3 sowings" in figures


def test_sowings_lost_to_mice_teach_nothing() -> None:
    plain, eaten = Year(), Year()
    for number in range(3):
        begun, name = -100 + 20 * number, f"a{number}"
        eaten.sown(name, begun, "wallflower")
        eaten.on(begun + 3, Kind.LOST, name, count=70, cause="mouse")
        eaten.on(begun + 16, Kind.FIRST_UP, name, count=2)
        eaten.on(begun + 25, Kind.COUNTED, name, count=5, final=True)
    for year in (plain, eaten):
        year.sown("b01", 0, "wallflower")
        year.on(0, Kind.PLANNED, "b02", crop="wallflower", wanted=40, sow_on=DAY.isoformat())
    assert standing_by_day(plain, "b01", 18) == standing_by_day(eaten, "b01", 18)
    assert plain.must(F.SOW, "b02", 1).instruction == eaten.must(F.SOW, "b02", 1).instruction
    left_out = eaten.season().learned("wallflower").left_out
    assert {left.batch for left in left_out} == {"a0", "a1", "a2"}
    assert all("mouse" in left.because for left in left_out)


def test_the_chance_it_is_alive_rests_on_the_last_look_not_on_today() -> None:
    """Median 10 d, sigma 0.30, nothing on day 12, seen on day 16: 0.7097 (reference check T28)."""
    year = Year()
    year.sown("b01", 0, "tenbell")
    year.on(12, Kind.LOOKED, "b01")
    figures = year.must(F.LOOK, "b01", 16).why.figures
    assert any("71% chance it is alive" in figure for figure in figures)
    year.on(16, Kind.LOOKED, "b01")
    figures = year.must(F.LOOK, "b01", 17).why.figures
    assert any("35% chance it is alive" in figure for figure in figures)  # 0.3453, same table


def test_late_and_resowing_come_on_the_days_of_the_closed_form() -> None:
    """Median 10 d, sigma 0.30: late at 14.69 d, given up at 17.76 d (reference checks T20-T28)."""
    year = Year()
    year.sown("b01", 0, "tenbell")
    assert year.must(F.LOOK, "b01", 14).standing is S.DUE
    assert year.must(F.LOOK, "b01", 15).standing is S.LATE
    assert year.task(F.RESOW, "b01", 17) is None
    assert "give it up" in year.must(F.RESOW, "b01", 18).instruction


@pytest.mark.parametrize("looked", [None, 5, 12])
def test_nothing_is_called_dead_that_nobody_has_looked_at(looked: int | None) -> None:
    """Seen on day 12 it is alive with 0.7097 on any later day (reference check T28)."""
    year = Year()
    year.sown("b01", 0, "tenbell")
    if looked is not None:
        year.on(looked, Kind.LOOKED, "b01")
    unseen = year.must(F.RESOW, "b01", 25)
    assert unseen.instruction.startswith("Look; if nothing is up, decide: re-sow")
    assert unseen.why.rule.startswith("with nothing up at a look today")
    if looked == 12:
        assert any("71% chance it is alive" in figure for figure in unseen.why.figures)
    year.on(25, Kind.LOOKED, "b01")
    seen = year.must(F.RESOW, "b01", 25)
    assert seen.instruction.startswith("Decide: re-sow")
    assert seen.why.rule == "the chance that it is alive has fallen to one in five"
    assert any("1% chance it is alive" in figure for figure in seen.why.figures)


def test_the_chance_within_the_week_is_told_with_the_look() -> None:
    """Nothing by day 14: 0.5411 alive, up within seven more days 0.5135 (checks T22 and T27)."""
    year = Year()
    year.sown("b01", 0, "tenbell")
    year.on(14, Kind.LOOKED, "b01")
    waiting = forecast_of(year, 14)
    assert waiting.alive == pytest.approx(0.5411, abs=5e-5)
    assert waiting.up_soon == pytest.approx(0.5135, abs=5e-5)
    figures = year.must(F.LOOK, "b01", 15).why.figures
    # a day later, with no new look, the week ends a day later: S(14) = 0.1310 to S(22) = 0.0043
    assert (
        "nothing on Tue 15 Jun: 54% chance it is alive, 52% that it is up by Wed 23 Jun" in figures
    )


def forecast_of(year: Year, day: int) -> Waiting:
    season = year.season()
    batch = season.batches["b01"]
    crop = season.crop(batch.crop)
    found = forecast(season, batch, batch.main, crop, DAY + timedelta(days=day))
    assert found is not None
    return found


def test_how_the_days_since_sowing_are_known_is_counted_and_named() -> None:
    year = Year()
    year.sown("b01", 0, "tenbell", place="cool")
    for day in (0, 1, 2, 4):
        year.on(day, Kind.READING, "cool", min_c=16.0, max_c=24.0)
    year.on(5, Kind.OUTLOOK, "", min_c=11.0, max_c=21.0)
    said = "4 days Frame C, its thermometer; 1 day Frame C, from the site's usual weather"
    waiting = forecast_of(year, 5)
    assert waiting.had == said
    assert waiting.basis.startswith("Frame C, from the") and "outlook" in waiting.basis
    assert f"since sowing: {said}" in year.must(F.LOOK, "b01", 5).why.figures
    warm = Year()
    warm.sown("b01", 0, "tenbell")
    assert forecast_of(warm, 5).had == ""  # a thermostat: known as today's is


# how many, and from which packet


def planned(year: Year, crop: str, wanted: int, **figures: Figure) -> None:
    said: dict[str, Figure] = {"crop": crop, "wanted": wanted, "sow_on": DAY.isoformat()}
    year.on(-20, Kind.PLANNED, "b01", **{**said, **figures})


def test_the_number_to_sow_moves_with_own_counts() -> None:
    """40 plants at 60 % x 90 % x 90 %, nine times in ten: 95 seeds (the grower's own table)."""
    year = Year()
    planned(year, "foxglove", 40)
    assert "95 seeds" in year.must(F.SOW, "b01", 0).instruction
    year.sown("a0", -90, "foxglove", seeds=200)
    year.on(-76, Kind.FIRST_UP, "a0", count=3)
    year.on(-60, Kind.COUNTED, "a0", count=60, final=True)
    sow = year.must(F.SOW, "b01", 0)
    number = int(str(next(ask.default for ask in sow.asks if ask.into == "seeds")))
    assert number > 130  # 33 % now: (25 x 0.6 + 60) / 225, 150 on average for 40
    assert any("library 60%, yours 33% from 200 seeds" in figure for figure in sow.why.figures)


def test_a_packet_that_holds_too_little_is_named_before_sowing() -> None:
    year = Year()
    year.on(-100, Kind.PACKET, "p05", crop="foxglove", variety="", year=2027, seeds=60)
    planned(year, "foxglove", 40)
    sow = year.must(F.SOW, "b01", 0)
    assert sow.instruction.startswith("Packet p05 holds 60, 95 are needed.")
    assert "packet p05 holds 60, 95 are needed" in sow.why.figures


def test_sowing_takes_from_the_packet() -> None:
    year = Year()
    year.on(-100, Kind.PACKET, "p05", crop="foxglove", variety="", year=2027, seeds=200)
    planned(year, "foxglove", 40)
    year.take(drafts_for(year.must(F.SOW, "b01", 0), {}, year.season()), 0)
    assert year.season().packets["p05"].left == 105
    year.on(0, Kind.RESOWN, "b01", seeds=100)
    assert year.season().packets["p05"].left == 5


def test_a_packet_nobody_knows_is_refused() -> None:
    year = Year()
    planned(year, "foxglove", 40)
    with pytest.raises(InputError, match="no packet 'p99'"):
        drafts_for(year.must(F.SOW, "b01", 0), {"packet": "p99"}, year.season())


def test_a_packet_kept_by_weight_is_weighed_out() -> None:
    """Foxglove about 9,000 seeds a gram: 95 seeds are 0.011 g (seed weight, common practice)."""
    year = Year()
    year.on(-100, Kind.PACKET, "p05", crop="foxglove", variety="", year=2027, grams=0.005)
    planned(year, "foxglove", 40)
    sow = year.must(F.SOW, "b01", 0)
    assert "0.011 g of seed (about 95 seeds)" in sow.instruction
    assert "Packet p05 holds 0.005 g, about 45, 95 are needed." in sow.instruction


WARNED = [
    ("leek", {"year": 2023}, "keeps about 2 years", "Knott 1997: leek 2 years"),
    ("lettuce", {"year": 2027, "germination": 0.55}, "below 60 %", "below 60 %: thicker (read)"),
    (
        "lettuce",
        {"year": 2027, "germination": 0.45},
        "better buy new",
        "below 50 %: discard (read)",
    ),
]


@pytest.mark.parametrize(
    ("crop", "figures", "words"),
    [(crop, figures, words) for crop, figures, words, _ in WARNED],
    ids=[source for *_, source in WARNED],
)
def test_old_and_poor_seed_is_warned_of_at_the_task(
    crop: str, figures: dict[str, Figure], words: str
) -> None:
    year = Year()
    said: dict[str, Figure] = {"crop": crop, "variety": "", "seeds": 5000, **figures}
    year.on(-100, Kind.PACKET, "p05", **said)
    planned(year, crop, 40)
    assert words in year.must(F.SOW, "b01", 0).instruction


def test_a_small_test_is_not_trusted() -> None:
    """8 of 10 could be anything from 49 to 94 % (Wilson; Oregon State University's home test)."""
    year = Year()
    year.on(
        -100, Kind.PACKET, "p05",
        crop="foxglove", variety="", year=2027, seeds=900, germination=0.8, tested=10,
    )  # fmt: skip
    planned(year, "foxglove", 40)
    sow = year.must(F.SOW, "b01", 0)
    assert any("8 of 10 up could be anything from 49 to 94 %" in f for f in sow.why.figures)


def test_sealed_seed_of_a_known_species_ages_by_the_viability_equation() -> None:
    """Onion KE 6.975, CW 3.47, CH 0.04, CQ 0.000428 (Ellis & Roberts 1981): by hand below."""
    year = Year()
    year.on(
        -100, Kind.PACKET, "p05",
        crop="onion", variety="", year=2017, seeds=9000, germination=0.9, storage="sealed jar",
    )  # fmt: skip
    planned(year, "onion", 40)
    words = [f for f in year.must(F.SOW, "b01", 0).why.figures if "packet p05 is 10 years" in f]
    # log10 sigma = 6.975 - 3.47 log10 6 - 0.04 x 18 - 0.000428 x 18^2 = 3.416: 2606 days;
    # 1.2816 - 3652.5 / 2606 = -0.120 deviates: 45 %
    assert len(words) == 1
    assert "90% falls to about 45%" in words[0]


def test_saving_and_packing_seed_puts_a_packet_on_the_books() -> None:
    year = Year()
    year.sown("b01", -150, "foxglove", variety="Speckle")
    for day, kind in ((-130, Kind.FIRST_UP), (-100, Kind.PLANTED_OUT), (-40, Kind.FIRST_FLOWER)):
        year.on(day, kind, "b01")
    year.on(-10, Kind.GOING_OVER, "b01")
    year.on(-1, Kind.SEED_RIPE, "b01")
    save = year.must(F.SAVE_SEED, "b01", 0)
    year.take(drafts_for(save, {"packet": "own foxglove"}, year.season()), 0)
    packet = year.season().packets["own foxglove"]
    assert (packet.crop, packet.variety, packet.year, packet.saved) == (
        "foxglove", "Speckle", 2027, True,
    )  # fmt: skip
    pack = year.must(F.PACK_SEED, "b01", 7)
    answers = {"grams": "1.5", "storage": "sealed jar"}
    year.take(drafts_for(pack, answers, year.season()), 7)
    packet = year.season().packets["own foxglove"]
    assert (packet.grams, packet.storage, packet.year, packet.saved) == (
        1.5, "sealed jar", 2027, True,
    )  # fmt: skip


def test_saved_seed_does_not_take_the_name_of_another_packet() -> None:
    year = Year()
    year.on(-150, Kind.PACKET, "p05", crop="leek", variety="Rung")
    year.sown("b01", -150, "foxglove", variety="Speckle")
    for day, kind in ((-130, Kind.FIRST_UP), (-40, Kind.FIRST_FLOWER), (-10, Kind.GOING_OVER)):
        year.on(day, kind, "b01")
    year.on(-1, Kind.SEED_RIPE, "b01")
    save = year.must(F.SAVE_SEED, "b01", 0)
    with pytest.raises(InputError, match="'p05' is leek 'Rung' already"):
        drafts_for(save, {"packet": "p05"}, year.season())


# too few come up


def coming_up(year: Year, crop: str, up: int, wanted: int = 40, begun: int = 0) -> None:
    year.sown("b01", begun, crop, wanted=wanted)
    year.on(begun + 8, Kind.LOOKED, "b01")
    year.on(begun + 9, Kind.FIRST_UP, "b01", count=1)
    year.on(begun + 15, Kind.COUNTED, "b01", count=up)


def test_a_good_count_says_what_to_expect_and_asks_for_no_more() -> None:
    year = Year()
    coming_up(year, "tenbell", 60)
    look = year.must(F.LOOK, "b01", 16)
    assert re.search("60 up of 80, about 6[0-6] in the end", look.instruction)
    assert year.task(F.RESOW, "b01", 16) is None


def test_a_poor_count_asks_for_more_and_says_when_it_would_be_ready() -> None:
    year = Year()
    coming_up(year, "cosmos", 8, wanted=30)
    more = year.must(F.RESOW, "b01", 16)
    assert "more seeds now" in more.instruction
    assert "ready to plant about" in more.instruction
    assert any("30 are wanted" in figure for figure in more.why.figures)
    assert more.ticks[0].kind is Kind.RESOWN
    year.take(drafts_for(more, {}, year.season()), 16)
    assert year.task(F.RESOW, "b01", 17) is None


def test_half_of_two_thousand_seeds_sold_as_sure_does_not_stop_the_round() -> None:
    year = Year()
    year.on(-20, Kind.PACKET, "p9", crop="foxglove", seeds=5000, germination=1.0)
    year.sown("b9", 0, "foxglove", seeds=2000, packet="p9")
    year.on(3, Kind.LOOKED, "b9")
    year.on(4, Kind.FIRST_UP, "b9", count=3)
    year.on(11, Kind.COUNTED, "b9", count=1000)
    assert "1000 up of 2000, about 1000 in the end" in year.must(F.LOOK, "b9", 12).instruction


def test_after_the_window_sowing_more_no_longer_helps() -> None:
    """Wallflower: sown to 10 July at 50 to 55 N for next year (magazine months, days ours)."""
    year = Year()
    coming_up(year, "wallflower", 8, begun=35)
    assert year.task(F.RESOW, "b01", 51) is None
    dead = Year()
    dead.sown("b01", 35, "wallflower")
    give_up = dead.must(F.RESOW, "b01", 60)
    assert "re-sowing no longer helps" in give_up.instruction
    assert give_up.ticks[0].kind is Kind.LOST
    dead.take(drafts_for(give_up, {"cause": "old seed"}, dead.season()), 60)
    assert dead.season().batches["b01"].ended


@settings(deadline=None, max_examples=40)
@given(up=st.integers(1, 79), more=st.integers(0, 20))
def test_more_seedlings_never_promise_fewer(up: int, more: int) -> None:
    """Property: a higher count on the same day never lowers what is expected in the end."""

    def final(count: int) -> float:
        year = Year()
        coming_up(year, "tenbell", count)
        look = year.must(F.LOOK, "b01", 16)
        words = next(f for f in look.why.figures if "in the end" in f)
        return float(words.split("about ")[1].split(" ")[0])

    assert up <= final(up) <= final(min(79, up + more)) <= 80


# stalls


def test_heat_is_named_with_what_to_do() -> None:
    """Lettuce does not come up above about 29 C; shade or an evening sowing helps (trade)."""
    year = Year()
    year.place("hot", name="Hot bench", kind="propagator", set_c=33.0, order=4)
    year.sown("b01", 0, "lettuce", place="hot")
    look = year.must(F.LOOK, "b01", 7)
    assert look.standing is S.LATE
    assert "stalled by heat: 33 C" in look.instruction
    assert "ove to Warm box" in look.instruction or "ove to Frame C" in look.instruction
    assert "re-sow in the evening" in look.instruction


def test_cold_is_named_with_where_to_go_or_until_when_to_wait() -> None:
    year = Year()
    year.place("shed", name="Cold shed", kind="windowsill", set_c=4.0, order=4)
    year.sown("b01", 0, "cosmos", place="shed")
    look = year.must(F.LOOK, "b01", 10)
    assert "stalled by cold: 4 C" in look.instruction
    assert "move to Warm box, or wait" in look.instruction
    year.sown("b02", -190, "cosmos", place="bed")
    winter = year.must(F.LOOK, "b02", -150)
    assert "stalled by cold" in winter.instruction
    assert "wait: " in winter.instruction or "wait for warmth" in winter.instruction


def test_seed_that_is_not_soaked_yet_is_sown_after_the_soaking() -> None:
    """Lupins are soaked the evening before they are sown (common practice, no source)."""
    year = Year()
    day = (DAY + timedelta(days=5)).isoformat()
    year.on(0, Kind.PLANNED, "b01", crop="lupin", place="cool", wanted=12, sow_on=day)
    year.on(0, Kind.PLANNED, "b02", crop="cosmos", place="cool", wanted=12, sow_on=day)
    assert year.must(F.SOW, "b01", 5).slot is Slot.EVENING
    assert year.must(F.SOW, "b02", 5).slot is Slot.MORNING
    year.on(5, Kind.SOAKED, "b01", seeds=16)
    assert year.must(F.SOW, "b01", 6).slot is Slot.MORNING


def test_seed_is_fetched_from_the_cold_before_it_is_sown() -> None:
    year = Year()
    year.place("fridge", name="Fridge", kind="fridge", order=9)
    year.on(-60, Kind.PLANNED, "b01", crop="aquilegia", place="warm", wanted=12)
    year.on(-50, Kind.CHILLED, "b01", days=42, place="fridge")
    order = [task.family for task in build_round(year.season(), DAY).tasks if task.about == "b01"]
    assert order.index(F.CHILL) < order.index(F.SOW)
