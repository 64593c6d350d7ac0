"""The figures of one day's piece together: what they add up to, and what contradicts."""

from __future__ import annotations

from datetime import date

from benchround.feeds.outlook_day import OutlookDay
from benchround.feeds.outlook_piece import Piece, how


def settled(piece: Piece, day: date, length_h: float) -> OutlookDay:
    """The outlook of a piece, its figures held against each other.

    Args:
        piece: the piece, read.
        day: the day it is for.
        length_h: hours of daylight that day.

    Raises:
        OutlookLineError: the figures contradict each other, or there are none.
    """
    low, high = _extremes(piece)
    sun_share, sky = _sky(piece)
    sun_h = piece.sun_h
    if sun_h is None and sun_share is not None:
        sun_h = round(sun_share * length_h, 1)
    elif sun_h is not None and sun_h > length_h + 0.05:
        raise piece.error(
            f"{sun_h:g} h of sun are more than that day is long, {length_h:.1f} h.", ""
        )
    if None not in (piece.rain_mm, piece.rain_hour_mm) and (
        (piece.rain_hour_mm or 0.0) > (piece.rain_mm or 0.0)
    ):
        raise piece.error(
            f"{piece.rain_hour_mm:g} mm in an hour is more than {piece.rain_mm:g} mm in the day.",
            "",
        )
    found = OutlookDay(
        day=day,
        typed=piece.typed,
        min_c=low,
        max_c=high,
        sky=sky,
        sun_share=sun_share,
        sun_h=sun_h,
        rain_mm=piece.rain_mm,
        rain_hour_mm=piece.rain_hour_mm,
        gust_kmh=piece.gust_kmh,
        wind=piece.wind,
        storm_from=piece.storm_from,
    )
    if not found.figures():
        raise piece.error(
            f"'{piece.typed}' says nothing of the weather: {how(piece.units)}.", piece.typed
        )
    return found


def _extremes(piece: Piece) -> tuple[float | None, float | None]:
    if piece.temps and (piece.low is not None or piece.high is not None):
        raise piece.error(f"Temperatures are given twice in '{piece.typed}'.", "")
    if len(piece.temps) == 1:
        one = piece.temps_typed[0]
        raise piece.error(
            f"'{one}' could be lowest or highest: write two, or min{one} or max{one}.", one
        )
    if len(piece.temps) > 2:
        third = piece.temps_typed[2]
        raise piece.error(
            f"'{third}' is a third temperature: write rain as r{third}, gusts as g{third}.",
            third,
        )
    if piece.temps:
        return min(piece.temps), max(piece.temps)
    if piece.low is not None and piece.high is not None and piece.low > piece.high:
        low, high = piece.units.temp(piece.low), piece.units.temp(piece.high)
        raise piece.error(f"Lowest {low} is above highest {high}.", "")
    return piece.low, piece.high


def _sky(piece: Piece) -> tuple[float | None, str]:
    """The sky's share of sun and its word; a dry or windy word has none."""
    for sky in piece.skies:
        if sky.force is not None:
            piece.take_force(sky.force, sky.word, sky.word)
        if sky.rain_mm is not None:
            piece.take_rain(sky.rain_mm, sky.word)
    plain = [sky for sky in piece.skies if sky.sun_share is not None and not sky.wet]
    wet = [sky for sky in piece.skies if sky.wet]
    if len({sky.word for sky in plain}) > 1:
        raise piece.error(
            f"'{plain[0].word}' and '{plain[1].word}' are two skies for one day: write one.",
            "",
        )
    words = ", ".join(dict.fromkeys(sky.word for sky in (*plain, *wet)))
    if piece.rain_mm == 0.0 and wet:
        raise piece.error(f"'{wet[0].word}' and no rain do not go together.", "")
    told = plain or wet
    return (min(s.sun_share for s in told if s.sun_share is not None) if told else None), words
