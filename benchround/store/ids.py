"""Names for records: unique, and sorting in the order they were written.

A name is sixteen characters: nine for the time in milliseconds since 1970, three for records
written within one millisecond, four drawn at random when the program starts, which keep two
computers apart that write in the same millisecond. The digits are 0-9 and the small letters
without i, l, o and u, which sort as text the way they count.

Names never go back: when the clock was set back, or stands still, the next name counts on from the
latest one seen. "Seen" includes what other computers wrote, so that a withdrawal always
sorts after the record it withdraws, however wrong one of the clocks is.
"""

from __future__ import annotations

import os
import time
from collections.abc import Callable

DIGITS = "0123456789abcdefghjkmnpqrstvwxyz"
TIME_DIGITS, COUNT_DIGITS, TAG_DIGITS = 9, 3, 4
LENGTH = TIME_DIGITS + COUNT_DIGITS + TAG_DIGITS

LATEST_MS = 32 ** (TIME_DIGITS - 1) * 8 - 1
"""Times from here on (the year 2248) are taken for a damaged name, and not counted on from."""

_COUNTS = 32**COUNT_DIGITS
_VALUES = {digit: value for value, digit in enumerate(DIGITS)}


def system_clock_ms() -> int:
    """Milliseconds since 1970 by this computer's clock."""
    return time.time_ns() // 1_000_000


def stamp_of(name: str) -> tuple[int, int] | None:
    """The time (ms) and count a record's name was made from; None if it is no such name."""
    if len(name) != LENGTH or not all(digit in _VALUES for digit in name):
        return None
    time_ms = _number(name[:TIME_DIGITS])
    if time_ms > LATEST_MS:
        return None
    return time_ms, _number(name[TIME_DIGITS : TIME_DIGITS + COUNT_DIGITS])


class IdMaker:
    """Makes the names for the records of one running program."""

    def __init__(
        self,
        last_seen: str = "",
        clock_ms: Callable[[], int] = system_clock_ms,
        chance: Callable[[int], bytes] = os.urandom,
    ) -> None:
        self._clock_ms = clock_ms
        self._tag = "".join(DIGITS[byte % 32] for byte in chance(TAG_DIGITS))
        self._last = (-1, 0)
        self.saw(last_seen)

    def saw(self, name: str) -> None:
        """Count on from this name if it is later than all others so far; others are ignored."""
        stamp = stamp_of(name)
        if stamp is not None and stamp > self._last:
            self._last = stamp

    def next(self) -> str:
        """A name that sorts after every name made or seen before."""
        now = (min(max(self._clock_ms(), 0), LATEST_MS), 0)
        self._last = now if now > self._last else _after(self._last)
        time_ms, count = self._last
        return _digits(time_ms, TIME_DIGITS) + _digits(count, COUNT_DIGITS) + self._tag


def _after(stamp: tuple[int, int]) -> tuple[int, int]:
    time_ms, count = stamp
    return (time_ms, count + 1) if count + 1 < _COUNTS else (time_ms + 1, 0)


def _digits(value: int, width: int) -> str:
    digits = []
    for _ in range(width):
        value, low = divmod(value, 32)
        digits.append(DIGITS[low])
    return "".join(reversed(digits))


def _number(text: str) -> int:
    value = 0
    for digit in text:
        value = value * 32 + _VALUES[digit]
    return value
