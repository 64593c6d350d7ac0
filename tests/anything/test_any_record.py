"""A record of any kind with any figures: the round is drawn, and what cannot be is told."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from benchround.core.book import RecordBook
from benchround.core.errors import InputError
from benchround.core.odd_figures import without_odd
from benchround.core.record import Figure, Kind, Record
from benchround.core.record_figures import KINDS, RULES
from benchround.core.season import Season
from benchround.core.settings_words import SETTINGS
from benchround.crops.library import load_library
from benchround.rounds.build import build_round
from benchround.store.codec import decode
from tests.sample.story import DAY_0
from tests.sample.story import records as story

ODD = ["x", "²", "", "soon", "9999-12-31", "0001-01-01", "2026-99-99", "3", "frame-a", "cosmos"]
VALUES: st.SearchStrategy[Any] = st.one_of(
    st.sampled_from([*ODD, -1, 0, -5.5, 0.5, 10**9, 10**12, True]),
    st.recursive(
        st.one_of(st.none(), st.booleans(), st.integers(), st.floats(), st.text(max_size=8)),
        lambda inner: st.one_of(st.lists(inner), st.dictionaries(st.text(max_size=3), inner)),
        max_leaves=3,
    ),
)
LIBRARY = load_library()
STORY = story()
ABOUTS = sorted({record.about for record in STORY} | {"n1", *(s.key for s in SETTINGS.values())})
NAMES = {
    kind: sorted(
        {
            "part",
            "count",
            "value",
            "family",
            "until",
            *(KINDS[kind].figures if kind in KINDS else ()),
        }
        | {name for record in STORY if record.kind is kind for name in record.figures}
    )
    for kind in Kind
}


def season_with(*extra: Record) -> Season:
    return RecordBook([*STORY, *extra], lambda _: LIBRARY).season


@pytest.mark.parametrize("kind", [kind for kind in Kind if kind is not Kind.WITHDRAWN])
@settings(max_examples=12, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(data=st.data())
def test_no_record_that_can_be_kept_makes_the_round_raise(kind: Kind, data: st.DataObject) -> None:
    figures = data.draw(st.dictionaries(st.sampled_from(NAMES[kind]), VALUES, max_size=5))
    told = [record for record in STORY if record.kind is kind]
    like = data.draw(st.sampled_from([None, *told]))
    if like is not None:
        about, figures = like.about, {**like.figures, **figures}
    else:
        about = data.draw(st.sampled_from(ABOUTS))
        figures = {"crop": "cosmos", **figures}
    day = DAY_0 - timedelta(days=data.draw(st.sampled_from([0, 1, 20])))
    document = {"id": "4K01", "day": day.isoformat(), "kind": str(kind), "figures": figures}
    try:
        record = decode({**document, "about": about})
    except InputError as error:
        assert "cannot be read" in str(error)
        return
    assert build_round(season_with(record), DAY_0).day == DAY_0


ODD_ONES: list[tuple[Kind, str, str, Figure]] = [
    (Kind.PLANNED, "n1", "sow_on", "soon"),
    (Kind.PLANNED, "n1", "sow_by", "x"),
    (Kind.PLANNED, "n1", "sow_on", 20260501),
    (Kind.SOWN, "n1", "depth_mm", -3),
    (Kind.SOWN, "n1", "seeds", 10**12),
    (Kind.SOWN, "n1", "seeds", "40"),
    (Kind.SOWN, "n1", "cells", 4.5),
    (Kind.SOWN, "n1", "raising", "in the sea"),
    (Kind.SOWN, "n1", "per_cell", True),
    (Kind.OUTLOOK, "", "storm_from", "9999-12-31"),
    (Kind.OUTLOOK, "", "storm_from", "17:00+02:00"),
    (Kind.SETTING, "feed_every_days", "value", "²"),
    (Kind.SETTING, "feed_every_days", "value", "0"),
    (Kind.SETTING, "compost", "value", "mud"),
]


@pytest.mark.parametrize(("kind", "about", "name", "value"), ODD_ONES)
def test_a_figure_that_cannot_be_is_told_and_not_used(
    kind: Kind, about: str, name: str, value: Figure
) -> None:
    record = Record("4K01", DAY_0, kind, about, {"crop": "cosmos", name: value}, note="kept")
    fitting, doubts = without_odd(record)
    assert dict(fitting.figures) == {"crop": "cosmos"} and fitting.note == "kept"
    (doubt,) = doubts
    assert str(value) in doubt and "it is not used" in doubt
    assert doubt in season_with(record).doubts
    assert doubt in RecordBook(STORY, lambda _: LIBRARY).add([record]).doubts
    gone = Record("4K02", DAY_0, Kind.WITHDRAWN, "", {"record": record.id})
    assert doubt not in season_with(record, gone).doubts


def test_records_as_they_are_written_are_left_as_they_are() -> None:
    assert all(without_odd(record) == (record, ()) for record in STORY)
    assert all(without_odd(record)[0] is record for record in STORY)


@pytest.mark.parametrize("kind", KINDS)
def test_the_least_and_the_greatest_that_can_be_typed_are_left_as_they_are(kind: Kind) -> None:
    rules = [RULES[name] for name in KINDS[kind].figures if not RULES[name].choices]
    for end in ("low", "high"):
        figures = {rule.name: getattr(rule, end) for rule in rules if "number" in rule.form}
        record = Record("4K01", DAY_0, kind, "n1", figures)
        assert without_odd(record)[0] is record
