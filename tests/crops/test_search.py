"""Finding a crop by a few letters."""

import pytest

from benchround.core.crop.crop import PlantClass
from benchround.core.crop.search import find_crops, folded, key_spelled
from benchround.core.errors import UnknownNameError
from benchround.core.typed.diary_line import crop_meant
from benchround.crops import CropNames
from benchround.reckoning.crop_named import crop_named
from tests.crops.published import KEYS, LIBRARY, crop

NAMES = LIBRARY.names()


def _found(letters: str) -> list[str]:
    return [one.key for one in find_crops(letters, NAMES)]


@pytest.mark.parametrize(
    ("letters", "first"),
    [
        ("cosmos", "cosmos"),
        ("cosm", "cosmos"),
        ("SNAP", "snapdragon"),
        ("antirrh", "snapdragon"),
        ("columb", "aquilegia"),
        ("digitalis", "foxglove"),
        ("sweet pea", "sweet-pea"),
        ("sweet-p", "sweet-pea"),
        ("nigella", "nigella"),
        ("zucchini", "courgette"),
        ("eggplant", "aubergine"),
        ("mâche", "corn-salad"),
        ("friseé", "endive"),
        ("bonariensis", "verbena-bonariensis"),
        ("granny's", "aquilegia"),
        ("unknown", "unknown"),
    ],
)
def test_the_likeliest_crop_comes_first(letters: str, first: str) -> None:
    assert _found(letters)[0] == first


def test_beginnings_come_before_what_lies_inside_a_word() -> None:
    found = _found("let")
    assert found[0] == "lettuce"
    assert found.index("lettuce") < found.index("scarlet-sage") < len(found)
    assert _found("pea")[:2] == ["pea", "sweet-pea"]
    assert "cosmos" not in found


def test_common_names_come_before_synonyms_and_those_before_latin() -> None:
    found = _found("rud")
    assert found[0] == "rudbeckia"
    found = _found("viola")
    assert found.index("viola") < found.index("pansy")


def test_nothing_typed_finds_all_by_name() -> None:
    everything = find_crops("  ", NAMES)
    assert len(everything) == len(KEYS)
    assert [folded(one.name) for one in everything] == sorted(folded(one.name) for one in NAMES)


@pytest.mark.parametrize("letters", ["qzx", "[/]", "\x1b[31m", "%", "." * 1000])
def test_letters_nothing_holds_find_nothing(letters: str) -> None:
    assert _found(letters) == []


def test_crops_themselves_can_be_searched() -> None:
    assert find_crops("zinn", [crop("cosmos"), crop("zinnia")]) == [crop("zinnia")]


def test_accents_on_either_side_make_no_difference() -> None:
    rose = CropNames("rosee", "Ros\u00e9e d'\u00c9t\u00e9", "Rosa", (), PlantClass.UNKNOWN)
    assert find_crops("rosee d'ete", [rose]) == [rose]
    assert find_crops("ROSE\u0301E", [rose]) == [rose]


@pytest.mark.parametrize(
    ("typed", "key"),
    [  # plurals and names run together, as gardeners write them (common practice, no source)
        ("sweet peas", "sweet-pea"),
        ("peas", "pea"),
        ("broadbean", "broad-bean"),
        ("Broadbeans", "broad-bean"),
        ("tomatoes", "tomato"),
        ("french beans", "french-bean"),
        ("poppies, iceland", None),
        ("cosmoss", None),
        ("banana", None),
        ("", None),
    ],
)
def test_plurals_and_names_run_together_are_found(typed: str, key: str | None) -> None:
    assert key_spelled(typed, NAMES) == key
    if key is not None:
        assert _found(typed)[0] == key
        assert crop_named(typed).key == key
        assert crop_meant(typed, NAMES) == key


def test_no_crop_is_offered_that_is_far_off() -> None:
    with pytest.raises(UnknownNameError) as caught:
        crop_named("banana")
    assert "near it" not in str(caught.value)
    with pytest.raises(UnknownNameError, match="tomato"):
        crop_named("tommato")
