"""Which files are taken for typefaces; they are made and spoilt with fontTools."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]  # has no types
from hypothesis import given
from hypothesis import strategies as st

from benchround.feeds.font_file import is_typeface
from benchround.feeds.fonts import find_typefaces
from tests.feeds.typefaces import collection, one_sign_typeface


@pytest.mark.parametrize("postscript", [False, True], ids=["TrueType", "PostScript"])
def test_both_kinds_of_outlines_alone_and_in_a_collection(tmp_path: Path, postscript: bool) -> None:
    made = one_sign_typeface(tmp_path, "\u2714", postscript=postscript)
    assert is_typeface(made)
    assert is_typeface(collection(made))


@pytest.mark.parametrize("gone", ["glyf", "cmap"])
def test_without_letters_or_outlines_it_is_none(tmp_path: Path, gone: str) -> None:
    """As a typeface of coloured pictures, which has no outlines."""
    font = TTFont(one_sign_typeface(tmp_path, "\u2714"))
    del font[gone]
    if gone == "glyf":
        del font["loca"]
    font.save(tmp_path / "less.ttf")
    assert not is_typeface(tmp_path / "less.ttf")


@pytest.mark.parametrize("collected", [False, True])
def test_one_cut_off_anywhere_is_none(tmp_path: Path, collected: bool) -> None:
    path = one_sign_typeface(tmp_path, "\u2714")
    whole = (collection(path) if collected else path).read_bytes()
    first = path.stat().st_size - 4  # the first of a collection; tables are filled up to four bytes
    short = tmp_path / "short.ttf"
    for length in range(0, first, 7):
        short.write_bytes(whole[:length])
        assert not is_typeface(short), length


def test_a_folder_and_a_file_that_is_gone_are_none(tmp_path: Path) -> None:
    assert not is_typeface(tmp_path)
    assert not is_typeface(tmp_path / "gone.ttf")


@given(st.sampled_from([b"OTTO", b"true", b"ttcf", b"\0\1\0\0", b""]), st.binary(max_size=300))
def test_any_bytes_are_read_without_harm(start: bytes, rest: bytes) -> None:
    with TemporaryDirectory() as folder:
        path = Path(folder) / "any.ttf"
        path.write_bytes(start + rest)
        assert not is_typeface(path)


def test_a_file_that_is_no_typeface_is_passed_over(tmp_path: Path) -> None:
    (tmp_path / "DejaVuSans.ttf").write_bytes(b"OTTO" + bytes(100))
    assert find_typefaces(tmp_path, folders=(tmp_path,), packaged=False).regular is None
