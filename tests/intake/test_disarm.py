"""A marked copy reaches out of nothing, and still works out the user's own sums."""

from __future__ import annotations

import io
import zipfile
from pathlib import Path

import openpyxl
import pytest
from openpyxl.formatting.rule import Rule
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.worksheet.datavalidation import DataValidation

from budgetfix.base.problems import FileProblem, Place
from budgetfix.intake.disarm import harmless
from budgetfix.intake.survey_xlsx import marked


@pytest.mark.parametrize(
    "formula",
    ["=SUM(A1:A3)", "=120+15", '=IF(B5="","needs Width",ROUND(B5*2,1))', '=Walls!A1&"a | b [1]"', "=_xlfn.XOR(A1,A2)"],
)
def test_plain_sums_stay(formula: str) -> None:
    """Cells of the same book and functions that only work something out; words in quotes may be any."""
    assert harmless(formula)


@pytest.mark.parametrize(
    "formula",
    [
        '=HYPERLINK("http://a.invalid")', "=[1]Prices!A1", "=cmd|' /C calc'!A0", '=WEBSERVICE("x")', "=RTD(A1)",
        "=NAME(A1)",
        "='\\\\a.invalid\\b.xlsx'!A1", "=_xlfn.IMAGE(A1)", "=#REF!A1", "=INDIRECT(A1)", None,
    ],
)  # fmt: skip
def test_what_reaches_out_does_not(formula: object) -> None:
    """Links, other books, other programs, other computers, references made of text."""
    assert not harmless(formula)


def test_a_marked_copy_reaches_out_of_nothing(tmp_path: Path) -> None:
    """Formulas give way to their stored results; links, lists, colours and names that reach out are gone, ours stay."""
    book = openpyxl.Workbook()
    page = book.worksheets[0]
    page.title = "Walls"
    page["A1"], page["A2"], page["A3"] = "=[1]Prices!A1", "=1+1", "shop"
    page["A3"].hyperlink = "http://a.invalid"
    for lists in ("=[1]Prices!$A$1:$A$9", "=$B$1:$B$9"):
        rule = DataValidation(type="list", formula1=lists)
        rule.add("B1")
        page.add_data_validation(rule)
    for cell, formula in (("A1", 'WEBSERVICE("x")=1'), ("A2", "A2>1")):
        page.conditional_formatting.add(cell, Rule(type="expression", formula=[formula]))
    book.defined_names["out"] = DefinedName("out", attr_text="[1]Prices!$A$1")
    book.defined_names["ours"] = DefinedName("ours", attr_text="Walls!$A$1")
    book.save(tmp_path / "survey.xlsx")
    data = marked(
        tmp_path / "survey.xlsx", [FileProblem(Place("survey.xlsx", 1, 3, 1, "Walls!A3"), "'shop'", "a wall")]
    )
    read = openpyxl.load_workbook(io.BytesIO(data))
    page = read["Walls"]
    assert (page["A1"].value, page["A2"].value) == (None, "=1+1")
    assert page["A3"].hyperlink is None
    assert page["A3"].comment.text == "Found 'shop', wanted a wall."
    assert [one.formula1 for one in page.data_validations.dataValidation] == ["=$B$1:$B$9"]
    assert [str(cells.sqref) for cells in page.conditional_formatting] == ["A2"]
    assert list(read.defined_names) == ["ours"]
    with zipfile.ZipFile(io.BytesIO(data)) as parcel:
        assert not [name for name in parcel.namelist() if b"a.invalid" in parcel.read(name)]
