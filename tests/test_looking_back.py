"""A day looked back at shows what was written down by then: common practice, no source."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from benchround.cli import main
from benchround.core.book import SETTING_KINDS
from benchround.core.looking_back import known_on
from benchround.core.record import Kind, Record
from benchround.desk import Desk
from benchround.whereabouts import sample_folder

THEN = date(2026, 3, 29)
DAYS = [THEN, date(2026, 4, 20), date(2026, 5, 26)]


@pytest.mark.parametrize("day", DAYS, ids=str)
def test_no_batch_knows_what_came_later(day: date) -> None:
    desk = Desk.open(sample_folder(), today=lambda: day, read_only=True, as_of=day)
    whole = Desk.open(sample_folder(), today=lambda: day, read_only=True)
    try:
        told = [r.day for batch in desk.season.batches.values() for r in batch.records]
        assert told and max(told) <= day
        later = {name for name, batch in whole.season.batches.items() if batch.begun > day}
        assert whole.season.batches.keys() - desk.season.batches.keys() == later
        assert all(r.day <= day for log in desk.season.place_log.values() for r in log)
        assert desk.season.places == whole.season.places
    finally:
        desk.close()
        whole.close()


def test_the_days_round_quotes_no_later_day(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["today", "--sample", "--on", THEN.isoformat()]) == 0
    said = capsys.readouterr().out
    assert "b04" in said  # sown on 26 March
    desk = Desk.open(sample_folder(), today=lambda: THEN, read_only=True)
    begun_later = [b.id for b in desk.season.batches.values() if b.begun > THEN]
    desk.close()
    assert begun_later
    for name in begun_later:
        assert f": {name} " not in said and f"- {name} " not in said


@pytest.mark.parametrize("kind", sorted(Kind))
def test_how_the_site_is_set_up_and_what_was_withdrawn_holds_on_any_day(kind: Kind) -> None:
    """A forecast is told under the day it is for."""
    later = Record("R1", THEN + timedelta(days=1), kind, "x")
    holds = kind in SETTING_KINDS | {Kind.CROP_RULE, Kind.OUTLOOK, Kind.WITHDRAWN}
    assert (known_on([later], THEN) == (later,)) is holds
    assert known_on([later], later.day) == (later,)
