"""Cautions against the trade's table of 57 hazards (tests/data/cautions.csv).

Each row of the table carries its own source and whether that was read; the case id repeats the
row's number. Rules the table does not settle are checked as our own.
"""

from __future__ import annotations

import csv
import re
from dataclasses import replace
from datetime import date, timedelta
from itertools import product
from pathlib import Path
from typing import Any

import pytest

from benchround.core.caution.due import (
    CAUTIONS,
    Caution,
    Page,
    Repeat,
    Severity,
    Work,
    blocks,
    cautions_for,
    closing_cautions,
    crop_cautions,
    read_key,
    setup_cautions,
    to_show,
)
from benchround.core.caution.kind import WORST_FIRST
from benchround.core.caution.page import cautions_page
from benchround.core.crop.crop import Crop, Hardiness, PlantClass, Raising, Treatment
from benchround.core.record import Cause, Kind
from benchround.core.site import Place, PlaceKind, Site
from benchround.core.sky.weather import DayWeather
from benchround.core.task import Family

HERE = Path(__file__).parents[2]
with (HERE / "data" / "cautions.csv").open(newline="") as file:
    TABLE = {row["id"]: row for row in csv.DictReader(file)}

DAY = date(2025, 5, 27)
SUN = DayWeather(DAY, 8, 23, sun_h=13)
DULL = DayWeather(DAY, 8, 14, sun_h=1)
GALE = DayWeather(DAY, 8, 16, sun_h=2, gust_kmh=66)
HOT = DayWeather(DAY, 16, 31, sun_h=14)
FROST = DayWeather(DAY, -2, 8, sun_h=5)
PLAIN, FAMILY_HOME = Site(), Site(children=True, pets=True)
GLASS = Place("A", "Frame A", PlaceKind.FRAME, 1, glazing="glass", size_m=(1.8, 0.9))
TWIN_WALL = replace(GLASS, code="B", glazing="twin-wall")
HEATED = Place("P", "Propagator", PlaceKind.PROPAGATOR, 2, heated=True)
STOVE = replace(GLASS, code="S", fuel_heater=True)
FRIDGE = Place("F", "Fridge box", PlaceKind.FRIDGE, 3)
BED = Place("1", "Bed 1", PlaceKind.BED, 4)


def a_crop(latin: str, *hazards: str, kind: PlantClass = PlantClass.HARDY_ANNUAL) -> Crop:
    return Crop(
        latin.lower().replace(" ", "-"),
        latin,
        latin,
        kind,
        Hardiness.HARDY,
        Raising.TRAY,
        hazards=hazards,
    )


PLANTS = {
    "C14": a_crop("Digitalis purpurea"),
    "C15": a_crop("Aconitum napellus"),
    "C16": a_crop("Consolida ajacis"),
    "C17": a_crop("Ricinus communis"),
    "C18": a_crop("Lupinus polyphyllus"),
    "C19": a_crop("Lathyrus odoratus"),
    "C20": a_crop("Laburnum anagyroides"),
    "C21": a_crop("Tulipa gesneriana", kind=PlantClass.BULB),
    "C22": a_crop("Datura metel"),
    "C23": a_crop("Euphorbia oblongata"),
    "C24": a_crop("Ammi majus"),
    "C25": a_crop("Primula obconica"),
    "C28": a_crop("Cucurbita pepo", kind=PlantClass.VEGETABLE),
    "C53": a_crop("Impatiens glandulifera", "invasive"),
}
COSMOS = a_crop("Cosmos bipinnatus")
LETTUCE = a_crop("Lactuca sativa", kind=PlantClass.VEGETABLE)


def at(family: Family, crop: Crop | None = COSMOS, **told: Any) -> tuple[str, ...]:
    place: Place | None = told.pop("place", None)
    weather: DayWeather | None = told.pop("weather", DULL)
    site: Site = told.pop("site", PLAIN)
    return cautions_for(Work(family, crop, place, weather, site, **told))


# what the table says


def test_the_57_rows_each_have_a_caution_of_the_same_group() -> None:
    assert {key: row["group"] for key, row in TABLE.items()} == {
        key: caution.group for key, caution in CAUTIONS.items()
    }
    assert list(CAUTIONS) == [f"C{n:02}" for n in range(1, 58)]


@pytest.mark.parametrize("row", TABLE.values(), ids=lambda row: f"{row['id']} {row['status']}")
def test_no_caution_is_milder_than_its_row(row: dict[str, str]) -> None:
    ours, theirs = CAUTIONS[row["id"]].severity, Severity(row["severity"])
    assert WORST_FIRST.index(ours) <= WORST_FIRST.index(theirs)


