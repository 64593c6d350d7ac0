"""`weather fetch`: the outlook from a forecast service, off until it is turned on.

What speaks to the network is imported when it is used: no other command pays for it.
"""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from datetime import datetime
from typing import TYPE_CHECKING

from benchround.commands.weather_out import draft_value, open_desk
from benchround.core.errors import InputError
from benchround.core.record import Draft, Kind
from benchround.desk import Desk
from benchround.plain import JsonValue
from benchround.reckoning.answer import Answer
from benchround.whereabouts import data_folder

if TYPE_CHECKING:
    from benchround.feeds.fetch import Fetched

FETCH, ADDRESS = "weather_fetch", "weather_url"
"""The two settings that allow the outlook to be fetched."""


def fetch_arguments(parser: argparse.ArgumentParser) -> None:
    """The season, turning it on and off, asking again."""
    parser.add_argument("season", nargs="?", default="", help="season folder")
    parser.add_argument("--turn", choices=("on", "off"), help="allow fetching, or stop it")
    parser.add_argument(
        "--url", default="", metavar="ADDRESS", help="service to ask, with {lat} and {lon}"
    )
    parser.add_argument("--again", action="store_true", help="ask although the kept one is fresh")
    parser.set_defaults(refuse=parser.error)


def fetch(given: argparse.Namespace) -> Answer:
    """Fetch the outlook and record it, or turn that on or off."""
    if given.url and given.turn != "on":
        given.refuse("--url goes with --turn on")
    desk = open_desk(given.season, None)
    try:
        if given.turn is not None:
            return _turn(desk, given.turn, given.url)
        return _fetch(desk, again=given.again)
    finally:
        desk.close()


def local_now() -> datetime:
    """Local time by the computer's clock, for the age of an answer."""
    return datetime.now()


def _turn(desk: Desk, turn: str, url: str) -> Answer:
    from benchround.feeds.fetch import USUAL_ADDRESS, address_for

    drafts = [Draft(Kind.SETTING, FETCH, {"value": turn})]
    lines = [f"Fetching the outlook is {turn}."]
    address = ""
    if turn == "on":
        template = url or desk.season.settings.get(ADDRESS, "") or USUAL_ADDRESS
        address = address_for(template, *_where(desk))
        drafts.append(Draft(Kind.SETTING, ADDRESS, {"value": template}))
        lines.append(f"  'benchround weather fetch' will ask: {address}")
        lines.append("  The site's place to about a kilometre is all that is sent.")
    desk.record(drafts)
    return Answer({"fetch": turn, "address": address or None}, tuple(lines))


def _where(desk: Desk) -> tuple[float, float]:
    site = desk.season.site
    told = any(
        record.kind is Kind.SITE and record.number("lat_deg") is not None
        for record in desk.folder.records()
    )
    if not told or any("latitude" in words for words in site.assumed):
        raise InputError("The site has no latitude yet: set it up before fetching an outlook.")
    return site.lat_deg, site.lon_deg


def _fetch(desk: Desk, *, again: bool) -> Answer:
    from benchround.feeds.fetch import address_for, fetch_outlook

    settings = desk.season.settings
    template = settings.get(ADDRESS, "")
    if settings.get(FETCH) != "on" or not template:
        raise InputError(
            "Fetching the outlook is off: 'benchround weather fetch --turn on' shows what is asked "
            "of whom, and allows it."
        )
    now = local_now()
    found = fetch_outlook(address_for(template, *_where(desk)), data_folder(), now, again=again)
    drafts = [day.draft() for day in found.days if not _same_outlook(desk, day.draft())]
    if drafts:
        desk.record(drafts)
    return _fetched(desk, found, drafts, now)


def _same_outlook(desk: Desk, draft: Draft) -> bool:
    known = desk.season.weather.on(draft.day) if draft.day is not None else None
    if known is None:
        return False
    if known.basis == "reading":
        return True  # a reading beats any outlook: nothing to add
    return all(getattr(known, name) == value for name, value in draft.figures.items())


def _fetched(desk: Desk, found: Fetched, drafts: Sequence[Draft], now: datetime) -> Answer:
    age = found.age_words(now)
    head = f"{'The kept answer' if found.kept else 'The answer'}, {age}; {len(drafts)} days new"
    value: dict[str, JsonValue] = {
        "recorded": len(drafts),
        "kept": found.kept,
        "fetched_at": found.fetched_at.isoformat(timespec="minutes"),
        "age": age,
        "problem": found.problem or None,
        "days": [draft_value(day.draft()) for day in found.days],
    }
    words = tuple(f"  {day.words(desk.today)}" for day in found.days)
    problem = (found.problem,) if found.problem else ()
    return Answer(value, (head, *words), (*problem, *found.doubts))
