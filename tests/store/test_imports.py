from __future__ import annotations

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]


def test_the_store_brings_in_no_screen_library() -> None:
    program = "import sys, benchround.store; print(*sorted(sys.modules))"
    asked = [sys.executable, "-c", program]
    run = subprocess.run(asked, cwd=ROOT, capture_output=True, text=True, check=True)
    modules = set(run.stdout.split())
    assert "benchround.store.folder" in modules
    heavy = {"textual", "rich", "benchround.screens", "benchround.rounds", "numpy", "dateutil"}
    assert modules & heavy == set()
