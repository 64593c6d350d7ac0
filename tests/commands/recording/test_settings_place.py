"""Settings, the site, and places."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest

from benchround.core.season import Season
from benchround.core.settings_words import SETTINGS
from benchround.core.task import Round
from benchround.desk import Desk
from tests.commands.recording.bench import Run, files_of, rounds_of
from tests.sample.story import DAY_0


def season_in(folder: Path) -> Season:
    desk = Desk.open(folder, today=lambda: DAY_0, read_only=True)
    desk.close()
    return desk.season


def test_settings_are_changed_and_go_back_to_the_usual(season: Path, run: Run) -> None:
    before = rounds_of(season)
    ran = run("settings", "feed_every_days=10", "units=f", "compost=bark", "--json")
    assert ran.code == 0, ran.err
    said = season_in(season).settings
    assert (said["feed_every_days"], said["units"], said["compost"]) == ("10", "F", "bark-rich")
    assert ran.value["settings"]["units"] == "F"
    assert run("settings", "feed_every_days=", "units=", "compost=").code == 0
    assert rounds_of(season) == before


def test_the_interval_of_feeding_is_followed(season: Path, run: Run) -> None:
    """By the interval of the label: fed a week ago, at ten days it is due in three."""

    def due() -> list[int]:
        desk = Desk.open(season, today=lambda: DAY_0, read_only=True)
        rounds = {days: desk.round(DAY_0 + timedelta(days=days)) for days in range(8)}
        desk.close()
        return [days for days, made in rounds.items() if "feed:b16:" in _keys(made)]

    assert due()[0] == 0
    run("settings", "feed_every_days=10")
    assert due()[0] == 3


def _keys(made: Round) -> list[str]:
    return [task.key for task in made.today]


def test_the_site_keeps_what_is_not_named(season: Path, run: Run) -> None:
    before = season_in(season).site
    assert run("settings", "pets=no", "last_frost=04-20", "timezone=Europe/Paris").code == 0
    after = season_in(season).site
    assert (after.pets, after.last_frost, after.timezone) == (False, (4, 20), "Europe/Paris")
    assert (after.lat_deg, after.children, after.first_frost) == (
        before.lat_deg,
        before.children,
        before.first_frost,
    )
    assert run("settings", "last_frost=").code == 0
    assert any("last frost" in said for said in season_in(season).site.assumed)
    run("undo")
    run("undo")
    assert season_in(season).site == before


def test_all_are_listed_with_what_holds(season: Path, run: Run) -> None:
    value = run("settings", "--json").value["settings"]
    assert set(SETTINGS) <= set(value)
    assert (value["children"], value["last_frost"], value["units"]) == (True, "05-11", None)
    lines = run("settings").out.splitlines()
    assert len(lines) == len(value)
    assert "units = not set (C)" in lines[0]


def test_a_day_is_read_as_the_grower_writes_it(season: Path, run: Run) -> None:
    def day() -> str:
        return str(
            run("note", "b08", "noted", "--text", "x", "--on", "5/3", "--json").value["written"][0][
                "day"
            ]
        )

    assert day() == "2026-03-05"
    run("settings", "date_order=month-first")
    assert day() == "2026-05-03"


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("feed_every_day=9",), 1, "feed_every_days"),
        (("qqq=9",), 1, "benchround settings"),
        (("feed_every_days=0",), 1, "from 1 to 60"),
        (("units=K",), 1, "C, F"),
        (("pets=perhaps",), 1, "neither yes nor no"),
        (("last_frost=31-05",), 1, "05-11"),
        (("timezone=Europe/Londn",), 1, "Europe/London"),
        (("timezone=../../etc/passwd",), 1, "no time zone"),
        (("lat_deg=95",), 1, "from -90 to 90"),
        (("pets=no", "pets=yes"), 1, "twice"),
        (("pets",), 2, "write name=value"),
    ],
)
def test_settings_that_cannot_be_are_refused(
    season: Path, run: Run, words: tuple[str, ...], code: int, said: str
) -> None:
    before = files_of(season)
    ran = run("settings", *words)
    assert (ran.code, said in ran.err) == (code, True), ran.err
    assert files_of(season) == before


def test_a_place_is_set_up_changed_and_taken_away(season: Path, run: Run) -> None:
    before = rounds_of(season)
    ran = run("place", "set", "frame-d", "name=Frame [D]", "kind=frame", "glazing=glass", "--json")
    assert ran.code == 0, ran.err
    assert ran.value["place"]["order"] == 14
    assert run("place", "set", "Frame [D]", "length_m=1.8", "width_m=0.9", "order=2").code == 0
    place = season_in(season).place("frame-d")
    assert place is not None
    assert (place.name, place.size_m, place.order, place.glazing) == (
        "Frame [D]",
        (1.8, 0.9),
        2,
        "glass",
    )
    assert run("place", "set", "frame-d", "length_m=", "glazing=").code == 0
    place = season_in(season).place("frame-d")
    assert place is not None
    assert (place.size_m, place.glazing) == (None, "none")
    assert run("place", "remove", "frame-d").code == 0
    assert season_in(season).place("frame-d") is None
    for _ in range(4):
        run("undo")
    assert rounds_of(season) == before


def test_places_are_listed_in_walking_order(season: Path, run: Run) -> None:
    places = run("place", "--json").value["places"]
    assert [place["code"] for place in places] == [p.code for p in season_in(season).places]
    assert set(places[0]) == {
        *("code", "name", "kind", "order", "trays", "glazing", "set_c", "one_sided"),
        *("heated", "fuel_heater", "length_m", "width_m", "shade_share"),
    }
    assert len(run("place").out.splitlines()) == len(places)


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("set", "bench-9", "name=x"), 1, "kind="),
        (("set", "bench-1"), 1, "what bench-1 is like"),
        (("set", "bench-1", "traies=9"), 1, "trays"),
        (("set", "bench-1", "kind=bank"), 1, "bench"),
        (("set", "bench-1", "trays=9", "trays=8"), 1, "twice"),
        (("set", "Bench 9", "kind=bench"), 1, "small letters"),
        (("set", "site", "kind=bench"), 1, "means something else"),
        (("set",), 1, "Which place"),
        (("remove", "bench-1"), 1, "not empty"),
        (("remove", "bench-9"), 1, "Near it"),
        (("paint", "bench-1"), 2, "invalid choice"),
    ],
)
def test_places_that_cannot_be_are_refused(
    season: Path, run: Run, words: tuple[str, ...], code: int, said: str
) -> None:
    before = files_of(season)
    ran = run("place", *words)
    assert (ran.code, said in ran.err) == (code, True), ran.err
    assert files_of(season) == before
