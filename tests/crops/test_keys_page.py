"""docs/crops.md says of every key what the schema says."""

import re
import tomllib
from pathlib import Path

from benchround.core.crop.edge import edge_from_text
from benchround.core.crop.keys import SECTIONS
from benchround.core.crop.schema import Form
from benchround.core.crop.table import faults_in_table
from benchround.crops.keys_page import keys_page

PAGE = Path(__file__).parents[2] / "docs" / "crops.md"
MARK = "<!-- keys: printed by python -m benchround.crops.keys_page -->\n"


def test_the_page_holds_the_keys_as_the_schema_has_them() -> None:
    text = PAGE.read_text("utf-8")
    assert text.partition(MARK)[2].strip() == keys_page().strip()


def test_every_key_has_a_line_with_its_range() -> None:
    lines = keys_page().splitlines()
    for section in SECTIONS:
        for key in section.keys:
            line = next(line for line in lines if line.startswith(f"| `{key.name}` |"))
            assert line.count("|") == 5
            assert key.meaning and len(key.meaning) <= 80
            if key.form in (Form.WHOLE, Form.NUMBER, Form.SPAN):
                assert any(key.allowed in line for line in lines)


def test_the_example_crop_on_the_page_is_sound() -> None:
    examples = re.findall(r"```toml\n(.*?)```", PAGE.read_text("utf-8"), re.DOTALL)
    (key, table), *more = tomllib.loads(examples[0]).items()
    assert not more
    assert [str(fault) for fault in faults_in_table(key, table)] == []
    table["sources"] = tomllib.loads(examples[1])[key]["sources"]
    assert [str(fault) for fault in faults_in_table(key, table)] == []


def test_the_edges_shown_on_the_page_are_read() -> None:
    shown = re.findall(r"^\| `([a-z ]+[\d.]* ?[+-]\d+)` \|", PAGE.read_text("utf-8"), re.MULTILINE)
    assert len(shown) >= 9
    assert len({edge_from_text(text).anchor for text in shown}) == 9
