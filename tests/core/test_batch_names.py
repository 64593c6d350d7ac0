"""What batches are called on several computers that do not see each other."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.batch_names import LETTERS, free_name, letter_of, letter_words, next_name

MACHINES = st.lists(
    st.text("abxyz019-", min_size=1, max_size=6), min_size=1, max_size=len(LETTERS), unique=True
)


def test_who_began_the_season_has_plain_numbers_and_the_others_a_letter_of_their_name() -> None:
    writers = ("shed", "kitchen", "shed", "shack", "hut")
    letters = {name: letter_of(name, writers) for name in (*writers, "king")}
    assert letters == {"shed": "", "kitchen": "k", "shack": "s", "hut": "h", "king": "n"}
    assert letter_of("shed", ()) == ""


@given(MACHINES)
def test_no_two_computers_that_wrote_have_one_letter(machines: list[str]) -> None:
    letters = [letter_of(name, machines) for name in machines]
    assert letters[0] == ""
    assert len(set(letters)) == len(machines)
    assert all(len(letter) == 1 and letter in LETTERS for letter in letters[1:])


@given(MACHINES, st.integers(1, 8))
def test_a_computer_that_is_new_takes_a_letter_nobody_has(machines: list[str], known: int) -> None:
    new, *writers = machines
    taken = {letter_of(name, writers[:known]) for name in writers[:known]}
    assert letter_of(new, writers[:known]) not in taken or not writers


@pytest.mark.parametrize(
    ("taken", "letter", "free"),
    [
        ((), "", "b01"),
        (("b01", "b99"), "", "b100"),
        (("b07k", "b03"), "", "b08"),
        (("b07k", "b09s"), "k", "b10k"),
        (("b07-2", "tray-7", "b\u00b2", "b", "b7kk"), "k", "b01k"),
    ],
)
def test_the_next_name_follows_the_highest_number_of_all(
    taken: tuple[str, ...], letter: str, free: str
) -> None:
    assert free_name(taken, letter) == free


def test_names_count_on() -> None:
    names = ["b98k", "b99k", "b100k"]
    assert all(next_name(one) == other for one, other in pairwise(names))
    with pytest.raises(ValueError, match="no number"):
        next_name("tray")


def test_the_letter_is_explained_the_first_time_it_comes() -> None:
    assert letter_words("b34v", ("b33", "b12k")).startswith("the v is this computer's")
    assert letter_words("b35v", ("b33", "b34v")) == ""
    assert letter_words("b34", ("b33",)) == ""
