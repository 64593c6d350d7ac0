"""The foot of a screen as a line: the few keys worth naming, as many as fit."""

from __future__ import annotations

from collections.abc import Sequence

from benchround.screens.text import Line, Role, Span, width_of

GAP = 2


def foot_line(words: Sequence[tuple[str, str]], width: int) -> Line:
    """Keys and labels side by side; what does not fit is left out from the last but one on."""
    kept = list(words)
    while len(kept) > 1 and _wide(kept) > width:
        del kept[-2]
    spans: list[Span] = []
    for number, (key, label) in enumerate(kept):
        if number:
            spans.append((" " * GAP, Role.QUIET))
        spans += [(key, Role.KEY), (f" {label}", Role.QUIET)]
    return tuple(spans)


def _wide(words: Sequence[tuple[str, str]]) -> int:
    return sum(width_of(key) + 1 + width_of(label) for key, label in words) + GAP * (len(words) - 1)
