"""The page of all keys for docs/, from the one list of them.

`python -m benchround.screens.keys_page > docs/keys.md` writes it anew.
"""

from __future__ import annotations

from collections.abc import Iterator

from benchround.screens.keys import GROUPS, SCREEN_WORDS, Key, keys_on

QUICKEST_SOWING = ("s", "c", "o", "s", "m", "ctrl+s")
"""The keys that sow a batch of cosmos with every default, from the round; counted in a test."""

HEAD = """# Keys

Every key, screen by screen. The same list feeds the foot of each screen, the page `?` opens, and
the list of commands `ctrl+p` opens. In a sheet, letters are typed into the field; `tab` and the
arrow keys move between fields and choices.

"""

TAIL = """## How many keys things take

| to do | keys |
|---|---|
| tick a task | `space` |
| take it back | `u` |
| tick all tasks of a kind | `f`, `space` |
| count seedlings from a task to look | `enter`, the number, `enter` |
| put a task off until tomorrow | `p`, `enter` |
"""


def keys_page() -> str:
    """All keys as Markdown."""
    return HEAD + "".join(_screens()) + TAIL + _sowing()


def _sowing() -> str:
    keys = ", ".join(f"`{key}`" for key in QUICKEST_SOWING)
    return f"| sow a batch with every default ({len(QUICKEST_SOWING)} keys) | {keys} |\n"


def _screens() -> Iterator[str]:
    for screen, words in SCREEN_WORDS.items():
        yield f"## {words}\n\n"
        for group in GROUPS:
            keys = [key for key in keys_on(screen) if key.group == group]
            if keys:
                yield f"### {group}\n\n| key | what it does |\n|---|---|\n"
                yield from (_row(key) for key in keys)
                yield "\n"


def _row(key: Key) -> str:
    return f"| `{key.shown}` | {key.tooltip} |\n"


if __name__ == "__main__":
    print(keys_page(), end="")
