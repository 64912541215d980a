"""The sheets that follow in a measured room: drawings, and how everything was."""

from __future__ import annotations

import io
import shutil
import subprocess
import zipfile
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from openpyxl.worksheet.worksheet import Worksheet

from budgetfix.exports.drawings.draw import pictures
from budgetfix.exports.plan_book import plan_book
from budgetfix.exports.plan_book_drawings import ACROSS, PAGE, ROW, SCALE, drawings_sheet
from budgetfix.exports.plan_book_kept import BACK, kept_sheet
from budgetfix.outcome.changes import altered
from budgetfix.remedies.candidate import Leaves
from tests.exports.plan_sheets import opened, rows, sheet
from tests.exports.sample_book import BOOK
from tests.scenarios import EACH, RENTER, run


@cache
def made(name: str) -> bytes:
    """A demo plan's workbook."""
    book = run(name).book
    return plan_book(book, pictures(book))


def page_of(name: str, title: str) -> Worksheet:
    """One sheet of a demo plan's workbook."""
    return sheet(opened(made(name)), title)


def test_without_a_room_there_are_no_such_sheets() -> None:
    """A job of listed faults ends with what more buys; both makers leave the book alone."""
    assert opened(plan_book(BOOK)).sheetnames[-1] == "What more buys"
    assert drawings_sheet.__doc__
    assert kept_sheet.__doc__


@EACH
def test_all_drawings_are_in_the_book_with_their_words(name: str) -> None:
    """As many pictures as there are drawings, each with alternative text; none is stretched."""
    drawn = pictures(run(name).book)
    with zipfile.ZipFile(io.BytesIO(made(name))) as book:
        media = [entry for entry in book.namelist() if entry.startswith("xl/media/")]
        placed = book.read("xl/drawings/" + _drawing_of(book)).decode()
    assert len(media) == len({one.svg for one in drawn})
    assert placed.count("<xdr:pic>") == len(drawn)
    assert placed.count('descr="As measured.') == len(drawn) // 2
    assert placed.count('descr="After the plan.') == len(drawn) // 2


def _drawing_of(book: zipfile.ZipFile) -> str:
    """The part that holds pictures, not the chart's."""
    parts = [entry for entry in book.namelist() if entry.startswith("xl/drawings/drawing")]
    return next(Path(part).name for part in parts if b"<xdr:pic>" in book.read(part))


@EACH
def test_no_pair_is_cut_in_two_by_the_end_of_a_page(name: str) -> None:
    """Between two breaks there is never more than a page holds."""
    page, drawn = page_of(name, "Drawings"), pictures(run(name).book)
    breaks = [one.id for one in page.row_breaks.brk]
    titles = [cell.row or 0 for cell in page["B"] if cell.value and str(cell.value).endswith("before")]
    ends = [
        start + round(one.height * ACROSS / one.width) // ROW + 2 for start, one in zip(titles, drawn[::2], strict=True)
    ]
    for first, last in zip([1, *breaks], [*breaks, ends[-1]], strict=True):
        assert (last - first) * ROW <= PAGE + ROW
    for start, end in zip(titles, ends, strict=True):
        assert not any(start <= at < end - 1 for at in breaks)
    assert page.page_setup.scale == SCALE


@EACH
def test_how_everything_was_is_kept(name: str) -> None:
    """One row for each thing that changes, in the words of the tape; a tenant's sheet is named for moving out."""
    book = run(name).book
    assert book.drawn is not None
    rent = book.drawn.before.household.rent
    title = "Moving out" if rent else "As it was"
    lines, told = rows(page_of(name, title)), altered(book.drawn)
    assert [line["id"] for line in lines] == [row.item for row in told]
    for line, row in zip(lines, told, strict=True):
        assert line["As it was"] == (row.was or "not there")
        assert line["As the plan leaves it"] == (row.now or "taken away")
        assert str(line["Steps"]) == ", ".join(map(str, row.tasks))
        plugs = any(book.tasks[number - 1].leaves == "plugs" for number in row.tasks)
        assert ("plugs" in str(line["Left in the wall"])) == plugs


@RENTER
def test_the_old_bench_is_kept_and_not_the_screen_on_it() -> None:
    """What a new thing replaces is to be kept if nothing is known of a lease, or if the lease names it: else it is the
    tenant's own, and nobody's word is needed. What only stands higher now is not called old.
    """
    book = run("renter").book
    assert book.undoing is not None
    assert book.undoing.lent == ("ceiling light", "curtain")
    word = "Keep the old screen bench, or the landlord's word that it may go."
    for undoing, wanted in ((None, True), (replace(book.undoing, lent=("screen bench",)), True), (book.undoing, False)):
        page = sheet(opened(plan_book(replace(book, undoing=undoing))), "Moving out")
        told = {str(line["id"]): str(line["To put it back"]) for line in rows(page)}
        assert (word in told["screen bench"]) == wanted
        assert "Keep the old" not in told["screen"]


def test_each_way_of_holding_says_how_it_goes_again() -> None:
    """Whatever a remedy leaves in a wall has its words for moving out."""
    assert set(BACK) == set(Leaves.__args__) - {"nothing"}  # type: ignore[attr-defined]


@RENTER
def test_an_owner_is_not_told_about_a_lease() -> None:
    """In one's own home the sheet is called as it was."""
    book = run("renter").book
    assert book.drawn is not None
    survey = book.drawn.before
    home = type(survey.household).model_validate({**dict(survey.household), "rent": False})
    owned = type(survey).model_validate({**{name: getattr(survey, name) for name in type(survey).model_fields},
                                         "household": home})  # fmt: skip
    made_again = opened(plan_book(replace(book, drawn=replace(book.drawn, before=owned), landlord=None, undoing=None)))
    assert [page.title for page in made_again.worksheets if page.sheet_state == "visible"][-1] == "As it was"


@RENTER
@pytest.mark.libreoffice
@pytest.mark.poppler
def test_printed_pages_are_complete(tmp_path: Path) -> None:
    """The renter's book as paper: no page without marks, drawings two abreast, every sheet there."""
    (tmp_path / "plan.xlsx").write_bytes(made("renter"))
    office = [shutil.which("soffice") or "libreoffice", f"-env:UserInstallation={(tmp_path / 'profile').as_uri()}"]
    subprocess.run(
        [*office, "--headless", "--convert-to", "pdf", "--outdir", str(tmp_path), str(tmp_path / "plan.xlsx")],
        check=True, capture_output=True, timeout=180,
    )  # fmt: skip
    subprocess.run(["pdftoppm", "-r", "40", "-gray", str(tmp_path / "plan.pdf"), str(tmp_path / "page")], check=True)
    printed = sorted(tmp_path.glob("page*.pgm"))
    texts = subprocess.run(
        ["pdftotext", "-layout", str(tmp_path / "plan.pdf"), "-"], check=True, capture_output=True, text=True
    ).stdout.split("\f")
    assert len(printed) == len(texts) - 1
    for one in printed:
        assert _dark(one.read_bytes()) > 0.002, one.name
    drawings = [text for text in texts if "Drawings" in text]
    assert 1 <= len(drawings) <= 3
    for page in opened(made("renter")).worksheets:
        assert any(page.title in text for text in texts) == (page.sheet_state == "visible"), page.title


def _dark(data: bytes) -> float:
    """The share of a grey picture (Netpbm P5) that is not paper."""
    kind, size, _most, dots = data.split(b"\n", 3)
    assert kind == b"P5"
    wide, high = (int(part) for part in size.split())
    return sum(dot < 200 for dot in dots) / (wide * high)
