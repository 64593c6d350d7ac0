"""Tasks, rounds and weather in the words of the screens. Pure: no day, no drawing."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date

from benchround.core.dates import say_day
from benchround.core.frame.place import POSITION_FIGURES, say_positions
from benchround.core.record import Draft, Figure, Kind, Record
from benchround.core.season import Season
from benchround.core.sky.weather import DayWeather, Weather
from benchround.core.task import HARM_WORDS, Harm, Round, Slot, Standing, Task
from benchround.core.typed.date import MONTH_NAMES, WEEKDAYS
from benchround.core.unit_words import own
from benchround.feeds.sowing_words import COUNTS, OTHERS, number_words
from benchround.screens.text import in_units

MARKS = {Harm.DIES_TODAY: "!!", Harm.SPOILS_THIS_WEEK: "!", Harm.GETS_LATE: ""}
SLOT_HEADINGS = {
    Slot.FIRST: "First thing",
    Slot.MORNING: "Morning",
    Slot.MIDDAY: "Midday",
    Slot.AFTERNOON: "Late afternoon",
    Slot.EVENING: "Evening",
}
TO_DO = (Standing.DUE, Standing.LATE, Standing.OVERDUE)
"""How a task stands that is to be done on the day."""
SITE = "Site"
AHEAD_DAYS = 6
FAR_DAYS = 300
"""A window this long has no end worth telling."""
COLD_NIGHT_C, HOT_DAY_C, GALE_KMH, HEAVY_RAIN_MM = 3.0, 28.0, 50.0, 10.0
"""From when the line on the weather names a coming day (our proposal)."""
COLD = "down to"
"""How a coming day is told that brings cold."""
SILENT = frozenset({"of_place", "part", "family", "final"})
"""Figures that say nothing to the grower."""
BARE = ("container", "cause", "reason", "variety", "crop", "position", "said")
"""Figures that need no name to be understood."""
UNITS = {"_c": "C", "_mm": "mm", "_cm": "cm", "_m": "m", "_h": "h", "_kmh": "km/h"}


def full_day(day: date) -> str:
    """A day in full: weekday, day, month, year."""
    weekday = WEEKDAYS[day.weekday()].capitalize()
    return f"{weekday} {day.day} {MONTH_NAMES[day.month - 1].capitalize()} {day.year}"


def standing_words(task: Task) -> str:
    """How a task stands, such as "overdue 4"."""
    if task.standing is Standing.OVERDUE:
        return f"overdue {task.overdue_days}"
    return str(task.standing)


def harm_mark(task: Task) -> str:
    """The mark of what leaving it costs; empty where it only gets late."""
    return MARKS[task.harm]


def subject(task: Task, season: Season) -> str:
    """What the task is about: crop and batch, place, or the site."""
    if task.about in season.batches:
        part = f" {task.part}" if task.part else ""
        return f"{task.about} {task.crop}{part}"
    place = season.place(task.about)
    if place is not None:
        return place.name
    return task.about or SITE


def subject_in_full(task: Task, season: Season) -> str:
    """What the task is about, with variety and where it stands."""
    words = subject(task, season)
    if task.variety:
        words = f"{words} '{task.variety}'"
    place = season.place(task.place)
    if place is not None and task.about != task.place:
        words = f"{words}, {place.name}"
    return words


def counts(made: Round) -> str:
    """How many tasks there are, by how they stand."""
    standings = [task.standing for task in made.tasks]
    parts = [f"{sum(standings.count(standing) for standing in TO_DO)} to do"]
    for standing in (Standing.OVERDUE, Standing.LATE, Standing.HELD):
        number = standings.count(standing)
        if number:
            parts.append(f"{number} {standing}")
    return ", ".join(parts)


def outlook(weather: Weather, day: date) -> tuple[str, ...]:
    """The weather of a day in one line, in pieces from most to least needed.

    The first piece is the day itself; then come the days after it that bring cold, heat, a gale or
    much rain.
    """
    known = weather.on(day)
    if known is None and not weather.known_from(day):
        return ("no weather known",)
    pieces = [_day_words(known) if known is not None else "today not known"]
    for ahead in weather.ahead(day, AHEAD_DAYS):
        if ahead.day > day:
            rough = _rough_words(ahead)
            if rough:
                pieces.append(f"{say_day(ahead.day)[:3]} {rough}")
    return tuple(map(in_units, pieces))


def _day_words(known: DayWeather) -> str:
    parts: list[str] = []
    if known.min_c is not None and known.max_c is not None:
        parts.append(f"{known.min_c:g} to {known.max_c:g} C")
    elif known.min_c is not None:
        parts.append(f"down to {known.min_c:g} C")
    elif known.max_c is not None:
        parts.append(f"up to {known.max_c:g} C")
    if known.rain_mm is not None:
        parts.append(f"rain {known.rain_mm:g} mm" if known.rain_mm else "dry")
    if known.gust_kmh is not None:
        parts.append(f"gusts {known.gust_kmh:g} km/h")
    if known.storm_from is not None:
        parts.append(f"storm from {known.storm_from:%H:%M}")
    return ", ".join(parts) or "nothing measured"


def _rough_words(ahead: DayWeather) -> str:
    parts: list[str] = []
    if ahead.min_c is not None and ahead.min_c <= COLD_NIGHT_C:
        parts.append(f"{COLD} {ahead.min_c:g} C")
    if ahead.max_c is not None and ahead.max_c >= HOT_DAY_C:
        parts.append(f"{ahead.max_c:g} C")
    if ahead.rain_mm is not None and ahead.rain_mm >= HEAVY_RAIN_MM:
        parts.append(f"{ahead.rain_mm:g} mm")
    if ahead.gust_kmh is not None and ahead.gust_kmh >= GALE_KMH:
        parts.append(f"gusts {ahead.gust_kmh:g} km/h")
    return ", ".join(parts)


def window_words(task: Task) -> str:
    """The window of a task in words."""
    window = task.window
    if window.earliest == window.latest:
        if task.standing is Standing.OVERDUE:
            return f"due on {say_day(window.best)}"
        return f"for {say_day(window.best)} only"
    early = window.earliest < window.best
    parts = [f"may be done from {say_day(window.earliest)}"] if early else []
    if (window.latest - window.best).days >= FAR_DAYS:
        parts.append(f"on time from {say_day(window.best)}")
    elif window.latest == window.best:
        parts.append(f"on time on {say_day(window.best)}")
    else:
        parts.append(f"on time {say_day(window.best)} to {say_day(window.latest)}")
    return ", ".join(parts)


def harm_words(task: Task) -> str:
    """What leaving it costs."""
    return f"left undone it {HARM_WORDS[task.harm]}"


def figure_words(figures: Mapping[str, Figure], season: Season) -> str:
    """Figures as they are written down, in words."""
    parts: list[str] = []
    for name, value in figures.items():
        if name in SILENT or value == "" or value is False:
            continue
        said = _figure(name, value, season)
        in_container = str(figures.get("container", ""))
        if name != "pot_cm" or not in_container.startswith(said.removeprefix("pot ")):
            parts.append(said)
    return ", ".join(parts)


def _figure(name: str, value: Figure, season: Season) -> str:
    if value is True:
        return name.replace("_", " ")
    if name.endswith("place") and isinstance(value, str):
        place = season.place(value)
        return place.name if place else value
    for ending, unit in UNITS.items():
        if name.endswith(ending):
            number = value if isinstance(value, str) else f"{value:g}"
            return f"{name.removesuffix(ending).replace('_', ' ')} {number} {unit}"
    if name == "count":
        return str(value)
    if name in COUNTS:
        return number_words(name, value)
    if name in POSITION_FIGURES and isinstance(value, str):
        said = own(say_positions(value))
        return said if name in BARE else f"{name} {said}"
    if name in BARE:
        return own(str(value))
    if name == "grams" and not isinstance(value, str):
        return f"{value:g} g"
    if name in ("raising", "covering"):
        return OTHERS[name].format(value)
    return f"{name.replace('_', ' ')} {own(value) if isinstance(value, str) else value}"


def tick_words(task: Task, season: Season) -> str:
    """What ticking the task writes down as it stands."""
    if not task.ticks:
        return "nothing by itself: record what was done"
    first, *others = task.ticks
    figures = dict(first.figures)
    for ask in task.asks:
        if ask.default:
            figures[ask.into] = ask.default
    said = [_draft_words(first.kind, figures, season)]
    said += [_draft_words(draft.kind, draft.figures, season) for draft in others]
    needed = [ask.label for ask in task.asks if ask.needed and not ask.default]
    if needed:
        said.append(f"asks for: {', '.join(needed)}")
    return "; ".join(said)


def _draft_words(kind: Kind, figures: Mapping[str, Figure], season: Season) -> str:
    words = figure_words(figures, season)
    return f"{kind} ({words})" if words else str(kind)


def record_words(records: Iterable[Draft | Record], season: Season) -> str:
    """What was written down, in words: what it is about, what happened, the figures."""
    said: list[str] = []
    for record in records:
        about = f"{subject_of(record.about, season)} " if record.about else ""
        figures = figure_words(record.figures, season)
        note = "a note" if record.note and record.kind is not Kind.NOTED else ""
        more = ", ".join(words for words in (figures, note) if words)
        said.append(f"{about}{record.kind}{f': {more}' if more else ''}")
    return "; ".join(said)


def subject_of(about: str, season: Season) -> str:
    """What a record is about: a place by its name, all else as it is."""
    place = season.place(about)
    return place.name if place else about
