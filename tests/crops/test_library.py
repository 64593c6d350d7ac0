"""The shipped crops as a whole: all sound, all named, all with sources, read only when asked."""

import json
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from benchround.core.crop.crop import HAZARDS, Hardiness, PlantClass, Raising
from benchround.core.crop.sound import crop_from_sound_table
from benchround.core.crop.table import crop_from_table
from benchround.core.errors import CropFileError, UnknownNameError
from benchround.crops.library import faults_in_files, load_library
from benchround.crops.shipped import LINES, lines_of, pieces, shipped_files
from tests.crops.published import KEYS, LIBRARY, crop

SHIPPED = shipped_files()
SEA_KALE = """
[sea-kale]
name = "Sea kale"
latin = "Crambe maritima"
class = "vegetable"
hardiness = "hardy"
raising = "pots"

[sea-kale.germination]
base_c = 4
optimum_c = 18
ceiling_c = 27
days_first = 14
days_last = 40
at_c = 15
"""


def test_the_shipped_tables_have_no_faults() -> None:
    assert [str(fault) for fault in faults_in_files(SHIPPED)] == []


def test_there_are_crops_enough_of_every_class() -> None:
    classes = [one.plant_class for one in LIBRARY.values()]
    assert len(KEYS) >= 85
    ornamental = [c for c in classes if c not in (PlantClass.VEGETABLE, PlantClass.HERB)]
    assert len(ornamental) > len(classes) / 2
    assert set(classes) == set(PlantClass)


@pytest.mark.parametrize("key", KEYS)
def test_every_crop_has_its_names_and_its_sources(key: str) -> None:
    one = crop(key)
    assert one.key == key
    assert one.name and one.latin
    assert one.latin[0].isupper() or key == "unknown"
    assert one.sources["default"]
    status = ("(read)", "no source", "from memory", "own proposal", "by temperature", "practice")
    for dotted, source in one.sources.items():
        assert any(word in source for word in status) or "(read)" in source, dotted


COLD_TENDER_C = {
    **dict.fromkeys(("basil", "cucumber", "melon", "watermelon"), 10.0),
    **dict.fromkeys(("coleus", "new-guinea-impatiens", "vinca"), 10.0),
    **dict.fromkeys(("aubergine", "lima-bean", "morning-glory", "okra", "pepper", "tomato"), 8.0),
    **dict.fromkeys(("courgette", "pumpkin", "squash", "sweetcorn"), 8.0),
    "busy-lizzie": 8.0,
    **dict.fromkeys(("french-bean", "runner-bean"), 7.0),  # nights of 8 C
}
"""Nights wanted by what stands still in the cold long before it freezes; common practice, no
source (8 to 10 C)."""


@pytest.mark.parametrize("key", KEYS)
def test_what_is_not_hardy_waits_for_nights_above_four_degrees(key: str) -> None:
    """FRO-01: five nights above 4 C (our own proposal); hardy stock does not wait for frost."""
    one = crop(key)
    expected = None if one.hardiness is Hardiness.HARDY else COLD_TENDER_C.get(key, 4.0)
    assert one.planting.least_night_c == expected


@pytest.mark.parametrize("key", KEYS)
def test_no_night_is_too_cold_to_harden_in_and_warm_enough_to_plant_in(key: str) -> None:
    """What goes a step back in a night is not planted into it for good (common practice)."""
    one = crop(key)
    if one.hardening is not None and one.planting.least_night_c is not None:
        assert one.planting.least_night_c >= one.hardening.limit_c


@pytest.mark.parametrize("key", KEYS)
def test_a_crop_can_be_started(key: str) -> None:
    one = crop(key)
    if one.plant_class is PlantClass.UNKNOWN:
        assert one.windows == ()
        return
    assert one.windows
    assert (one.germination is None) == (one.raising is Raising.BULB)
    assert set(one.hazards) <= set(HAZARDS)


def test_a_piece_read_alone_is_the_crop_the_whole_file_has() -> None:
    whole = {
        key: (path.name, table)
        for path in SHIPPED
        for key, table in tomllib.loads(path.read_text("utf-8")).items()
    }
    assert list(whole) == list(LIBRARY)
    for key, (_, table) in whole.items():
        assert crop(key).name == table["name"]
        assert len(crop(key).windows) == len(table.get("windows", ()))
        assert dict(crop(key).sources) == table["sources"]


def test_loading_parses_no_table_and_asking_parses_one(monkeypatch: pytest.MonkeyPatch) -> None:
    parsed: list[str] = []
    loads = json.loads

    def counted(text: str) -> object:
        parsed.append(text)
        return loads(text)

    monkeypatch.setattr("benchround.crops.library.json.loads", counted)
    fresh = load_library.__wrapped__()
    assert len(fresh) == len(KEYS) and "cosmos" in fresh and parsed == []
    assert fresh["cosmos"] is fresh["cosmos"]
    assert len(parsed) == 1 and parsed[0].startswith('["cosmos",')


