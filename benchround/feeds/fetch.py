"""Asking a forecast service for the days ahead: one question, at the grower's word, and kept.

Nothing here runs by itself. An answer is kept in a file with the time it came; when the service
cannot be reached, the kept one is used and its age is said. What is sent is the address alone, with
the site's latitude and longitude to two decimals (about a kilometre).
"""

from __future__ import annotations

import json
import os
import queue
import threading
from collections.abc import Callable
from contextlib import suppress
from datetime import date, datetime, timedelta
from pathlib import Path

from benchround.core.errors import BenchroundError
from benchround.core.frozen import dataclass
from benchround.feeds.fetch_http import Limits, get, require_address
from benchround.feeds.forecast_json import read_forecast
from benchround.feeds.outlook_day import OutlookDay

USUAL_ADDRESS = (
    "https://api.open-meteo.com/v1/forecast?latitude={lat}&longitude={lon}"
    "&daily=temperature_2m_min,temperature_2m_max,precipitation_sum,wind_gusts_10m_max,"
    "sunshine_duration&timezone=auto"
)
"""Open-Meteo's daily forecast, free for use that earns nothing, data CC BY 4.0; address and terms
from memory: the grower sees them before turning it on."""
KEPT_NAME = "weather-outlook.json"
FRESH = timedelta(minutes=30)
"""A kept answer younger than this is used without asking again, for the service's sake."""
MOST_KEPT_BYTES = 2_000_000
FORMAT = 1


class FetchError(BenchroundError):
    """The forecast could not be had; the message says why."""


@dataclass(frozen=True, slots=True)
class Fetched:
    """A forecast, fresh or kept.

    Attributes:
        days: the days from today on.
        fetched_at: when the service answered.
        kept: whether it is the kept answer.
        problem: why it is the kept one although the service was asked; empty where all is well.
        doubts: figures that could not be and were left out.
    """

    days: tuple[OutlookDay, ...]
    fetched_at: datetime
    kept: bool
    problem: str = ""
    doubts: tuple[str, ...] = ()

    def age_words(self, now: datetime) -> str:
        """How old the answer is."""
        minutes = max(0, int((now - self.fetched_at) / timedelta(minutes=1)))
        if minutes < 60:
            return f"{minutes} minute{'' if minutes == 1 else 's'} old"
        hours = minutes // 60
        if hours < 48:
            return f"{hours} hour{'' if hours == 1 else 's'} old"
        return f"{hours // 24} days old"


def address_for(template: str, lat_deg: float, lon_deg: float) -> str:
    """The address to ask, with latitude and longitude to two decimals put in.

    Raises:
        FetchError: it may not be asked, or has no place for them.
    """
    if "{lat}" not in template or "{lon}" not in template:
        raise FetchError("The forecast's address has no {lat} and {lon} to put the site in.")
    filled = template.replace("{lat}", f"{lat_deg:.2f}").replace("{lon}", f"{lon_deg:.2f}")
    fault = require_address(filled)
    if fault:
        raise FetchError(fault)
    return filled


def fetch_outlook(
    address: str, folder: Path, now: datetime, *, again: bool = False, limits: Limits | None = None
) -> Fetched:
    """The forecast of an address, or the kept one where it cannot be had.

    Args:
        address: from `address_for`.
        folder: where the answer is kept.
        now: local time.
        again: ask even if the kept answer is fresh.
        limits: time and size; None takes the usual ones.

    Raises:
        FetchError: it cannot be had and none is kept that reaches to today.
    """
    kept = _kept(address, folder, now)
    if kept is not None and not again and now - kept.fetched_at < FRESH:
        return kept
    bounds = limits or Limits()
    try:
        text = _in_time(lambda: get(address, bounds), bounds.seconds)
        fresh = _read(text, address, now, kept=False, today=now.date())
    except BenchroundError as error:
        if kept is None:
            raise FetchError(f"{error} No earlier answer is kept that reaches to today.") from error
        return Fetched(kept.days, kept.fetched_at, True, str(error), kept.doubts)
    problem = _keep(address, text, folder, now)
    return Fetched(fresh.days, now, False, problem, fresh.doubts)


def _in_time(work: Callable[[], str], seconds: float) -> str:
    """The outcome of some work, given up after a time, however the other side dawdles.

    Raises:
        FetchError: it took too long.
        BenchroundError: whatever the work refused.
    """
    outcome: queue.Queue[str | Exception] = queue.Queue(1)

    def run() -> None:
        try:
            outcome.put(work())
        except Exception as error:  # carried over to the asking thread, and raised there
            outcome.put(error)

    threading.Thread(target=run, daemon=True, name="forecast").start()
    try:
        found = outcome.get(timeout=seconds)
    except queue.Empty:
        raise FetchError(
            f"The forecast service took longer than {seconds:g} s and was given up."
        ) from None
    if isinstance(found, Exception):
        raise found
    return found


def _read(text: str, address: str, at: datetime, *, kept: bool, today: date) -> Fetched:
    host = address.split("/")[2]
    found = read_forecast(text, f"fetched {at:%Y-%m-%d %H:%M} from {host}")
    ahead = tuple(day for day in found.days if day.day >= today)
    if not ahead:
        raise FetchError("The forecast ends before today.")
    return Fetched(ahead, at, kept, "", found.doubts)


def _keep(address: str, text: str, folder: Path, now: datetime) -> str:
    """Keep an answer, whole or not at all; a sentence where that fails, which is no harm."""
    whole = {"format": FORMAT, "address": address, "at": now.isoformat(), "answer": text}
    part = folder / f".{KEPT_NAME}.{os.getpid()}.part"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        part.write_text(json.dumps(whole), encoding="utf-8")
        part.replace(folder / KEPT_NAME)
    except OSError as error:
        with suppress(OSError):
            part.unlink()
        return f"The answer could not be kept in {folder}: {error.strerror or error}."
    return ""


def _kept(address: str, folder: Path, now: datetime) -> Fetched | None:
    """The kept answer to the same question, if it is sound and reaches to today."""
    try:
        with (folder / KEPT_NAME).open("rb") as file:
            raw = file.read(MOST_KEPT_BYTES + 1)
        whole = json.loads(raw) if len(raw) <= MOST_KEPT_BYTES else None
        if not isinstance(whole, dict) or whole.get("format") != FORMAT:
            return None
        if whole.get("address") != address:
            return None
        at = datetime.fromisoformat(whole["at"])
        if at.tzinfo is not None or at > now:
            return None
        return _read(whole["answer"], address, at, kept=True, today=now.date())
    except (OSError, ValueError, KeyError, TypeError, RecursionError, BenchroundError):
        return None  # a kept answer that is damaged is no answer: the service is asked
