"""Lines of text for a terminal: wrapped to its width, each with its own hanging indent."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Iterator

LEAST, MOST = 30, 100
"""Columns: narrower is not worth wrapping for, wider is hard to read."""
HANGING = 2


def for_terminal(lines: Iterable[str]) -> Iterable[str]:
    """The lines wrapped where they go to a terminal, whole where they go to a pipe or a file."""
    if not sys.stdout.isatty():
        return lines
    import shutil  # heavy, and a pipe does without

    return wrapped(lines, shutil.get_terminal_size().columns)


def wrapped(lines: Iterable[str], columns: int) -> Iterator[str]:
    """Lines broken at spaces; what goes on stands further in than where it began.

    Args:
        lines: the lines, each with its own indent.
        columns: how wide the terminal is.
    """
    import textwrap

    width = max(LEAST, min(columns, MOST))
    for line in lines:
        if len(line) <= width:
            yield line
            continue
        lead = line[: len(line) - len(line.lstrip(" "))]
        hang = lead + " " * HANGING
        yield from textwrap.wrap(
            line.strip(), width, initial_indent=lead, subsequent_indent=hang, break_on_hyphens=False
        )