def test_the_lines_that_are_read_are_those_of_the_files() -> None:
    written = LINES.read_text("utf-8")
    assert written == "".join(lines_of(SHIPPED)), "run: python -m benchround.crops.shipped"
    tables = {key: json.loads(line)[2] for key, line in pieces()}
    files = [tomllib.loads(path.read_text("utf-8")) for path in SHIPPED]
    assert tables == {key: table for file in files for key, table in file.items()}


@pytest.mark.parametrize(("key", "line"), tuple(pieces()), ids=[key for key, _ in pieces()])
def test_read_without_looking_for_faults_a_crop_is_the_same(key: str, line: str) -> None:
    _, where, table = json.loads(line)
    assert repr(crop_from_sound_table(key, table)) == repr(crop_from_table(key, table, where))


def test_the_list_of_names_is_that_of_the_crops() -> None:
    unread = load_library.__wrapped__().names()
    assert [one.key for one in unread] == list(KEYS)
    for line in unread:
        one = crop(line.key)
        assert (line.name, line.latin, line.synonyms, line.plant_class) == (
            one.name,
            one.latin,
            one.synonyms,
            one.plant_class,
        )
    read = load_library.__wrapped__()
    assert read["zinnia"].name == "Zinnia"
    assert read.names() == unread


def test_names_of_two_crops_are_never_the_same() -> None:
    names = [line.name.casefold() for line in LIBRARY.names()]
    assert len(set(names)) == len(names)


def test_an_unknown_key_is_told_with_the_nearest() -> None:
    with pytest.raises(UnknownNameError, match=r"no crop is called 'snapdragn'.*'snapdragon'"):
        LIBRARY.crop("snapdragn")
    with pytest.raises(KeyError):
        LIBRARY["snapdragn"]
    assert LIBRARY.get("snapdragn") is None


def test_writing_the_lines_anew_warns_of_nothing() -> None:
    """Importing the package must not import the module that is run."""
    said = "import benchround.crops, sys; print('benchround.crops.shipped' in sys.modules)"
    run = subprocess.run([sys.executable, "-c", said], capture_output=True, text=True, check=True)
    assert run.stdout.strip() == "False"


def test_a_growers_own_file_adds_crops_and_takes_the_place_of_shipped_ones(
    tmp_path: Path,
) -> None:
    own = tmp_path / "mine.toml"
    own.write_text(SEA_KALE + SEA_KALE.replace("sea-kale", "kale"), "utf-8")
    mine = load_library((own,))
    assert mine["sea-kale"].name == "Sea kale"
    assert mine["kale"].latin == "Crambe maritima"
    assert len(mine) == len(KEYS) + 1
    assert load_library((own,)) is mine
    assert LIBRARY["kale"].latin.startswith("Brassica")


def test_all_faults_of_all_own_files_are_told_at_once(tmp_path: Path) -> None:
    one, two, three = (tmp_path / name for name in ("one.toml", "two.toml", "three.toml"))
    one.write_text(SEA_KALE.replace("base_c = 4", 'base_c = "cold"'), "utf-8")
    two.write_text(SEA_KALE.replace("at_c = 15", "at_c = 99"), "utf-8")
    three.write_text("[sea-kale\n", "utf-8")
    gone = tmp_path / "gone.toml"
    with pytest.raises(CropFileError) as caught:
        load_library((one, two, three, gone))
    message = str(caught.value)
    assert message.startswith("5 faults")
    assert "one.toml: sea-kale.germination.base_c is 'cold'" in message
    assert "two.toml: sea-kale.germination.at_c is 99" in message
    assert "two.toml: sea-kale is 'sea-kale'; allowed: a key not in one.toml already" in message
    assert "three.toml: the file is" in message
    assert "gone.toml: the file is" in message


@pytest.mark.parametrize(
    "content",
    [
        pytest.param(b"\xff\xfe[a]", id="not UTF-8"),
        pytest.param(b"[a]\nb = " + b"9" * 5000, id="a number of 5000 digits"),
        pytest.param(b"a = " + b"[" * 5000, id="5000 brackets"),
        pytest.param(b"cosmos = 3", id="a number where a table should be"),
        pytest.param(b"[[cosmos]]", id="a list where a table should be"),
    ],
)
def test_a_hostile_file_is_a_fault_and_not_a_crash(tmp_path: Path, content: bytes) -> None:
    hostile = tmp_path / "hostile.toml"
    hostile.write_bytes(content)
    with pytest.raises(CropFileError, match=r"hostile\.toml"):
        load_library((hostile,))
