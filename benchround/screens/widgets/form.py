"""A form: fields under one another, typed into with letters and left with tab."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence

from textual import events
from textual.message import Message

from benchround.screens.text import Line, Role, Span, clause, fit, line, width_of, wrap
from benchround.screens.widgets.field import Choice, Field
from benchround.screens.widgets.line_edit import LineEdit
from benchround.screens.widgets.paper import Paper, Sight

CHOICES_SHOWN = 5
LABEL_WIDE = 16
WIDE = 76
VALUE_WIDE = {0: 24, WIDE: 30}
NAME_WIDE, NAME_WIDE_IN_NARROW = 26, 20
HINT_LEAST = 14
"""A hint with less room than this goes on a line of its own."""
EDITS: Mapping[str, Callable[[LineEdit], LineEdit]] = {
    "backspace": LineEdit.back,
    "delete": LineEdit.delete,
    "left": lambda edit: edit.move(-1),
    "right": lambda edit: edit.move(1),
    "home": LineEdit.start,
    "end": LineEdit.end,
}
"""Keys that edit the line; they do in every field what they do everywhere."""


class Form(Paper, can_focus=True):
    """Fields, one of which is being typed into.

    Args:
        fields: the fields in their order.
    """

    class Changed(Message):
        """Something in the form is different now."""

    class Asked(Message):
        """Help was asked for with a question mark where none can be typed."""

    class Cut(Message):
        """What was pasted did not all have room."""

    def __init__(self, fields: Sequence[Field]) -> None:
        super().__init__(id="form")
        self.fields = tuple(fields)
        self._at = next((n for n, field in enumerate(self.fields) if not field.hidden), 0)
        self._top = 0

    @property
    def now(self) -> Field:
        """The field being typed into."""
        return self.fields[self._at]

    def field(self, name: str) -> Field:
        """A field by its name."""
        return next(field for field in self.fields if field.id == name)

    def has(self, name: str) -> bool:
        """Whether there is a field of that name."""
        return any(field.id == name for field in self.fields)

    def values(self) -> dict[str, str]:
        """What the form gives: every field that is asked for, by name."""
        return {field.id: field.value for field in self.fields if not field.hidden}

    def typed(self) -> dict[str, str]:
        """What was typed, by name; defaults are left out."""
        return {field.id: field.text for field in self.fields if field.touched}

    def restore(self, typed: Mapping[str, str]) -> None:
        """Put back what was typed before."""
        for field in self.fields:
            if field.id in typed:
                field.bring_back(typed[field.id])

    def go(self, name: str) -> None:
        """Go to a field by name."""
        self._leave()
        self._at = next(n for n, field in enumerate(self.fields) if field.id == name)
        self.redraw()

    def step(self, by: int) -> bool:
        """Go to the next field or the one before; False at the end of the form."""
        shown = [n for n, field in enumerate(self.fields) if not field.hidden]
        here = shown.index(self._at) if self._at in shown else 0
        to = here + by
        if not 0 <= to < len(shown):
            return False
        self._leave()
        self._at = shown[to]
        self.redraw()
        return True

    def pick(self, by: int) -> None:
        """Take the next choice of the field, or go to the next field where there is none left."""
        if self.now.pick(by):
            self.changed()
        else:
            self.step(by)

    def empty(self) -> None:
        """Empty the field; an empty one takes its default again."""
        if self.now.text:
            self.now.put("")
        else:
            self.now.reset()
        self.changed()

    def changed(self) -> None:
        """Draw anew and tell the screen."""
        self.redraw()
        self.post_message(self.Changed())

    def redraw(self) -> None:
        """Draw anew; the number of lines may have changed."""
        self._follow()
        self.rewrite(layout=True)

    def errors(self, faults: Mapping[str, str]) -> None:
        """Show what is wrong beside the fields, and go to the first of them."""
        for field in self.fields:
            field.error = faults.get(field.id, "")
        wrong = [n for n, field in enumerate(self.fields) if field.error and not field.hidden]
        if wrong:
            self._at = wrong[0]
        self.redraw()

    def _leave(self) -> None:
        self.now.settle()
        self.post_message(self.Changed())

    def on_key(self, event: events.Key) -> None:
        """Type into the field."""
        edit = EDITS.get(event.key)
        if edit is not None:
            self.now.edit(edit)
        elif event.character == "?" and self.now.figure:
            event.stop()
            self.post_message(self.Asked())
            return
        elif event.is_printable and event.character:
            self.now.type(event.character)
        else:
            return
        event.stop()
        event.prevent_default()
        self.changed()

    def on_paste(self, event: events.Paste) -> None:
        """Take pasted text as typed."""
        event.stop()
        room = LineEdit(self.now.text).takes(event.text)
        self.now.type(event.text)
        self.changed()
        if not room:
            self.post_message(self.Cut())

    def on_resize(self) -> None:
        """Keep the field in sight."""
        self.redraw()

    def lines(self, width: int) -> Sequence[Line]:
        """Every field, with choices under the one being typed into."""
        return [words for number, words in self._numbered(width)]

    def _numbered(self, width: int) -> Iterator[tuple[int, Line]]:
        for number, field in enumerate(self.fields):
            if not field.hidden:
                here = number == self._at
                for words in field_lines(field, width, here=here):
                    yield number, words

    def _follow(self) -> None:
        size = self.size
        if not size.height:
            return
        numbers = [number for number, _ in self._numbered(size.width)]
        mine = [y for y, number in enumerate(numbers) if number == self._at]
        if mine:
            self._top = max(self._top, mine[-1] - size.height + 1)
            self._top = min(self._top, mine[0])
        self._top = max(0, min(self._top, len(numbers) - size.height))

    def sight(self, width: int, height: int) -> Sight:
        """The lines in sight."""
        lines = self.written(width)[self._top : self._top + height]
        return [(words, None) for words in lines]


def field_lines(field: Field, width: int, *, here: bool) -> Iterator[Line]:
    """A field as it is drawn.

    Args:
        field: the field.
        width: columns.
        here: whether it is being typed into.
    """
    wide = max(columns for least, columns in VALUE_WIDE.items() if width >= least)
    wide = max(wide, width - 2 - LABEL_WIDE) if field.wide else wide
    lead = ("> " if here else "  ", Role.KEY)
    label = (fit(field.label, LABEL_WIDE - 1) + " ", Role.STRONG if here else Role.QUIET)
    value = _value(field, wide, here=here)
    said = f"! {field.error}" if field.error else field.hint
    role = Role.BAD if field.error else Role.QUIET
    room = width - 2 - LABEL_WIDE - wide - 2
    beside = said if width_of(said) <= room and room >= HINT_LEAST else ""
    if said and not beside and not field.error and not here and room >= HINT_LEAST:
        beside = clause(said, room)
    yield (lead, label, *value, ("  " + beside, role))
    if said and not beside and (here or field.error):
        indent = " " * (2 + LABEL_WIDE)
        for words in wrap(said, max(HINT_LEAST, width - len(indent))):
            yield line((indent + words, role))
    if here:
        yield from _choice_lines(field, width)


def _value(field: Field, wide: int, *, here: bool) -> tuple[Span, ...]:
    if not here:
        return ((fit(field.text, wide, typed=True), Role.FIELD),)
    if field.typed is None:
        return ((fit(field.default, wide - 1, typed=True), Role.FIELD), (" ", Role.CARET))
    text, at = field.typed.text, field.typed.at
    room = wide - 1
    start = max(0, at - room)
    before, under, after = text[start:at], text[at : at + 1] or " ", text[at + 1 : start + room + 1]
    while width_of(before) > room:
        before = before[1:]
    rest = fit(after, max(0, wide - width_of(before) - width_of(under)), typed=True)
    return ((before, Role.FIELD), (under, Role.CARET), (rest, Role.FIELD))


def _choice_lines(field: Field, width: int) -> Iterator[Line]:
    choices = field.choices
    if not choices:
        if field.finder is not None and field.touched and field.text.strip() and field.only:
            yield line((" " * (2 + LABEL_WIDE) + "nothing goes by these letters", Role.BAD))
        return
    taken = field.choice
    at = choices.index(taken) if taken in choices else -1
    start = max(0, min(at - CHOICES_SHOWN + 1, len(choices) - CHOICES_SHOWN))
    for choice in choices[start : start + CHOICES_SHOWN]:
        yield _choice_line(choice, width, taken is choice)
    left = len(choices) - CHOICES_SHOWN
    if left > 0:
        yield line((" " * (2 + LABEL_WIDE) + f"{left} more: type on, or go down", Role.QUIET))


def _choice_line(choice: Choice, width: int, taken: bool) -> Line:
    lead = " " * LABEL_WIDE + ("> " if taken else "  ")
    room = width - len(lead)
    wide = NAME_WIDE if width >= WIDE else NAME_WIDE_IN_NARROW
    name = fit(choice.name, min(room, wide))
    more = fit(f" {clause(choice.more, room - wide - 1) or choice.more}", max(0, room - wide))
    return line(lead, (name, Role.STRONG if taken else Role.INK), (more, Role.QUIET))
