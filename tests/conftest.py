"""What holds for every test."""

from __future__ import annotations

from hypothesis import settings

settings.register_profile("benchround", deadline=None)
settings.load_profile("benchround")
