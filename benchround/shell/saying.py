"""Printing answers: text nobody can be tricked by, or JSON; remarks on standard error."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Iterable

from benchround.core.frame.place import POSITION_FIGURES, say_positions
from benchround.core.record import Record
from benchround.core.visible import visible
from benchround.plain import JsonValue


def add_json(parser: argparse.ArgumentParser) -> None:
    """The argument every command has."""
    parser.add_argument("--json", action="store_true", help="print JSON")


def answer(value: JsonValue, lines: Iterable[str], *, as_json: bool) -> None:
    """Print what a command found or did.

    Args:
        value: the answer for scripts; its keys are listed in docs/commands_recording.md.
        lines: the same to read.
        as_json: which of the two is wanted.
    """
    if as_json:
        json.dump(value, sys.stdout, ensure_ascii=False, indent=1, allow_nan=False)
        sys.stdout.write("\n")
    else:
        sys.stdout.writelines(f"{visible(line)}\n" for line in lines)


def remark(lines: Iterable[str]) -> None:
    """Print what the grower should know besides the answer."""
    sys.stderr.writelines(f"{visible(line)}\n" for line in lines)


def record_value(record: Record, withdrawn_by: str = "") -> dict[str, JsonValue]:
    """A record as a JSON-ready value."""
    return {
        "id": record.id,
        "day": record.day.isoformat(),
        "kind": str(record.kind),
        "about": record.about,
        "figures": dict(record.figures),
        "note": record.note,
        "at": record.at.strftime("%H:%M") if record.at else None,
        "machine": record.machine,
        "standing": not withdrawn_by,
        "withdrawn_by": withdrawn_by or None,
    }


def record_line(record: Record, withdrawn_by: str = "") -> str:
    """A record as one line of a list: whether it stands, and its words."""
    return f"{'withdrawn' if withdrawn_by else 'standing '} {record_words(record)}"


def record_words(record: Record) -> str:
    """A record in words: id, day, what it is about, kind, figures, note."""
    said = [f"{name}={_figure(name, value)}" for name, value in record.figures.items()]
    clock = f" {record.at:%H:%M}" if record.at else ""
    words = [f"{record.day.isoformat()}{clock}", record.about or "-", str(record.kind), *said]
    note = f' "{record.note}"' if record.note else ""
    return f"{record.id}  {' '.join(words)}{note}"


def _figure(name: str, value: str | int | float | bool) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if name in POSITION_FIGURES and isinstance(value, str):
        return say_positions(value)
    return str(value) if isinstance(value, str | int) else f"{value:g}"


def written(records: Iterable[Record]) -> list[JsonValue]:
    """Records just written, as JSON-ready values."""
    return [record_value(record) for record in records]


def recorded_lines(records: Iterable[Record]) -> list[str]:
    """Records just written, to read."""
    return [f"recorded: {record_words(record)}" for record in records]
