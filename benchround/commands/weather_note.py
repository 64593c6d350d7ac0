"""`weather note`, `weather read` and `weather show`: typed outlooks, readings, what is known."""

from __future__ import annotations

import argparse
from datetime import timedelta

from benchround.commands.weather_out import draft_value, open_desk, weather_value
from benchround.core.dates import say_day
from benchround.core.errors import InputError, UnknownNameError
from benchround.core.numbers.ranges import whole, within
from benchround.core.record import Draft, Figure, Kind
from benchround.core.sky.known_day import MOST_RAIN_MM
from benchround.core.sky.weather import COLDEST_C, HOTTEST_C
from benchround.core.typed.date import say_full
from benchround.core.units import units_of
from benchround.feeds.outlook_line import read_outlook
from benchround.plain import JsonValue, weather_words
from benchround.reckoning.answer import Answer
from benchround.reckoning.figures import count, day, number
from benchround.whereabouts import SAMPLE_DAY, sample_folder

SHOWN_DAYS = 6
MOST_SHOWN_DAYS = 400


def note_arguments(parser: argparse.ArgumentParser) -> None:
    """The line, the season, and the day it is typed on."""
    parser.add_argument("line", metavar="LINE", help="as '5 23 sun; 8/27 r22 g68 from 17'")
    parser.add_argument("season", nargs="?", default="", help="season folder")
    parser.add_argument("--on", type=day, metavar="DATE", help="the day it is typed on (today)")
    parser.add_argument("--preview", action="store_true", help="say what is understood, no more")


def note(given: argparse.Namespace) -> Answer:
    """Record a typed outlook and echo what was understood."""
    desk = open_desk(given.season, given.on, read_only=given.preview)
    try:
        units, hours = units_of(desk.season.settings), desk.season.site.day_length_h
        outlook = read_outlook(given.line.strip(), desk.today, hours, units)
        drafts = outlook.drafts()
        if not given.preview:
            desk.record(drafts)
    finally:
        desk.close()
    return Answer(
        {
            "recorded": 0 if given.preview else len(drafts),
            "days": [draft_value(draft) for draft in drafts],
            "words": list(outlook.words()),
        },
        tuple(map(desk.season.unit_words, outlook.words())),
    )


def read_arguments(parser: argparse.ArgumentParser) -> None:
    """What the thermometer and the gauge say."""
    parser.add_argument("season", nargs="?", default="", help="season folder")
    parser.add_argument("--min", type=number, metavar="C", help="lowest of the 24 hours")
    parser.add_argument("--max", type=number, metavar="C", help="highest of the 24 hours")
    parser.add_argument("--rain", type=number, metavar="MM", help="rain in the gauge")
    parser.add_argument("--place", default="", metavar="CODE", help="the place's own thermometer")
    parser.add_argument("--on", type=day, metavar="DATE", help="the day it was read (today)")
    parser.set_defaults(refuse=parser.error)


def read(given: argparse.Namespace) -> Answer:
    """Record a reading, outside or in a place."""
    named = {"min_c": given.min, "max_c": given.max, "rain_mm": given.rain}
    figures: dict[str, Figure] = {name: v for name, v in named.items() if v is not None}
    if not figures:
        given.refuse("give --min, --max or --rain")
    _require_reading(given)
    desk = open_desk(given.season, None)
    try:
        if given.on is not None and given.on > desk.today:
            raise InputError(f"{given.on} is still to come: a reading is of today or before.")
        if given.place and desk.season.place(given.place) is None:
            codes = ", ".join(place.code for place in desk.season.places) or "none is set up"
            raise UnknownNameError(
                f"There is no place {given.place[:40]!r}; the places are: {codes}."
            )
        draft = Draft(Kind.READING, given.place, figures, day=given.on or desk.today)
        desk.record([draft])
        at = desk.season.weather.at(given.place, draft.day or desk.today)
        known = at if given.place else desk.season.weather.on(draft.day or desk.today)
        where = given.place or "outside"
        said = desk.season.unit_words(weather_words(known))
        line = f"{say_full(draft.day or desk.today, desk.today)}, {where}: {said}"
    finally:
        desk.close()
    return Answer({"recorded": 1, "days": [draft_value(draft)]}, (line,))


def _require_reading(given: argparse.Namespace) -> None:
    for figure, value in (("the lowest", given.min), ("the highest", given.max)):
        if value is not None:
            within(figure, value, COLDEST_C, HOTTEST_C, "C")
    if given.min is not None and given.max is not None:
        within("the lowest", given.min, COLDEST_C, given.max, "C")
    if given.rain is not None:
        within("the rain", given.rain, 0.0, MOST_RAIN_MM, "mm")


def show_arguments(parser: argparse.ArgumentParser) -> None:
    """The season, the day, and how many days."""
    parser.add_argument("season", nargs="?", default="", help="season folder")
    parser.add_argument("--on", type=day, metavar="DATE", help="the first day ahead (today)")
    parser.add_argument("--days", type=count, default=SHOWN_DAYS, metavar="N", help="ahead (6)")
    parser.add_argument("--back", type=count, default=2, metavar="N", help="days before (2)")
    parser.add_argument("--sample", action="store_true", help="the sample season on its own day")


def show(given: argparse.Namespace) -> Answer:
    """What is known of the weather, day by day, outside and by place."""
    ahead = whole("days ahead", given.days, 1, MOST_SHOWN_DAYS)
    back = whole("days before", given.back, 0, MOST_SHOWN_DAYS)
    season = str(sample_folder()) if given.sample else given.season
    on = given.on or (SAMPLE_DAY if given.sample else None)
    desk = open_desk(season, on, read_only=True)
    try:
        first = desk.today - timedelta(days=back)
        known = desk.season.weather.ahead(first, back + ahead)
        places: list[JsonValue] = []
        said = desk.season.unit_words
        lines = [f"{say_day(w.day)}  {w.basis}: {said(weather_words(w))}" for w in known]
        for offset in range(back + ahead):
            that_day = first + timedelta(days=offset)
            for place in desk.season.places:
                inside = desk.season.weather.at(place.code, that_day)
                if inside is not None:
                    places.append({"place": place.code, **weather_value(inside)})
                    words = said(weather_words(inside))
                    lines.append(f"{say_day(that_day)}  {place.name}: {words}")
        doubts = desk.season.weather.doubts
        value: dict[str, JsonValue] = {
            "on": desk.today.isoformat(),
            "days": [weather_value(weather) for weather in known],
            "places": places,
            "doubts": list(doubts),
        }
    finally:
        desk.close()
    nothing = ("Nothing is known: type the outlook with 'benchround weather note'.",)
    return Answer(value, tuple(lines) or nothing, doubts)
