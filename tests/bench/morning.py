"""The sample's morning by keys only: docs/a_morning_in_keys.md.

    python -m tests.bench.morning

The program is started as a grower starts it, in a pseudo-terminal of 80 by 24. Keys are chosen by
what stands on the screen, and every key is timed from being written to the last byte drawn for it.
"""

from __future__ import annotations

import re
import statistics
import sys
from dataclasses import dataclass, field
from pathlib import Path

from tests.bench.figures import machine
from tests.terminal.program import ROOT, Program, program

PAGE = ROOT / "docs" / "a_morning_in_keys.md"
TEXT = Path(__file__).with_name("morning_text.md")
COLUMNS, LINES, MOST_KEYS = 80, 24, 600
QUIET_S = 0.3
"""When nothing is drawn for so long, the answer to a key is complete."""
NAMES = {
    b" ": "space",
    b"\r": "enter",
    b"\t": "tab",
    b"\x1b": "esc",
    b"\x1b[B": "down",
    b"\x1b[H": "home",
    b"\x0b": "ctrl+k",
    b"\x13": "ctrl+s",
    b"\x11": "ctrl+q",
}
TO_DO = re.compile(r"^> [ *]?(due|overdue|late)\b")
FIELD = re.compile(r"^> (?P<label>.{1,16})(?P<rest>.*)$")
READ_FIRST = "ctrl+k says that you have read it"
TYPED_SIGN = "a sign in a field"
TYPED = {"lowest, C": "9", "highest, C": "21", "into": "bed 2", "stem, mm": "9"}
"""What the grower says; where a count is asked for, it is the number told above."""


@dataclass(slots=True)
class Morning:
    """One morning, key by key.

    Attributes:
        screens: the program.
        keys: the name of each key, and how long its answer took.
        told: what the grower did, with how many keys.
        tried: kinds of task that are not ticked together.
    """

    screens: Program
    keys: list[tuple[str, float]] = field(default_factory=list)
    told: list[tuple[str, int]] = field(default_factory=list)
    tried: set[str] = field(default_factory=set)

    @property
    def lines(self) -> list[str]:
        """What stands on the screen."""
        return self.screens.cells.text.splitlines()

    @property
    def here(self) -> str:
        """The line the cursor stands on."""
        return next((line for line in self.lines if line.startswith(">")), "")

    @property
    def on_a_sheet(self) -> bool:
        """Whether a sheet lies on the round."""
        return " save" in self.lines[-1]

    @property
    def left(self) -> int:
        """How many tasks are to be done, as the head of the round says."""
        found = re.search(r"(\d+) to do", self.lines[0])
        return int(found[1]) if found else -1

    @property
    def said(self) -> str:
        """What the program said last, of what was recorded."""
        words = " ".join(self.lines[-4:-1])
        found = re.search(r"Recorded: .*", words)
        return found[0] if found else ""

    def press(self, key: bytes) -> None:
        """Press a key and wait for its answer.

        Raises:
            RuntimeError: there were more keys than any morning has.
        """
        if len(self.keys) >= MOST_KEYS:
            raise RuntimeError(f"the round is not done after {MOST_KEYS} keys:\n{self.text}")
        self.keys.append((NAMES.get(key, key.decode()), self.screens.answer(key, QUIET_S)))

    @property
    def text(self) -> str:
        """The screen as text."""
        return self.screens.cells.text

    def do_all(self) -> None:
        """Tick until nothing is to be done any more."""
        while self.left:
            said, begun, row = self.said, len(self.keys), self.here
            self._do_one()
            if not self.on_a_sheet:
                self._note(row, len(self.keys) - begun, self.said if self.said != said else "")

    def _do_one(self) -> None:
        if not TO_DO.match(self.here):
            self.press(b"\x1b[H")
            return
        kind = self._kind(self.here)
        alike = sum(self._kind(line) == kind for line in self.lines[3:] if _is_task(line))
        if alike > 1 and kind not in self.tried:
            self.tried.add(kind)
            self.press(b"f")
        self.press(b" ")
        if "*" in self.here[:3]:  # not all of them can be ticked as they stand
            self.press(b"\x1b")
            return
        if self.on_a_sheet:
            self._fill_in()

    def _fill_in(self) -> None:
        for _ in range(8):
            if READ_FIRST in self.text:
                self.press(b"\x0b")
                if not self.on_a_sheet:  # nothing was to be filled in
                    return
            needed = next((n for n, line in enumerate(self.lines) if " needed" in line), None)
            if needed is not None:
                self._type_into(self.lines[needed][2:18].strip())
            self.press(b"\x13" if "ctrl+s save" in self.lines[-1] else b"\r")
            if not self.on_a_sheet:
                return
        raise RuntimeError(f"this sheet could not be saved:\n{self.text}")

    def _type_into(self, label: str) -> None:
        for _ in range(12):
            if self.here[2:18].strip() == label:
                break
            self.press(b"\t")
        for sign in TYPED.get(label, self._number_told()):
            self.press(sign.encode())

    def _number_told(self) -> str:
        """The first number of the instruction: as many as are said to be up, or to be moved."""
        found = re.search(
            r"(?:about |\b)(\d+)(?: up| in| plants|$| -|\.)", " ".join(self.lines[:4])
        )
        return found[1] if found else "1"

    def _kind(self, line: str) -> str:
        """The first word of an instruction, such as "Water"."""
        return line[40:].split(" ")[0].rstrip(":")

    def _note(self, row: str, keys: int, said: str) -> None:
        done = said.removesuffix(" (u takes it back).") or "marked, and to be done one by one"
        self.told.append((f"{' '.join(row[1:].split())}: {done}", keys))


