"""A forecast's JSON: the shape that is documented, and everything that is not it."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import InputError
from benchround.feeds.forecast_json import read_forecast
from tests.feeds.forecast_server import TODAY, forecast

Change = Callable[[dict[str, Any]], object]


def changed(change: Change) -> str:
    whole: dict[str, Any] = forecast()
    change(whole)
    return json.dumps(whole)


def test_seconds_of_sunshine_become_hours_and_metres_a_second_kilometres_an_hour() -> None:
    def in_metres(whole: dict[str, Any]) -> None:
        whole["daily_units"]["wind_gusts_10m_max"] = "m/s"
        whole["daily"]["wind_gusts_10m_max"] = [10.0, 0.0, None]

    days = read_forecast(changed(in_metres), "note").days
    assert [day.gust_kmh for day in days] == [36.0, 0.0, None]
    assert [day.sun_h for day in days] == [12.0, 12.0, 12.0]  # 43200 s are 12 h
    assert {day.typed for day in days} == {"note"}


def test_missing_lists_and_nulls_are_unknown_figures() -> None:
    def sparse(whole: dict[str, Any]) -> None:
        del whole["daily"]["sunshine_duration"], whole["daily_units"]
        whole["daily"]["temperature_2m_max"] = [None, 20, 21.5]

    days = read_forecast(changed(sparse), "").days
    assert [day.max_c for day in days] == [None, 20.0, 21.5]
    assert "sun_h" not in days[0].figures()


def test_a_day_without_any_figure_is_left_out() -> None:
    def empty_middle(whole: dict[str, Any]) -> None:
        for name, column in whole["daily"].items():
            if name != "time":
                column[1] = None

    days = read_forecast(changed(empty_middle), "").days
    assert [day.day for day in days] == [TODAY, date(2026, 5, 29)]


def test_figures_that_cannot_be_are_left_out_and_named() -> None:
    def broken(whole: dict[str, Any]) -> None:
        whole["daily"]["temperature_2m_max"] = [999, 3.0, 1e400]
        whole["daily"]["precipitation_sum"] = [-1, 0, 10**400]

    with pytest.raises(InputError, match="JSON"):
        read_forecast(changed(broken), "")  # json writes 1e400 as Infinity, which is no JSON
    text = changed(broken).replace("Infinity", "25")
    found = read_forecast(text, "")
    assert [day.max_c for day in found.days] == [None, None, 25.0]
    assert found.days[1].min_c is None  # lowest 6 above highest 3: neither is used
    assert len(found.doubts) == 4


WRONG: list[tuple[str, Change, str]] = [
    ("no daily", lambda w: w.pop("daily"), "'daily' is missing"),
    ("daily is a list", lambda w: w.update(daily=[]), "'daily' is missing"),
    ("units are a list", lambda w: w.update(daily_units=[]), "no table"),
    ("no time", lambda w: w["daily"].pop("time"), "'time' is no list"),
    ("no days", lambda w: w["daily"].update(time=[]), "'time' is no list"),
    ("too many days", lambda w: w["daily"].update(time=["2026-05-27"] * 17), "1 to 16"),
    ("time is no day", lambda w: w["daily"]["time"].__setitem__(0, "soon"), "no day"),
    ("time is a number", lambda w: w["daily"]["time"].__setitem__(0, 7), "no day"),
    ("days twice", lambda w: w["daily"].update(time=["2026-05-27"] * 3), "not in order"),
    ("short list", lambda w: w["daily"]["temperature_2m_min"].pop(), "as long as 'time'"),
    ("a word", lambda w: w["daily"].update(temperature_2m_min=["5", 6, 7]), "no figure"),
    ("yes and no", lambda w: w["daily"].update(temperature_2m_min=[True, 6, 7]), "no figure"),
    ("degrees F", lambda w: w["daily_units"].update(temperature_2m_min="°F"), "'°F', not in °C"),
    ("a unit of sorts", lambda w: w["daily_units"].update(precipitation_sum="inch"), "inch"),
    ("no figures", lambda w: w.update(daily={"time": ["2026-05-27"]}), "no figures"),
]


@pytest.mark.parametrize(("change", "said"), [c[1:] for c in WRONG], ids=[c[0] for c in WRONG])
def test_another_shape_is_refused_with_what_is_wrong(change: Change, said: str) -> None:
    with pytest.raises(InputError, match=said):
        read_forecast(changed(change), "")


@pytest.mark.parametrize("text", ["", "{", "[]", "null", "5", '"daily"', "[" * 200_000, "NaN"])
def test_texts_that_are_no_forecast(text: str) -> None:
    with pytest.raises(InputError, match="not the daily forecast"):
        read_forecast(text, "")


JSON = st.recursive(
    st.none() | st.booleans() | st.floats() | st.integers() | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner),
    max_leaves=12,
)


@given(st.dictionaries(st.sampled_from(["time", "temperature_2m_min", "precipitation_sum"]), JSON))
def test_whatever_stands_there_is_a_forecast_or_a_sentence(daily: dict[str, Any]) -> None:
    """Property: nothing but an InputError is raised."""
    try:
        found = read_forecast(json.dumps({"daily": daily}), "")
    except InputError as error:
        assert str(error)
    else:
        assert all(day.figures() for day in found.days)
