"""Places and choices as they are typed: nothing is guessed."""

from __future__ import annotations

import pytest

from benchround.core.errors import InputError
from benchround.core.record import Cause
from benchround.core.season import Season
from benchround.core.site import Place, PlaceKind
from benchround.core.task import Ask
from benchround.core.typed.words import read_choice, read_place
from benchround.rounds import typed_words
from benchround.rounds.answers import read_answer

PLACES = (
    Place("frame-a", "Frame A", PlaceKind.FRAME, 1),
    Place("frame-b", "Frame B", PlaceKind.FRAME, 2),
    Place("propagator", "Warm box", PlaceKind.PROPAGATOR, 3),
)
CAUSES = tuple(map(str, Cause))


def test_no_place_typed_is_no_place() -> None:
    assert read_place(" ", PLACES) == ""


@pytest.mark.parametrize(
    ("typed", "code"),
    [
        ("frame-a", "frame-a"),
        ("Frame B", "frame-b"),
        ("FRAME A", "frame-a"),
        ("warm", "propagator"),
        ("prop", "propagator"),
    ],
)
def test_places_by_code_name_or_beginning(typed: str, code: str) -> None:
    assert read_place(typed, PLACES) == code


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("frame", "more than one place answers to 'frame': Frame A, Frame B"),
        ("shed", "no place answers to 'shed': Frame A, Frame B, Warm box"),
        ("[/]", "no place"),
    ],
)
def test_no_place_or_more_than_one_is_refused(typed: str, says: str) -> None:
    with pytest.raises(InputError) as refused:
        read_place(typed, PLACES)
    assert says in str(refused.value)
    with pytest.raises(InputError, match="none set up yet"):
        read_place(typed, ())


def test_hyphens_and_accents_make_no_difference_but_the_spelling_decides() -> None:
    places = (
        Place("p1", "S\u00fcd-Beet", PlaceKind.BED, 1),
        Place("p2", "Sud Beet", PlaceKind.BED, 2),
    )
    assert read_place("sud beet", places) == "p2"
    assert read_place("sud-beet", places[:1]) == "p1"
    with pytest.raises(InputError, match="more than one place"):
        read_place("sud-beet", places)
    with pytest.raises(InputError, match="no place"):
        read_place("sud", places, whole=True)


@pytest.mark.parametrize(
    ("typed", "means"),
    [
        ("drowned", "drowned"),
        ("DRIED", "dried out"),
        ("dried-out", "dried out"),
        ("was", "washed out"),
        ("w", None),
        ("dr", None),
        ("zebra", None),
    ],
)
def test_a_choice_is_never_guessed_at_a_tick_or_on_a_command_line(
    typed: str, means: str | None
) -> None:
    """Losses are learned from, so 'dr' must not become 'dried out': it may be drowned or drawn."""
    ask, season = Ask("cause", "why", whole=False, choices=CAUSES), Season(crops={})
    if means is not None:
        assert read_choice(typed, CAUSES) == means
        assert read_answer(ask, typed, season) == means
        assert typed_words.read_choice("cause", typed, CAUSES) == means
        return
    with pytest.raises(InputError, match=r"why: .* is not one of damping off, dried out"):
        read_answer(ask, typed, season)
    with pytest.raises(InputError, match=r"cause: .* is not one of damping off, dried out"):
        typed_words.read_choice("cause", typed, CAUSES)


@pytest.mark.parametrize("typed", ["1_0", "\u0663", "\u00b2", "1e1", "3 4", "0x1"])
@pytest.mark.parametrize("whole", [True, False])
def test_figures_at_a_tick_are_plain_figures(typed: str, *, whole: bool) -> None:
    with pytest.raises(InputError, match=r"how many: .* is not a"):
        read_answer(Ask("count", "how many", whole=whole), typed, Season(crops={}))
    assert read_answer(Ask("count", "how many", whole=whole), "12", Season(crops={})) == 12
