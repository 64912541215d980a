"""Workbooks that would grow, repeat or reach out: refused before they are unpacked, or read without what is wrong."""

from __future__ import annotations

import io
import random
import zipfile

import pytest

from budgetfix.base.problems import FileProblem
from budgetfix.intake.markup import Markup, NotTaken
from budgetfix.intake.parcel import repacked
from budgetfix.intake.survey_xlsx import book_of, open_book
from tests.trials.hostile_files import BOOKS, MAIN, OFFICE, TIES, book, packed, sheet

REFUSED = {
    "grows": "found 65,016,014 bytes when unpacked, wanted 64,000,000 at most",
    "rows": "found something in row 20,001, column 1 (xl/worksheets/sheet1.xml), wanted rows down to 20,000",
    "far right": "found something in XFD1 (xl/worksheets/sheet1.xml), wanted 500 columns at most",
    "merged": "found 17,179,869,184 cells, or more, with the range A1:XFD1048576 (xl/worksheets/sheet1.xml), "
    "wanted 250,000 at most",
    "linked": "found 17,179,869,184 cells, or more, with the range A1:XFD1048576 (xl/worksheets/sheet1.xml), "
    "wanted 250,000 at most",
    "entity": "found a document type declaration inside, wanted a workbook as spreadsheet programs save it",
    "laughs": "found a document type declaration inside, wanted a workbook as spreadsheet programs save it",
    "wide entity": "found a document type declaration inside, wanted a workbook as spreadsheet programs save it",
    "odd letters": "found a part in cp037, wanted UTF-8, as spreadsheet programs save it",
    "deep": "found markup 101 deep, wanted 100 at most",
    "parts": "found 2,109 parts in the workbook, wanted 2,000 at most",
    "styles": "found more styles, texts and cells than any list of a home, wanted a smaller workbook",
    "formulas": "found very long formulas in very many cells, wanted shorter ones, or their results",
    "macros": "found a workbook with macros, wanted one without, saved as .xlsx",
    "twice": "found a part of the workbook twice, wanted each part once",
    "large": "found 200,000,003 bytes, wanted 200,000,000 at most",
}


class First(random.Random):
    """Takes the first of any choice, and 1,048,576 for a row."""

    def choice(self, seq):  # type: ignore[no-untyped-def]
        """The first, or the row."""
        return 1_048_576 if 1_048_576 in seq else seq[0]


@pytest.mark.parametrize("kind", REFUSED)
def test_a_hostile_workbook_is_refused_word_for_word(kind: str) -> None:
    """Nothing is built of it, and the figure that is past a limit is told."""
    problems: list[FileProblem] = []
    assert book_of(BOOKS[kind](First(1)), "survey.xlsx", problems) is None
    assert [str(problem) for problem in problems] == [f"survey.xlsx {REFUSED[kind]}"]


def test_a_part_that_claims_less_than_it_holds_is_never_unpacked_further() -> None:
    """A claimed size of 1 byte before 65 million: damage, told as no workbook; so is one that claims too much."""
    for kind in ("claims little", "claims much"):
        for at in range(4):
            assert open_book(BOOKS[kind](random.Random(at)), False) is None


def test_what_says_nothing_about_a_room_stays_out() -> None:
    """Pictures are not unpacked, ties to other computers are cut, and the sheet is read all the same."""
    for kind in ("grows aside", "pictures", "outside", "far empty"):
        data = BOOKS[kind](random.Random(1))
        with zipfile.ZipFile(io.BytesIO(repacked(data))) as parcel:
            names = parcel.namelist()
            assert not [name for name in names if "media" in name]
            assert not [name for name in names if name.endswith(".rels") and b"External" in parcel.read(name)]
        assert open_book(data, True) is not None


def test_an_empty_cell_far_away_makes_no_sheet_large() -> None:
    """Formats down to the last row are common; loops over rows must not follow them."""
    read = open_book(sheet('<row r="1"><c r="A1"><v>1</v></c></row><row r="1048576"><c r="XFD1048576"/></row>'), True)
    assert read is not None
    assert (read.active.max_row, read.active.max_column) == (1, 1)  # type: ignore[union-attr]


def test_a_plain_workbook_comes_through() -> None:
    """Every sheet and cell is as before."""
    read = open_book(book(), False)
    assert read is not None
    assert read["Walls"]["A1"].value == "Wall"


def test_text_that_is_no_markup_is_told_apart_from_what_is_refused() -> None:
    """Damage is a ValueError; a limit is NotTaken."""
    with pytest.raises(ValueError, match="unclosed token"):
        Markup().look("a.xml", b"<a")
    with pytest.raises(NotTaken):
        Markup().look("a.xml", b"<a>" * 101)


def test_the_order_of_formulas_is_not_counted_as_cells() -> None:
    """Office programs keep every formula cell once more in a part of its own: 130,000 are not 260,000 cells."""
    rows = "".join(f'<row r="{row}">{"<c><f>1</f><v>1</v></c>" * 13}</row>' for row in range(1, 10_001))
    chain = f'<calcChain xmlns="{MAIN}">{"<c/>" * 130_000}</calcChain>'
    tie = f'<Relationship Id="z" Type="{OFFICE}/calcChain" Target="calcChain.xml"/>'
    ties = f'<Relationships xmlns="{TIES}">{tie}</Relationships>'
    with zipfile.ZipFile(io.BytesIO(sheet(rows))) as parcel:
        parts = {name: parcel.read(name) for name in parcel.namelist()}
    data = repacked(packed({**parts, "xl/calcChain.xml": chain.encode(), "xl/_rels/other.xml.rels": ties.encode()}))
    with zipfile.ZipFile(io.BytesIO(data)) as parcel:
        assert "xl/calcChain.xml" not in parcel.namelist()
        assert b"calcChain" not in parcel.read("xl/_rels/other.xml.rels")
        assert len(parcel.read("xl/worksheets/sheet1.xml")) == len(parts["xl/worksheets/sheet1.xml"])
