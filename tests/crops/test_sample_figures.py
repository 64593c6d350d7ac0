"""Regression: figures the sample season's round rests on, as its invented story was written.

They are the story's own, not published ones; changing one changes that round.
"""

from typing import Any

import pytest

from tests.crops.published import crop

FIGURES: dict[str, dict[str, object]] = {
    "cosmos": {
        "raising": "cells",
        "germination.days_first": 5,
        "germination.days_last": 8,
        "germination.at_c": 20,
        "germination.share": 0.85,
        "growing.pot_on": True,
        "growing.pot_on_days_from_up": 21,
        "growing.pinch_pairs": 3,
        "hardening.days": 18,
        "hardening.least_days": 18,
        "hardening.after_potting_days": 11,
        "flowering.deadhead_every_days": 5,
    },
    "snapdragon": {"raising": "tray", "germination.light": "light", "hardening.days": 18},
    "nicotiana": {
        "raising": "tray",
        "germination.light": "light",
        "growing.pot_on_days": 24,
        "growing.pinch_pairs": 3,
        "growing.pinch_days": 28,
        "hardening.days": 18,
        "hardening.after_potting_days": 14,
        "hardening.starts.days": -28,
    },
    "french-marigold": {"raising": "cells", "hardening.days": 18, "planting.least_night_c": 4},
    "zinnia": {
        "raising": "pots",
        "germination.at_c": 22,
        "germination.days_first": 5,
        "germination.days_last": 7,
        "growing.per_cell": 2,
        "growing.keep_per_cell": 1,
        "growing.true_leaf_days": 7,
    },
    "sweet-pea": {"flowering.deadhead": "pick", "flowering.deadhead_first_days": 2},
    "foxglove": {"flowering.deadhead": "spikes", "flowering.deadhead_first_days": 21},
    "sweet-william": {"flowering.deadhead": "spikes", "flowering.deadhead_first_days": 10},
    "honesty": {"seed.ripe_days": 60},
    "forget-me-not": {"seed.sheds_within_days": 7},
    "canterbury-bell": {
        "raising": "tray",
        "germination.covering": "none",
        "germination.base_c": 5,
        "germination.at_c": 20,
        "germination.days_first": 7,
        "germination.days_last": 9,
    },
    "wallflower": {
        "germination.at_c": 20,
        "germination.days_first": 7,
        "germination.days_last": 14,
    },
    "lettuce": {
        "raising": "cells",
        "growing.per_cell": 2,
        "growing.keep_per_cell": 1,
        "hardening.days": 4,
        "hardening.least_days": 3,
        "germination.base_c": 2,
        "germination.optimum_c": 20,
        "germination.ceiling_c": 29,
        "germination.days_first": 2.5,
        "germination.days_last": 4,
    },
    "leek": {"hardening": None, "planting.size_stem_mm": 8, "growing.feed": True},
    "beetroot": {
        "hardening.days": 7,
        "hardening.least_days": 3,
        "planting.from_sowing_days": (28, 35),
    },
    "spring-onion": {"hardening.days": 5, "hardening.least_days": 3},
    "cabbage": {
        "raising": "cells",
        "hardening.days": 6,
        "hardening.least_days": 3,
        "planting.from_sowing_days": (28, 42),
    },
    "purple-sprouting-broccoli": {
        "growing.per_cell": 2,
        "growing.keep_per_cell": 1,
        "growing.true_leaf_days": 7,
        "hardening.days": 5,
    },
    "runner-bean": {
        "hardiness": "tender",
        "hardening.days": 8,
        "hardening.least_days": 3,
        "germination.depth_mm": 50,
    },
    "ammi": {"planting.support": True},
    "larkspur": {
        "raising": "drill",
        "germination.light": "dark",
        "growing.thin_first_mm": 50,
        "growing.thin_to_mm": 150,
    },
    "aquilegia": {"germination.light": "light"},
    "delphinium": {
        "raising": "tray",
        "germination.at_c": 15,
        "germination.days_first": 12,
        "germination.days_last": 20,
        "germination.share": 0.5,
    },
    "lupin": {"raising": "cells"},
    "dahlia": {
        "growing.pot_on": True,
        "growing.pinch_pairs": 4,
        "hardening.days": 18,
        "hardening.after_potting_days": 14,
        "hardening.starts.days": 0,
    },
    "verbena-bonariensis": {
        "raising": "tray",
        "growing.pot_on": True,
        "growing.pot_on_days": 39,
        "treatments": (),
        "hardening.days": 18,
        "hardening.starts.days": 0,
    },
    "viola": {"flowering.deadhead_every_days": 3, "germination.light": "dark"},
    "tulip": {"raising": "bulb", "bulb_rest_days": 42},
    "lobelia": {"raising": "tray", "germination.light": "light"},
    "cornflower": {
        "raising": "cells",
        "growing.pinch_pairs": 3,
        "growing.pinch_days": 21,
        "planting.from_sowing_days": (56, 56),
        "hardening.days": 5,
        "hardening.least_days": 3,
    },
}


@pytest.mark.parametrize(
    ("key", "dotted", "expected"),
    [(key, dotted, value) for key, table in FIGURES.items() for dotted, value in table.items()],
)
def test_a_figure_of_the_sample_story(key: str, dotted: str, expected: object) -> None:
    found: Any = crop(key)
    for name in dotted.split("."):
        found = getattr(found, name)
    assert found == expected


@pytest.mark.parametrize(
    ("key", "treatments"),
    [
        ("sweet-pea", [("chip", 0.0, None), ("soak", 0.5, None)]),
        ("lupin", [("chip", 0.0, None), ("soak", 0.5, None)]),
        ("aquilegia", [("chill", 42.0, 4.0)]),
    ],
)
def test_a_treatment_of_the_sample_story(
    key: str, treatments: list[tuple[str, float, float | None]]
) -> None:
    assert [(t.name, t.days, t.temp_c) for t in crop(key).treatments] == treatments
