"""The keys of the screens beyond the round: cards, lists to look things up in, and going there.

A part of the one list in `keys.py`; its letters for going somewhere come from `destinations.py`.
"""

from __future__ import annotations

from benchround.screens.destinations import DESTINATIONS
from benchround.screens.key import DOING, FORM, GOING, LOOKING, MOVING, PROGRAM, Key
from benchround.screens.keys_ahead import WIDE_CARDS

BATCH, CROPS, CROP, FIGURE, PACKETS, PACKET, REVIEW, FIND, PLACE_PAGE, GO_TO = (
    "batch",
    "crops",
    "crop",
    "figure",
    "packets",
    "packet",
    "review",
    "find",
    "place page",
    "go to",
)
CARDS = (BATCH, CROP, PACKETS, PLACE_PAGE, *WIDE_CARDS)
"""A list on the front and a page on the back."""
LOOK_UPS = (CROPS, FIND)
"""Letters are typed there, so commands need ctrl."""

CARD_WORDS = {
    BATCH: "A batch",
    CROPS: "Crops",
    CROP: "A crop",
    FIGURE: "A crop's figure",
    PACKETS: "Packets",
    PACKET: "Packet sheet",
    REVIEW: "Review",
    FIND: "Finding",
    PLACE_PAGE: "A place",
    GO_TO: "Going to a screen",
}

CARD_KEYS: tuple[Key, ...] = (
    Key(
        "record-batch",
        ("r",),
        "record",
        "Record anything that happened to the batch: a count, a loss, a move, a note.",
        DOING,
        (BATCH,),
        "record",
        1,
    ),
    Key(
        "sow-again",
        ("s",),
        "sow again",
        "Open a sowing sheet for the same crop and variety.",
        DOING,
        (BATCH,),
        "sow",
        2,
    ),
    Key(
        "withdraw",
        ("x",),
        "withdraw",
        "Withdraw what the cursor stands on; asked once more, then it no longer counts.",
        DOING,
        (BATCH, PACKETS),
        "withdraw",
        3,
    ),
    Key(
        "change-figure",
        ("enter",),
        "change",
        "Set the figure for this season; the library keeps its own.",
        DOING,
        (CROP,),
        "change",
        1,
    ),
    Key(
        "other-figure",
        ("n",),
        "other figure",
        "Set a figure the crop has not got, by the letters of its name.",
        DOING,
        (CROP,),
        "other",
        5,
    ),
    Key(
        "library-figure",
        ("x",),
        "library's",
        "Take the season's own figure back, so that the library's counts again; asked once more.",
        DOING,
        (CROP,),
        "withdraw",
        2,
    ),
    Key(
        "sow-crop",
        ("s",),
        "sow",
        "Open a sowing sheet for this crop.",
        DOING,
        (CROP,),
        "sow",
        3,
    ),
    Key(
        "change-packet",
        ("enter",),
        "change",
        "Open the packet's sheet.",
        DOING,
        (PACKETS,),
        "change",
        1,
    ),
    Key("new-packet", ("n",), "new", "Put a packet on the books.", DOING, (PACKETS,), "add", 2),
    Key(
        "sow-packet",
        ("s",),
        "sow",
        "Open a sowing sheet for the packet's crop, variety and seed.",
        DOING,
        (PACKETS,),
        "sow",
        4,
    ),
    Key(
        "undo-on-card",
        ("u",),
        "undo",
        "Take back the last thing done in this sitting, and the one before it, and so on.",
        DOING,
        (BATCH, CROP, PACKETS),
        "undo",
    ),
    Key(
        "tell-record",
        ("enter",),
        "in full",
        "Tell the record under the cursor in full: its note, and which computer wrote it when.",
        LOOKING,
        (BATCH,),
        "tell",
    ),
    Key(
        "turn",
        ("tab", "shift+tab"),
        "turn",
        "Turn the card over: the arrow keys then move on its other side.",
        LOOKING,
        CARDS,
        "turn",
        4,
    ),
    Key(
        "next-card",
        ("right", "full_stop"),
        "next",
        "Go to the next batch.",
        LOOKING,
        (BATCH,),
        "next(1)",
        5,
    ),
    Key(
        "card-before",
        ("left", "comma"),
        "before",
        "Go to the batch before.",
        LOOKING,
        (BATCH,),
        "next(-1)",
    ),
    Key(
        "other-part",
        ("o",),
        "other part",
        "Choose the other part of the batch, such as its spares, to record for.",
        LOOKING,
        (BATCH,),
        "part",
    ),
    Key(
        "crop-of",
        ("c",),
        "crop",
        "Open the crop's card.",
        LOOKING,
        (BATCH, PACKETS),
        "crop",
    ),
    Key(
        "open-batch-there",
        ("enter",),
        "open",
        "Open the batch under the cursor.",
        LOOKING,
        (PLACE_PAGE,),
        "open",
        1,
    ),
    Key(
        "open-found",
        ("enter",),
        "open",
        "Open what the cursor stands on.",
        LOOKING,
        LOOK_UPS,
        "pick",
        1,
    ),
    Key(
        "empty-letters",
        ("ctrl+u",),
        "other letters",
        "Take the letters away and begin again.",
        FORM,
        LOOK_UPS,
        "empty",
    ),
    Key("row-up", ("up",), "up", "Go a row up.", MOVING, (*CARDS, *LOOK_UPS, GO_TO), "move(-1)"),
    Key(
        "row-down",
        ("down",),
        "down",
        "Go a row down.",
        MOVING,
        (*CARDS, *LOOK_UPS, GO_TO),
        "move(1)",
    ),
    Key(
        "rows-up",
        ("pageup",),
        "page up",
        "Go one screenful up.",
        MOVING,
        (*CARDS, *LOOK_UPS),
        "page(-1)",
    ),
    Key(
        "rows-down",
        ("pagedown",),
        "page down",
        "Go one screenful down.",
        MOVING,
        (*CARDS, *LOOK_UPS),
        "page(1)",
    ),
    Key("first-row", ("home",), "first", "Go to the first row.", MOVING, CARDS, "end(-1)"),
    Key("last-row", ("end",), "last", "Go to the last row.", MOVING, CARDS, "end(1)"),
    *(
        Key(
            f"go-{found.name}",
            (found.letter,),
            found.name,
            f"{found.tells[0].upper()}{found.tells[1:]}.",
            GOING,
            (GO_TO,),
            f"go('{found.name}')",
        )
        for found in DESTINATIONS
    ),
    Key(
        "go-there",
        ("enter",),
        "go",
        "Go where the cursor stands.",
        GOING,
        (GO_TO,),
        "pick",
        1,
    ),
    Key(
        "close-card",
        ("escape",),
        "back",
        "Go one step back.",
        PROGRAM,
        CARDS,
        "back",
    ),
    Key(
        "close",
        ("escape",),
        "back",
        "Go one step back; letters that were typed are taken away first.",
        PROGRAM,
        (*LOOK_UPS, GO_TO),
        "back",
        6,
    ),
    Key(
        "help-on-card",
        ("question_mark", "f1"),
        "all keys",
        "Show all keys and what the words mean.",
        PROGRAM,
        (*CARDS, REVIEW),
        "help",
        9,
    ),
    Key(
        "help-while-typing",
        ("f1",),
        "all keys",
        "Show all keys and what the words mean.",
        PROGRAM,
        (*LOOK_UPS, GO_TO),
        "help",
        9,
    ),
)


