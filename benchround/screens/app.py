"""The full-screen program: owns the screens, the look, and the way out."""

from __future__ import annotations

import gc
from collections.abc import Callable, Mapping, Sequence
from contextlib import ExitStack
from dataclasses import replace
from datetime import date
from functools import partial
from importlib import import_module
from pathlib import Path
from typing import TYPE_CHECKING, Any, cast

from textual.app import App
from textual.binding import BindingsMap
from textual.reactive import Reactive
from textual.screen import Screen

from benchround.core.errors import BenchroundError
from benchround.screens.base import BenchScreen
from benchround.screens.destinations import SCREENS, destination
from benchround.screens.doings import Doings
from benchround.screens.keys import program_bindings
from benchround.screens.palettes import DARK, LIGHT, fitting, one_look
from benchround.screens.round import RoundScreen
from benchround.screens.signals import heed_signals
from benchround.screens.sitting import AS_USUAL, Sitting
from benchround.screens.text import speak
from benchround.screens.theme import THEMES
from benchround.shell.starting import collect_less

if TYPE_CHECKING:
    from textual.dom import DOMNode
    from textual.theme import Theme

    from benchround.desk import Desk
    from benchround.screens.key_ring import KeyRing

SCREEN_CLASSES = {
    "task": "benchround.screens.sheet:TaskSheet",
    "record": "benchround.screens.record:RecordSheet",
    "put off": "benchround.screens.put_off:PutOffSheet",
    "why": "benchround.screens.why:WhyScreen",
    "help": "benchround.screens.help:HelpScreen",
    "go to": "benchround.screens.go_to:GoToScreen",
    "crop": "benchround.screens.crop:CropScreen",
    "figure": "benchround.screens.figure:FigureSheet",
    "packet": "benchround.screens.packet:PacketSheet",
    "place": "benchround.screens.place_page:PlaceScreen",
    "sow like": "benchround.screens.sow_like:SowLikeSheet",
    "outlook sheet": "benchround.screens.outlook:OutlookSheet",
    "reading sheet": "benchround.screens.reading:ReadingSheet",
    "weighing sheet": "benchround.screens.weighing:WeighingSheet",
    "site sheet": "benchround.screens.site_sheet:SiteSheet",
    "place sheet": "benchround.screens.place_sheet:PlaceSheet",
    "container sheet": "benchround.screens.container_sheet:ContainerSheet",
    "choices sheet": "benchround.screens.choices_sheet:ChoicesSheet",
    "keys sheet": "benchround.screens.keys_sheet:KeysSheet",
    **SCREENS,
}
"""Every screen but the first, by name; each is imported when it is first opened."""

LONGEST_HELD_S = 2.0
"""A screen that is not ready by then is drawn as it is."""
READY_AFTER_S = 0.5
READ_BETWEEN_S = 0.02
LATER_MODULES = ("wide_card", "sheet_base", "year", "review")
"""What more screens than one stand on, and screens that take long to read."""
STYLE_SHEETS = tuple(
    Path(__file__).with_name(f"{name}.tcss")
    for name in ("page", "card", "wide_card", "look_up", "sheet", "go_to", "lids", "packets", "sow")
)
"""Shared ones first: what is set for one screen alone goes before it."""
CHANGE_LOOK = "change_look"
"""The action that changes no word on the screen, not even a refusal."""


