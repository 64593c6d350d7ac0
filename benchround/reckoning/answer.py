"""An answer for the shell: JSON-ready values, and the same as a few lines of text."""

from __future__ import annotations

import json
import sys
from datetime import date, time
from typing import TextIO

from benchround.core.frozen import dataclass
from benchround.plain import JsonValue

NO_MARKUP = {ord("\x1b"): None}
"""An escape character from a file or a shell word never reaches the terminal."""


@dataclass(frozen=True, slots=True)
class Answer:
    """What a command found out.

    Attributes:
        value: keys as docs/commands.md lists them.
        lines: the same to read.
        remarks: what goes to standard error.
    """

    value: dict[str, JsonValue]
    lines: tuple[str, ...]
    remarks: tuple[str, ...] = ()


def give(answer: Answer, *, as_json: bool, out: TextIO | None = None) -> None:
    """Write an answer to standard output and its remarks to standard error."""
    stream = sys.stdout if out is None else out
    if as_json:
        json.dump(answer.value, stream, ensure_ascii=False, indent=1, allow_nan=False)
        stream.write("\n")
    else:
        stream.writelines(f"{line.translate(NO_MARKUP)}\n" for line in answer.lines)
    for remark in answer.remarks:
        sys.stderr.write(f"{remark.translate(NO_MARKUP)}\n")


def rounded(value: float | None, places: int = 4) -> float | None:
    """A figure for JSON, without digits nobody can mean; None stays None."""
    if value is None:
        return None
    short = round(value, places)
    return 0.0 if short == 0.0 else short


def iso(day: date | None) -> str | None:
    """A day as 2026-05-27, None where there is none."""
    return day.isoformat() if day else None


def month_day(value: tuple[int, int] | None) -> str | None:
    """A day of any year as 05-27, None where there is none."""
    return f"{value[0]:02d}-{value[1]:02d}" if value else None


def minute(at: time | None) -> str | None:
    """A clock time to the nearest minute as an almanac prints it, None where there is none."""
    if at is None:
        return None
    whole = min(24 * 60 - 1, at.hour * 60 + at.minute + (1 if at.second >= 30 else 0))
    return f"{whole // 60:02d}:{whole % 60:02d}"


def said(value: float | None, unit: str = "", places: int = 1) -> str:
    """A figure for reading, `unknown` where there is none."""
    if value is None:
        return "unknown"
    return f"{value:.{places}f} {unit}".rstrip()
