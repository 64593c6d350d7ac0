"""Where seasons lie: the one named, the one stood in, the last one used, the usual folder."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

from benchround.core.errors import SeasonError

HEADING = "benchround.json"
SAMPLE_DAY = date(2026, 5, 27)
"""The day the sample season is written for."""


_PAGE = re.compile(r"[a-z0-9][a-z0-9-]*-\d{4}-\d{2}-\d{3,}\.jsonl?")


def is_season(folder: Path) -> bool:
    """Whether a folder holds a season; one whose own file is lost is known by its pages.

    Raises:
        SeasonError: it cannot be looked into.
    """
    try:
        return (folder / HEADING).is_file() or _holds_pages(folder / "records")
    except OSError as error:
        raise SeasonError(
            f"{folder} cannot be looked into ({error.strerror}): reconnect its disk, or change its"
            " permissions."
        ) from error


def _holds_pages(records: Path) -> bool:
    return records.is_dir() and any(_PAGE.fullmatch(path.name) for path in records.iterdir())


def data_folder() -> Path:
    """The user's own folder for seasons, by the system's custom."""
    from platformdirs import user_data_path

    return user_data_path("benchround", appauthor=False)


def find_season(named: str = "") -> Path | None:
    """The season folder meant; None where there is none yet.

    Order: the one named, the current folder, the one last used, the one begun last in the user's
    folder.

    Raises:
        SeasonError: the folder named holds no season, or the season used last is not there: what is
            recorded is not to end in another one unasked.
    """
    if named:
        folder = Path(named).expanduser()
        if not is_season(folder):
            raise SeasonError(
                f"There is no season in {folder}: look at the name, or begin one there with "
                "'benchround new'."
            )
        return folder
    here = _here()
    if is_season(here):
        return here
    last = last_used()
    if last is not None:
        return last
    home = data_folder()
    seasons = sorted(path for path in home.glob("*") if is_season(path)) if home.is_dir() else []
    return max(seasons, key=_begun) if len(seasons) > 1 else next(iter(seasons), None)


def _begun(season: Path) -> tuple[date, float, str]:
    """What puts seasons in order: the day one was begun, the time of its own file, its name.

    One that does not say when it was begun comes before all that do.
    """
    from benchround.store.heading import read_heading

    try:
        day = read_heading(season).created
    except SeasonError:
        day = date.min  # opening it says what is wrong with it
    try:
        written = (season / HEADING).stat().st_mtime
    except OSError:
        written = 0.0
    return day, written, season.name


def _here() -> Path:
    try:
        return Path.cwd()
    except OSError as error:
        raise SeasonError(
            "The folder you stand in is gone: reconnect its disk, go to another one, or name the"
            " season."
        ) from error


def last_used() -> Path | None:
    """The season opened last; None where none was yet.

    Raises:
        SeasonError: it is not there.
    """
    try:
        text = (data_folder() / "last-used").read_text(encoding="utf-8").strip()
    except (OSError, UnicodeDecodeError):
        return None
    if not text:
        return None
    folder = Path(text)
    if not is_season(folder):
        raise SeasonError(
            f"The season used last is not in {folder}: reconnect its disk or share, or name the"
            " season that is meant. 'benchround new' begins another one."
        )
    return folder


def remember(folder: Path) -> None:
    """Keep in mind which season was opened last; failing to is no harm."""
    from benchround.store.disk import write_unforced

    try:
        home = data_folder()
        home.mkdir(parents=True, exist_ok=True)
        write_unforced(home / "last-used", str(folder.resolve()).encode())
    except (OSError, SeasonError, UnicodeEncodeError):  # the name may be no text
        return


def sample_folder() -> Path:
    """The sample season as it was installed.

    Raises:
        SeasonError: it was not installed with the program.
    """
    beside = Path(__file__).resolve().parent.parent / "sample_season"
    if is_season(beside):
        return beside
    import sysconfig

    installed = Path(sysconfig.get_path("data")) / "share" / "benchround" / "sample_season"
    if is_season(installed):
        return installed
    raise SeasonError("The sample season was not installed with this program.")


def private_sample() -> Path:
    """A copy of the sample to play with, in a fresh temporary folder of one's own."""
    import tempfile

    target = Path(tempfile.mkdtemp(prefix="benchround-sample-")) / "sample_season"
    lay_sample(target)
    return target


def holds_sample(folder: Path) -> bool:
    """Whether a folder holds the sample season, with whatever was recorded there since."""
    pages = (sample_folder() / "records").glob("*.json")
    return is_season(folder) and all((folder / "records" / one.name).is_file() for one in pages)


def lay_sample(target: Path) -> None:
    """Copy the sample into a folder that is not there yet, or is empty.

    Raises:
        SeasonError: something else is in the folder, or it cannot be written.
    """
    source = sample_folder()
    try:
        if target.exists() and (not target.is_dir() or any(target.iterdir())):
            raise SeasonError(f"{target} is no sample and not empty: name another folder.")
        _copy_season(source, target)
    except OSError as error:
        why = error.strerror or "it cannot be written"
        raise SeasonError(f"The sample was not laid in {target}: {why}.") from error


def _copy_season(source: Path, target: Path) -> None:
    for folder in ("", "records"):
        (target / folder).mkdir(parents=True, exist_ok=True)
        for file in (source / folder).glob("*.json"):
            (target / folder / file.name).write_bytes(file.read_bytes())
