"""Finding a crop by a few letters."""

import pytest

from benchround.core.crop.crop import PlantClass
from benchround.core.crop.search import find_crops, folded
from benchround.crops import CropNames
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
