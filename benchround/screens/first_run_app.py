"""The program before there is a season: one screen, and nothing on disk."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

from textual.app import App
from textual.reactive import Reactive
from textual.screen import Screen

from benchround.core.errors import BenchroundError
from benchround.screens.base import BenchScreen
from benchround.screens.first_run import Begin, FirstRunScreen, Outcome
from benchround.screens.keys import USUAL
from benchround.screens.palettes import DARK, LIGHT, LookKept, fitting, one_look
from benchround.screens.signals import heed_signals
from benchround.screens.theme import THEMES

if TYPE_CHECKING:
    from textual.dom import DOMNode
    from textual.theme import Theme

    from benchround.screens.key_ring import KeyRing


class FirstRunApp(App[Outcome], inherit_bindings=False):
    """Asks for a first season.

    It has what a sheet asks of the program, and no desk: there is no season yet.

    Args:
        begin: writes the season.
        folder: where it is kept unless another folder is typed.
        today: the grower's day.
        ring: the keys as the grower has them.
        look_kept: the look this computer was given, and what keeps another one.
    """

    CSS_PATH = [  # noqa: RUF012 - as Textual has it; the first screen's is not read by itself
        "app.tcss",
        "sheet.tcss",
        "first_run.tcss",
    ]
    TITLE = "benchround"
    ENABLE_COMMAND_PALETTE = False
    theme: Reactive[str] = Reactive(fitting)

    def __init__(
        self,
        begin: Begin,
        folder: Path,
        today: date,
        ring: KeyRing = USUAL,
        look_kept: LookKept | None = None,
    ) -> None:
        self._look_kept = look_kept or LookKept()
        look = fitting(self._look_kept.look)
        self.set_reactive(FirstRunApp.theme, look)
        super().__init__(ansi_color=True if THEMES[look].ansi else None)
        self.ring = ring
        self.half_filled: dict[str, Mapping[str, str]] = {}
        self._asks = FirstRunScreen(begin, folder, today)

    @property
    def available_themes(self) -> dict[str, Theme]:
        """The looks of this program, and no others."""
        return THEMES

    def get_default_screen(self) -> Screen[Any]:
        """The one screen."""
        return self._asks

    def on_mount(self) -> None:
        """Heed what asks to leave."""
        heed_signals(self._leave)

    def _leave(self, number: int) -> None:
        self.exit(Outcome.LEFT, return_code=128 + number)

    async def run_action(
        self,
        action: Any,
        default_namespace: DOMNode | None = None,
        namespaces: Mapping[str, DOMNode] | None = None,
    ) -> bool:
        """Do what a key asks; what cannot be done is said on the screen in a sentence."""
        try:
            return await super().run_action(action, default_namespace, namespaces)
        except BenchroundError as error:
            self.refuse(error)
            return True

    def refuse(self, error: BenchroundError) -> None:
        """Say on the screen why something was not done."""
        if isinstance(self.screen, BenchScreen):
            self.screen.say(str(error), bad=True)

    def change_look(self) -> None:
        """Change between light and dark; sixteen colours have one look only."""
        if self.theme in (DARK, LIGHT):
            self.theme = LIGHT if self.theme == DARK else DARK
            self._look_kept.keep(self.theme)
        else:
            self.refuse(BenchroundError(one_look()))


def ask(
    begin: Begin,
    folder: Path,
    today: date,
    ring: KeyRing = USUAL,
    look_kept: LookKept | None = None,
) -> tuple[Outcome, int]:
    """Ask for a first season; what became of it, and the code to leave with.

    Args:
        begin: writes the season.
        folder: where it is kept unless another folder is typed.
        today: the grower's day.
        ring: the keys as the grower has them.
        look_kept: the look this computer was given, and what keeps another one.
    """
    app = FirstRunApp(begin, folder, today, ring, look_kept)
    outcome = app.run(mouse=False)
    return outcome or Outcome.LEFT, app.return_code or 0
