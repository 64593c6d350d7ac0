"""The keys as a grower has them: the list of keys, with keys of their own in their places."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

from benchround.screens.key import Key
from benchround.screens.key_names import name_of

if TYPE_CHECKING:
    from textual.binding import BindingType

PROGRAM_ACTIONS = "app."
"""How the actions of the whole program begin."""


class KeyRing:
    """All keys, and what is drawn from them.

    Args:
        keys: the list of keys.
        own: keys chosen by the grower, by the id in the list.
        faults: what could not be taken of what the grower chose, each in a sentence.
    """

    def __init__(
        self,
        keys: tuple[Key, ...],
        own: Mapping[str, tuple[str, ...]] | None = None,
        faults: tuple[str, ...] = (),
    ) -> None:
        chosen = own or {}
        self.keys = tuple(
            replace(key, keys=chosen[key.id]) if key.id in chosen else key for key in keys
        )
        self.faults = faults
        self.all_usual = not chosen
        self._shown: dict[str, str] = {}

    def on(self, screen: str) -> Iterator[Key]:
        """The keys of a screen, in the order of the list."""
        return (key for key in self.keys if screen in key.where)

    def footer(self, screen: str) -> tuple[Key, ...]:
        """The keys a screen names at its foot, in their order."""
        shown = [key for key in self.on(screen) if key.footer]
        return tuple(sorted(shown, key=lambda key: key.footer))

    def footer_words(
        self, screen: str, idle: frozenset[str] = frozenset()
    ) -> tuple[tuple[str, str], ...]:
        """The foot of a screen as (key, label).

        Args:
            screen: its name in the list of keys.
            idle: ids of keys that have nothing to do now and are left out.
        """
        shown = (key for key in self.footer(screen) if key.id not in idle)
        return tuple((name_of(key.keys[0]), key.label) for key in shown)

    def named(self, key_id: str) -> str:
        """The key of an action as it is shown in a sentence, such as "u" for undo.

        Args:
            key_id: the id in the list.
        """
        if not self._shown:
            self._shown = {key.id: name_of(key.keys[0]) for key in self.keys}
        return self._shown[key_id]

    def bindings(self, screen: str) -> list[BindingType]:
        """The keys of a screen as Textual wants them, those of the whole program left out."""
        return [_binding(key) for key in self.on(screen) if not _of_program(key)]

    def program_bindings(self) -> list[BindingType]:
        """The keys of the whole program as Textual wants them."""
        return [_binding(key) for key in self.keys if _of_program(key)]


def _of_program(key: Key) -> bool:
    return key.action.startswith(PROGRAM_ACTIONS)


def _binding(key: Key) -> BindingType:
    from textual.binding import Binding

    return Binding(
        ",".join(key.keys),
        key.action,
        key.label,
        show=False,
        priority=key.priority,
        tooltip=key.tooltip,
        id=key.id,
    )
