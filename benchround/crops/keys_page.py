"""The part of docs/crops.md that lists the keys, drawn from the schema.

`python -m benchround.crops.keys_page` prints it.
"""

from __future__ import annotations

from collections.abc import Iterator

from benchround.core.crop.keys import SECTIONS
from benchround.core.crop.schema import Form, Key, Section, defaults
from benchround.core.crop.value import table_value


def keys_page() -> str:
    """Every section with its keys: meaning, what is allowed, and what holds when it is left out."""
    return "\n".join(line for section in SECTIONS for line in _section(section))


def _section(section: Section) -> Iterator[str]:
    brackets = "[[{}]]" if section.many else "[{}]"
    title = brackets.format("crop" if not section.name else f"crop.{section.name}")
    yield from (f"### `{title}`", "", f"{section.meaning[0].upper()}{section.meaning[1:]}.", "")
    yield from ("| key | meaning | allowed | if left out |", "|---|---|---|---|")
    for key in section.keys:
        allowed = "a day of the site's year" if key.form is Form.EDGE else key.allowed
        yield f"| `{key.name}` | {key.meaning} | {allowed} | {_left_out(section, key)} |"
    yield ""


def _left_out(section: Section, key: Key) -> str:
    if key.name not in defaults(section):
        return "must be given"
    default = table_value(defaults(section)[key.name])
    if default is None or default == []:
        return "none"
    if isinstance(default, bool):
        return "true" if default else "false"
    return f"{default:g}" if isinstance(default, float) else str(default)


if __name__ == "__main__":
    print(keys_page())
