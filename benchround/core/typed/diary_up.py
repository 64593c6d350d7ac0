"""What came up, as one line of a diary: "28 feb leek up 50", "b12 first up", "leek none up".

Day and batch stand first; the batch is named by its id, or by crop and variety where only one can
be meant. Nothing is guessed: where more than one answers they are named and the line is refused.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from benchround.core.crop.search import Named, folded
from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.record import Draft, Figure, Kind
from benchround.core.typed.date import say_full
from benchround.core.typed.diary_line import crop_and_rest, day_and_rest, words_of
from benchround.core.typed.figures import MOST_COUNT, whole_in

UP = "up"
NONE = frozenset({"none", "nothing"})
NOT_NEEDED = frozenset({"came", "come", "seedlings", "seedling"})
QUOTES = "'\"\u2018\u2019\u201c\u201d"
MOST_NAMED = 6
HOW = "write it as '28 feb leek up 50'"


@dataclass(frozen=True, slots=True)
class Sown:
    """A sowing that may be meant.

    Attributes:
        young: whether its seedlings still stand where they were sown, as far as is known.
    """

    batch: str
    crop: str
    variety: str
    day: date
    young: bool = True


@dataclass(frozen=True, slots=True)
class Seen:
    """What was seen, and the words that say of which batch."""

    about: tuple[str, ...]
    kind: Kind
    count: int | None = None


def read_up_line(
    text: str,
    today: date,
    crops: Iterable[Named],
    sowings: Iterable[Sown],
    *,
    usual_day: date | None = None,
    month_first: bool = False,
) -> Draft | None:
    """The count, the first seedling or the look a line tells of; None where it tells of neither.

    Args:
        text: the line as typed.
        today: the day it is typed on.
        crops: the crops that can be meant.
        sowings: the batches that can be meant.
        usual_day: the day of a line that names none; today without it.
        month_first: whether 4/12 is the 12th of April.

    Raises:
        InputError: it tells of seedlings, but not of which batch, or of a day to come.
    """
    words = words_of(text)
    if not any(word.lower() == UP for word in words[-2:]):
        return None
    day, words = day_and_rest(words, today, usual_day or today, month_first)
    seen = _seen(words)
    if seen is None:
        return None
    if day > today:
        raise InputError(f"{say_full(day, today)} is still to come: nothing can be up by then yet.")
    found = _meant(list(seen.about), day, crops, tuple(sowings))
    figures: dict[str, Figure] = {} if seen.count is None else {"count": seen.count}
    return Draft(seen.kind, found, figures, day=day)


def _seen(words: list[str]) -> Seen | None:
    """What the end of a line says was seen; None where it says nothing of the kind."""
    low = [word.lower() for word in words]
    if low[-1] != UP:
        if low[-2:-1] != [UP] or whole_in(low[-1]) is None:
            return None
        about, count = low[:-2], low[-1]
    else:
        about, count = low[:-1], ""
    while about and about[-1] in NOT_NEEDED:
        about.pop()
    left = words[: len(about)]
    if count:
        return Seen(tuple(left), Kind.COUNTED, _number(count))
    last = about[-1] if about else ""
    if last in NONE:
        return Seen(tuple(left[:-1]), Kind.LOOKED)
    if whole_in(last) is not None:
        return Seen(tuple(left[:-1]), Kind.COUNTED, _number(last))
    return Seen(tuple(left[:-1] if last == "first" else left), Kind.FIRST_UP)


def _number(text: str) -> int:
    number = int(text)
    if number > MOST_COUNT:
        raise InputError(f"{text} up cannot be: look again.")
    return number


def _meant(words: list[str], day: date, crops: Iterable[Named], sowings: tuple[Sown, ...]) -> str:
    if not words:
        raise InputError(f"No batch was named: {HOW}.")
    if len(words) == 1:
        by_id = [one.batch for one in sowings if one.batch.lower() == words[0].lower()]
        if by_id:
            return by_id[0]
    crop, rest = crop_and_rest(words, crops)
    variety = folded(" ".join(rest).strip(QUOTES))
    near = [one for one in sowings if one.crop == crop and folded(one.variety).startswith(variety)]
    found = [one for one in near if one.day <= day]
    if len(found) > 1:
        found = [one for one in found if one.young] or found
    if len(found) == 1:
        return found[0].batch
    said = " ".join(words)[:40]
    if not found:
        when = f" by {say_full(day, day).partition(',')[0]}" if near else ""
        raise InputError(f"No '{said}' was sown{when}: write the sowing first, or the batch's id.")
    some = ", ".join(one.batch for one in found[:MOST_NAMED])
    raise InputError(
        f"'{said}' could be {some}: say which, as '{found[0].batch}' in place of the name."
    )
