"""What a key is: its id, what it does, where it works, and how it is told."""

from __future__ import annotations

from benchround.core.frozen import dataclass
from benchround.screens.key_names import name_of

DOING, LOOKING, SEVERAL, MOVING, FORM, GOING, PROGRAM = (
    "Doing",
    "Looking",
    "Several at once",
    "Moving",
    "In a sheet",
    "Going elsewhere",
    "The program",
)
GROUPS = (DOING, LOOKING, SEVERAL, MOVING, FORM, GOING, PROGRAM)


@dataclass(frozen=True, slots=True)
class Key:
    """One key.

    Attributes:
        id: stays the same when the key or its words change.
        keys: names of the keys that do it, the first one shown.
        label: one or two words for the footer.
        tooltip: one sentence for help, palette and docs.
        group: the heading it stands under.
        where: the screens it works on.
        action: what is called.
        footer: place in the footer, 0 for none.
        priority: works even where another screen or a field would take it.
        called: the action's name for whoever chooses keys of their own, where keys of several
            screens share one; empty: the id.
    """

    id: str
    keys: tuple[str, ...]
    label: str
    tooltip: str
    group: str
    where: tuple[str, ...]
    action: str
    footer: int = 0
    priority: bool = False
    called: str = ""

    @property
    def name(self) -> str:
        """The action's name, as it is typed to choose another key for it."""
        return self.called or self.id

    @property
    def shown_first(self) -> str:
        """The first key in words."""
        return name_of(self.keys[0])

    @property
    def shown(self) -> str:
        """The keys in words, such as "left or ,"."""
        return " or ".join(name_of(key) for key in self.keys)
