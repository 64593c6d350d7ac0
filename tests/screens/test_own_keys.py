"""Keys of the grower's own: every action takes another key, and what may not be is told."""

from __future__ import annotations

import string
from pathlib import Path

import pytest
from textual import keys as textual_keys

from benchround.core.errors import InputError, SeasonError
from benchround.core.task import Family
from benchround.desk import Desk
from benchround.screens.first_run_app import FirstRunApp
from benchround.screens.foot_line import foot_line
from benchround.screens.key_choice import KEPT, Entry, actions, choose
from benchround.screens.key_names import key_of, name_of
from benchround.screens.key_ring import KeyRing
from benchround.screens.keys import (
    FIRST_RUN,
    KEYS,
    MOST_IN_FOOTER,
    SCREEN_WORDS,
    USUAL,
    Key,
)
from benchround.screens.rows import Heading
from benchround.screens.text import plain
from benchround.screens.widgets.key_bar import KeyBar
from benchround.shell.own_keys import own_ring, ring_of, text_of, with_keys, write_keys
from tests.sample.story import DAY_0
from tests.screens import test_ahead_keys, test_cards_keys, test_keys
from tests.screens.stage import app_on, front, said, seen, stand_on, tasks_of

FREE = "f9"
"""A key the usual list does not use anywhere."""
WAYS = {**test_keys.TO_SCREEN, **test_cards_keys.TO_SCREEN, **test_ahead_keys.TO_SCREEN}
"""Keys from the round to each screen, with the cursor on a task of a batch."""


def entry(action: str, *keys: str, line: int = 1) -> Entry:
    return Entry(f"keys.toml, line {line}", action, keys)


def only_fault(*entries: Entry) -> str:
    ring = choose(entries)
    assert len(ring.faults) == 1
    return ring.faults[0]


def test_the_free_key_is_free() -> None:
    assert all(FREE not in key.keys for key in KEYS)


@pytest.mark.parametrize(
    "sign", string.punctuation + string.ascii_letters + string.digits + "\u00f6"
)
def test_a_character_goes_by_itself(sign: str) -> None:
    key = key_of(sign)
    assert key == textual_keys._character_to_key(sign)  # textual 8.2: what the terminal's key is
    assert name_of(key) == sign


@pytest.mark.parametrize(
    ("typed", "key", "name"),
    [
        ("space", "space", "space"),
        (" ", "space", "space"),
        ("Esc", "escape", "esc"),
        ("page  Down", "pagedown", "page down"),
        ("PageUp", "pageup", "page up"),
        ("F12", "f12", "f12"),
        ("Ctrl+T", "ctrl+t", "ctrl+t"),
        ("control+t", "ctrl+t", "ctrl+t"),
        ("shift+x", "X", "X"),
        ("shift+tab", "shift+tab", "shift+tab"),
        ("ctrl+Up", "ctrl+up", "ctrl+up"),
        ("ctrl+page down", "ctrl+pagedown", "ctrl+page down"),
        ("alt+x", "alt+x", "alt+x"),
        ("comma", "comma", ","),
        ("del", "delete", "delete"),
    ],
)
def test_other_keys_have_plain_names(typed: str, key: str, name: str) -> None:
    assert key_of(typed) == key
    assert name_of(key) == name
    assert key_of(name) == key


@pytest.mark.parametrize(
    "typed",
    ["", "foo", "f13", "ctrl+1", "ctrl+i", "ctrl+m", "ctrl+h", "ctrl+j", "shift+f5", "ctrl+alt+x",
     "question_mark", "\x1b", "\u202e", "\U0001f600", "a\u0301\u0301", "ctrl+", "+x"],
)  # fmt: skip
def test_what_is_no_key_is_refused(typed: str) -> None:
    with pytest.raises(InputError):
        key_of(typed)


@pytest.mark.parametrize("action", list(actions()))
def test_every_action_takes_another_key(action: str) -> None:
    ring = choose([entry(action, FREE)])
    assert ring.faults == ()
    for key in actions()[action]:
        now = next(one for one in ring.keys if one.id == key.id)
        assert now.keys == (FREE, *(name for name in key.keys if name in KEPT))
        assert ring.named(key.id) == FREE


