"""Records of one act are checked together, those put in before a batch's last record too."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from benchround.core.book import RecordBook
from benchround.core.errors import IllegalRecordError
from benchround.core.record import Figure, Kind, Record
from benchround.crops.library import load_library

SOWN_ON = date(2026, 5, 1)


def told(number: int, kind: Kind, after_days: int, **figures: Figure) -> Record:
    return Record(f"{number:04d}", SOWN_ON + timedelta(days=after_days), kind, "b01", figures)


STORY = (
    told(1, Kind.SOWN, 0, crop="cosmos", seeds=20),
    told(2, Kind.FIRST_UP, 5),
    told(3, Kind.PRICKED_OUT, 12, count=10),
    told(4, Kind.NOTED, 30),
)


def book(*more: Record) -> RecordBook:
    library = load_library()
    return RecordBook((*STORY, *more), lambda _: library)


FITS = {
    # common practice, no source: plants are hardened off in steps once that has begun
    "begun, then a step": (
        told(5, Kind.HARDENING_BEGUN, 20, place="Frame"),
        told(6, Kind.HARDENING_STEP, 21),
    ),
    "begun and a step, written the other way round": (
        told(5, Kind.HARDENING_STEP, 21),
        told(6, Kind.HARDENING_BEGUN, 20, place="Frame"),
    ),
    "begun before the last record, a step after it": (
        told(5, Kind.HARDENING_BEGUN, 29, place="Frame"),
        told(6, Kind.HARDENING_STEP, 31),
    ),
    # arithmetic: 10 - 4 - 6 = 0
    "as many lost as there are": (
        told(5, Kind.LOST, 20, count=4),
        told(6, Kind.LOST, 21, count=6),
    ),
}


@pytest.mark.parametrize("act", FITS.values(), ids=FITS)
def test_an_act_that_fits_is_let_in_and_counts(act: tuple[Record, ...]) -> None:
    book().check(act)
    season = book(*act).season
    assert season.doubts == ()
    assert {record.id for record in act} <= {record.id for record in season.batches["b01"].records}


REFUSED = {
    # arithmetic: 9 of 3; and 7 of the 6 left of 10 after 4
    "counted 3, then 9 of them lost": (
        (told(5, Kind.COUNTED, 20, count=3), told(6, Kind.LOST, 20, count=9)),
        "9 is more than the 3 plants alive",
    ),
    "more lost in two than there are": (
        (told(5, Kind.LOST, 20, count=4), told(6, Kind.LOST, 21, count=7)),
        "7 is more than the 6 plants alive",
    ),
    # common practice, no source: what is composted is not fed any more
    "composted, then fed": (
        (told(5, Kind.COMPOSTED, 20), told(6, Kind.FED, 21)),
        "'fed' cannot be recorded for b01",
    ),
}


@pytest.mark.parametrize(("act", "words"), REFUSED.values(), ids=REFUSED)
def test_an_act_at_odds_with_itself_is_refused(act: tuple[Record, ...], words: str) -> None:
    assert book(*act).season.doubts  # so it would not count
    with pytest.raises(IllegalRecordError, match=words):
        book().check(act)


def test_a_later_record_that_no_longer_fits_is_named_with_the_new_one_before_it() -> None:
    later = told(5, Kind.LOST, 25, count=8)
    act = (told(6, Kind.NOTED, 19), told(7, Kind.COUNTED, 20, count=3), told(8, Kind.NOTED, 26))
    with pytest.raises(IllegalRecordError, match=r"'counted' on 2026-05-21.* on 2026-05-26"):
        book(later).check(act)
