"""Reading single words off a command line: kinds, batches, places, and figures by their rule."""

from __future__ import annotations

import re
from datetime import time

from benchround.core.errors import InputError, UnknownNameError
from benchround.core.kind_words import kinds_meant
from benchround.core.near_names import near_words, shown
from benchround.core.record import Kind
from benchround.core.record_figures import ELSEWHERE, KINDS, FigureRule, Form
from benchround.core.season import Season
from benchround.core.typed import words
from benchround.core.typed.figures import naming, number_in
from benchround.core.units import celsius

YES, NO = ("yes", "true", "on", "y"), ("no", "false", "off", "n")
_FAHRENHEIT = re.compile(r"([+-]?[0-9]{1,6}(?:[.,][0-9]{1,9})?) ?[fF]")


def kind_named(text: str) -> Kind:
    """The kind of record a word names: its name, with hyphens or spaces, or a clear beginning.

    Raises:
        UnknownNameError: there is none, or more than one begins so; the near ones are named.
    """
    wanted = " ".join(text.replace("-", " ").replace("_", " ").lower().split())
    kinds = {str(kind): kind for kind in Kind}
    found = kinds.get(wanted)
    meant = () if found is not None else kinds_meant(wanted)
    if meant:
        raise UnknownNameError(
            f"Nothing is recorded as {shown(text)}: write {' or '.join(map(_typed, meant))}."
        )
    begins = [kind for name, kind in kinds.items() if wanted and name.startswith(wanted)]
    if found is None and len(begins) == 1:
        found = begins[0]
    if found is None:
        near = near_words(wanted, kinds, f"they are {', '.join(sorted(map(str, KINDS)))}")
        raise UnknownNameError(f"Nothing is recorded as {shown(text)}: {near}.")
    if found in ELSEWHERE:
        raise InputError(
            f"'{found}' has a command of its own: use 'benchround {ELSEWHERE[found]}'."
        )
    return found


def _typed(kind: Kind) -> str:
    """A kind as it is typed in one word."""
    return str(kind).replace(" ", "-")


def batch_named(text: str, season: Season) -> str:
    """The id of a batch as it stands on its label; capitals make no difference.

    Raises:
        UnknownNameError: there is none; the near ones are named.
    """
    wanted = text.strip().lower()
    for name in season.batches:
        if name.lower() == wanted:
            return name
    near = near_words(text, season.batches, "'benchround records' lists what there is")
    raise UnknownNameError(f"There is no batch {shown(text)}: {near}.")


def place_named(text: str, season: Season) -> str:
    """The code of a place, by code, name or the letters only one begins with.

    Raises:
        UnknownNameError: none or more than one answers to it; the near ones are named first.
    """
    try:
        code = words.read_place(text, season.places)
        if not code:
            raise InputError("no place was named.")
        return code
    except InputError as error:
        names = [name for place in season.places for name in (place.code, place.name)]
        near = near_words(text, names)
        first = f" {near[:1].upper()}{near[1:]}." if near else ""
        raise UnknownNameError(f"place: {error}{first}") from None


def read_number(rule: FigureRule, text: str) -> int | float:
    """A typed number; a temperature may be followed by F.

    Raises:
        InputError: it is no number, or not one the rule allows.
    """
    warm = _FAHRENHEIT.fullmatch(text) if rule.name.endswith("_c") else None
    number = number_in(warm[1] if warm else text)
    if number is None:
        raise InputError(f"{rule.name}: {shown(text)} is not {rule.allowed}.")
    if warm:
        number = round(celsius(number), 1) + 0.0
    whole = rule.form is Form.WHOLE
    if (whole and number != int(number)) or not rule.low <= number <= rule.high:
        raise InputError(f"{rule.name}: {shown(text)} is not {rule.allowed}.")
    return int(number) if number == int(number) else number


def read_yes_no(name: str, text: str) -> bool:
    """A typed yes or no.

    Raises:
        InputError: it is neither.
    """
    if text.lower() in YES:
        return True
    if text.lower() in NO:
        return False
    raise InputError(f"{name}: {shown(text)} is neither yes nor no.")


def read_choice(name: str, text: str, choices: tuple[str, ...]) -> str:
    """One of several words, or letters only one of them begins with.

    Raises:
        InputError: it is none of them; all are named, the near ones first.
    """
    return naming(name, lambda: words.read_choice(text, choices))


def read_text(rule: FigureRule, text: str) -> str:
    """A typed text, kept as it is.

    Raises:
        InputError: it is too long.
    """
    if len(text) > rule.high:
        raise InputError(f"{rule.name}: {len(text)} letters are too many, {rule.high:g} at most.")
    return text


def read_clock(name: str, text: str) -> time:
    """A typed time of day.

    Raises:
        InputError: it is none.
    """
    found = re.fullmatch(r"([01]?[0-9]|2[0-3])[:.]([0-5][0-9])", text.strip())
    if found is None:
        raise InputError(f"{name}: {shown(text)} is no time of day; write it as 17:30.")
    return time(int(found[1]), int(found[2]))