@pytest.mark.parametrize("action", list(actions()))
def test_every_foot_fits_80_columns_with_a_longer_key(action: str) -> None:
    ring = choose([entry(action, "shift+page up")])
    assert ring.faults == ()
    for screen in SCREEN_WORDS:
        words = ring.footer_words(screen)
        assert len(words) <= MOST_IN_FOOTER
        drawn = plain([foot_line(words, 80)])
        assert len(drawn) <= 80
        assert drawn.endswith(f"{words[-1][0]} {words[-1][1]}")
        assert plain([foot_line(words, 30)]).endswith(f"{words[-1][0]} {words[-1][1]}")


REMAPPED = [
    pytest.param(next(screen for screen in WAYS if screen in key.where), key, id=key.id)
    for key in KEYS
    if any(screen in WAYS for screen in key.where)
]
"""Every key of the list, on the first screen that has it."""
BEFORE = {**test_keys.BEFORE, **test_cards_keys.BEFORE, **test_ahead_keys.BEFORE}


@pytest.mark.parametrize(("screen", "key"), REMAPPED)
async def test_the_other_key_does_it_and_the_usual_one_no_longer(
    desk: Desk, screen: str, key: Key
) -> None:
    # on the way to the screen the usual keys are pressed; the other key is taken once it is open
    app = app_on(desk)
    ring = choose([entry(key.name, FREE)])
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.pause()
        if key.id == "undo":  # what asks nothing is ticked at once, and can be taken back
            stand_on(app, Family.THIN, "b20")
        else:
            stand_on(app, Family.UNCOVER, "b06")
        await pilot.press(*WAYS[screen])
        await pilot.press(*BEFORE.get(key.id, ()))
        app.take_ring(ring)
        await pilot.pause()
        assert front(app) == screen
        asked: list[str] = []
        done = type(app).run_action

        async def listening(action: object, *rest: object, **more: object) -> bool:
            asked.append(str(action))
            return await done(app, action, *rest, **more)  # type: ignore[arg-type]  # as Textual's

        app.run_action = listening  # type: ignore[method-assign]  # only to hear what is asked
        gone = next((name for name in key.keys if name not in KEPT), None)
        if gone is not None:
            await pilot.press(gone)
            assert key.action not in asked
        assert front(app) == screen
        await pilot.press(FREE)
        await pilot.pause()
    assert key.action in asked


async def test_foot_help_and_commands_name_the_own_key(desk: Desk) -> None:
    app = app_on(desk)
    app.take_ring(choose([entry("tick", "x"), entry("help", "h", line=2)]))
    async with app.run_test() as pilot:
        await pilot.pause()
        assert app.screen.query_one(KeyBar).text.startswith("x done")
        assert app.screen.query_one(KeyBar).text.endswith("h all keys")
        await pilot.press("h")
        await pilot.pause()
        assert "x                   Record the task" in seen(app)
        assert "h or ? or f1        Show all keys" in seen(app) or "h or ? or f1" in _all(app)
        await pilot.press("escape", "ctrl+p", *"record the task")
        await pilot.pause()
        assert "x: Record the task" in seen(app)


def _all(app: object) -> str:
    from benchround.screens.app import BenchroundApp
    from benchround.screens.page import Sheaf

    assert isinstance(app, BenchroundApp)
    return app.screen.query_one(Sheaf).text


async def test_the_first_run_has_own_keys_too(tmp_path: Path) -> None:
    ring = choose([entry("to-sample", FREE)])
    app = FirstRunApp(lambda season: None, tmp_path / "season", DAY_0, ring)
    async with app.run_test() as pilot:
        await pilot.pause()
        assert f"{FREE} sample" in app.screen.query_one(KeyBar).text
        await pilot.press("ctrl+o")
        assert app.return_value is None
        await pilot.press(FREE)
        await pilot.pause()
    assert app.return_value == "sample"
    assert dict(ring.footer_words(FIRST_RUN))[FREE] == "sample"


