"""Labels as PDF, opened by PDFium; their QR codes read by another program."""

from __future__ import annotations

import pytest

from benchround.core.errors import InputError
from benchround.feeds.label_pdf import PAD_MM, labels_pdf
from benchround.feeds.label_settings import sheet_from
from benchround.feeds.label_sheets import Sheet, spots
from benchround.feeds.labels import Label, Standing, labels_of
from tests.feeds.printed import (
    Word,
    codes_in,
    ink_share,
    page_count,
    page_size_mm,
    pictures_of,
    text_of,
    words_of,
)
from tests.feeds.seasons import hostile_records, hostile_season, many_records, many_season
from tests.feeds.seasons import sample_season as sample
from tests.sample.story import DAY_0, records

SHEETS = {
    "folded": {"form": "stick-in"},
    "two sides": {"sides": "two"},
    "one side": {"sides": "one"},
    "stick-on": {
        "form": "stick-on",
        "size": "63.5x38.1",
        "left": "7.2",
        "top": "15.1",
        "gap": "2.5x0",
    },
    "A5": {"paper": "A5"},
    "Letter": {"paper": "Letter"},
    "label by label": {"form": "stick-on", "paper": "62x29", "size": "62x29"},
}


def sample_labels() -> tuple[Label, ...]:
    return labels_of(sample(), records(), DAY_0)


def pdf(labels: tuple[Label, ...], sheet: Sheet, *, qr: bool = False) -> bytes:
    return labels_pdf(labels, sheet, DAY_0, qr=qr)[0]


@pytest.mark.parametrize("name", SHEETS)
def test_every_word_of_every_label_is_on_paper(name: str) -> None:
    sheet = sheet_from(SHEETS[name])
    labels = sample_labels()
    data = pdf(labels, sheet)
    width, height = page_size_mm(data)
    assert abs(width - sheet.paper.width_mm) < 0.1
    assert abs(height - sheet.paper.height_mm) < 0.1
    text = text_of(data).split()
    for label in labels:
        wanted = [word for line in label.lines for word in line.split()] * label.copies
        for word in wanted:
            assert word in text, (label.batch, word)
            text.remove(word)
    assert text == []


@pytest.mark.parametrize("name", SHEETS)
def test_every_word_stands_on_its_own_label(name: str) -> None:
    """Measured by PDFium: no word leaves the printed part of its label."""
    sheet = sheet_from(SHEETS[name])
    labels = tuple(label for label in sample_labels() if label.copies == 1)
    words = words_of(pdf(labels, sheet))
    sides = 2 if SHEETS[name].get("sides") == "two" else 1
    for label, spot in zip(labels, spots(sheet, len(labels)), strict=True):
        page = spot.sheet * sides + 1
        inside = [
            word
            for word in words
            if word.page == page
            and spot.left_mm <= middle(word)[0] <= spot.left_mm + sheet.width_mm
            and spot.top_mm <= middle(word)[1] <= spot.top_mm + sheet.laid_mm
        ]
        said = " ".join(word.text for word in inside)
        for line in label.front:
            assert all(part in said for part in line.split())
        for word in inside:
            assert word.left >= spot.left_mm + PAD_MM - 0.5
            assert word.right <= spot.left_mm + sheet.width_mm + 0.5


def middle(word: Word) -> tuple[float, float]:
    return (word.left + word.right) / 2, (word.top + word.bottom) / 2


def test_the_foot_stays_white_on_both_halves_of_a_folded_label() -> None:
    sheet = sheet_from({"foot": "30"})
    words = words_of(pdf(sample_labels()[:1], sheet))
    assert min(word.left for word in words) >= 5 + 30
    sown = next(word for word in words if word.text == "sown")
    assert 5 + 100 - 3 < sown.right <= 5 + 100  # upside down it begins at the other end


def test_folded_backs_are_upside_down_above_the_front() -> None:
    """Turning the page round makes the backs readable, as plain lines."""
    sheet = sheet_from({"left": "20", "columns": "1"})
    data = pdf(sample_labels()[:1], sheet)
    words = {word.text: word for word in words_of(data)}
    assert words["Cosmos"].top > 8 + 13
    assert words["sown"].bottom < 8 + 13
    assert words["b01,"].top < words["sown"].top  # the second line of a text upside down is above
    assert words["sown"].left > words["2026"].left  # and reads from right to left


