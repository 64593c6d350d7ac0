"""The round on paper: boxes to tick in walking order, numbered, with room for figures.

The numbers on a sheet stand for the keys of its tasks. They are kept with the season under a code
of four letters that is printed on the sheet and follows from day and keys alone, so what was
written by hand can be typed in later, when the round has changed.
"""

from __future__ import annotations

import hashlib
import json
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import date

from benchround.core.caution.due import CAUTIONS, closing_cautions
from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.task import SLOT_WORDS, Round, Standing, Task
from benchround.feeds.pages import Block, Heading, Page, Tick, Words

DIGITS = "0123456789abcdefghjkmnpqrstvwxyz"
"""Letters of a code: those easily taken for another are left out."""
CODE_LENGTH = 4

Naming = Callable[[Task], str]
"""Gives the name of what a task is about."""


@dataclass(frozen=True, slots=True)
class PaperList:
    """What the numbers on a sheet stand for: number 1 is the first key."""

    day: date
    keys: tuple[str, ...]

    @property
    def code(self) -> str:
        """The code printed on the sheet; the same day and keys give the same one."""
        text = "\n".join((self.day.isoformat(), *self.keys))
        number = int.from_bytes(hashlib.sha256(text.encode("utf-8")).digest()[:8], "big")
        letters = [DIGITS[(number >> (5 * at)) % 32] for at in range(CODE_LENGTH)]
        if all(letter.isdigit() for letter in letters):
            letters[0] = DIGITS[10 + int(letters[0])]  # a code is never taken for a number
        return "".join(letters)

    @property
    def file_name(self) -> str:
        """The name of the file it is kept in."""
        return f"paper-{self.day.isoformat()}-{self.code}.json"


def paper_list(the_round: Round) -> PaperList:
    """What the numbers of a round's sheet stand for."""
    return PaperList(the_round.day, tuple(task.key for task in the_round.today))


def list_data(kept: PaperList) -> bytes:
    """The kept list as a file."""
    value = {"day": kept.day.isoformat(), "code": kept.code, "keys": list(kept.keys)}
    return (json.dumps(value, ensure_ascii=False, indent=0) + "\n").encode("utf-8")


def list_from(data: bytes, name: str) -> PaperList:
    """A list from its file.

    Raises:
        InputError: the file is not what was written.
    """
    try:
        value = json.loads(data)
        kept = PaperList(date.fromisoformat(value["day"]), tuple(map(str, value["keys"])))
        whole = kept.code == value["code"]
    except (ValueError, KeyError, TypeError, RecursionError) as error:
        raise InputError(f"{name} cannot be read ({error}): print the round again.") from error
    if not whole:
        raise InputError(f"{name} was changed since it was printed: print the round again.")
    return kept


def paper_page(the_round: Round, name: Naming, place: Naming, weather: str, code: str) -> Page:
    """The sheet of a round.

    Args:
        the_round: the round.
        name: gives what a task is about, in words.
        place: gives the name of the place it is done at.
        weather: the day's weather in one line.
        code: the code of its list.
    """
    day = the_round.day
    tasks = the_round.today
    often = _said_by_all(tasks)
    blocks: list[Block] = [
        Words(f"{weather}. {len(tasks)} to do, {len(the_round.overdue)} overdue.")
    ]
    if tasks:
        blocks.append(Words(f"To type it in: benchround paper enter {code} {_example(tasks)}"))
    heading = ""
    for number, task in enumerate(tasks, start=1):
        now = f"{SLOT_WORDS[task.slot]}, {place(task) or 'everywhere'}"
        if now != heading:
            blocks.append(Heading(now))
            heading = now
        named = name(task) if task.crop else ""  # the heading names the place
        blocks.append(_tick(number, task, named, _once(task, often)))
    if not tasks:
        blocks.append(Words("Nothing is to be done."))
    blocks.extend(_notes(the_round, name, often))
    named = f"Round of {day:%A} {day.day} {day:%B} {day.year}"
    return Page(named, tuple(blocks), f"{named}, {code}")


