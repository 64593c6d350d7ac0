"""A missing extra names the command that works where the program was installed from."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from benchround.core.errors import InputError
from benchround.core.extras import install_words
from benchround.feeds.qr import qr_rows

README = (Path(__file__).parents[1] / "README.md").read_text(encoding="utf-8")


def test_the_command_is_the_one_of_the_readme_and_the_one_by_name() -> None:
    assert '.venv/bin/pip install -e ".[paper]"' in README  # the same folder, the same command
    assert '.venv/bin/pip install -e ".[paper]"' in install_words("paper")
    assert 'pip install "benchround[paper]"' in install_words("paper")


def test_a_missing_package_is_said_with_the_command(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "qrcode.main", None)
    with pytest.raises(InputError, match=r'pip install -e "\.\[qr\]"') as raised:
        qr_rows("a text no other test asks for")
    assert str(raised.value).endswith("Or leave out --qr.")
