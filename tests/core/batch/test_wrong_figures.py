"""What is said of a record with several figures that cannot be."""

from __future__ import annotations

import os
import subprocess
import sys

SAYS = """
from datetime import date
from benchround.core.batch.batch import fold_batch
from benchround.core.record import Kind, Record

sown = Record("1", date(2026, 4, 1), Kind.SOWN, "b01", {"crop": "cosmos", "seeds": 40})
odd = Record("2", date(2026, 4, 2), Kind.NOTED, "b01", {"wanted": -1, "cells": -2, "seeds": -3})
print(fold_batch("b01", [sown, odd])[1])
"""


def test_it_is_the_same_at_every_start_of_the_program() -> None:
    said = {
        subprocess.run(
            [sys.executable, "-c", SAYS],
            env={**os.environ, "PYTHONHASHSEED": str(seed)},  # a set's order differs by it
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in range(4)
    }
    [only] = said
    assert "b01, 2026-04-02: cells -2 for b01 cannot be" in only
