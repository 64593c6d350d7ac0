"""Names of keys: as they are typed and shown ("ctrl+t", "f5", "?"), and as the terminal gives them.

A character goes by itself. What has no character has a plain name. Inside the program a character
that is no letter or figure goes by its Unicode name, as Textual names it.
"""

from __future__ import annotations

import unicodedata

from benchround.core.errors import InputError

NAMED = (
    "space",
    "enter",
    "tab",
    "escape",
    "up",
    "down",
    "left",
    "right",
    "home",
    "end",
    "pageup",
    "pagedown",
    "insert",
    "delete",
    "backspace",
    *(f"f{number}" for number in range(1, 13)),
)
"""Keys without a character of their own."""
SAID = {"pageup": "page up", "pagedown": "page down", "escape": "esc"}
"""Names that are shown otherwise."""
ALIASES = {
    "esc": "escape",
    "return": "enter",
    "page up": "pageup",
    "page down": "pagedown",
    "page-up": "pageup",
    "page-down": "pagedown",
    "del": "delete",
    "ins": "insert",
    "space bar": "space",
    "comma": ",",
    "plus": "+",
    "minus": "-",
}
SHORTER = {
    "solidus": "slash",
    "reverse_solidus": "backslash",
    "commercial_at": "at",
    "hyphen_minus": "minus",
    "plus_sign": "plus",
    "low_line": "underscore",
}
"""Unicode names that Textual shortens."""
LONGER = {
    **{short: long for long, short in SHORTER.items()},
    "hyphen_minus": "hyphen-minus",
    "less_than_sign": "less-than sign",
    "greater_than_sign": "greater-than sign",
}
SAME_AS = {"ctrl+i": "tab", "ctrl+m": "enter", "ctrl+j": "enter", "ctrl+h": "backspace"}
"""What a terminal sends for both, so that it cannot be told from the other."""
EDITING = frozenset({"left", "right", "home", "end", "delete", "backspace"})
"""Keys that move and delete within a field."""
WITH_ARROWS = ("up", "down", "left", "right", "home", "end", "pageup", "pagedown")
PICTURES = frozenset({"So", "Mn", "Me", "Sk"})
"""Categories of characters no keyboard has by themselves; the accents that it has are ASCII."""
HOW = "write a character such as x or ?, or ctrl+t, alt+t, f5, home, page down"


def key_of(typed: str) -> str:
    """The key meant by a typed name.

    Raises:
        InputError: there is no such key, or no terminal can tell it from another one.
    """
    text = unicodedata.normalize("NFC", typed)
    if not text:
        raise InputError(f"No key is named: {HOW}.")
    if len(text) == 1 and text != " ":
        return _of_character(text, typed)
    name = " ".join(text.casefold().split()) if text.strip() else "space"
    name = name.replace("control+", "ctrl+").replace(" + ", "+")
    name = ALIASES.get(name, name)
    if len(name) == 1:
        return _of_character(name, typed)
    if name in NAMED:
        return name
    return _with_held(name, typed)


def _of_character(sign: str, typed: str) -> str:
    key = _unicode_key(sign)
    picture = not sign.isascii() and unicodedata.category(sign) in PICTURES
    if picture or not sign.isprintable() or name_of(key) != sign:
        raise InputError(f"'{typed}' is no key of a keyboard: {HOW}.")
    return key


def _unicode_key(sign: str) -> str:
    if sign.isalnum():
        return sign
    name = unicodedata.name(sign, "").lower().replace("-", "_").replace(" ", "_")
    return SHORTER.get(name, name)


def _with_held(name: str, typed: str) -> str:
    """A key pressed while another one is held."""
    held, _, rest = name.rpartition("+")
    rest = ALIASES.get(rest, rest)
    key = f"{held}+{rest}"
    if key in SAME_AS:
        raise InputError(
            f"A terminal cannot tell '{typed}' from {name_of(SAME_AS[key])}: take another key."
        )
    letter = len(rest) == 1 and rest.isascii() and rest.isalpha()
    if held in ("ctrl", "alt") and letter:
        return key
    if held == "shift" and letter:
        return rest.upper()
    if (held in ("ctrl", "shift") and rest in WITH_ARROWS) or key == "shift+tab":
        return key
    raise InputError(f"There is no key '{typed[:40]}': {HOW}.")


def name_of(key: str) -> str:
    """A key's name as it is shown and may be typed."""
    held, plus, rest = key.rpartition("+")
    if plus and held:
        return f"{held}+{SAID.get(rest, rest)}"
    if len(key) == 1 or key in NAMED:
        return SAID.get(key, key)
    long = LONGER.get(key, key)
    long = LONGER.get(long, long.replace("_", " "))
    try:
        return unicodedata.lookup(long)
    except KeyError:
        return key


def is_typed(key: str) -> bool:
    """Whether a key puts a character into a field, or edits what stands in it."""
    character = key == "space" or len(name_of(key)) == 1
    return character or key in EDITING
