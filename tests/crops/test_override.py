"""Single figures changed for a season: checked like a table, hostile ones refused in words."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.crop.crop import Anchor, Crop, Edge, Hardening
from benchround.core.crop.keys import SECTIONS
from benchround.core.crop.table import OWN_FIGURE, override, table_from_crop
from benchround.core.errors import CropFileError
from benchround.core.record import Figure
from tests.crops.published import crop

DOTTED = [section.dotted(key.name) for section in SECTIONS for key in section.keys]


def test_one_figure_changes_and_nothing_else() -> None:
    cosmos = crop("cosmos")
    changed = override(cosmos, {"growing.pinch_pairs": 4})
    assert changed.growing.pinch_pairs == 4
    assert changed.source("growing.pinch_pairs") == OWN_FIGURE
    table, before = table_from_crop(changed), table_from_crop(cosmos)
    table["growing"]["pinch_pairs"] = before["growing"]["pinch_pairs"]
    table["sources"] = before["sources"]
    assert table == before
    assert cosmos.growing.pinch_pairs == 3


def test_nothing_to_change_changes_nothing() -> None:
    assert override(crop("cosmos"), {}) == crop("cosmos")


def test_a_shorter_hardening_course_takes_its_shortest_with_it() -> None:
    hardening = override(crop("cosmos"), {"hardening.days": 14}).hardening
    assert hardening is not None
    assert (hardening.days, hardening.least_days) == (14, 14)
    both = override(crop("cosmos"), {"hardening.days": 14, "hardening.least_days": 7}).hardening
    assert both is not None and both.least_days == 7
    longer = override(crop("cosmos"), {"hardening.days": 21}).hardening
    assert longer is not None and longer.least_days == 18


@pytest.mark.parametrize(
    ("dotted", "figure", "seen"),
    [
        (
            "planting.from_sowing_days",
            "30 to 40",
            lambda c: c.planting.from_sowing_days == (30, 40),
        ),
        ("succession_days", "14 to 21", lambda c: c.succession_days == (14, 21)),
        ("flowering.colours", "white, pink", lambda c: c.flowering.colours == ("white", "pink")),
        ("synonyms", "", lambda c: c.synonyms == ()),
        ("growing.pinch_pairs", "none", lambda c: c.growing.pinch_pairs is None),
        ("succession_days", "none", lambda c: c.succession_days is None),
        ("flowering.deadhead", "none", lambda c: c.flowering.deadhead == "none"),
        ("hardening.days", 20.0, lambda c: c.hardening.days == 20),
        ("germination.depth_mm", 4, lambda c: c.germination.depth_mm == 4.0),
        (
            "windows.1.opens",
            "last frost -50",
            lambda c: c.windows[0].opens == Edge(Anchor.LAST_FROST, -50),
        ),
        ("hardening.starts", "none", lambda c: c.hardening.starts is None),
        ("growing.feed", False, lambda c: c.growing.feed is False),
    ],
)
def test_forms_a_figure_may_have(dotted: str, figure: Figure, seen: Any) -> None:
    assert seen(override(crop("cosmos"), {dotted: figure}))


def test_a_section_the_crop_has_not_got_is_made() -> None:
    leek = crop("leek")
    assert leek.hardening is None
    assert override(leek, {"hardening.days": 20}).hardening == Hardening(days=20)
    assert override(leek, {"growing.feed": False}).hardening is None


def test_the_source_of_a_list_member_is_its_sections() -> None:
    changed = override(crop("cosmos"), {"windows.2.closes": "last frost -40"})
    assert changed.source("windows") == OWN_FIGURE


@pytest.mark.parametrize(
    ("dotted", "figure", "said"),
    [
        ("hardening.days", "soon", "a whole number from 1 to 60 days"),
        ("hardening.days", float("nan"), "a whole number from 1 to 60 days"),
        ("hardening.days", 10**400, "more than 60 digits; allowed: a whole number"),
        ("hardening.days", -1, "a whole number from 1 to 60 days"),
        ("hardening.days", 14.5, "a whole number from 1 to 60 days"),
        ("hardening.days", True, "a whole number from 1 to 60 days"),
        ("germination.at_c", float("inf"), "a number from 5 to 35 degrees C"),
        ("germination.base_c", 25, "a number from -5 to 20"),
        ("germination.light", "dim", "one of: light, dark, either"),
        ("planting.from_sowing_days", "40 to 30", "the least first"),
        ("planting.from_sowing_days", 30, "two whole numbers"),
        ("planting.from_sowing_days", "1 to 99999999999999999999", "two whole numbers"),
        ("windows.1.opens", "1 May", "an anchor"),
        ("windows.9.opens", "last frost -1", "no such key here"),
        ("windows.0.opens", "last frost -1", "no such key here"),
        ("windows.opens", "last frost -1", "no such key here"),
        ("hardening.dayz", 14, "the nearest is hardening.days"),
        ("hardening", 14, "no such key here"),
        ("sources.default", "me", "no such key here"),
        ("key", "other", "no such key here"),
        ("", 1, "no such key here"),
        ("..", 1, "no such key here"),
        ("growing.__class__", 1, "no such key here"),
        ("name", "a\x1b[31mb", "text of 1 to 80 letters on one line"),
        ("name", "x" * 100_000, "text of 1 to 80 letters on one line"),
    ],
)
def test_a_figure_that_may_not_stand_is_refused_in_words(
    dotted: str, figure: Figure, said: str
) -> None:
    with pytest.raises(CropFileError) as caught:
        override(crop("cosmos"), {dotted: figure})
    message = str(caught.value)
    assert f"cosmos.{dotted}" in message or not dotted.strip(".")
    assert said in message
    assert "\x1b" not in message and len(message) < 4000


def test_all_bad_figures_are_told_at_once() -> None:
    with pytest.raises(CropFileError, match="3 faults"):
        override(
            crop("cosmos"), {"hardening.days": 0, "hardening.dayz": 1, "germination.light": "dim"}
        )


def test_a_figure_that_does_not_go_with_the_others_is_refused() -> None:
    with pytest.raises(CropFileError, match=r"above germination\.base_c, which is 20"):
        override(crop("cosmos"), {"germination.base_c": 20})


FIGURES = st.one_of(
    st.text(max_size=30),
    st.integers(),
    st.floats(allow_nan=True, allow_infinity=True),
    st.booleans(),
)


@given(
    changes=st.dictionaries(
        st.one_of(st.sampled_from(DOTTED), st.text(max_size=20)), FIGURES, max_size=4
    )
)
def test_whatever_is_typed_gives_a_sound_crop_or_a_crop_file_error(
    changes: dict[str, Figure],
) -> None:
    try:
        changed: Crop = override(crop("cosmos"), changes)
    except CropFileError as error:
        assert "fault" in str(error)
    else:
        assert override(changed, {}) == changed
