"""The page of all cautions, for docs/ and for whoever wants to read them at one sitting."""

from __future__ import annotations

from benchround.core.caution.due import CAUTIONS, Caution, Repeat, blocks

_HEAD = """# Cautions

Every caution Benchround can show, by group. It is shown before the work it belongs to. None of them
gives a dose: product labels, your local codes, licensed trades and your own poison line go before
anything written here. That a plant has no caution does not prove it safe.

How often each is said:

"""

_REPEATS = {
    Repeat.EVERY_TIME: "each time; in full when new and once a year, else as one line. Those of "
    "very high severity are said in full once a day.",
    Repeat.FIRST_OF_DAY: "once a day, until read; in full when new and once a year.",
    Repeat.YEARLY: "in full when new and once a year; between, as one line if severity is high.",
    Repeat.PER_CROP: "in full the first time for each crop, then as one line.",
    Repeat.AT_SETUP: "in full once, when the place or the season is set up, then as one line.",
    Repeat.CROP_PAGE: "always in full on the crop's page.",
}


def _entry(caution: Caution) -> str:
    stop = " Blocks the work until read." if blocks(caution.id) else ""
    return (
        f"### {caution.id} {caution.short}\n\n"
        f"{caution.full}\n\n"
        f"Severity {caution.severity}; {caution.repeat}.{stop}  \n"
        f"Source: {caution.source}.\n"
    )


def cautions_page() -> str:
    """All cautions as Markdown, in groups in the order of their first id."""
    groups: dict[str, list[Caution]] = {}
    for caution in CAUTIONS.values():
        groups.setdefault(caution.group, []).append(caution)
    repeats = "".join(f"- **{repeat}**: {words}\n" for repeat, words in _REPEATS.items())
    parts = [_HEAD + repeats]
    for group, members in groups.items():
        parts.append(f"## {group.capitalize()}\n")
        parts.extend(_entry(caution) for caution in members)
    return "\n".join(parts)
