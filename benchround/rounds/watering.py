"""Water by the tray: what each holds, what the day takes, and which run dry before this evening."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from benchround.core.dates import say_day
from benchround.core.lifecycle import SEEDLING, WAITING
from benchround.core.record import Kind
from benchround.core.task import Family, Harm, Slot, Why, Window
from benchround.core.water.balance import RootStage, ml_from_mm
from benchround.core.water.fit import Moisture
from benchround.core.water.run import HOT_DAY_C, DayPart
from benchround.core.water.tray_filled import just_thinned
from benchround.core.water.tray_outlook import TrayOutlook, tray_outlook
from benchround.rounds.proposal import Proposal, draft
from benchround.rounds.view import BatchView

FROM_BELOW = "stand in 2-3 cm of water, 10-30 minutes until the surface darkens, then drain"
FROM_ABOVE = "a fine rose, starting and ending off the tray"
BELOW_SOURCE = "magazine pages on sowing and bottom-watering (2-3 cm, 10-30 minutes; read)"
ABOVE_SOURCE = "magazine and growers' pages (fine rose; read)"
BALANCE_SOURCE = (
    "loss by FAO-56 eq. 52, exposure and the ground leaves cover; water held after de Boodt & "
    "Verdonck 1972 (from memory); share that may go: our proposal"
)
EARLY_SOURCE = "water early: UC Santa Cruz, Unit 1.3 Supplement 1 (read)"
BY_WORDS = {
    DayPart.MORNING: "by mid-morning",
    DayPart.MIDDAY: "by midday",
    DayPart.AFTERNOON: "by late afternoon",
    DayPart.EVENING: "by tonight",
}


def propose(view: BatchView) -> Iterator[Proposal]:
    """One watering a day for a tray whose allowed water is gone by this evening."""
    found = tray_outlook(view.season, view.batch, view.part, view.day)
    if found is None or not due_today(view, found):
        return
    below = view.stage in WAITING | SEEDLING or just_thinned(view.part, view.day)
    yield Proposal(
        Family.WATER,
        _window(view, found),
        _harm(found),
        _instruction(found, below),
        Why(
            "water before the roots have used the share they can spare",
            _figures(found),
            "; ".join((BALANCE_SOURCE, BELOW_SOURCE if below else ABOVE_SOURCE, EARLY_SOURCE)),
        ),
        (draft(view, Kind.WATERED, how="below" if below else "above"),),
        slot=Slot.FIRST if _bare(found) else Slot.MORNING,
        from_below=below,
    )


def due_today(view: BatchView, found: TrayOutlook) -> bool:
    """Whether a tray is to be watered today.

    Once watered today, or called still wet today, it is left alone; a tray called dry after its
    watering is due again.
    """
    if found.look_today is Moisture.STILL_WET:
        return False
    if found.full.day >= view.day:
        return found.dry_since is not None and found.look_today is Moisture.ALREADY_DRY
    return found.dry_since is not None or found.by is not None


def _bare(found: TrayOutlook) -> bool:
    return found.roots is RootStage.BARE_SEED


def _window(view: BatchView, found: TrayOutlook) -> Window:
    """Due from the day it runs out; watered yesterday, it is not overdue this morning.

    Nor is a tray that may well have been watered without a word: it only has to be felt.
    """
    best = min(found.dry_since or view.day, view.day)
    if found.to_feel:
        return Window(best, best, view.day)
    latest = max(best, found.full.day + timedelta(days=1))
    return Window(best, best, latest)


def _harm(found: TrayOutlook) -> Harm:
    empty = found.left_ml <= 0.0 and not found.to_feel
    return Harm.DIES_TODAY if _bare(found) or empty else Harm.SPOILS_THIS_WEEK


def _instruction(found: TrayOutlook, below: bool) -> str:
    left, each = found.allowed_left_ml, found.holder.each
    if found.to_feel:
        state = f"no watering written down since {say_day(found.full.day)}, feel it"
    elif found.by is None or left < 1.0:
        state = f"nothing left to spare {each}"
    else:
        state = f"{left:.0f} ml left to spare {each}, gone {BY_WORDS[found.by]}"
    way, how = ("from below", FROM_BELOW) if below else ("from above", FROM_ABOVE)
    return f"Water {way}: {state}; {_next(found)}; {how}"


def _next(found: TrayOutlook) -> str:
    if found.known.max_c >= HOT_DAY_C:
        return "a hot day: look again at midday, 15:00 and 17:00"
    again = found.again
    if again is None:
        return "next in more than 10 days"
    if again == found.known.day:
        return "look again this afternoon"
    return f"next on {say_day(again)}"


def _figures(found: TrayOutlook) -> tuple[str, ...]:
    holder, tray = found.holder, found.holder.water
    known, today = found.known, found.today
    share = found.share
    said = [
        f"{holder.name}: {tray.capacity_ml:.0f} ml easily available {holder.each}, "
        f"{share:.0%} may go ({found.roots})",
        _since(found),
        f"{tray.capacity_ml - found.left_ml:.0f} ml gone by this morning, "
        f"{found.allowed_left_ml:.0f} ml left to spare",
        f"{_takes(found)}: {today.et0_mm:.1f} mm in the open "
        f"({known.basis}, {known.min_c:g} to {known.max_c:g} C), {today.exposure}, "
        f"{today.bare_loss_mm:.1f} mm here",
    ]
    if today.loss_mm > today.bare_loss_mm:
        said.append(
            f"leaves {found.leaves.spread_cm(found.day):.0f} cm across dry over "
            f"{today.cover:.1f} times the pot"
        )
    learnt = found.factor
    if learnt.looks or learnt.weighings:
        said.append(
            f"this place dries at {learnt.factor:.2f} of the model "
            f"({learnt.looks} looks, {learnt.weighings} weighings)"
        )
    if found.look_today is not None:
        said.append(f"called {found.look_today} today")
    return (*said, *holder.assumed, *known.assumed)


def _takes(found: TrayOutlook) -> str:
    """What today takes, and where less than that is there, how much."""
    wanted = ml_from_mm(found.today.loss_mm, found.holder.water.area_m2)
    if found.lost_ml + 0.5 < wanted:
        return f"today wants {wanted:.0f} ml, {found.left_ml:.0f} ml is there"
    return f"today takes {found.lost_ml:.0f} ml"


def _since(found: TrayOutlook) -> str:
    full = found.full
    if found.to_feel or not full.known:
        return f"no watering written down since {say_day(full.day)}: feel it"
    return f"{'watered' if full.day != full.worked else 'watered in'} {say_day(full.day)}"
