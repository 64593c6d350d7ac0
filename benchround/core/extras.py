"""What is installed only when it is asked for, and the command that installs it."""

from __future__ import annotations


def install_words(extra: str) -> str:
    """How an extra is installed, in words that end a sentence.

    Args:
        extra: its name, such as "paper".
    """
    return (
        f"install the extra '{extra}': in the folder of the program, .venv/bin/pip install -e "
        f'".[{extra}]"; where it came by name, pip install "benchround[{extra}]"'
    )
