"""What stands on a label, and which labels are not printed yet.

A printed label is remembered as a record that leaves no other trace: kind `done`, about the batch,
with the figures `family` ("label") and `text`, what was printed. Days that move with the weather
are left out of that text, or every label would be out of date every morning.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import date
from enum import StrEnum

from benchround.core.batch.batch import Batch
from benchround.core.dates import say_date
from benchround.core.errors import UnknownNameError
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import BEFORE, WAITING, Stage
from benchround.core.record import Draft, Kind, Record, live
from benchround.core.season import Season
from benchround.core.seed.waiting import forecast
from benchround.feeds.letters import one_line

FAMILY = "label"
"""The family a record of a printed label carries."""

BEGUN_WORDS = {
    Kind.SOWN: "sown",
    Kind.PLANTED_BULBS: "planted",
    Kind.FOUND: "found",
    Kind.CHILLED: "in the cold from",
    Kind.CHITTED: "chitted",
    Kind.PLANNED: "planned",
}


class Standing(StrEnum):
    """How a label stands to what was printed before."""

    NEW = "new"
    CHANGED = "changed"
    LOST = "lost"
    PRINTED = "printed already"


@dataclass(frozen=True, slots=True)
class Label:
    """One label.

    Attributes:
        front: crop and variety.
        back: sowing day, batch, number sown; each a line.
        look: the day to look for seedlings from; empty where none are waited for.
        copies: how many are wanted, one a tray.
    """

    batch: str
    front: tuple[str, ...]
    back: tuple[str, ...]
    look: str
    copies: int
    standing: Standing

    @property
    def settled(self) -> str:
        """What is remembered of it: everything but the day to look."""
        return "\n".join((*self.front, *self.back))

    @property
    def lines(self) -> tuple[str, ...]:
        """Everything on it, line by line."""
        return (*self.front, *self.back, *((self.look,) if self.look else ()))


def labels_of(
    season: Season,
    records: Iterable[Record],
    day: date,
    names: Sequence[str] = (),
) -> tuple[Label, ...]:
    """The labels of a season's batches, in order of their ids.

    Args:
        season: the season.
        records: its records, in which printed labels are remembered.
        day: the day the forecast of seedlings is made.
        names: only these batches; empty: all that stand somewhere, plans left out.

    Raises:
        UnknownNameError: a name is no batch.
    """
    for name in names:
        if name not in season.batches:
            raise UnknownNameError(f"There is no batch '{name[:40]}': look at its id again.")
    wanted = [season.batches[name] for name in dict.fromkeys(names)] if names else _standing(season)
    printed = _printed(records)
    return tuple(_label(season, batch, printed.get(batch.id), day) for batch in wanted)


def due(labels: Iterable[Label]) -> tuple[Label, ...]:
    """The labels to be printed: new ones, changed ones, and those lost since."""
    return tuple(label for label in labels if label.standing is not Standing.PRINTED)


def printed_drafts(labels: Iterable[Label]) -> tuple[Draft, ...]:
    """The records that remember labels as printed."""
    return tuple(
        Draft(Kind.DONE, label.batch, {"family": FAMILY, "text": label.settled}) for label in labels
    )


def label_text(labels: Iterable[Label], width: int = 0) -> Iterator[str]:
    """Labels as lines of plain text for a label printer, an empty line between two.

    Args:
        labels: the labels, each as often as it has copies.
        width: letters a line holds; longer lines are broken, 0: as long as they are.
    """
    first = True
    for label in labels:
        for _ in range(label.copies):
            if not first:
                yield ""
            first = False
            for line in label.lines:
                yield from _broken(line, width)


def _standing(season: Season) -> list[Batch]:
    return [
        season.batches[name]
        for name in sorted(season.batches)
        if any(
            not part.ended and (part.stage not in BEFORE or part.stage is Stage.STRATIFYING)
            for part in season.batches[name].parts
        )
    ]


def _printed(records: Iterable[Record]) -> dict[str, Record]:
    """The latest printing of each batch's label."""
    found: dict[str, Record] = {}
    for record in live(tuple(records)):
        if record.kind is Kind.DONE and record.text("family") == FAMILY:
            found[record.about] = record
    return found


def _label(season: Season, batch: Batch, printed: Record | None, day: date) -> Label:
    crop = season.crop(batch.crop)
    variety = one_line(batch.variety)
    label = Label(
        batch=batch.id,
        front=(one_line(crop.name), *((variety,) if variety else ())),
        back=tuple(_back(batch)),
        look=_look(season, batch, day),
        copies=_trays(batch),
        standing=Standing.NEW,
    )
    if printed is None:
        return label
    lost = batch.main.last.get(Kind.LABEL_LOST)
    if lost is not None and lost.order > printed.order:
        standing = Standing.LOST
    elif printed.text("text") != label.settled:
        standing = Standing.CHANGED
    else:
        standing = Standing.PRINTED
    return Label(label.batch, label.front, label.back, label.look, label.copies, standing)


def _back(batch: Batch) -> Iterator[str]:
    kind = Kind.SOWN if batch.sowing is not None else batch.records[0].kind
    day = batch.sowing.day if batch.sowing is not None else batch.begun
    yield f"{BEGUN_WORDS.get(kind, str(kind))} {say_date(day)}"
    number = _number(batch)
    yield f"{one_line(batch.id)}, {number}" if number else one_line(batch.id)


def _number(batch: Batch) -> str:
    sowing = batch.sowing
    seeds = batch.tally.sown if sowing is not None else batch.records[0].count("seeds")
    if seeds:
        more = f" + {sowing.again_seeds}" if sowing is not None and sowing.again_seeds else ""
        return f"{seeds}{more} seeds"
    if sowing is not None and sowing.row_m:
        return f"{sowing.row_m:g} m row"
    count = batch.records[0].count()
    if count:
        return f"{count} bulbs" if batch.records[0].kind is Kind.PLANTED_BULBS else str(count)
    return ""


def _look(season: Season, batch: Batch, day: date) -> str:
    if batch.main.stage not in WAITING:
        return ""
    waiting = forecast(season, batch, batch.main, season.crop(batch.crop), day)
    if waiting is None or waiting.look_from is None:
        return ""
    return f"look from {say_date(waiting.look_from)}"


def _trays(batch: Batch) -> int:
    sown = batch.main.last.get(Kind.SOWN)
    trays = sown.count("trays") if sown is not None else None
    return min(max(trays or 1, 1), 100)


def _broken(line: str, width: int) -> Iterator[str]:
    if width <= 0 or len(line) <= width:
        yield line
        return
    words, held = line.split(" "), ""
    for word in words:
        if held and len(held) + 1 + len(word) > width:
            yield held
            held = ""
        held = f"{held} {word}" if held else word
        while len(held) > width:
            yield held[:width]
            held = held[width:]
    if held:
        yield held
