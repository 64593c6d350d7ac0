"""`benchround report`: what the season came to, as a page to keep."""

from __future__ import annotations

import argparse

from benchround.feeds.out_file import STANDARD_OUTPUT, write_out
from benchround.feeds.page_text import as_markdown
from benchround.feeds.papers import PAPER_WORDS, paper_named
from benchround.feeds.report import report_page
from benchround.season_given import open_given, season_arguments
from benchround.shell.progress import watched
from benchround.shell.saying import remark

HELP = "the season's report: raised, come up, lost and why, what to sow next year"
EXAMPLE = "benchround report --sample --pdf season.pdf"
MORE_EXAMPLES = (
    "benchround report --sample",
    "benchround report --sample --out season.md --pdf season.pdf --paper A5",
)
DETAILS = (
    "Shares come with the range they lie in nineteen times in twenty, and only batches whose last "
    "count is the final one are counted; the others are named. Every line of what to sow next "
    "year says what its day and its number rest on."
)


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    season_arguments(parser)
    parser.add_argument("--out", metavar="FILE", default="", help="write Markdown to a file")
    parser.add_argument("--pdf", metavar="FILE", default="", help="write a PDF")
    parser.add_argument("--paper", default="A4", help=PAPER_WORDS)


def run(given: argparse.Namespace) -> int:
    """Write the report; without a file, Markdown goes to standard output."""
    paper = paper_named(given.paper)
    desk = open_given(given)
    try:
        page = report_page(desk.season, desk.folder.name, desk.today)
        if given.pdf:
            from benchround.feeds.page_pdf import page_pdf

            with watched("drawing", "lines", "no PDF was written.") as progress:
                data, remarks = page_pdf(
                    page, paper, desk.today, one_sheet=False, progress=progress
                )
            write_out(given.pdf, data)
            remark(remarks)
        if given.out or not given.pdf:
            write_out(given.out or STANDARD_OUTPUT, as_markdown(page).encode("utf-8"))
        remark(desk.problems)
    finally:
        desk.close()
    return 0
