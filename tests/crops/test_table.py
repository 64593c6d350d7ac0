"""Crop tables: every fault at once, with file, key, value and what is allowed."""

import copy
import tomllib
from typing import Any

import pytest

from benchround.core.crop.crop import (
    Anchor,
    Covering,
    Crop,
    Edge,
    Hardening,
    Hardiness,
    Light,
    PlantClass,
    Raising,
)
from benchround.core.crop.keys import SECTIONS
from benchround.core.crop.schema import Form, defaults
from benchround.core.crop.table import (
    Fault,
    crop_from_table,
    faults_in_table,
    table_from_crop,
)
from benchround.core.crop.value import UnfitValue, value_of
from benchround.core.errors import CropFileError
from tests.crops.published import KEYS, crop

SEA_KALE = tomllib.loads("""
name = "Sea kale"
latin = "Crambe maritima"
class = "vegetable"
hardiness = "hardy"
raising = "pots"
hazards = ["pets"]

[germination]
base_c = 4
optimum_c = 18
ceiling_c = 27
days_first = 14
days_last = 40
at_c = 15
light = "dark"

[[windows]]
name = "under cover in spring"
opens = "last frost -70"
closes = "soil warming 9 +0"

[hardening]

[sources]
"germination.days_first" = "the packet (read)"
""")

BROKEN = tomllib.loads("""
latin = ""
class = "shrub"
hardiness = 3
raising = "cells"
hazards = ["poison", "thorns"]
synonyms = "bramble"
colour = "red"

[germination]
base_c = "warm"
optimum_c = nan
ceiling_c = inf
days_first = 40
days_last = 14
at_c = 15
share = 85
light = true

[[windows]]
name = "spring"
opens = "1 April"
closes = "last frost"

[[windows]]
opens = "midsummer +19"
closes = "midsummer -37"
name = "summer"
where = "indoors"

[growing]
per_cell = 1.5
keep_per_cell = 4
pinch_pairs = true
prick_outt = true

[planting]
from_sowing_days = [42, 28]
depth = "line\\nbreak"

[planting.window]
name = "autumn"

[hardening]
days = 6

[cropping]
from_planting_days = 30

[sources]
germinaton = "packet"
default = 7
""")


def _changed(table: dict[str, Any], dotted: str, value: object) -> dict[str, Any]:
    changed = copy.deepcopy(table)
    place: Any = changed
    *way, last = dotted.split(".")
    for step in way:
        place = place.setdefault(step, {})
    place[last] = value
    return changed


def test_a_good_table_becomes_the_records_with_their_own_types() -> None:
    one = crop_from_table("sea-kale", SEA_KALE)
    assert (one.key, one.name) == ("sea-kale", "Sea kale")
    assert one.plant_class is PlantClass.VEGETABLE
    assert one.hardiness is Hardiness.HARDY
    assert one.raising is Raising.POTS
    assert one.germination is not None
    assert one.germination.light is Light.DARK
    assert one.germination.covering is Covering.COMPOST
    assert one.windows[0].closes == Edge(Anchor.SOIL_WARMING, 0, 9.0)
    assert one.hardening == Hardening()
    assert one.flowering is None
    assert one.source("germination.days_first") == "the packet (read)"


EXPECTED = {
    "bramble.name": None,
    "bramble.latin": "",
    "bramble.class": "shrub",
    "bramble.hardiness": 3,
    "bramble.hazards": ["poison", "thorns"],
    "bramble.synonyms": "bramble",
    "bramble.colour": "red",
    "bramble.germination.base_c": "warm",
    "bramble.germination.ceiling_c": float("inf"),
    "bramble.germination.share": 85,
    "bramble.germination.light": True,
    "bramble.germination.days_last": 14.0,
    "bramble.windows.1.opens": "1 April",
    "bramble.windows.1.closes": "last frost",
    "bramble.windows.2.where": "indoors",
    "bramble.windows.2.closes": "-37",
    "bramble.growing.per_cell": 1.5,
    "bramble.growing.pinch_pairs": True,
    "bramble.growing.prick_outt": True,
    "bramble.planting.from_sowing_days": [42, 28],
    "bramble.planting.depth": "line\nbreak",
    "bramble.planting.window.opens": None,
    "bramble.planting.window.closes": None,
    "bramble.hardening.days": 6,
    "bramble.cropping.from_planting_days": 30,
    "bramble.sources.germinaton": "packet",
    "bramble.sources.default": 7,
}


def test_every_fault_of_a_broken_table_is_told_at_once() -> None:
    faults = faults_in_table("bramble", BROKEN, "hedge.toml")
    found = {fault.key: fault.value for fault in faults}
    nan = found.pop("bramble.germination.optimum_c")
    assert isinstance(nan, float) and nan != nan
    assert found == EXPECTED
    assert len(faults) == len(EXPECTED) + 1
    assert {fault.file for fault in faults} == {"hedge.toml"}
    assert all(fault.allowed for fault in faults)


