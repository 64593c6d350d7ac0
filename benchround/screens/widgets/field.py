"""A field of a form: its label, what stands in it, its choices, and what is said beside it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import field

from benchround.core.frozen import dataclass
from benchround.screens.widgets.line_edit import LineEdit, line_of


@dataclass(frozen=True, slots=True)
class Choice:
    """One of the choices of a field: what it means, its name, and more words about it."""

    value: str
    name: str
    more: str = ""


Finder = Callable[[str], Sequence[Choice]]
"""From the letters typed to the choices that fit, the likeliest first."""


@dataclass(slots=True)
class Field:
    """One field.

    Attributes:
        id: its name in what the form gives.
        label: its words.
        default: what stands in it until something is typed.
        finder: gives its choices; None: anything can be typed.
        only: whether nothing but a choice will do.
        hint: words beside it.
        error: what is wrong with it; shown in place of the hint.
        hidden: not asked for now.
        wide: takes the whole line.
        figure: takes a number or a day, in which no question mark can stand: it asks for help.
        typed: what was typed; None while the default stands.
        letters: what was typed to find a choice by.
        picked: which of the choices was picked by hand.
        kept: it was brought back from before, and gives way to the first letter as a default does.
    """

    id: str
    label: str
    default: str = ""
    finder: Finder | None = None
    only: bool = False
    hint: str = ""
    error: str = ""
    hidden: bool = False
    wide: bool = False
    figure: bool = False
    typed: LineEdit | None = None
    letters: str = ""
    picked: int | None = None
    kept: bool = False
    _found: tuple[str, tuple[Choice, ...]] | None = field(default=None, repr=False)

    @property
    def text(self) -> str:
        """What stands in it."""
        return self.typed.text if self.typed is not None else self.default

    @property
    def touched(self) -> bool:
        """Whether something was typed."""
        return self.typed is not None

    @property
    def choices(self) -> tuple[Choice, ...]:
        """The choices that fit the letters typed."""
        if self.finder is None:
            return ()
        if self._found is None or self._found[0] != self.letters:
            self._found = (self.letters, tuple(self.finder(self.letters)))
        return self._found[1]

    @property
    def choice(self) -> Choice | None:
        """The choice taken: the one picked, else, where only a choice will do, the likeliest."""
        if not self.touched or not self.text.strip() or not self.choices:
            return None
        if self.picked is not None:
            return self.choices[self.picked]
        return self.choices[0] if self.only else None

    @property
    def value(self) -> str:
        """What the form gives for it: the choice taken where there is one, else the text."""
        taken = self.choice
        return taken.value if taken is not None else self.text.strip()

    def type(self, typed: str) -> None:
        """Put letters in; the first ones take the place of the default, or of what was kept."""
        before = None if self.kept else self.typed
        self._set((before or LineEdit()).put(typed))

    def edit(self, change: Callable[[LineEdit], LineEdit]) -> None:
        """Change the line; a default that is edited counts as typed."""
        self._set(change(self.typed if self.typed is not None else line_of(self.default)))

    def pick(self, by: int) -> bool:
        """Take the next choice or the one before; False where there is none."""
        if not self.choices:
            return False
        to = self._at() + by
        if not 0 <= to < len(self.choices):
            return False
        self.picked, self.kept = to, False
        self._write(self.choices[to])
        return True

    def settle(self) -> None:
        """Write the choice taken in full, as when the field is left."""
        taken = self.choice
        if taken is not None and taken.name != self.text:
            self._write(taken)

    def put(self, text: str) -> None:
        """Let a text stand in it as if it had been typed."""
        self._set(line_of(text))

    def bring_back(self, text: str) -> None:
        """Let stand again what was typed before; letters replace it, other keys edit it."""
        self.put(text)
        self.kept = True

    def find_with(self, finder: Finder) -> None:
        """Take other choices; what was typed stays."""
        self.finder, self._found = finder, None
        if self.picked is not None and self.picked >= len(self.choices):
            self.picked = None

    def reset(self) -> None:
        """Let the default stand again."""
        self.typed, self.letters, self.picked, self.error = None, "", None, ""
        self.kept = False

    def _at(self) -> int:
        if self.picked is not None:
            return self.picked
        if self.touched:
            return 0 if self.only else -1
        names = [choice.name for choice in self.choices]
        return names.index(self.default) if self.default in names else -1

    def _write(self, choice: Choice) -> None:
        self.typed = line_of(choice.name)
        self.picked = self.choices.index(choice)
        self.error = ""

    def _set(self, edited: LineEdit) -> None:
        if self.typed is None or edited.text != self.typed.text:
            self.letters, self.picked, self.error = edited.text, None, ""
        self.typed, self.kept = edited, False


def among(choices: Sequence[Choice]) -> Finder:
    """A finder over a short list: names that begin with the letters, then those that hold them."""

    def find(letters: str) -> Sequence[Choice]:
        wanted = letters.strip().casefold()
        if not wanted:
            return choices
        starts = [c for c in choices if c.name.casefold().startswith(wanted)]
        codes = [c for c in choices if c.value.casefold().startswith(wanted) and c not in starts]
        inside = [
            c for c in choices if wanted in c.name.casefold() and c not in starts and c not in codes
        ]
        return [*starts, *codes, *inside]

    return find


def plain_choices(names: Sequence[str]) -> Finder:
    """A finder over names that mean themselves."""
    return among([Choice(name, name) for name in names])
