"""The lifecycle table drawn as a page, from the table itself."""

from __future__ import annotations

from benchround.core.lifecycle import CARE, NEXT, TABLE, Stage
from benchround.core.record import Kind


def lifecycle_page() -> str:
    """The page `docs/lifecycle.md`: every stage, what may be recorded there, and where it leads."""
    lines = [
        "# The life of a batch",
        "",
        "Drawn from the table in `benchround/core/lifecycle.py`; a test keeps the two alike.",
        "A record that is not listed for a stage is refused and nothing changes.",
        "",
        "A batch begins with: "
        + ", ".join(f"*{kind}* (then {to})" for (at, kind), to in NEXT.items() if at is None)
        + ".",
        "",
        "| stage | moves it on | leaves it as it is |",
        "|---|---|---|",
    ]
    for stage in Stage:
        moves = [
            f"*{kind}* -> {NEXT[(stage, kind)]}"
            for kind in TABLE
            if NEXT.get((stage, kind), stage) is not stage
        ]
        keeps = [str(kind) for kind in TABLE if NEXT.get((stage, kind)) is stage]
        care = len(keeps) - len(_short(keeps))
        lines.append(
            f"| {stage} | {'<br>'.join(moves) or '-'} | {', '.join(_short(keeps)) or '-'}"
            f"{f' and {care} kinds of care and notes' if care else ''} |"
        )
    lines += [
        "",
        "Some or all: *lost* and *composted* end a batch only when they take every plant; a part",
        "that stays behind when others are planted out becomes spares, with a stage of its own.",
        "",
    ]
    return "\n".join(lines)


LEFT_OUT = frozenset(
    map(str, (*CARE, Kind.NOTED, Kind.DONE, Kind.PUT_OFF, Kind.WASHED, Kind.LOOKED))
)
"""Care and notes, which stand in nearly every row and are only counted there."""


def _short(kinds: list[str]) -> list[str]:
    return [kind for kind in kinds if kind not in LEFT_OUT]
