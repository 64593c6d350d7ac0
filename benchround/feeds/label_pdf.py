"""Labels as a PDF ready to print: cut out and stuck in, or stuck on from sheets."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from benchround.core.errors import InputError
from benchround.core.progress import Progress, told, unheard
from benchround.feeds.fitting import Fitted
from benchround.feeds.label_sheets import Sheet, Sides, Spot, spots
from benchround.feeds.labels import Label
from benchround.feeds.pdf_text import Ink
from benchround.feeds.qr import LEAST_MODULE_MM, QUIET, qr_rows

PAD_MM = 1.0
LARGEST_PT = 16.0
BACK_LARGEST_PT = 11.0
BACK_UNBROKEN_PT = 6.0
"""From this size on a line of the back is not broken: a day is read at one glance."""
MOST_CODE_MM = 15.0
CROP_SHARES = (0.55, 0.4, 0.3)
"""Share of a front's height the crop has, less where the variety is long (our proposal)."""
EASY_PT = 7.0
"""Letters a variety should have before the crop gives way (our proposal)."""
FRONT_SHARE = 0.55
"""Share of a one-sided label's height its front has (our proposal)."""
MOST_LABELS = 20_000

Box = tuple[float, float, float, float]
"""Left, top, width and height in mm."""


def labels_pdf(
    labels: Sequence[Label],
    sheet: Sheet,
    day: date,
    *,
    qr: bool = False,
    ink: Ink | None = None,
    progress: Progress = unheard,
) -> tuple[bytes, tuple[str, ...]]:
    """The labels on sheets of paper, and remarks on letters and codes.

    Args:
        labels: each is printed as often as it has copies.
        sheet: paper and places.
        day: the day the file says it was made.
        qr: whether to print each batch's id as a QR code too.
        ink: what to write with; None: the best typefaces at hand.
        progress: told of the sheets.

    Raises:
        InputError: there are no labels or far too many, or QR codes cannot be made.
    """
    pieces = [label for label in labels for _ in range(label.copies)]
    if not pieces:
        raise InputError("There is no label to print: ask for --all or name a batch.")
    if len(pieces) > MOST_LABELS:
        raise InputError(f"{len(pieces)} labels are too many for one file: name fewer batches.")
    with ink or Ink(sheet.paper, day, "Labels") as pen:
        by_sheet: dict[int, list[tuple[Label, Spot]]] = {}
        for label, spot in zip(pieces, spots(sheet, len(pieces)), strict=True):
            by_sheet.setdefault(spot.sheet, []).append((label, spot))
        for placed in told(tuple(by_sheet.values()), progress, every=1):
            _page(pen, sheet, placed, qr=qr)
        return pen.data(), pen.remarks


def _page(pen: Ink, sheet: Sheet, placed: Sequence[tuple[Label, Spot]], *, qr: bool) -> None:
    pen.page()
    for label, spot in placed:
        _one(pen, sheet, label, spot, qr=qr)
    if sheet.sides is Sides.TWO:
        pen.page()
        for label, spot in placed:
            _edges(pen, sheet, spot.back_left_mm, spot.top_mm)
            _back(pen, label, _inner(sheet, spot.back_left_mm, spot.top_mm, back=True), qr=qr)


def _one(pen: Ink, sheet: Sheet, label: Label, spot: Spot, *, qr: bool) -> None:
    left, top = spot.left_mm, spot.top_mm
    _edges(pen, sheet, left, top)
    if sheet.sides is Sides.FOLDED:
        fold = top + sheet.height_mm
        _front(pen, label, _inner(sheet, left, fold))
        # Turned by half a turn about the middle of the fold, it reads upright once folded back;
        # its foot must then lie over the front's foot, which is the right end before turning.
        with pen.upside_down(left + sheet.width_mm / 2, fold):
            _back(pen, label, _inner(sheet, left, fold, back=True), qr=qr)
    elif sheet.sides is Sides.TWO:
        _front(pen, label, _inner(sheet, left, top))
    else:
        _both(pen, label, _inner(sheet, left, top), qr=qr)