def test_printed_on_both_sides_fronts_and_backs_meet() -> None:
    """Turned over its long edge, what is printed x mm from one edge lies x mm from the other."""
    sheet = sheet_from({"sides": "two", "left": "3"})
    labels = sample_labels()[:5]
    words = words_of(pdf(labels, sheet))
    placed = list(spots(sheet, 5))
    for at, label in enumerate(labels):
        back = next(w for w in words if w.page == 2 and w.text == label.back[1].split()[0])
        through = 210 - middle(back)[0]
        assert placed[at].left_mm <= through <= placed[at].left_mm + 100
        assert placed[at].top_mm <= middle(back)[1] <= placed[at].top_mm + 13
        edge = placed[at].back_left_mm  # seen from behind the foot is the right end
        assert edge <= back.left < edge + 3
        assert back.right <= edge + 100 - sheet.foot_mm


@pytest.mark.parametrize("name", ["folded", "stick-on"])
def test_hostile_and_foreign_names_never_vanish(name: str) -> None:
    labels = labels_of(hostile_season(), hostile_records(), DAY_0)
    data, remarks = labels_pdf(labels, sheet_from(SHEETS[name]), DAY_0)
    text = text_of(data).replace(" ", "")
    for label in labels:
        variety = label.front[1].replace(" ", "")
        letters = [sign for sign in variety if sign.isascii()]
        assert all(sign in text for sign in letters)
        if variety.isascii():
            assert variety in text
    assert "gnp.exe" in text
    assert "\u202e" not in text
    assert any("written in other letters" in remark for remark in remarks)


def test_a_picture_of_every_page_has_ink_on_it_and_none_beyond_the_labels() -> None:
    sheet = sheet_from(SHEETS["stick-on"])
    pictures = pictures_of(pdf(sample_labels(), sheet, qr=True))
    assert len(pictures) == 2
    for picture in pictures:
        assert 0.005 < ink_share(picture) < 0.2
    dots_a_mm = 72 / 25.4
    top = pictures[0].crop((0, 0, pictures[0].width, int(15 * dots_a_mm)))
    left = pictures[0].crop((0, 0, int(7 * dots_a_mm), pictures[0].height))
    assert ink_share(top) == 0
    assert ink_share(left) == 0


@pytest.mark.parametrize("name", ["folded", "stick-on", "two sides"])
def test_qr_codes_are_read_by_another_program(name: str) -> None:
    labels = sample_labels()[:8]
    pages = pictures_of(pdf(labels, sheet_from(SHEETS[name]), qr=True), dpi=250)
    read = sorted(code for page in pages for code in codes_in(page))
    assert read == sorted(label.batch for label in labels for _ in range(label.copies))


def test_tiny_codes_and_letters_are_said_to_be_hard_to_read() -> None:
    long = Label("b" * 60, ("x" * 300,), ("sown",), "", 1, Standing.NEW)
    _, remarks = labels_pdf([long], sheet_from({"size": "40x6", "foot": "0"}), DAY_0, qr=True)
    assert any("hard to read" in remark for remark in remarks)
    assert any("make the labels higher" in remark for remark in remarks)


def test_three_thousand_labels() -> None:
    labels = labels_of(many_season(), many_records(), DAY_0)
    data = pdf(labels, sheet_from({}))
    assert page_count(data) == 150
    words = text_of(data).split()
    assert sum(1 for word in words if word.startswith("b") and word.endswith(",")) == 3000


def test_the_same_labels_give_the_same_file() -> None:
    labels = sample_labels()[:3]
    first = pdf(labels, sheet_from({}))
    assert first == pdf(labels, sheet_from({}))
    assert first.startswith(b"%PDF-")


def test_nothing_to_print_and_far_too_much_are_refused() -> None:
    with pytest.raises(InputError, match="no label"):
        labels_pdf([], sheet_from({}), DAY_0)
    many = Label("b01", ("Cosmos",), ("sown",), "", 30_000, Standing.NEW)
    with pytest.raises(InputError, match="too many"):
        labels_pdf([many], sheet_from({}), DAY_0)