TABLE_REPEATS = {
    "first of day": Repeat.FIRST_OF_DAY,
    "heat days": Repeat.FIRST_OF_DAY,
    "every time": Repeat.EVERY_TIME,
    "first time per crop": Repeat.PER_CROP,
    "first use, then yearly": Repeat.YEARLY,
    "at setup and first use, then yearly": Repeat.YEARLY,
    "at setup": Repeat.AT_SETUP,
    "first run and footer": Repeat.AT_SETUP,
    "always on crop page": Repeat.CROP_PAGE,
    "crop page only": Repeat.CROP_PAGE,
}


@pytest.mark.parametrize("row", TABLE.values(), ids=lambda row: f"{row['id']} {row['status']}")
def test_each_is_repeated_as_its_row_asks(row: dict[str, str]) -> None:
    words = max((w for w in TABLE_REPEATS if row["repeat"].startswith(w)), key=len)
    assert CAUTIONS[row["id"]].repeat is TABLE_REPEATS[words]


def test_every_caution_is_reached_from_a_task_or_a_named_page() -> None:
    chipped = replace(COSMOS, key="chipped", treatments=(Treatment("chip"),))
    crops = (None, COSMOS, chipped, *PLANTS.values())
    places = (None, GLASS, HEATED, STOVE, FRIDGE)
    found: set[str] = set(closing_cautions(Family))
    for family, crop, place, weather in product(Family, crops, places, (GALE, HOT, FROST, None)):
        for cause in ("", *Cause):
            work = Work(family, crop, place, weather, FAMILY_HOME, cause=cause, sprinkled=True)
            found.update(cautions_for(work))
    found.update(*(at(Family.SOW, covering=name) for name in ("vermiculite", "perlite")))
    found.update(at(Family.WATER, site=FAMILY_HOME, bottom_watering=True))
    found.update(at(Family.SOW, treated=True))
    found.update(*(setup_cautions(page, GLASS) for page in Page))
    found.update(*(crop_cautions(crop) for crop in PLANTS.values()))
    assert set(TABLE) - found == set()


# the words


@pytest.mark.parametrize("caution", CAUTIONS.values(), ids=lambda caution: caution.id)
def test_words_are_short_and_hold_no_dose_and_no_brand(caution: Caution) -> None:
    said = f"{caution.short}. {caution.full}"
    assert 10 < len(caution.short) <= 60
    assert 1 <= len(re.findall(r"[.!?](?:\s|$)", caution.full)) <= 3
    assert not re.search(r"\d\s*(ml|l|g|kg|%|percent|drops?|spoons?|to \d)(?![a-z])", said)
    inner = re.findall(r"(?<=[a-z,] )[A-Z][A-Za-z]+", said)
    known = {"Legionella", "Euphorbia", "Great", "Britain", "NOT", "FOOD", "RCD"}
    assert set(inner) <= known


@pytest.mark.parametrize("caution", CAUTIONS.values(), ids=lambda caution: caution.id)
def test_every_source_says_how_it_is_known(caution: Caution) -> None:
    assert re.search(r"\(read|from memory|our own", caution.source)
    if TABLE[caution.id]["status"].startswith("from memory"):
        assert "from memory" in caution.source


@pytest.mark.parametrize(
    ("caution", "word"),
    [
        ("C13", "poison line"),
        ("C31", "label"),
        ("C33", "label"),
        ("C36", "label"),
        ("C44", "local code"),
        ("C44", "licensed"),
        ("C53", "authority"),
    ],
)
def test_they_defer_to_label_law_trade_and_poison_line(caution: str, word: str) -> None:
    assert word in CAUTIONS[caution].full


def test_the_page_in_docs_is_up_to_date() -> None:
    """Regression: write docs/cautions.md anew from cautions_page() when the texts change."""
    page = (HERE.parent / "docs" / "cautions.md").read_text(encoding="utf-8")
    assert page == cautions_page()
    assert all(f"### {key} " in page for key in TABLE)


# what sets them off: the table's column trigger, by row


@pytest.mark.parametrize(
    ("caution", "families"),
    [
        ("C14", (Family.SOW, Family.PRICK_OUT, Family.SAVE_SEED, Family.MARK_SEED)),
        ("C15", tuple(Family)),
        ("C16", (Family.SOW, Family.THIN, Family.PRICK_OUT, Family.SAVE_SEED)),
        ("C17", (Family.SOW, Family.SAVE_SEED)),
        ("C18", (Family.SOW, Family.SOAK, Family.SAVE_SEED)),
        ("C19", (Family.SOW, Family.SOAK, Family.PICK, Family.SAVE_SEED)),
        ("C20", (Family.SAVE_SEED,)),
        ("C21", (Family.BULBS,)),
        ("C22", (Family.SAVE_SEED,)),
        ("C23", tuple(Family)),
        ("C28", (Family.SAVE_SEED,)),
        ("C53", (Family.SOW, Family.CLEAR)),
    ],
)
def test_a_plant_brings_its_caution_by_its_latin_name(
    caution: str, families: tuple[Family, ...]
) -> None:
    for family in families:
        assert caution in at(family, PLANTS[caution])
        assert set(at(family, LETTUCE)).isdisjoint(PLANTS.keys() - {"C21"})
    assert caution in crop_cautions(PLANTS[caution])


