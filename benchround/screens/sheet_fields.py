"""Fields that more than one sheet has: the day, a place."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from benchround.core.caution.due import CAUTIONS
from benchround.core.errors import InputError
from benchround.core.season import Season
from benchround.core.typed.date import month_first as first_the_month
from benchround.core.typed.date import read_day, say_full
from benchround.screens.text import Line, Role, paragraph
from benchround.screens.widgets.field import Choice, Field, among


def note_cautions(note: str, cause: str, width: int) -> list[Line]:
    """The cautions for what a note mentions, the worst one in full, and for the cause of a loss."""
    if not (note.strip() or cause):
        return []
    from benchround.core.caution.mentions import cautions_of_note  # few sheets need it

    in_full = cautions_of_note(note)[:1]
    return [
        row
        for name in (
            *in_full,
            *(one for one in cautions_of_note(note, cause) if one not in in_full),
        )
        for row in paragraph(_caution_words(name, in_full=name in in_full), width, Role.CAUTION)
    ]


def _caution_words(name: str, *, in_full: bool) -> str:
    caution = CAUTIONS[name]
    return f"Caution: {caution.full if in_full else caution.short}"


def place_choices(season: Season) -> Sequence[Choice]:
    """The places as choices, in walking order."""
    return [Choice(place.code, place.name, str(place.kind)) for place in season.places]


def place_field(
    season: Season, code: str, *, name: str = "place", label: str = "place", hint: str = ""
) -> Field:
    """A field for a place, standing at one of them."""
    place = season.place(code)
    return Field(
        name,
        label,
        default=place.name if place else code,
        finder=among(place_choices(season)),
        only=True,
        hint=hint,
    )


def place_of(field_text: str, season: Season) -> str:
    """The code of the place that stands in a field by name or code; the text itself if none."""
    for place in season.places:
        if field_text in (place.name, place.code):
            return place.code
    return field_text


def day_field(day: date, today: date, *, label: str = "day", name: str = "day") -> Field:
    """A field for a day."""
    default = "today" if day == today else day.isoformat()
    return Field(name, label, default=default, hint=say_full(day, today), figure=True)


def month_first(season: Season) -> bool:
    """Whether the grower writes the month before the day."""
    return first_the_month(season.settings)


def echo_day(field: Field, season: Season, today: date, *, ahead: bool = False) -> date | None:
    """Read a day field and say beside it what was understood; None where it is no day yet."""
    try:
        day = read_day(field.text, today, ahead=ahead, month_first=month_first(season))
    except InputError as error:
        field.hint = str(error)
        return None
    field.hint = say_full(day, today)
    return day
