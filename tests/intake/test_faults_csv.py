"""Listed faults: what the user typed in, one a line."""

from __future__ import annotations

from pathlib import Path

import pytest

from budgetfix.brief.models import ListedFault
from budgetfix.intake.csv_rows import csv_place
from budgetfix.intake.faults_csv import read_faults


def read(folder: Path, data: str | bytes) -> tuple[tuple[ListedFault, ...], list[str]]:
    """The faults of a file and its problems as people read them."""
    path = folder / "faults.csv"
    path.write_bytes(data.encode() if isinstance(data, str) else data)
    faults, problems = read_faults(path)
    return faults, [str(problem) for problem in sorted(problems)]


def test_all_columns(tmp_path: Path) -> None:
    """What, where and safety are taken as typed; points have no cap."""
    text = "fault,points,what,where,safety\r\nf1,100,Stairs creak,hall,yes\r\nf2,25000,,,\r\nf3,0,x,y,no\r\n"
    assert read(tmp_path, text) == (
        (
            ListedFault(fault="f1", points=100, what="Stairs creak", where="hall", safety=True),
            ListedFault(fault="f2", points=25000),
            ListedFault(fault="f3", points=0, what="x", where="y"),
        ),
        [],
    )


def test_only_what_is_needed(tmp_path: Path) -> None:
    """Two columns are enough, in any order, in capitals, with empty lines between."""
    assert read(tmp_path, "Points,Fault\n5,a\n\n,\n7,b\n")[0] == (
        ListedFault(fault="a", points=5),
        ListedFault(fault="b", points=7),
    )


def test_quoted_fields(tmp_path: Path) -> None:
    """RFC 4180: commas, quotes and line ends in quotes belong to the words, the last as spaces; cells are counted."""
    text = 'fault,points,what\n"a, b",1,"says ""no""\nand more"\nc,x,y\n'
    faults, problems = read(tmp_path, text)
    assert faults[0] == ListedFault(fault="a, b", points=1, what='says "no" and more')
    assert problems == ["faults.csv [B3] found 'x', wanted a whole number, 0 or more"]


@pytest.mark.parametrize("sign", [";", "\t"])
def test_other_signs_between_fields(tmp_path: Path, sign: str) -> None:
    """Spreadsheet programs of some countries put semicolons, some people tabs; a mark at the start is no letter."""
    text = f"\ufefffault{sign}points{sign}what\nf1{sign}10{sign}dark, cold\n"
    assert read(tmp_path, text) == ((ListedFault(fault="f1", points=10, what="dark, cold"),), [])


@pytest.mark.parametrize(
    ("data", "said"),
    [
        ("fault,points\nf1,many\n", "faults.csv [B2] found 'many', wanted a whole number, 0 or more"),
        ("fault,points\nf1,-1\n", "faults.csv [B2] found '-1', wanted a whole number, 0 or more"),
        ("fault,points\nf1,1.5\n", "faults.csv [B2] found '1.5', wanted a whole number, 0 or more"),
        ("fault,points\nf1,\n", "faults.csv [B2] found nothing, wanted whole points, 0 or more"),
        ("fault,points\n,5\n", "faults.csv [A2] found nothing, wanted a short name, used once"),
        ("fault,points\na,5\na,5\n", "faults.csv [A3] found 'a' a second time, wanted each fault once"),
        ("fault,points,safety\na,5,hm\n", "faults.csv [C2] found 'hm', wanted yes or no"),
        (
            "fault,points\na,5,b\n",
            "faults.csv [C2] found 3 fields, wanted 2, as in the headings; "
            "put text that holds a comma in double quotes",
        ),
        ("fault,score\n", "faults.csv [A1] found no heading 'points', wanted a column named points"),
        (
            "fault,points,wher\na,5,\n",
            "faults.csv [C1] found the heading 'wher', wanted one of: fault, points, what, where, safety; "
            "did you mean where?",
        ),
        ("fault,points,points\na,5,\n", "faults.csv [C1] found the heading 'points' again, wanted each heading once"),
        ("", "faults.csv found no headings, wanted headings such as fault, points, what"),
        (b"fault,points\n\xff,5\n", "faults.csv found bytes that are not text, wanted a file saved as CSV, UTF-8"),
    ],
)
def test_what_cannot_be_read(tmp_path: Path, data: str | bytes, said: str) -> None:
    """Each message word for word, with the cell that a spreadsheet shows."""
    assert said in read(tmp_path, data)[1]


def test_a_field_beyond_all_bounds(tmp_path: Path) -> None:
    """A quote that is never closed swallows the file: told, not a crash."""
    problems = read(tmp_path, 'fault,points\n"' + "x" * 200_000)[1]
    assert problems == ["faults.csv found field larger than field limit (131072), wanted a file saved as CSV"]


def test_headings_only(tmp_path: Path) -> None:
    """No faults are no problem."""
    assert read(tmp_path, "fault,points\n") == ((), [])


@pytest.mark.parametrize("sign", [";", "\t"])
def test_commas_in_numbers_beside_other_signs(tmp_path: Path, sign: str) -> None:
    """Where no comma stands between fields it is the point of a number; three digits behind it are asked about."""
    text = f"fault{sign}points{sign}what\na{sign}100,0{sign}3,5\nb{sign}1,000{sign}x\n"
    faults, problems = read(tmp_path, text)
    assert faults[0] == ListedFault(fault="a", points=100, what="3,5")
    assert problems == [
        "faults.csv [B3] found '1,000', wanted a whole number, 0 or more; write no comma between thousands: 1000"
    ]


def test_columns_far_to_the_right() -> None:
    """Places are called as a spreadsheet calls them: AA after Z, AAA after ZZ."""
    assert csv_place("faults.csv", 1, 26).label == "Z1"
    assert csv_place("faults.csv", 2, 27).label == "AA2"
    assert csv_place("faults.csv", 3, 702).label == "ZZ3"
    assert csv_place("faults.csv", 4, 703).label == "AAA4"


def test_a_problem_is_one_line(tmp_path: Path) -> None:
    """Whatever stands in a cell, line ends too, its problem is told on one line."""
    problems = read(tmp_path, 'fault,points,"x\ny"\na,"1\n2",z\n')[1]
    assert [len(line.splitlines()) for line in problems] == [1, 1]
