"""What was written on the paper round, typed in by the numbers printed on it.

An entry is a row of numbers. Figures follow a number after colons, in the order of the gaps on the
sheet; a word after it fills the gap it is a choice of or one that wants words, and is a note
where there is none:

    k7qp 3 5 7:22 9:14:40 12 yes

`-` leaves a gap as it is proposed. The code at the beginning says which sheet it is.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.task import Ask
from benchround.feeds.paper_round import CODE_LENGTH, DIGITS

LONGEST_ENTRY = 4000
SKIP = "-"
TEXTS = frozenset({"place", "packet"})
"""Figures that are words, not numbers."""
_CODE = re.compile(rf"(?=.*[a-z])[{DIGITS}]{{{CODE_LENGTH}}}", re.IGNORECASE)
_NUMBER = re.compile(r"([0-9]{1,4})(?::(.*))?")


@dataclass(frozen=True, slots=True)
class Entered:
    """One number of an entry, and what was written beside it."""

    number: int
    words: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Entry:
    """An entry as it was typed; the code is empty where none was."""

    code: str
    ticked: tuple[Entered, ...]


def read_entry(text: str) -> Entry:
    """An entry from what was typed.

    Raises:
        InputError: it is empty, begins with something else, or names a number twice.
    """
    words = text.split()
    if len(text) > LONGEST_ENTRY or not text.replace("\n", " ").replace("\t", " ").isprintable():
        raise InputError("That entry is too long or holds control characters: type it in parts.")
    code = ""
    if words and _CODE.fullmatch(words[0]):
        code, words = words[0].lower(), words[1:]
    if not words:
        raise InputError('No number was typed: write what you ticked, as "3 5 7:22".')
    found: list[tuple[int, list[str]]] = []
    for word in words:
        match = _NUMBER.fullmatch(word)
        if match:
            figures = match[2].split(":") if match[2] is not None else []
            found.append((int(match[1]), figures))
        elif found:
            found[-1][1].append(word)
        else:
            raise InputError(
                f"'{word[:30]}' is neither a number on the sheet nor its code: begin with one."
            )
    twice = {number for number, _ in found if [n for n, _ in found].count(number) > 1}
    if twice:
        raise InputError(
            f"Number {min(twice)} is there twice: write all of it once, as "
            f"{min(twice)}:first:second."
        )
    return Entry(code, tuple(Entered(number, tuple(said)) for number, said in found))


def answers_of(entered: Entered, asks: Sequence[Ask]) -> tuple[dict[str, str], str]:
    """What was written beside a number: answers by the names of the figures they fill, and a note.

    Words for which there is no gap left are the note.

    Raises:
        InputError: more figures were written than the task asks for.
    """
    answers: dict[str, str] = {}
    note: list[str] = []
    free = list(asks)
    for word in entered.words:
        ask = _meant(word, free)
        if ask is not None:
            free.remove(ask)
            if word not in ("", SKIP):
                answers[ask.into] = word
        elif word and not word[0].isalpha():
            gaps = ", ".join(ask.label for ask in asks) or "no figure"
            raise InputError(
                f"Number {entered.number}: '{word[:30]}' is more than it asks for ({gaps})."
            )
        elif word:
            note.append(word)
    return answers, " ".join(note)


def _meant(word: str, free: Sequence[Ask]) -> Ask | None:
    """The gap a word fills: one it is a choice of, else the next; letters fill none for counts."""
    if not word[:1].isalpha():
        return free[0] if free else None
    letters = word.lower()
    for ask in free:
        if any(choice.startswith(letters) for choice in ask.choices):
            return ask
    return next((ask for ask in free if not ask.choices and ask.into in TEXTS), None)
