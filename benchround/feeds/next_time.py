"""What to do differently, in sentences with figures, from what the season shows.

Each sentence rests on counts of this season; when a share or a number is called different is our
proposal: a share where its 95 % range leaves the library's out, too many from half as many again.
"""

from __future__ import annotations

from collections.abc import Iterator

from benchround.core.batch.batch import Batch
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import ENDED, WAITING
from benchround.core.numbers.shares import wilson
from benchround.core.record import Cause, Kind
from benchround.core.season import Season
from benchround.feeds.cause_words import NEXT_TIME
from benchround.feeds.next_year import enough_for
from benchround.feeds.review import Had, not_counted, seeds_sown, wanted_had

WORTH_SAVING = 0.9
"""So much of the seed sown, or less, is told to be enough; hardly less teaches nothing (ours)."""
TOO_MANY = 1.5
"""Plants had to plants wanted, from which too many were sown (our proposal)."""
MOST_NAMED = 5
OUR_RULE = "our proposal, from your own counts"
STALLED = {
    "heat": (
        "sow in the evening into a cool shaded place, or wait for a cooler spell",
        "University of Florida, on seed asleep in heat; J. Hort. Sci. 50, 1975, on lettuce (read)",
    ),
    "cold": (
        "give bottom heat, or sow when the days ahead are warmer",
        "Harrington and Minges 1954, days to emergence by temperature (read)",
    ),
}


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing to do differently.

    Attributes:
        found: what happened, with its figures.
        therefore: what to do; empty where there is only to be known.
        source: on what the advice rests.
    """

    found: str
    therefore: str
    source: str


def findings(season: Season) -> tuple[Finding, ...]:
    """Everything to do differently: causes by plants lost, then numbers, then what is not known."""
    return tuple(each_finding(season))


def each_finding(season: Season) -> Iterator[Finding]:
    """What `findings` says, each reckoned when it is asked for."""
    yield from _causes(season)
    yield from _stalls(season)
    yield from _numbers(season)
    yield from _shares(season)
    yield from _uncounted(season)


def _causes(season: Season) -> Iterator[Finding]:
    lost: dict[str, int] = {}
    batches: dict[str, list[str]] = {}
    for name in sorted(season.batches):
        for cause, count in season.batches[name].tally.losses.items():
            lost[cause] = lost.get(cause, 0) + count
            batches.setdefault(cause, []).append(name)
    for cause in sorted(lost, key=lambda cause: (-lost[cause], cause)):
        if cause in NEXT_TIME:
            therefore, source = NEXT_TIME[Cause(cause)]
            number = f"{lost[cause]} lost" if lost[cause] else "all lost, never counted,"
            found = f"{_capital(cause)}: {number} in {_named(season, batches[cause])}"
            yield Finding(found, therefore, source)


def _stalls(season: Season) -> Iterator[Finding]:
    stalled: dict[str, list[str]] = {}
    for name in sorted(season.batches):
        record = season.batches[name].main.last.get(Kind.STALLED)
        if record is not None:
            stalled.setdefault(record.text("cause"), []).append(name)
    for cause, (therefore, source) in STALLED.items():
        if cause in stalled:
            found = f"{_capital(cause)} stalled {_named(season, stalled[cause])} before it was up"
            yield Finding(found, therefore, source)


def _numbers(season: Season) -> Iterator[Finding]:
    for had in wanted_had(season):
        batch = season.batches[had.batch]
        name = f"{had.batch} {had.crop}"
        short = had.had < had.wanted and (had.planted or batch.ended)
        if not short and had.had <= TOO_MANY * had.wanted:
            continue
        enough, sown = enough_for(season, batch), seeds_sown(batch)
        if short:
            so = f"sow {enough} seeds instead of {sown}" if enough and enough > sown > 0 else ""
            words = f"{name}: {had.wanted} wanted, {had.had} {_kept(had, batch)}"
            yield Finding(words, so or "sow a few more, or sow twice", OUR_RULE)
        elif enough and enough <= WORTH_SAVING * sown:
            words = f"{name}: {had.had} {_kept(had, batch)} for {had.wanted} wanted"
            yield Finding(
                words, f"{enough} seeds are enough nine times in ten; {sown} were sown", OUR_RULE
            )


def _kept(had: Had, batch: Batch) -> str:
    return "planted" if had.planted else "left" if batch.ended else "alive"


def _shares(season: Season) -> Iterator[Finding]:
    crops = {batch.crop for batch in season.batches.values() if batch.sowing is not None}
    for key in sorted(crops):
        learned = season.learned(key).share
        if learned is None or not learned.sown:
            continue
        low, high = wilson(learned.up, learned.sown)
        if low <= learned.prior <= high:
            continue
        worse = high < learned.prior
        found = (
            f"{season.crop(key).name}: {learned.up} of {learned.sown} seeds came up, {low:.0%} to "
            f"{high:.0%}; the {learned.of} says {learned.prior:.0%}"
        )
        so = "sow more, or try another packet" if worse else "fewer seeds will do"
        taken = f"{so}; {learned.share:.0%} is reckoned with from now on"
        yield Finding(found, taken, OUR_RULE)


def _uncounted(season: Season) -> Iterator[Finding]:
    names = [
        name
        for name in not_counted(season)
        if season.batches[name].main.stage not in ENDED | WAITING
        and season.batches[name].tally.up is None
    ]
    if names:
        yield Finding(
            f"Never counted: {_named(season, names)}",
            "count once when all are up: without it nothing is learned of how much came up",
            OUR_RULE,
        )


def _named(season: Season, names: list[str]) -> str:
    """Batches with their crops, the first few by name."""
    said = [f"{name} {season.crop(season.batches[name].crop).name}" for name in names[:MOST_NAMED]]
    more = len(names) - MOST_NAMED
    return ", ".join(said) + (f" and {more} more" if more > 0 else "")


def _capital(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}"