def test_delphinium_and_a_hybrid_sign_are_known_too() -> None:
    assert "C16" in at(Family.PRICK_OUT, a_crop("Delphinium elatum"))
    assert "C14" in at(Family.SOW, a_crop("× Digitalis mertonensis"))  # noqa: RUF001
    assert crop_cautions(a_crop("Papaver rhoeas")) == ()
    assert "C22" in crop_cautions(a_crop("Papaver somniferum"))


def test_a_plant_known_only_by_its_hazards_gets_the_general_cautions() -> None:
    poison, deadly = a_crop("Nova planta", "poison"), a_crop("Nova planta", "deadly")
    assert "C13" in at(Family.SOW, poison)
    assert "C22" in at(Family.SAVE_SEED, poison)
    assert "C13" in at(Family.PLANT_OUT, deadly)
    assert "C13" not in at(Family.PLANT_OUT, poison)
    assert blocks("C13", deadly)
    assert not blocks("C13", poison)


def test_sweet_potato_is_food_but_morning_glory_is_not() -> None:
    batatas = a_crop("Ipomoea batatas", kind=PlantClass.VEGETABLE)
    assert crop_cautions(batatas) == ()
    assert {"C13", "C22", "C52"} <= set(crop_cautions(a_crop("Ipomoea tricolor")))


@pytest.mark.parametrize(
    ("weather", "burns"),
    [
        (SUN, True),
        (DULL, False),
        (DayWeather(DAY, 10, 20, sun_h=0), True),
        (DayWeather(DAY, 2, 12, sun_h=4), True),
        (DayWeather(DAY, 2, 12), True),
        (DayWeather(DAY, 2, 12, sun_h=0, basis="usual"), True),
        (None, True),
    ],
    ids=["sun", "dull", "warm and dull", "cool sun", "sun unknown", "only usual", "no weather"],
)
def test_ammi_in_sun(weather: DayWeather | None, burns: bool) -> None:
    for family in (Family.THIN, Family.DEADHEAD, Family.SUPPORT, Family.CLEAR, Family.PICK):
        assert ("C24" in at(family, PLANTS["C24"], weather=weather)) is burns
    assert "C24" in at(Family.SUPPORT, a_crop("Nova planta", "phototoxic"), weather=SUN)
    assert "C24" not in at(Family.SUPPORT, COSMOS, weather=SUN)


def test_glass_lids_and_gusts() -> None:
    assert "C38" in at(Family.LIDS, None, place=GLASS)
    assert "C38" not in at(Family.LIDS, None, place=TWIN_WALL)
    assert "C38" not in at(Family.WATER, place=GLASS)
    assert "C40" in at(Family.LIDS, None, place=TWIN_WALL, weather=GALE)
    assert "C40" in at(Family.STRAP, None, weather=replace(DULL, gust_kmh=40))
    assert "C40" not in at(Family.LIDS, None, place=GLASS, weather=replace(DULL, gust_kmh=39))
    assert "C40" not in at(Family.SOW, place=GLASS, weather=GALE)


def test_water_trays_where_children_live() -> None:
    assert at(Family.WATER, site=FAMILY_HOME, bottom_watering=True)[0] == "C50"
    assert "C50" not in at(Family.WATER, site=FAMILY_HOME)
    assert "C50" not in at(Family.WATER, bottom_watering=True)
    assert "C51" in at(Family.SOAK, PLANTS["C18"], site=FAMILY_HOME)
    assert "C51" not in at(Family.SOAK, COSMOS, site=FAMILY_HOME)