def test_the_message_names_file_key_value_and_what_is_allowed() -> None:
    with pytest.raises(CropFileError) as caught:
        crop_from_table("bramble", BROKEN, "hedge.toml")
    lines = str(caught.value).splitlines()
    assert lines[0].startswith(f"{len(lines) - 1} faults")
    for wanted in (
        "  hedge.toml: bramble.name is missing; allowed: text of 1 to 80 letters on one line",
        "  hedge.toml: bramble.germination.base_c is 'warm';"
        " allowed: a number from -5 to 20 degrees C",
        "  hedge.toml: bramble.growing.prick_outt is True;"
        " allowed: no such key here, the nearest is prick_out",
        "  hedge.toml: bramble.sources.germinaton is 'packet';"
        " allowed: no such key here, the nearest is germination",
        "  hedge.toml: bramble.hardening.days is 6.0;"
        " allowed: not below hardening.least_days, which is 18",
    ):
        assert wanted in lines
    assert any("bramble.class is 'shrub'; allowed: one of: hardy annual," in line for line in lines)
    assert any("windows.1.opens" in line and "'last frost -28'" in line for line in lines)


@pytest.mark.parametrize(
    ("dotted", "value", "fault_at"),
    [
        ("germination.base_c", 18, "germination.optimum_c germination.at_c"),
        ("germination.optimum_c", 27.5, "germination.ceiling_c"),
        ("germination.at_c", 27, "germination.ceiling_c"),
        ("germination.base_c", 15, "germination.at_c"),
        ("germination.days_first", 41, "germination.days_last"),
        ("growing.keep_per_cell", 2, "growing.per_cell"),
        ("hardening.days", 17, "hardening.days"),
        ("hardening.least_days", 19, "hardening.days"),
        ("growing", {"thin_to_mm": 50, "thin_first_mm": 60}, "growing.thin_to_mm"),
        ("raising", "bulb", "germination"),
    ],
)
def test_figures_that_cannot_stand_together(dotted: str, value: object, fault_at: str) -> None:
    faults = faults_in_table("sea-kale", _changed(SEA_KALE, dotted, value))
    assert [fault.key for fault in faults] == [f"sea-kale.{key}" for key in fault_at.split()]


def test_seed_without_germination_is_a_fault_unless_nobody_knows_the_plant() -> None:
    bare = {name: value for name, value in SEA_KALE.items() if name != "germination"}
    assert [fault.key for fault in faults_in_table("sea-kale", bare)] == ["sea-kale.germination"]
    assert not faults_in_table("mystery", {**bare, "class": "unknown"})
    assert not faults_in_table("squill", {**bare, "class": "bulb", "raising": "bulb"})


@pytest.mark.parametrize("key", ["", "Sea Kale", "sea_kale", "-kale", "kale-", "a" * 41, "kale\n"])
def test_a_key_of_another_form_is_a_fault(key: str) -> None:
    faults = faults_in_table(key, SEA_KALE, "mine.toml")
    assert [fault.value for fault in faults] == [key]
    assert "\n" not in str(faults[0])


@pytest.mark.parametrize("value", [None, 3, "text", [], [1], True])
@pytest.mark.parametrize(
    "dotted", ["germination", "growing", "planting.window", "windows", "sources", "treatments"]
)
def test_another_thing_where_a_table_should_be(dotted: str, value: object) -> None:
    faults = faults_in_table("sea-kale", _changed(SEA_KALE, dotted, value))
    if value == [] and dotted in ("windows", "treatments"):
        assert faults == ()
    else:
        assert faults and all(fault.key.startswith(f"sea-kale.{dotted}") for fault in faults)


def test_a_fault_is_one_short_line_whatever_stands_there() -> None:
    fault = Fault("a\x1b[31m.toml", "k\n" * 100, "v" * 1000, "anything")
    assert len(str(fault)) < 220
    assert str(fault).isprintable()
    assert "more than 60 digits" in str(Fault("", "k", 10**5000, "less"))


ALL_KEYS = {section.dotted(key.name): key for section in SECTIONS for key in section.keys}
NUMBERS = [name for name, key in ALL_KEYS.items() if key.form in (Form.WHOLE, Form.NUMBER)]


@pytest.mark.parametrize("dotted", ALL_KEYS)
def test_no_key_takes_what_is_not_of_its_form(dotted: str) -> None:
    key = ALL_KEYS[dotted]
    wrong: list[object] = [float("nan"), float("inf"), 10**400, "\x1b[2J", {}, [[]], None, b"x"]
    if key.form is not Form.YES_NO:
        wrong += [True, False]
    for value in wrong:
        with pytest.raises(UnfitValue):
            value_of(key, value)


@pytest.mark.parametrize("dotted", NUMBERS)
def test_ranges_hold_at_both_ends(dotted: str) -> None:
    key = ALL_KEYS[dotted]
    assert value_of(key, key.low) == key.low
    assert value_of(key, key.high) == key.high
    for outside in (key.low - 1, key.high + 1):
        with pytest.raises(UnfitValue):
            value_of(key, outside)


def test_every_default_may_stand_in_a_table() -> None:
    for section in SECTIONS:
        for key in section.keys:
            default = defaults(section).get(key.name)
            if key.form in (Form.WHOLE, Form.NUMBER) and default is not None:
                assert value_of(key, default) == default


@pytest.mark.parametrize("key", KEYS)
def test_a_crop_written_as_a_table_reads_back_the_same(key: str) -> None:
    one: Crop = crop(key)
    assert crop_from_table(key, table_from_crop(one)) == one