def _example(tasks: Sequence[Task]) -> str:
    """Numbers of this sheet as they may be typed: two that were ticked, one with its figure."""
    numbered = list(enumerate(tasks, start=1))
    plain = [str(number) for number, task in numbered if not task.asks][:2]
    figures = (
        (number, task.asks[0].default)
        for number, task in numbered
        if task.asks and task.asks[0].whole and not task.asks[0].choices
    )
    number, figure = next(figures, (0, ""))
    gap = [f"{number}:{figure if figure.isdigit() else 24}"] if number else []
    return " ".join([*plain, *gap] or [_filled(tasks[0])])


def _filled(task: Task) -> str:
    """The first number of a sheet with as many figures as it needs, such as lowest and highest."""
    needed = [at for at, ask in enumerate(task.asks, start=1) if ask.needed and not ask.default]
    return ":".join(("1", "5", "19", "2")[: max(needed, default=0) + 1])


def _once(task: Task, often: dict[str, tuple[str, ...]]) -> tuple[str, ...]:
    """What a task need not say, since it is said for all of its kind."""
    return often.get(task.family) or often.get(_opening(task), ())


def _tick(number: int, task: Task, name: str, often: Sequence[str]) -> Tick:
    clauses = [text for text in task.instruction.split("; ") if text not in often]
    words = f"{task.family}: {name}: " if name else f"{task.family}: "
    when = f"{task.at:%H:%M}" if task.at else ""
    at = f" at {when}" if when and when not in task.instruction else ""
    late = f" ({_standing(task)})" if _standing(task) else ""
    text = f"{words}{'; '.join(clauses)}{at}{late}"
    return Tick(number, text, tuple(ask.label for ask in task.asks))


def _standing(task: Task) -> str:
    if task.standing is not Standing.OVERDUE:
        return ""
    return f"overdue {task.overdue_days} day{'s' if task.overdue_days != 1 else ''}"


def _said_by_all(tasks: Iterable[Task]) -> dict[str, tuple[str, ...]]:
    """Clauses that are said once on the sheet, by what they are true of.

    That is a family, where all its tasks say them beside their own, or else those of its tasks
    that begin alike, such as "Water from below".
    """
    families: dict[str, list[Task]] = {}
    openings: dict[str, list[Task]] = {}
    for task in tasks:
        families.setdefault(task.family, []).append(task)
        openings.setdefault(_opening(task), []).append(task)
    found = {family: _shared(alike) for family, alike in families.items()}
    for opening, alike in openings.items():
        if opening and not found[alike[0].family]:
            found[opening] = _shared(alike)
    return {kind: clauses for kind, clauses in found.items() if clauses}


def _shared(tasks: Sequence[Task]) -> tuple[str, ...]:
    """Clauses that several tasks have in common, where each says something else too."""
    said = [task.instruction.split("; ") for task in tasks]
    counts = Counter(text for clauses in said for text in set(clauses))
    shared = tuple(text for text in said[0] if counts[text] == len(said) > 1)
    return shared if all(set(clauses) - set(shared) for clauses in said) else ()


def _opening(task: Task) -> str:
    """How an instruction begins, before its first colon; empty where it has none so early."""
    opening, colon, _ = task.instruction.partition(": ")
    return f"{opening[:1].lower()}{opening[1:]}" if colon and ";" not in opening else ""


def _notes(the_round: Round, name: Naming, often: dict[str, tuple[str, ...]]) -> Iterator[Block]:
    said = [f"{kind}: {'; '.join(texts)}." for kind, texts in often.items()]
    if said:
        yield Heading("for all of them")
        yield from (Words(text) for text in said)
    if the_round.held:
        yield Heading("held, not to be done")
        for task in the_round.held:
            why = task.hold.because if task.hold else ""
            yield Words(f"{task.family}: {name(task)}: {why}")
    read = dict.fromkeys(
        CAUTIONS[caution].short
        for task in the_round.today
        for caution in task.cautions
        if caution in CAUTIONS
    )
    if read:
        yield Heading("mind")
        yield Words(". ".join(text.rstrip(".") for text in read) + ".")
    closing = closing_cautions(task.family for task in the_round.today)
    if closing:
        yield Heading("at the end")
        yield from (Words(CAUTIONS[name].short) for name in closing)
