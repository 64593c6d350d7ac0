"""The recurrence library behind schedules: published sets and traps."""

from datetime import date, datetime
from itertools import islice

import pytest
from dateutil.relativedelta import relativedelta
from dateutil.rrule import DAILY, rrule, rrulestr

from tests.core.published import Seen

DOCS = "python-dateutil 4.0.0 docs/examples.rst, converted from the RFC"
RFC = "RFC 5545 sec. 3.8.5.3, quoted in a public calendar test file"

SETS = (
    ("R01", DOCS, "FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH", "19970902",
     "1997-09-02 1997-09-04 1997-09-16 1997-09-18 1997-09-30 1997-10-02 1997-10-14 1997-10-16"),
    ("R02", DOCS, "FREQ=MONTHLY;COUNT=10;BYDAY=1FR", "19970905",
     "1997-09-05 1997-10-03 1997-11-07 1997-12-05 1998-01-02 1998-02-06 1998-03-06 1998-04-03 "
     "1998-05-01 1998-06-05"),
    ("R03", DOCS, "FREQ=MONTHLY;COUNT=6;BYDAY=-2MO", "19970922",
     "1997-09-22 1997-10-20 1997-11-17 1997-12-22 1998-01-19 1998-02-16"),
    ("R04", DOCS, "FREQ=MONTHLY;COUNT=6;BYMONTHDAY=-3", "19970928",
     "1997-09-28 1997-10-29 1997-11-28 1997-12-29 1998-01-29 1998-02-26"),
    ("R05", DOCS, "FREQ=MONTHLY;INTERVAL=18;COUNT=10;BYMONTHDAY=10,11,12,13,14,15", "19970910",
     "1997-09-10 1997-09-11 1997-09-12 1997-09-13 1997-09-14 1997-09-15 1999-03-10 1999-03-11 "
     "1999-03-12 1999-03-13"),
    ("R06", RFC, "FREQ=YEARLY;INTERVAL=3;COUNT=10;BYYEARDAY=1,100,200", "19970101",
     "1997-01-01 1997-04-10 1997-07-19 2000-01-01 2000-04-09 2000-07-18 2003-01-01 2003-04-10 "
     "2003-07-19 2006-01-01"),
    ("R07", DOCS, "FREQ=YEARLY;BYDAY=20MO", "19970519", "1997-05-19 1998-05-18 1999-05-17"),
    ("R08", DOCS, "FREQ=YEARLY;BYWEEKNO=20;BYDAY=MO", "19970512",
     "1997-05-12 1998-05-11 1999-05-17"),
    ("R09", RFC, "FREQ=MONTHLY;BYDAY=SA;BYMONTHDAY=7,8,9,10,11,12,13", "19970913",
     "1997-09-13 1997-10-11 1997-11-08 1997-12-13 1998-01-10 1998-02-07 1998-03-07 1998-04-11 "
     "1998-05-09 1998-06-13"),
    ("R10", RFC, "FREQ=YEARLY;INTERVAL=4;BYMONTH=11;BYDAY=TU;BYMONTHDAY=2,3,4,5,6,7,8",
     "19961105", "1996-11-05 2000-11-07 2004-11-02"),
    ("R11", RFC, "FREQ=MONTHLY;COUNT=3;BYDAY=TU,WE,TH;BYSETPOS=3", "19970904",
     "1997-09-04 1997-10-07 1997-11-06"),
    ("R12", RFC, "FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2", "19970929",
     "1997-09-29 1997-10-30 1997-11-27 1997-12-30 1998-01-29 1998-02-26 1998-03-30"),
    ("R13", RFC, "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO", "19970805",
     "1997-08-05 1997-08-10 1997-08-19 1997-08-24"),
    ("R14", RFC, "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU", "19970805",
     "1997-08-05 1997-08-17 1997-08-19 1997-08-31"),
    ("R15", RFC, "FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5", "20070115",
     "2007-01-15 2007-01-30 2007-02-15 2007-03-15 2007-03-30"),
    ("R16", RFC, "FREQ=YEARLY;BYMONTH=3;BYDAY=TH", "19970313",
     "1997-03-13 1997-03-20 1997-03-27 1998-03-05 1998-03-12 1998-03-19 1998-03-26 1999-03-04 "
     "1999-03-11 1999-03-18 1999-03-25"),
    ("R17", DOCS, "FREQ=DAILY;INTERVAL=10;COUNT=5", "19970902",
     "1997-09-02 1997-09-12 1997-09-22 1997-10-02 1997-10-12"),
    ("R18", RFC, "FREQ=YEARLY;INTERVAL=2;COUNT=10;BYMONTH=1,2,3", "19970310",
     "1997-03-10 1999-01-10 1999-02-10 1999-03-10 2001-01-10 2001-02-10 2001-03-10 2003-01-10 "
     "2003-02-10 2003-03-10"),
)  # fmt: skip


@pytest.mark.parametrize(
    ("rule", "start", "days"),
    [row[2:] for row in SETS],
    ids=[f"{row[0]} {row[2]}: {row[1]} ({Seen.READ})" for row in SETS],
)
def test_published_set(rule: str, start: str, days: str) -> None:
    expected = days.split()
    found = rrulestr(f"DTSTART:{start}T090000\nRRULE:{rule}")
    dates = [moment.date().isoformat() for moment in islice(found, len(expected) + 1)]
    assert dates[: len(expected)] == expected
    if "COUNT" in rule:
        assert len(dates) == len(expected)


def test_r19_exclusion() -> None:
    # RFC 5545 sec. 3.8.5.3 (read): Friday the 13th without the start day
    found = rrulestr(
        "DTSTART:19970902T090000\nRRULE:FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13\nEXDATE:19970902T090000"
    )
    assert [moment.date().isoformat() for moment in islice(found, 5)] == [
        "1998-02-13", "1998-03-13", "1998-11-13", "1999-08-13", "2000-10-13",
    ]  # fmt: skip


def test_r20_until_is_inclusive_but_at_the_hour() -> None:
    # dateutil docs (ends read, count own)
    found = list(rrulestr("DTSTART:19970902T090000\nRRULE:FREQ=DAILY;UNTIL=19971224T000000"))
    assert len(found) == 113
    assert found[-1].date() == date(1997, 12, 23)


def test_r21_trap_monthly_from_the_31st_skips_short_months() -> None:
    found = rrulestr("DTSTART:20260131T000000\nRRULE:FREQ=MONTHLY;COUNT=5")
    assert [moment.date().isoformat() for moment in found] == [
        "2026-01-31", "2026-03-31", "2026-05-31", "2026-07-31", "2026-08-31",
    ]  # fmt: skip


def test_r22_trap_adding_months_clips_when_added_to_the_original_day() -> None:
    start = date(2026, 1, 31)
    found = [(start + relativedelta(months=n)).isoformat() for n in range(4)]
    assert found == ["2026-01-31", "2026-02-28", "2026-03-31", "2026-04-30"]
    stepwise = start + relativedelta(months=1) + relativedelta(months=1)
    assert stepwise.isoformat() == "2026-03-28"


def test_r23_trap_a_rule_returns_moments_even_for_a_day() -> None:
    found = list(rrule(DAILY, dtstart=date(2026, 3, 1), count=2))
    assert found == [datetime(2026, 3, 1), datetime(2026, 3, 2)]