@pytest.mark.parametrize(
    ("entries", "words"),
    [
        pytest.param((entry("tck", "x"),), "There is no action 'tck': near it: tick.", id="action"),
        pytest.param((entry("tick", "hyper+x"),), "There is no key 'hyper+x'", id="key"),
        pytest.param((entry("tick", "ctrl+i"),), "cannot tell 'ctrl+i' from tab", id="same as tab"),
        pytest.param((entry("tick"),), "'tick' takes one key", id="no key"),
        pytest.param((entry("tick", *"12345"),), "or up to 4", id="five keys"),
        pytest.param((entry("tick", "m"),), "m is 'mark' already (The round)", id="usual one's"),
        pytest.param(
            (entry("tick", FREE), entry("mark", FREE, line=2)),
            "line 2: f9 is 'tick' already (The round): take another key for 'mark'",
            id="own one's",
        ),
        pytest.param(
            (entry("find", "n"),), "n is 'other-figure' already (A crop)", id="on another screen"
        ),
        pytest.param((entry("tick", "ctrl+q"),), "ctrl+q is always 'quit'", id="leaving"),
        pytest.param((entry("tick", "f1"),), "f1 is always 'help'", id="help"),
        pytest.param((entry("tick", "?"),), "? is always 'help'", id="help by its sign"),
        pytest.param((entry("tick", "esc"),), "esc goes one step back", id="going back"),
        pytest.param((entry("tick", "ctrl+c"),), "ctrl+c tells how to leave", id="ctrl+c"),
        pytest.param((entry("save", "x"),), "x would be typed: take ctrl and", id="typed letter"),
        pytest.param((entry("save", "home"),), "home would be typed", id="edits the field"),
        pytest.param((entry("quit", "Q"),), "where letters are typed", id="leaving by a letter"),
        pytest.param(
            (entry("tick", "x"), entry("tick", "y", line=9)),
            "line 9: 'tick' is given twice: the first one holds",
            id="twice",
        ),
    ],
)
def test_what_may_not_be_chosen_is_told_with_its_line(
    entries: tuple[Entry, ...], words: str
) -> None:
    fault = only_fault(*entries)
    assert fault.startswith("keys.toml, line ")
    assert words in fault


def test_a_bad_entry_is_left_out_and_the_rest_holds() -> None:
    ring = choose([entry("tick", "m"), entry("undo", "z", line=2), entry("nothing", "x", line=3)])
    assert len(ring.faults) == 2
    assert ring.named("tick") == USUAL.named("tick")
    assert ring.named("undo") == ring.named("undo-on-card") == ring.named("undo-ahead") == "z"


def test_two_actions_may_change_keys_with_one_another() -> None:
    ring = choose([entry("tick", "m"), entry("mark", "space", line=2)])
    assert ring.faults == ()
    assert (ring.named("tick"), ring.named("mark")) == ("m", "space")


def test_leaving_out_one_entry_leaves_out_what_then_stands_in_its_way() -> None:
    # mark wants tick's key, which tick gave up for a key it may not have
    ring = choose([entry("tick", "p"), entry("mark", "space", line=2)])
    assert [fault.split(":")[0] for fault in ring.faults] == [
        "keys.toml, line 1",
        "keys.toml, line 2",
    ]
    assert (ring.named("tick"), ring.named("mark")) == ("space", "m")


def test_a_letter_counts_where_letters_are_commands_and_fields_keep_their_key() -> None:
    ring = choose([entry("find", "j"), entry("up", "h", line=2), entry("have-read", "z", line=3)])
    assert ring.faults == ()
    assert (ring.named("find"), ring.named("find-while-typing")) == ("j", "ctrl+f")
    assert (ring.named("row-up"), ring.named("found-up")) == ("h", "up")
    assert (ring.named("have-read"), ring.named("agree")) == ("z", "ctrl+k")


@pytest.mark.parametrize("action", ["quit", "help", "back"])
def test_leaving_help_and_one_step_back_keep_their_keys(action: str) -> None:
    ring = choose([entry(action, FREE)])
    assert ring.faults == ()
    for screen in SCREEN_WORDS:
        usual = {name: key.name for key in USUAL.on(screen) for name in key.keys if name in KEPT}
        now = {name: key.name for key in ring.on(screen) for name in key.keys}
        assert usual.items() <= now.items()


FILE = """# mine, typed at the potting bench
tick = "x"

put-off = ["p",
  "f6"]
"undo" = "z"  # as elsewhere
"""


