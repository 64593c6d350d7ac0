"""What a benchmark found: a ratio beside its limit, and how it is told."""

from __future__ import annotations

import os
import platform
import statistics
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path

Pairs = Sequence[tuple[float, float]]
"""Times of ours and of what it is held against, taken by turns."""


@dataclass(frozen=True, slots=True)
class Figure:
    """One line of the table.

    Attributes:
        what: what was measured, against what.
        value: the ratio or the amount.
        limit: what it must not be above; None where it is only told.
        unit: "x" for a ratio.
        detail: the times behind it.
    """

    what: str
    value: float
    limit: float | None
    unit: str = "x"
    detail: str = ""

    @property
    def met(self) -> bool:
        """Whether it is within its limit, as far as it is shown."""
        return self.limit is None or round(self.value, 2) <= self.limit

    @property
    def row(self) -> str:
        """The line of a Markdown table."""
        shown = f"{self.value:.2f}" if self.unit == "x" else f"{self.value:.0f}"
        met, limit = "", "none"
        if self.limit is not None:
            met, limit = "yes" if self.met else "no", f"{self.limit:g} {self.unit}"
        return f"| {self.what} | {shown} {self.unit} | {limit} | {met} | {self.detail} |"


HEAD = "| what | found | limit | met | behind it |\n|---|---|---|---|---|"


def ratio(what: str, pairs: Pairs, limit: float | None, said: str = "") -> Figure:
    """The least time of ours against the least of the other: what the machine's load adds is least.

    The middle one of the pairs' own ratios is told beside it, or `said` where there is only one.
    """
    ours, other = (min(pair[n] for pair in pairs) for n in (0, 1))
    middle = statistics.median(mine / theirs for mine, theirs in pairs)
    said = said or f"middle of {len(pairs)} ratios {middle:.2f}"
    detail = f"{_ms(ours)} against {_ms(other)}; {said}"
    return Figure(what, ours / other, limit, detail=detail)


def _ms(seconds: float) -> str:
    ms = seconds * 1000
    return f"{ms:.2f} ms" if ms < 10 else f"{ms:.0f} ms"


def machine() -> str:
    """The machine in a line: day, processor, system, Python, and how busy it was."""
    busy = ", ".join(f"{load:.1f}" for load in os.getloadavg())
    return (
        f"{date.today().isoformat()}; {_processor()}, {os.cpu_count()} cores; "
        f"{platform.system()} {platform.release()}; Python {platform.python_version()}; "
        f"load average {busy}"
    )


def _processor() -> str:
    try:
        lines = Path("/proc/cpuinfo").read_text("utf-8").splitlines()
    except OSError:
        return platform.processor() or "processor unknown"
    names = (line.partition(":")[2].strip() for line in lines if line.startswith("model name"))
    return next(names, platform.machine())
