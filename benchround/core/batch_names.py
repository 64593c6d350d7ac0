"""What a batch is called when nobody names it: b17, and b17k where a second computer begins it.

Two computers that do not see each other would both call their next batch b17, and when they meet
nobody could tell whose records are meant. So every computer but the one that began the season puts
a letter of its own behind the number.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

LETTERS = "abcdefghjkmnpqrstuvwxyz"
"""Those that cannot be taken for a figure on a label."""

_NAME = re.compile(r"(.)([0-9]+)([a-z]?)")


def letter_of(machine: str, writers: Iterable[str]) -> str:
    """The letter a computer puts behind its numbers; none for the one that began the season.

    Args:
        machine: short name of the computer.
        writers: the computers that wrote in the season, the first to do so first.
    """
    known = [writer for writer in dict.fromkeys((*writers, machine)) if writer]
    taken = {"": ""}  # letter -> whose it is
    for writer in known[1:]:
        free = (sign for sign in writer + LETTERS if sign in LETTERS and sign not in taken)
        taken[next(free, "")] = writer
    return next((letter for letter, whose in taken.items() if whose == machine), "")


def free_name(taken: Iterable[str], letter: str) -> str:
    """The name after the highest number in use, whoever used it."""
    found = map(_NAME.fullmatch, taken)
    highest = max((int(match[2]) for match in found if match), default=0)
    return f"b{highest + 1:02d}{letter}"


def next_name(name: str) -> str:
    """The name after one that `free_name` gave."""
    match = _NAME.fullmatch(name)
    if match is None:
        raise ValueError(f"{name!r} has no number to count on from")
    return f"{match[1]}{int(match[2]) + 1:02d}{match[3]}"


def letter_words(name: str, taken: Iterable[str]) -> str:
    """Why a name ends in a letter, the first time one does so; else empty.

    Args:
        name: the name of the new batch.
        taken: the names there were before.
    """
    match = _NAME.fullmatch(name)
    if match is None or not match[3]:
        return ""
    known = (_NAME.fullmatch(other) for other in taken)
    if any(other is not None and other[3] == match[3] for other in known):
        return ""
    return (
        f"the {match[3]} is this computer's: it keeps its numbers apart from those of the computer "
        "that began the season"
    )
