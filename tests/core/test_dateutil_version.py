"""What is relied on of the recurrence library's version, and what an older one did instead.

Rows V101 to V115 of the check table: NEWS of python-dateutil 4.0.0 (read), each line run on it. The
rows V201 to V215 are what 2.9.0.post0 gave; it is not installed, so they stand here as the values
that must not come back.
"""

import copy
import pickle
import subprocess
import sys
import warnings
from collections.abc import Callable
from datetime import date, datetime, time
from importlib import import_module
from importlib.metadata import version
from typing import Any

import pytest
from dateutil import tz
from dateutil.parser import isoparse
from dateutil.relativedelta import relativedelta
from dateutil.rrule import DAILY, rrule, rruleset, rrulestr

from tests.core.published import Seen

NEWS = f"python-dateutil 4.0.0 NEWS ({Seen.READ}, run)"


def error_of(call: Callable[[], object]) -> str:
    try:
        call()
    except (ValueError, AttributeError, TypeError) as error:
        return type(error).__name__
    return "no error"


def six_is_imported() -> bool:
    asked = "import dateutil.rrule, dateutil.tz, dateutil.parser, sys; print('six' in sys.modules)"
    found = subprocess.run(
        [sys.executable, "-c", asked], capture_output=True, text=True, check=True, timeout=60
    )
    return found.stdout.strip() == "True"


def hours(day: datetime) -> float:
    offset = day.utcoffset()
    assert offset is not None
    return offset.total_seconds() / 3600.0


def skipped_hour() -> float:
    return hours(datetime(2003, 4, 6, 2, 30, tzinfo=tz.gettz("America/New_York")))


def far_summer() -> float:
    return hours(datetime(2040, 7, 1, tzinfo=tz.gettz("Europe/Berlin")))


def cached(count: int) -> rrule:
    return rrule(DAILY, dtstart=datetime(2026, 3, 1), count=count, cache=True)


def used_twice() -> int:
    rule, both = cached(12), rruleset()
    both.rrule(rule)
    both.rrule(rule)
    return len(list(both))


def warnings_of_zoneinfo() -> list[str]:
    sys.modules.pop("dateutil.zoneinfo", None)
    with warnings.catch_warnings(record=True) as seen:
        warnings.simplefilter("always")
        import_module("dateutil.zoneinfo")
    return sorted({found.category.__name__ for found in seen})


def with_unknown_parameter() -> int:
    return len(list(rrulestr("DTSTART:20260301T000000\nRRULE;X-NOTE=a:FREQ=DAILY;COUNT=2")))


def tz_paths() -> object:
    return getattr(tz, "TZPATHS")  # noqa: B009  # the name is gone, which is the point


CASES: tuple[tuple[str, str, Callable[[], Any], Any, Any], ...] = (
    ("V101 V01", "version", lambda: version("python-dateutil").split(".")[0], "4", "2"),
    ("V102", "six imported", six_is_imported, False, True),
    ("V103", "digits run together", lambda: error_of(lambda: isoparse("20200728121240")),
     "ValueError", "no error"),
    ("V104", "space for a nought", lambda: error_of(lambda: isoparse("2014- 4-21")),
     "ValueError", "no error"),
    ("V105", "a plain day", lambda: isoparse("2026-04-21"), datetime(2026, 4, 21), None),
    ("V106", "day 366 of a leap year", lambda: date(2024, 1, 1) + relativedelta(yearday=366),
     date(2024, 12, 31), date(2024, 12, 30)),
    ("V107", "day 366 of a common year", lambda: date(2023, 1, 1) + relativedelta(yearday=366),
     date(2023, 12, 31), None),
    ("V108", "skipped hour, New York 2003", skipped_hour, -5.0, -4.0),
    ("V109", "summer 2040, Berlin", far_summer, 2.0, 1.0),
    ("V110", "a time in UTC", lambda: time(12, tzinfo=tz.gettz("UTC")).isoformat(),
     "12:00:00+00:00", "12:00:00"),
    ("V111", "list of paths", lambda: error_of(tz_paths), "AttributeError", "no error"),
    ("V112", "cached rule used twice", used_twice, 12, None),
    ("V113", "cached rule stored", lambda: len(list(pickle.loads(pickle.dumps(cached(3))))),
     3, None),
    ("V113 copied", "cached rule copied", lambda: len(list(copy.deepcopy(cached(3)))), 3, None),
    ("V114", "old zone module", warnings_of_zoneinfo, ["DeprecationWarning"], []),
    ("V115", "unknown parameter", with_unknown_parameter, 2, None),
)  # fmt: skip


@pytest.mark.parametrize(
    ("found", "now", "before"),
    [case[2:] for case in CASES],
    ids=[f"{case[0]} {case[1]}: {NEWS}" for case in CASES],
)
def test_the_version_relied_on(found: Callable[[], Any], now: object, before: object) -> None:
    seen = found()
    assert seen == now
    assert seen != before
