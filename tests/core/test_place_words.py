"""The code a place gets from its name, whatever the alphabet."""

from __future__ import annotations

import re

import pytest

from benchround.core.errors import InputError
from benchround.core.place_words import checked_code, code_from, free_code
from benchround.core.typed.places import place_drafts, read_places


@pytest.mark.parametrize(
    ("name", "code"),
    [("Bench 1", "bench-1"), ("Châssis Nord", "chassis-nord"), ("12", "12"), ("№ 3", "no-3")],
)
def test_latin_letters_and_numbers_make_it(name: str, code: str) -> None:
    assert code_from(name) == code


@pytest.mark.parametrize("name", ["Теплица", "Θερμοκήπιο", "חממה", "温室", "ภาชนะ"])
def test_a_name_in_another_alphabet_has_one_that_is_always_the_same(name: str) -> None:
    code = code_from(name)
    assert re.fullmatch(r"place-[0-9a-f]{6}", code)
    assert checked_code(code) == code == code_from(name.upper())


def test_numbered_names_in_another_alphabet_are_told_apart() -> None:
    codes = {code_from(f"{word} {number}") for word in ("Грядка", "Парник") for number in (1, 2)}
    assert len(codes) == 4
    assert free_code("Грядка 1", [code_from("Грядка 1")]) == f"{code_from('Грядка 1')}-2"


def test_they_are_set_up_from_a_typed_line() -> None:
    drafts = place_drafts(read_places("Теплица: frame; Стол: bench; Bench 1"))
    assert [draft.figures["name"] for draft in drafts] == ["Теплица", "Стол", "Bench 1"]
    assert len({draft.about for draft in drafts}) == 3


@pytest.mark.parametrize("name", ["!!", "🌱", "--"])
def test_a_name_without_letter_or_digit_is_refused(name: str) -> None:
    with pytest.raises(InputError, match="No code can be made"):
        code_from(name)
