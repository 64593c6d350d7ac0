"""Where there is no terminal the screens are not opened: nobody could see or leave them."""

from __future__ import annotations

import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest

COMMAND = [sys.executable, "-m", "benchround"]
PATIENCE_S = 60


@pytest.mark.parametrize("words", [[], ["--sample"], ["garden"]], ids=" ".join)
@pytest.mark.parametrize("keys_come", [False, True], ids=["no keys", "drawn into a file"])
def test_it_says_so_and_ends(tmp_path: Path, words: list[str], keys_come: bool) -> None:
    """As from a timer, which types nothing, and as with its drawing sent elsewhere."""
    master, slave = pty.openpty()
    said = tmp_path / "said.txt"
    around = {**os.environ, "XDG_DATA_HOME": str(tmp_path / "data")}
    try:
        with said.open("w+b") as file:
            done = subprocess.run(
                [*COMMAND, *words],
                stdin=slave if keys_come else subprocess.DEVNULL,
                stdout=slave,
                stderr=file if keys_come else slave,
                cwd=tmp_path,
                env=around,
                timeout=PATIENCE_S,
            )
            text = said.read_bytes() if keys_come else os.read(master, 100_000)
    finally:
        os.close(slave)
        os.close(master)
    assert done.returncode == 1
    assert text.startswith(b"benchround: The screens need a terminal")
    assert len(text.splitlines()) == 1
    assert list(tmp_path.iterdir()) == [said]