class BenchroundApp(App[None], inherit_bindings=False):
    """One sitting at the desk.

    Args:
        desk: the open season.
        sitting: what the grower began with; the keys and the look may change in it.
        asked: gives the number of a signal that came before the screens could take it; 0: none.
    """

    CSS_PATH = ["app.tcss", "round.tcss"]  # noqa: RUF012 - the first screen's is not read by itself
    BINDINGS = program_bindings()
    TITLE = "benchround"
    ENABLE_COMMAND_PALETTE = False
    theme: Reactive[str] = Reactive(fitting)

    def __init__(
        self, desk: Desk, sitting: Sitting = AS_USUAL, asked: Callable[[], int] = int
    ) -> None:
        look = fitting(sitting.look_chosen(desk.season))
        self.set_reactive(BenchroundApp.theme, look)
        super().__init__(ansi_color=True if THEMES[look].ansi else None)
        self.sitting = sitting
        self._asked = asked
        if not sitting.ring.all_usual:
            self._bindings = BindingsMap(sitting.ring.program_bindings())
        self.desk = desk
        self.doings = Doings(desk, lambda: self.ring.named("undo"))
        speak(lambda: desk.season.unit_words)
        self.half_filled: dict[str, Mapping[str, str]] = {}
        self.last_batch = ""

    @property
    def ring(self) -> KeyRing:
        """The keys as the grower has them now."""
        return self.sitting.ring

    @property
    def lost_on_leaving(self) -> bool:
        """Whether all that is recorded goes when the grower leaves."""
        return self.sitting.lost_on_leaving

    @property
    def available_themes(self) -> dict[str, Theme]:
        """The looks of this program, and no others."""
        return THEMES

    def get_default_screen(self) -> Screen[None]:
        """The round opens first, laid out for this terminal at once."""
        first = RoundScreen()
        first.fit_to(self.size)
        return first

    def on_mount(self) -> None:
        """Say what is to be said first, and heed what asks to leave."""
        heed_signals(self._leave)
        if number := self._asked():
            self._leave(number)
        if self.sitting.said:
            self.call_after_refresh(self.round_screen.say, self.sitting.said)
        if not self.is_headless:
            self.set_timer(READY_AFTER_S, self._make_ready)

    def _make_ready(self, modules: Sequence[str] = LATER_MODULES) -> None:
        """Read what other screens need while the grower looks at the round, with time for keys."""
        if modules:
            import_module(f"benchround.screens.{modules[0]}")
            self.set_timer(READ_BETWEEN_S, partial(self._make_ready, modules[1:]))
            return
        unread = [str(path) for path in STYLE_SHEETS if not self.stylesheet.has_source(str(path))]
        for path in unread:
            self.stylesheet.read(path)
        if unread:
            self.stylesheet.reparse()

    def take_ring(self, ring: KeyRing) -> None:
        """Take other keys at once, on every screen that is open."""
        self.sitting = replace(self.sitting, ring=ring)
        self._bindings = BindingsMap(ring.program_bindings())
        for screen in self.screen_stack:
            if isinstance(screen, BenchScreen):
                screen.take_keys()

    def _leave(self, number: int) -> None:
        """Everything is saved at each action; only the terminal is to be put right."""
        leave = partial(self.exit, return_code=128 + number)
        if self.round_screen.is_mounted:
            leave()
        else:
            self.call_after_refresh(leave)  # a screen left half made ends in a fault

    def open(self, name: str, *args: Any) -> None:
        """Open a screen by name; when it closes, the screen beneath is told by `came_back`.

        Args:
            name: a name of `SCREEN_CLASSES`.
            args: what the screen is given.
        """
        self._lay(_class_of(name)(*args))

    def _lay(self, made: BenchScreen[Any]) -> None:
        """Lay a screen on top; nothing is drawn before all of it stands at its place."""
        made.fit_to(self.size)
        held = ExitStack()
        if not self.is_headless:  # without a terminal nothing is drawn that could be held
            held.enter_context(self.batch_update())
        self.push_screen(made, self._came_back)

        def show() -> None:
            late.stop()
            held.close()
            made.refresh()

        late = self.set_timer(LONGEST_HELD_S, show)
        made.call_after_refresh(show)

    def _came_back(self, said: str | None) -> None:
        if isinstance(self.screen, BenchScreen):
            self.screen.came_back(said)

    @property
    def round_screen(self) -> RoundScreen:
        """The round, which lies beneath all other screens."""
        return cast("RoundScreen", self.screen_stack[0])

    def require_open(self, day: date) -> None:
        """Refuse to open a sheet on what cannot be recorded.

        Raises:
            BenchroundError: the day is still to come, or the season is open for reading only.
        """
        self.doings.require_past(day)
        if self.desk.read_only:
            why = next(iter(self.desk.problems), "the season is open for reading only.")
            raise BenchroundError(f"Nothing can be recorded: {why}")

    def go_to(self, name: str) -> None:
        """Put away all that lies above the round, and open a screen there.

        Args:
            name: a name of the list of destinations.
        """
        opens = destination(name).screen
        made = _class_of(name).arrive(self) if opens else None
        while len(self.screen_stack) > 1:
            if isinstance(self.screen, BenchScreen):
                self.screen.put_away()
            self.pop_screen()
        if made is None:
            self.round_screen.came_back(None)
        else:
            self._lay(made)

    def action_go_to_list(self) -> None:
        """Open the list of screens."""
        if SCREEN_CLASSES["go to"] != _name_of(self.screen):
            self.open("go to")

    def action_find(self) -> None:
        """Open the search."""
        if SCREEN_CLASSES["find"] != _name_of(self.screen):
            self.open("find")

    async def run_action(
        self,
        action: Any,
        default_namespace: DOMNode | None = None,
        namespaces: Mapping[str, DOMNode] | None = None,
    ) -> bool:
        """Do what a key asks; what cannot be done is said on the screen in a sentence."""
        front = self.screen
        before = front.refusal if isinstance(front, BenchScreen) else ""
        try:
            done = await super().run_action(action, default_namespace, namespaces)
        except BenchroundError as error:
            self.refuse(error)
            return True
        looked = str(action).endswith(CHANGE_LOOK)
        if before and not looked and isinstance(front, BenchScreen) and front.is_attached:
            front.forget_refusal(before)
        return done

    def refuse(self, error: BenchroundError) -> None:
        """Say on the screen in front why something was not done."""
        if isinstance(self.screen, BenchScreen):
            self.screen.say(str(error), bad=True)
        else:
            self.notify(str(error), severity="error", markup=False)

    def action_change_look(self) -> None:
        """Change between light and dark; sixteen colours have one look only."""
        if self.theme in (DARK, LIGHT):
            self.take_look(LIGHT if self.theme == DARK else DARK)
        else:
            self.refuse(BenchroundError(one_look()))

    def take_look(self, look: str) -> None:
        """Take a look, and keep it for this computer.

        Raises:
            BenchroundError: it could not be kept; it holds until the grower leaves.
        """
        self.theme = fitting(look)
        kept = self.sitting.look_kept.with_look(look)
        self.sitting = replace(self.sitting, look_kept=kept)
        kept.keep(look)

    @property
    def look(self) -> str:
        """The look chosen on this computer, else the season's."""
        return self.sitting.look_chosen(self.desk.season) or DARK

    def action_find_command(self) -> None:
        """Open the list of commands of the screen in front."""
        from benchround.screens.commands import CommandSheet

        beneath = self.screen
        if isinstance(beneath, BenchScreen) and not isinstance(beneath, CommandSheet):
            self.push_screen(CommandSheet(beneath.KEYS_OF, self.ring), self._do_command)

    async def _do_command(self, name: str | None) -> None:
        """Do what was found, on the screen that is in front again."""
        key = next((key for key in self.ring.keys if key.id == name), None)
        if key is not None:
            await self.run_action(key.action, self.screen)


def _class_of(name: str) -> type[BenchScreen[Any]]:
    module, _, class_name = SCREEN_CLASSES[name].partition(":")
    found: type[BenchScreen[Any]] = getattr(import_module(module), class_name)
    return found


def _name_of(screen: Screen[Any]) -> str:
    return f"{type(screen).__module__}:{type(screen).__name__}"


def run(desk: Desk, sitting: Sitting = AS_USUAL, asked: Callable[[], int] = int) -> int:
    """Open the screens and stay until the grower leaves.

    Args:
        desk: the open season.
        sitting: what the grower began with.
        asked: gives the number of a signal that came meanwhile; 0: none.

    Returns:
        0, or 128 and the number of the signal that ended it.
    """
    collect_less()
    gc.freeze()  # the season and the program stay for the whole sitting: no need to look at them
    app = BenchroundApp(desk, sitting, asked)
    app.run(mouse=False)
    return app.return_code or 0