def _inner(sheet: Sheet, left: float, top: float, *, back: bool = False) -> Box:
    """The part of a label that may be printed; seen from behind the foot is at the other end."""
    start = left if back else left + sheet.foot_mm
    return (
        start + PAD_MM,
        top + PAD_MM,
        sheet.width_mm - sheet.foot_mm - 2 * PAD_MM,
        sheet.height_mm - 2 * PAD_MM,
    )


def _edges(pen: Ink, sheet: Sheet, left: float, top: float) -> None:
    if not sheet.cut:
        return
    right, bottom = left + sheet.width_mm, top + sheet.laid_mm
    for start, end in (
        ((left, top), (right, top)),
        ((right, top), (right, bottom)),
        ((right, bottom), (left, bottom)),
        ((left, bottom), (left, top)),
    ):
        pen.rule(*start, *end)
    if sheet.sides is Sides.FOLDED:
        fold = top + sheet.height_mm
        pen.rule(left, fold, right, fold, dashed=True)


def _front(pen: Ink, label: Label, box: Box) -> None:
    left, top, width, height = box
    crop, *variety = label.front
    name, rest = _name_and_variety(pen, crop, variety, width, height)
    pen.remark_size(name)
    pen.remark_size(rest)
    at = top + max(0.0, (height - name.height_mm - rest.height_mm) / 2)
    pen.lines(name.lines, left, at, name.size_pt, bold=True)
    pen.lines(rest.lines, left, at + name.height_mm, rest.size_pt)


def _name_and_variety(
    pen: Ink, crop: str, variety: Sequence[str], width: float, height: float
) -> tuple[Fitted, Fitted]:
    """Crop and variety in one box; a long variety gets room from the crop."""
    if not variety:
        return pen.fit([crop], width, height, LARGEST_PT, bold=True), Fitted((), LARGEST_PT)
    found: list[tuple[Fitted, Fitted]] = []
    for share in CROP_SHARES:
        name = pen.fit([crop], width, height * share, LARGEST_PT, bold=True)
        rest = pen.fit(variety, width, height - name.height_mm, LARGEST_PT)
        found.append((name, rest))
        if rest.size_pt >= EASY_PT:
            break
    return max(found, key=lambda pair: min(pair[0].size_pt, pair[1].size_pt))


def _back(pen: Ink, label: Label, box: Box, *, qr: bool) -> None:
    left, top, width, height = box
    if qr:
        width = _code(pen, label.batch, box)
    said = (*label.back, *((label.look,) if label.look else ()))
    text = pen.fit(said, width, height, BACK_LARGEST_PT, unbroken_pt=BACK_UNBROKEN_PT)
    pen.remark_size(text)
    at = top + max(0.0, (height - text.height_mm) / 2)
    pen.lines(text.lines, left, at, text.size_pt)


def _both(pen: Ink, label: Label, box: Box, *, qr: bool) -> None:
    left, top, width, height = box
    if qr:
        width = _code(pen, label.batch, box)
    split = height * FRONT_SHARE
    _front(pen, label, (left, top, width, split))
    _back(pen, label, (left, top + split, width, height - split), qr=False)


def _code(pen: Ink, text: str, box: Box) -> float:
    """Draw a QR code at the right end of a box; the width that is left beside it."""
    left, top, width, height = box
    rows = qr_rows(text)
    across = len(rows) + 2 * QUIET
    side = min(height + 2 * PAD_MM - 0.5, width / 2, MOST_CODE_MM)
    module = side / across
    if module < LEAST_MODULE_MM:
        pen.remark(
            f"A QR code's squares are {module:.2f} mm, below the {LEAST_MODULE_MM:g} mm a "
            "telephone reads well: make the labels higher."
        )
    start_x = left + width - side + QUIET * module
    start_y = top + (height - side) / 2 + QUIET * module
    for down, row in enumerate(rows):
        for first, last in _runs(row):
            pen.fill(
                start_x + first * module, start_y + down * module, (last - first) * module, module
            )
    return width - side


def _runs(row: Sequence[bool]) -> list[tuple[int, int]]:
    """Runs of black squares, so that no hair of white shows between neighbours."""
    runs: list[tuple[int, int]] = []
    start: int | None = None
    for at, black in enumerate((*row, False)):
        if black and start is None:
            start = at
        elif not black and start is not None:
            runs.append((start, at))
            start = None
    return runs
