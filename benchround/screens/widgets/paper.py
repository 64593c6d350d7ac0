"""Paper: a widget that draws lines of words, each with a role that the theme gives a colour.

A line drawn once is kept with its colours: what is drawn again looks for it first. What changes is
held against what was drawn before, and only lines that differ are drawn.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import Any, NamedTuple, Self

from rich.segment import Segment
from textual.geometry import Region, Size, Spacing
from textual.strip import Strip
from textual.widget import Widget

from benchround.screens.drawn import strip
from benchround.screens.text import BLANK, Line, Role, plain, plain_letters_only
from benchround.screens.theme import role_styles, rule_style

MOST_KEPT = 2_000
"""Lines kept drawn: several screens of any size."""
ABOVE, BESIDE = "-", "| "
RULE_ABOVE, RULE_BESIDE = Spacing(top=1), Spacing(left=2)
FRAMES = (Spacing(), RULE_ABOVE, RULE_BESIDE)
"""What stands around paper: nothing, a rule above it, or one to its left with a blank."""


Sight = Sequence[tuple[Line, Role | None]]
"""Lines in sight, each with the role of the whole line where it has one."""


class _Ready(NamedTuple):
    """Lines as they go to the screen.

    Attributes:
        ground: what they are drawn for besides their words.
        strips: the lines as they were drawn, held so that none takes the place of another.
        finished: each of them with the colours of the terminal and the rule beside it.
        lines: all, with the rule above them.
    """

    ground: tuple[tuple[Size, str], Spacing]
    strips: list[Strip]
    finished: list[Strip]
    lines: list[Strip]


class Paper(Widget):
    """Lines of words. What does not fit into its height is not drawn.

    A subclass gives `lines`; they are asked for again after `rewrite`. One that shows a part of
    them, or marks a line, gives `sight` too.
    """

    def __init__(self, *, id: str | None = None, classes: str | None = None) -> None:
        super().__init__(id=id, classes=classes)
        self._written: tuple[int, Sequence[Line]] | None = None
        self._seen: tuple[tuple[Size, str], list[Strip]] | None = None
        self._ready: _Ready | None = None

    def lines(self, width: int) -> Sequence[Line]:
        """The lines at a width, from the top."""
        return ()

    def sight(self, width: int, height: int) -> Sight:
        """The lines in sight; fewer than the height leave the rest blank."""
        return [(words, None) for words in self.written(width)[:height]]

    def written(self, width: int) -> Sequence[Line]:
        """The lines at a width, kept until the next `rewrite`."""
        if self._written is None or self._written[0] != width:
            self._written = (width, self.lines(width))
        return self._written[1]

    def rewrite(self, *, layout: bool = False) -> None:
        """Ask for the lines again and draw those that differ.

        Args:
            layout: the number of lines may have changed; where it has, the screen is laid out anew.
        """
        before, width = self._written, self.size.width
        self._written = None
        if not width or before is None or before[0] != width:
            self.refresh(layout=layout)
        elif layout and len(self.written(width)) != len(before[1]):
            self.refresh(layout=True)
        else:
            self.draw_changes()

    def draw_changes(self) -> None:
        """Draw the lines in sight that are not as they were drawn."""
        before, ground = self._seen, self._ground
        now = self._draw(*ground)
        if before is None or before[0] != ground:
            self.refresh()
        else:
            differing = [y for y, drawn in enumerate(now) if drawn is not before[1][y]]
            for first, after in _stretches(differing):
                self.refresh(Region(0, first, ground[0].width, after - first))
        self._seen = ground, now

    def refresh(self, *regions: Region, **how: Any) -> Self:
        """Draw anew, all of it or regions; after all of it nothing is known to be drawn."""
        if not regions:
            self._seen = None
        return super().refresh(*regions, **how)

    @property
    def text(self) -> str:
        """What is written, as plain text."""
        return plain(self.written(self.size.width))

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """As many lines as there are."""
        return len(self.written(width)) if width else 0

    def render_line(self, y: int) -> Strip:
        """One line, drawn."""
        return self._drawn()[y]

    def render_lines(self, crop: Region) -> list[Strip]:
        """The lines of a region, with the rule that the style sheet sets above or beside them."""
        frame = self.gutter
        if frame not in FRAMES:
            return super().render_lines(crop)
        strips = self._drawn()
        if self._ready is None or self._ready.strips is not strips:
            self._ready = self._made_ready(strips, frame)
        found = self._ready.lines[crop.y : crop.bottom]
        if crop.column_span == (0, self.outer_size.width):
            return found
        return [one.crop(*crop.column_span) for one in found]

    @property
    def _ground(self) -> tuple[Size, str]:
        """What lines are drawn for besides their words."""
        return self.size, self.app.theme

    def _drawn(self) -> list[Strip]:
        ground = self._ground
        if self._seen is None or self._seen[0] != ground:
            self._seen = ground, self._draw(*ground)
        return self._seen[1]

    def _draw(self, size: Size, look: str) -> list[Strip]:
        width, height = size
        letters = plain_letters_only()
        strips = [
            _strip(words, width, look, whole, letters) for words, whole in self.sight(width, height)
        ]
        return strips + [_strip(BLANK, width, look, None, letters)] * (height - len(strips))

    def _made_ready(self, strips: list[Strip], frame: Spacing) -> _Ready:
        """The lines with what stands around them; those ready before are not made anew."""
        ground, before = (self._ground, frame), self._ready
        known: dict[int, Strip] = {}
        if before is not None and before.ground == ground:
            known = dict(zip(map(id, before.strips), before.finished, strict=True))
        fresh = [strip for strip in strips if id(strip) not in known]
        if fresh:
            known.update(zip(map(id, fresh), self._finished(fresh, frame), strict=True))
        finished = [known[id(strip)] for strip in strips]
        lines = [*self._above(), *finished] if frame == RULE_ABOVE else finished
        return _Ready(ground, strips, finished, lines)

    def _above(self) -> list[Strip]:
        return self._finished([_rule(ABOVE * self.size.width, self.app.theme)], RULE_ABOVE)

    def _finished(self, strips: list[Strip], frame: Spacing) -> list[Strip]:
        if frame == RULE_BESIDE:
            strips = [Strip.join((_rule(BESIDE, self.app.theme), one)) for one in strips]
        ground = self.background_colors[1]
        for colours in self.get_line_filters():
            strips = [one.apply_filter(colours, ground) for one in strips]
        return strips


@lru_cache(maxsize=MOST_KEPT)
def _strip(words: Line, width: int, look: str, whole: Role | None, plain_letters: bool) -> Strip:
    return strip(words, width, role_styles(look).__getitem__, whole=whole)


@lru_cache(maxsize=8)
def _rule(signs: str, look: str) -> Strip:
    return Strip([Segment(signs, rule_style(look))], len(signs))


def _stretches(numbers: Sequence[int]) -> Iterator[tuple[int, int]]:
    """Neighbouring numbers as stretches: the first, and the one after the last."""
    first = after = -1
    for number in numbers:
        if number != after:
            if after > first:
                yield first, after
            first = number
        after = number + 1
    if after > first:
        yield first, after