def _is_task(line: str) -> bool:
    return bool(re.match(r"^[> ][ *](due|overdue|late)\b", line))


def _page(morning: Morning, first: str, painted_s: float) -> str:
    """The page from what was measured."""
    times = [taken * 1000 for _, taken in morning.keys]
    kinds: dict[str, list[float]] = {}
    for name, taken in morning.keys:
        kinds.setdefault(_word(name), []).append(taken * 1000)
    table = "\n".join(
        f"| {name} | {len(taken)} | {statistics.median(taken):.0f} | {max(taken):.0f} |"
        for name, taken in sorted(kinds.items(), key=lambda one: -len(one[1]))
    )
    doings = "\n".join(
        f"{n}. {keys} keys. {words}" for n, (words, keys) in enumerate(morning.told, 1)
    )
    every = " ".join(f"{name} {taken * 1000:.0f}," for name, taken in morning.keys).rstrip(",")
    return TEXT.read_text("utf-8").format(
        machine=machine(),
        painted=f"{painted_s * 1000:.0f}",
        keys=len(times),
        typed=sum(_word(name) == TYPED_SIGN for name, _ in morning.keys),
        median=f"{statistics.median(times):.0f}",
        most=f"{max(times):.0f}",
        tenth=f"{sorted(times)[len(times) * 9 // 10]:.0f}",
        table=table,
        first=first,
        last=morning.text,
        doings=doings,
        every=every,
    )


def _word(name: str) -> str:
    return name if name == "f" or len(name) > 1 else TYPED_SIGN


def main() -> None:
    """Drive the morning and write the page."""
    with program([sys.executable, "-m", "benchround", "--sample"], COLUMNS, LINES) as screens:
        painted_s = screens.wait_for("all keys")
        screens.taken_over()
        morning = Morning(screens)
        first = morning.text
        morning.do_all()
        page = _page(morning, first, painted_s)
        screens.write(b"\x11")
        screens.end()
    PAGE.write_text(page, "utf-8")
    print(f"{len(morning.keys)} keys; {PAGE.relative_to(ROOT)} is written")


if __name__ == "__main__":
    main()