GO = "Choose a screen by one letter; what is half filled in is kept."
SEARCH = "Find any batch, crop, place or packet by its letters."


def going_keys(first: str, plain: tuple[str, ...], typing: tuple[str, ...]) -> tuple[Key, ...]:
    """The keys that go elsewhere from anywhere.

    Args:
        first: the screen that opens first; like the cards it names the way at its foot.
        plain: screens on which a letter is a command.
        typing: screens on which letters are typed, so that ctrl is needed.
    """
    shown = (first, *CARDS, REVIEW)
    letter, control = ("g", "ctrl+g"), ("ctrl+g",)
    quiet = tuple(screen for screen in plain if screen not in shown)
    sheets = tuple(screen for screen in typing if screen not in LOOK_UPS)
    finding = tuple(screen for screen in typing if screen != FIND)
    return (
        Key("go-to", letter, "go to", GO, GOING, shown, "app.go_to_list", 3),
        Key("go-to-quietly", letter, "go to", GO, GOING, quiet, "app.go_to_list"),
        Key("go-to-while-typing", control, "go to", GO, GOING, LOOK_UPS, "app.go_to_list", 7),
        Key("go-to-from-sheet", control, "go to", GO, GOING, sheets, "app.go_to_list"),
        Key("find", ("slash", "ctrl+f"), "find", SEARCH, GOING, plain, "app.find"),
        Key("find-while-typing", ("ctrl+f",), "find", SEARCH, GOING, finding, "app.find"),
    )
