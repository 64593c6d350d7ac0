"""Keys of the grower's own choosing: what may be chosen, and what is told where it may not.

An entry that cannot be taken is left out, with a sentence that says why and what to do; all other
entries hold. Leaving, help, and one step back keep their own keys whatever is chosen.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import combinations

from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.near_names import near_words, shown
from benchround.screens.key import Key
from benchround.screens.key_names import is_typed, key_of, name_of
from benchround.screens.key_ring import KeyRing
from benchround.screens.key_screens import SCREEN_WORDS, TYPING
from benchround.screens.keys import KEYS

KEPT: Mapping[str, tuple[str, ...]] = {
    "ctrl+q": ("quit",),
    "ctrl+c": (),
    "f1": ("help",),
    "question_mark": ("help",),
    "escape": ("back", "unmark", "stop"),
}
"""Keys that stay with the actions they belong to, and with no other."""
MOST_KEYS = 4
"""Keys for one action."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of the grower's: an action and the keys for it.

    Attributes:
        where: where it stands, such as the file and the line; said before what is wrong with it.
        action: the action's name.
        keys: names of keys as they were typed.
    """

    where: str
    action: str
    keys: tuple[str, ...]


def actions(keys: Iterable[Key] = KEYS) -> dict[str, tuple[Key, ...]]:
    """Every action that can have another key, by name, with its keys on all the screens."""
    found: dict[str, list[Key]] = {}
    for key in keys:
        found.setdefault(key.name, []).append(key)
    return {name: tuple(members) for name, members in found.items()}


def choose(entries: Sequence[Entry], faults: Iterable[str] = ()) -> KeyRing:
    """The keys with the grower's own in their places; what could not be taken is among its faults.

    Args:
        entries: the grower's entries; of two for one action the first holds.
        faults: what was wrong with them already.
    """
    told = list(faults)
    taken: dict[str, tuple[Entry, dict[str, tuple[str, ...]]]] = {}
    for entry in entries:
        try:
            if entry.action in taken:
                raise InputError(f"'{entry.action}' is given twice: the first one holds.")
            taken[entry.action] = entry, _own_keys(entry)
        except InputError as error:
            told.append(f"{entry.where}: {error}")
    while found := _conflict(taken):
        told.append(found[1])
        del taken[found[0]]
    own = {key_id: keys for _, ids in taken.values() for key_id, keys in ids.items()}
    return KeyRing(KEYS, own, tuple(told))


def _own_keys(entry: Entry) -> dict[str, tuple[str, ...]]:
    """The keys of an entry by the ids of the list they go to.

    Raises:
        InputError: it cannot be taken.
    """
    known = actions()
    if entry.action not in known:
        near = near_words(entry.action, known, "'benchround keys' lists them")
        raise InputError(f"There is no action {shown(entry.action)}: {near}.")
    if not 1 <= len(entry.keys) <= MOST_KEYS:
        raise InputError(f"'{entry.action}' takes one key, or up to {MOST_KEYS}.")
    keys = tuple(dict.fromkeys(key_of(name) for name in entry.keys))
    for key in keys:
        _require_free(entry.action, key)
    own = {key.id: _with_kept(key, usable) for key, usable in _usable(known[entry.action], keys)}
    if not own:
        names = ", ".join(name_of(key) for key in keys)
        raise InputError(
            f"'{entry.action}' works where letters are typed, and {names} would be typed: take "
            "ctrl and a letter, or f3 to f12."
        )
    return own


def _require_free(action: str, key: str) -> None:
    owners = KEPT.get(key)
    if owners is None or action in owners:
        return
    always = {"ctrl+c": "tells how to leave", "escape": "goes one step back"}
    does = always.get(key) or f"is always '{owners[0]}'"
    raise InputError(f"{name_of(key)} {does}: take another key for '{action}'.")


def _usable(members: Iterable[Key], keys: Sequence[str]) -> Iterator[tuple[Key, tuple[str, ...]]]:
    """The keys that work where a member of the list does; a field takes letters for itself."""
    for member in members:
        in_field = any(screen in TYPING for screen in member.where)
        usable = tuple(key for key in keys if not (in_field and is_typed(key)))
        if usable:
            yield member, usable


def _with_kept(member: Key, keys: tuple[str, ...]) -> tuple[str, ...]:
    kept = (key for key in member.keys if key in KEPT and key not in keys)
    return (*keys, *kept)


Taken = Mapping[str, tuple[Entry, Mapping[str, tuple[str, ...]]]]


def _conflict(taken: Taken) -> tuple[str, str] | None:
    """The first action whose keys are another's on one screen already, and the sentence for it."""
    own = {key_id: keys for _, ids in taken.values() for key_id, keys in ids.items()}
    order = list(taken)
    users: dict[tuple[str, str], list[Key]] = {}
    for key in KeyRing(KEYS, own).keys:
        for screen in key.where:
            for name in key.keys:
                users.setdefault((screen, name), []).append(key)
    for (screen, name), members in users.items():
        for one, other in combinations(members, 2):
            if one.name == other.name:
                continue
            chosen = [key.name for key in (one, other) if key.id in own]
            loser = max(chosen, key=order.index)
            winner = other.name if loser == one.name else one.name
            return loser, (
                f"{taken[loser][0].where}: {name_of(name)} is '{winner}' already "
                f"({SCREEN_WORDS[screen]}): take another key for '{loser}', or give '{winner}' "
                "another one too."
            )
    return None
