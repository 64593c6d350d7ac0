"""The round as plain text and as JSON-ready values: for shells, paper and screen readers."""

from __future__ import annotations

from collections.abc import Iterator

from benchround.core.caution.due import CAUTIONS
from benchround.core.dates import say_day
from benchround.core.season import Season
from benchround.core.sky.weather import DayWeather
from benchround.core.task import HARM_WORDS, SLOT_WORDS, Round, Standing, Task
from benchround.core.visible import visible
from benchround.rounds.closing import closing_words

JsonValue = str | int | float | bool | None | dict[str, "JsonValue"] | list["JsonValue"]


def standing_words(task: Task) -> str:
    """How a task stands, in words: due, overdue 4 days, held."""
    if task.standing is Standing.OVERDUE:
        days = task.overdue_days
        return f"overdue {days} day{'s' if days != 1 else ''}"
    return str(task.standing)


def title(task: Task, season: Season) -> str:
    """What a task is about: batch, crop and variety, or the place."""
    part = f" ({task.part})" if task.part else ""
    if task.crop:
        variety = f" '{task.variety}'" if task.variety else ""
        return f"{task.about}{part} {task.crop}{variety}"
    return place_name(season, task.place) or "the site"


def place_name(season: Season, code: str) -> str:
    """A place's name; its code where it is not set up; empty for the site."""
    place = season.place(code)
    return place.name if place else code


def weather_words(weather: DayWeather | None) -> str:
    """A day's weather in one line."""
    if weather is None:
        return "no weather known"
    parts: list[str] = []
    if weather.min_c is not None or weather.max_c is not None:
        low = "?" if weather.min_c is None else f"{weather.min_c:g}"
        high = "?" if weather.max_c is None else f"{weather.max_c:g}"
        parts.append(f"{low} to {high} C")
    if weather.sun_h is not None:
        parts.append(f"sun {weather.sun_h:g} h")
    if weather.rain_mm is not None:
        parts.append(f"rain {weather.rain_mm:g} mm" if weather.rain_mm else "dry")
    if weather.gust_kmh is not None:
        parts.append(f"gusts {weather.gust_kmh:g} km/h")
    return ", ".join(parts) or "no weather known"


def caution_lines(task: Task) -> tuple[str, ...]:
    """The cautions of a task, in short."""
    return tuple(CAUTIONS[name].short for name in task.cautions if name in CAUTIONS)


def round_lines(the_round: Round, season: Season) -> Iterator[str]:
    """The round as lines of plain text, in walking order; held and not-yet at the end."""
    return (visible(line) for line in _round_lines(the_round, season))


def _round_lines(the_round: Round, season: Season) -> Iterator[str]:
    day = the_round.day
    weather = season.unit_words(weather_words(season.weather.on(day)))
    yield f"Round of {say_day(day)} {day.year}: {weather}"
    yield (
        f"{len(the_round.today)} to do, {len(the_round.overdue)} overdue, "
        f"{len(the_round.held)} held, {len(the_round.early)} not yet"
    )
    if not the_round.tasks:
        yield "Nothing is on the books yet: sow or plan a batch."
    heading = ""
    for task in the_round.today:
        place = place_name(season, task.place) or "everywhere"
        now = f"{SLOT_WORDS[task.slot]}, {place}"
        if now != heading:
            yield ""
            yield now
            heading = now
        yield from _task_lines(task, season)
    for name, tasks in (("held", the_round.held), ("not yet", the_round.early)):
        if tasks:
            yield ""
            yield name
        for task in tasks:
            yield from _task_lines(task, season)
    closing = closing_words(the_round, season)
    if closing:
        yield ""
        yield f"At the end: {' '.join(closing)}"


def _task_lines(task: Task, season: Season) -> Iterator[str]:
    yield f"- {task.family}: {title(task, season)}: {standing_words(task)}. {task.instruction}"
    yield f"    why: {task.why}"
    if task.put_off:
        yield f"    {task.put_off}"
    cautions = caution_lines(task)
    if cautions:
        yield f"    caution: {' '.join(cautions)}"


def task_value(task: Task, season: Season) -> dict[str, JsonValue]:
    """One task as a JSON-ready value; keys are documented in docs/commands.md."""
    hold: JsonValue = None
    if task.hold is not None:
        again = task.hold.look_again
        hold = {
            "because": task.hold.because,
            "look_again": again.isoformat() if again else None,
        }
    return {
        "family": str(task.family),
        "batch": task.about if task.crop else "",
        "part": task.part,
        "crop": task.crop,
        "variety": task.variety,
        "place": place_name(season, task.place),
        "place_code": task.place,
        "standing": str(task.standing),
        "overdue_days": task.overdue_days,
        "window": {
            "earliest": task.window.earliest.isoformat(),
            "best": task.window.best.isoformat(),
            "latest": task.window.latest.isoformat(),
        },
        "harm": HARM_WORDS[task.harm],
        "part_of_day": SLOT_WORDS[task.slot],
        "at": task.at.strftime("%H:%M") if task.at else None,
        "instruction": task.instruction,
        "why": str(task.why),
        "hold": hold,
        "caution": " ".join(caution_lines(task)),
        "put_off": task.put_off,
        "key": task.key,
    }


def round_value(the_round: Round, season: Season) -> dict[str, JsonValue]:
    """The whole round as a JSON-ready value."""
    return {
        "day": the_round.day.isoformat(),
        "tasks": [task_value(task, season) for task in the_round.tasks],
        "assumed": list(the_round.assumed),
        "doubts": list(the_round.doubts),
        "at_the_end": list(closing_words(the_round, season)),
    }