def test_a_file_gives_its_keys() -> None:
    ring = ring_of(FILE, "keys.toml")
    assert ring.faults == ()
    assert [ring.named(name) for name in ("tick", "put-off", "undo")] == ["x", "p", "z"]
    assert next(key for key in ring.keys if key.id == "put-off").keys == ("p", "f6")


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("quit = 3", "line 7: 'quit' is given no key's name"),
        ("quit = [3]", "line 7: 'quit' is given no key's name"),
        ("quit =", "line 7: this cannot be understood"),
        ("[more]", "line 7: the heading [more] has no place here"),
        ('quitt = "f9"', "line 7: There is no action 'quitt': near it: quit"),
        ('tick = "f9"', "line 7: 'tick' is given twice"),
        ('sow = "ctrl+9"', "line 7: There is no key 'ctrl+9'"),
    ],
)
def test_a_fault_of_the_file_is_told_with_its_line(line: str, words: str) -> None:
    ring = ring_of(f"{FILE}{line}\n", "keys.toml")
    assert any(words in fault for fault in ring.faults)
    assert all(fault.startswith("keys.toml, line ") for fault in ring.faults)
    assert (ring.named("tick"), ring.named("undo")) == ("x", "z")


@pytest.mark.parametrize(
    "content",
    [
        b"\xff\xfe\x00",
        b"\x00\x01",
        b"=\n" * 50,
        b"[[[[",
        b'tick = "x"\n' * 9000,
        b"",
        b"\xef\xbb\xbf",
    ],
    ids=["no UTF-8", "controls", "equals", "brackets", "too long", "empty", "only a mark"],
)
def test_no_file_keeps_the_program_from_starting(content: bytes, tmp_path: Path) -> None:
    path = tmp_path / "keys.toml"
    path.write_bytes(content)
    ring = own_ring(path)
    assert isinstance(ring, KeyRing)
    assert ring.named("tick") == "space"
    assert bool(ring.faults) is (content not in (b"", b"\xef\xbb\xbf"))
    assert all(str(path) in fault for fault in ring.faults)


def test_no_file_and_a_folder_in_its_place(tmp_path: Path) -> None:
    assert own_ring(tmp_path / "keys.toml") is USUAL
    assert "it is no file" in own_ring(tmp_path).faults[0]
    with pytest.raises(SeasonError):
        text_of(tmp_path)


def test_one_line_is_changed_and_the_others_stay() -> None:
    changed = with_keys(FILE, "put-off", ["ctrl+b"])
    assert changed == (
        '# mine, typed at the potting bench\ntick = "x"\n\n"undo" = "z"  # as elsewhere\n'
        'put-off = "ctrl+b"\n'
    )
    assert "undo" not in with_keys(FILE, "undo", [])
    assert ring_of(with_keys("", "sow", ["\\", '"']), "keys.toml").named("sow") == "\\"
    above = with_keys("[more]\n", "sow", ["f9"])
    assert above.index("sow") < above.index("[more]")


def test_the_file_is_written_whole_or_not_at_all(tmp_path: Path) -> None:
    path = tmp_path / "new" / "keys.toml"
    write_keys(path, FILE)
    assert text_of(path) == FILE
    assert [found.name for found in path.parent.iterdir()] == ["keys.toml"]
    with pytest.raises(SeasonError, match="could not be written"):
        write_keys(path / "under" / "keys.toml", FILE)


async def test_faults_are_seen_on_the_round_and_in_full_on_the_page_of_keys(desk: Desk) -> None:
    app = app_on(desk)
    app.take_ring(choose([entry("tick", "m"), entry("nothing", "x", line=2)]))
    async with app.run_test() as pilot:
        await pilot.pause()
        assert "Own keys left out: 2; ? tells why" in seen(app)
        await pilot.press("f1")
        await pilot.pause()
        assert "m is 'mark' already" in _all(app)


async def test_sentences_name_the_own_keys(desk: Desk) -> None:
    app = app_on(desk)
    own = {"undo": "z", "early": "j", "why": "i", "new-sheet": "f9", "have-read": "f8"}
    ring = choose([entry(action, key) for action, key in own.items()])
    assert ring.faults == ()
    app.take_ring(ring)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        headings = [row for row in tasks_of(app).rows if isinstance(row, Heading)]
        assert headings[-1].hint == "j folds them"
        stand_on(app, Family.THIN, "b20")
        await pilot.press("space")
        await pilot.pause()
        assert "z takes it back" in said(app)
        await pilot.press("s", "c", "escape", "s")
        await pilot.pause()
        assert "f9 begins anew" in said(app)
        await pilot.press("escape")
        stand_on(app, Family.UNCOVER, "b06")
        await pilot.press("space")
        await pilot.pause()
        assert "f8 says that you have read it" in seen(app)