@pytest.mark.parametrize(
    ("caution", "family", "told", "without"),
    [
        ("C01", Family.SOW, {}, {"place": BED}),  # soil of a bed is not out of a bag
        ("C01", Family.POT_ON, {}, None),
        ("C02", Family.SOW, {"place": HEATED}, {"place": BED}),
        ("C07", Family.SOW, {"covering": "vermiculite"}, {"covering": "grit"}),
        ("C09", Family.WATER, {"weather": HOT}, {}),
        ("C10", Family.WATER, {"sprinkled": True}, {}),
        ("C11", Family.PESTS, {"cause": "mouse"}, {"cause": "slug"}),
        ("C26", Family.RELABEL, {}, None),
        ("C26", Family.PRICK_OUT, {"mixed_with_edible": True}, {}),
        ("C27", Family.CHILL, {"place": FRIDGE}, None),
        ("C29", Family.SOW, {"treated": True}, {}),
        ("C30", Family.PACK_SEED, {}, None),
        ("C33", Family.FEED, {}, None),
        ("C34", Family.LOOK, {"cause": Cause.SLUG}, {}),
        ("C35", Family.PESTS, {"cause": Cause.MOUSE}, {}),
        ("C36", Family.WASH, {}, None),
        ("C41", Family.THERMOMETER, {"weather": FROST}, {}),
        ("C42", Family.SUPPORT, {}, None),
        ("C43", Family.POT_ON, {"trays": 6}, {"trays": 5}),
        ("C44", Family.WATER, {"place": HEATED}, {"place": GLASS}),
        ("C45", Family.UNCOVER, {"place": HEATED}, {"place": GLASS}),
        ("C46", Family.FLEECE, {"place": STOVE}, {"place": GLASS}),
        ("C47", Family.WATER, {"weather": HOT}, {"weather": SUN}),
        ("C49", Family.SOAK, {}, None),
        ("C57", Family.LOOK, {"cause": Cause.DAMPING_OFF}, {"cause": Cause.FROSTED}),
    ],
)
def test_work_place_and_sky_set_theirs_off(
    caution: str, family: Family, told: dict[str, Any], without: dict[str, Any] | None
) -> None:
    assert caution in at(family, **told)
    if without is not None:
        assert caution not in at(family, **without)


def test_pages_outside_the_round() -> None:
    assert {"C38", "C39"} <= set(setup_cautions(Page.PLACE, GLASS))
    assert "C44" in setup_cautions(Page.PLACE, HEATED)
    assert setup_cautions(Page.PLACE, STOVE)[:1] == ("C46",)
    assert closing_cautions([Family.LIDS, Family.SOW]) == ("C03",)
    assert closing_cautions([Family.LIDS, Family.COUNT]) == ()
    assert closing_cautions([Family.LIDS], [Kind.POTTED_ON]) == ("C03",)
    assert closing_cautions([], [Kind.COUNTED]) == ()


def test_an_unknown_tray_is_never_eaten_from() -> None:
    unknown = a_crop("", kind=PlantClass.UNKNOWN)
    assert "C26" in at(Family.PICK, unknown)


# order, length and blocking


def test_the_deadly_come_first_then_the_worse() -> None:
    ids = at(Family.SOW, PLANTS["C15"], place=HEATED, covering="perlite", treated=True)
    assert set(ids[:2]) == {"C44", "C15"}
    ranks = [WORST_FIRST.index(CAUTIONS[key].severity) for key in ids if not blocks(key)]
    assert ranks == sorted(ranks)
    assert len(ids) == len(set(ids))


def test_castor_bean_blocks_each_day_until_read() -> None:
    ids = at(Family.SOW, PLANTS["C17"])
    assert ids[0] == "C17"
    assert blocks("C17")
    yesterday = {"C17": DAY - timedelta(days=1)}
    assert to_show(["C17"], {}, DAY, "castor-bean") == (("C17", True),)
    assert to_show(["C17"], yesterday, DAY, "castor-bean") == (("C17", True),)
    assert to_show(["C17"], {"C17": DAY}, DAY, "castor-bean") == (("C17", False),)


def test_whatever_is_very_high_blocks() -> None:
    worst = {key for key, row in TABLE.items() if row["severity"] == "very high"}
    assert {key for key in TABLE if blocks(key)} == worst | {"C15"}


@pytest.mark.parametrize(
    ("caution", "days_since", "said"),
    [
        ("C01", None, True),
        ("C01", 0, None),
        ("C01", 1, False),
        ("C01", 365, True),
        ("C15", 1, False),
        ("C15", 365, True),
        ("C23", 0, False),
        ("C42", None, True),
        ("C42", 1, False),
        ("C42", 364, False),
        ("C42", 365, True),
        ("C49", 364, None),
        ("C49", 365, True),
        ("C56", None, True),
        ("C56", 999, False),
    ],
)
def test_how_much_is_said_again(caution: str, days_since: int | None, said: bool | None) -> None:
    read = {} if days_since is None else {caution: DAY - timedelta(days=days_since)}
    assert to_show([caution], read, DAY) == (() if said is None else ((caution, said),))


def test_a_plants_caution_is_read_crop_by_crop() -> None:
    read = {read_key("C14", "foxglove"): DAY - timedelta(days=900)}
    assert list(read) == ["C14:foxglove"]
    assert to_show(["C14"], read, DAY, "foxglove") == (("C14", False),)
    assert to_show(["C14"], read, DAY, "foxglove-white") == (("C14", True),)
    assert read_key("C01", "foxglove") == "C01"


def test_a_reading_dated_after_the_round_counts_as_read() -> None:
    assert to_show(["C17", "C01"], {"C17": date.max, "C01": date.max}, DAY) == (("C17", False),)
