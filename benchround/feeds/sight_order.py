"""A line in the order in which it stands on paper: what is read from the right is turned round."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator

from fpdf.bidi import BidiParagraph

from benchround.core.frozen import dataclass
from benchround.feeds.letters import clusters

FROM_RIGHT = ("R", "AL", "AN")
"""Classes of letters and figures of scripts that are read from the right."""

MIRRORED = str.maketrans("()[]{}<>\u00ab\u00bb\u2039\u203a", ")(][}{><\u00bb\u00ab\u203a\u2039")
"""Brackets and quotation marks that look the other way where the line is read from the right."""


@dataclass(frozen=True, slots=True)
class Run:
    """Part of a line that is read in one direction, its signs in the order they are read in."""

    text: str
    from_right: bool


def in_sight_order(line: str) -> str:
    """The line sign by sign as it stands on paper, for letters that are not joined."""
    return "".join(_seen(run) for run in sight_runs(line))


def sight_runs(line: str) -> Iterator[Run]:
    """The runs of a line from left to right on paper (Unicode Annex 9, rule L2)."""
    if not _turned(line):
        yield Run(line, from_right=False)
        return
    run: list[int] = []
    level = 0
    for sign in BidiParagraph(line, preserve_bn_chars=True).get_reordered_characters():
        at = sign.character_index
        if run and (sign.embedding_level != level or abs(at - run[-1]) != 1):
            yield _run(line, run, level)
            run = []
        run.append(at)
        level = sign.embedding_level
    if run:
        yield _run(line, run, level)


def _seen(run: Run) -> str:
    if not run.from_right:
        return run.text
    return "".join(reversed(list(clusters(run.text)))).translate(MIRRORED)


def _run(line: str, places: list[int], level: int) -> Run:
    return Run("".join(line[at] for at in sorted(places)), level % 2 == 1)


def _turned(line: str) -> bool:
    return any(unicodedata.bidirectional(sign) in FROM_RIGHT for sign in line)
