"""Several places in one line, and the order of the morning walk."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import InputError
from benchround.core.record import Figure, Kind
from benchround.core.site import PlaceKind
from benchround.core.typed.places import TypedPlace, place_drafts, read_places
from benchround.core.walk import moved, put_in, walk_drafts

CODES = st.lists(st.sampled_from("abcdefgh"), min_size=1, max_size=8, unique=True)


def test_places_by_name_or_with_their_kind() -> None:
    assert read_places("Bench 1; Frame A ;; Kitchen: window; Greenhouse bench 2") == (
        TypedPlace("Bench 1", PlaceKind.BENCH),
        TypedPlace("Frame A", PlaceKind.FRAME),
        TypedPlace("Kitchen", PlaceKind.WINDOWSILL),
        TypedPlace("Greenhouse bench 2", PlaceKind.GREENHOUSE),
    )
    assert read_places(" ; ") == ()


def test_commas_part_places_as_semicolons_do() -> None:
    assert read_places("windowsill: windowsill, cold frame: frame, garden: bed") == (
        TypedPlace("windowsill", PlaceKind.WINDOWSILL),
        TypedPlace("cold frame", PlaceKind.FRAME),
        TypedPlace("garden", PlaceKind.BED),
    )


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("Kitchen", "'Kitchen' does not say what it is"),
        ("Bed by the frame", "does not say what it is"),
        (": bed", "has no name before the colon"),
        ("Shed: barn", "'barn' is no kind of place"),
        ("Bed 1; bed 1", "is there twice"),
        ("; ".join(f"Bed {n}" for n in range(61)), "61 places are more than 60"),
        ("Bed " + "x" * 70, "letters are too many"),
    ],
)
def test_what_cannot_be_is_named(typed: str, says: str) -> None:
    with pytest.raises(InputError, match=says):
        read_places(typed)


def test_places_are_numbered_and_have_their_own_codes() -> None:
    drafts = place_drafts(read_places("Bed 1; Bed-1!: bed; Frame A"))
    assert [(draft.kind, draft.about) for draft in drafts] == [
        (Kind.PLACE, "bed-1"),
        (Kind.PLACE, "bed-1-2"),
        (Kind.PLACE, "frame-a"),
    ]
    assert [draft.figures["order"] for draft in drafts] == [1, 2, 3]


@given(CODES, st.data())
def test_moving_keeps_every_place_and_the_order_of_the_others(
    walk: list[str], data: st.DataObject
) -> None:
    code = data.draw(st.sampled_from(walk))
    by = data.draw(st.integers(-9, 9))
    to = moved(walk, code, by)
    assert sorted(to) == sorted(walk)
    assert [one for one in to if one != code] == [one for one in walk if one != code]
    assert to.index(code) == max(0, min(len(walk) - 1, walk.index(code) + by))


@given(CODES, st.sampled_from("abcdefgh"))
def test_a_new_place_comes_behind_the_one_named(walk: list[str], after: str) -> None:
    to = put_in(walk, "new", after)
    assert [one for one in to if one != "new"] == walk
    assert to[to.index("new") - 1] == (after if after in walk else walk[-1])


def test_only_places_whose_number_changes_are_written_and_all_else_stays() -> None:
    said: dict[str, dict[str, Figure]] = {
        "a": {"name": "A", "kind": "bed", "order": 1},
        "b": {"name": "B", "kind": "frame", "glazing": "glass", "order": 5},
        "c": {"name": "C", "kind": "bed", "order": 3},
    }
    drafts = walk_drafts(("a", "b", "c", "unknown"), said)
    assert [draft.about for draft in drafts] == ["b"]
    assert drafts[0].figures == {**said["b"], "order": 2}
