from __future__ import annotations

import io
import os
import shutil
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest
from openpyxl import Workbook

from budgetfix.exports.plan_book import plan_book
from budgetfix.exports.plan_book_buy import NONE_DEAR, SOME_DEAR
from budgetfix.exports.plan_book_page import LONGEST, clean
from budgetfix.exports.plan_book_summary import verdict
from budgetfix.outcome.book import PlanBook
from tests.exports.plan_sheets import (
    HEAD,
    beside,
    column_of,
    footer,
    opened,
    right_of,
    rows,
    sheet,
    sheet_of,
    under,
    values,
)
from tests.exports.sample_book import BOOK, FORMULA, FREE_HANDS, NO_HOURS, NO_LIMIT, NOTHING, many
from tests.laws.source import REPO

SHARED = ("Ann", "Ben", "Together")
SHEETS = ["Summary", "Buy", "Do", "Ann", "Ben", "Together", "Before and after", "Left out", "What more buys"]
PLANS = {
    "usual": BOOK,
    "empty": NOTHING,
    "no hours": NO_HOURS,
    "no budget": NO_LIMIT,
    "no time": FREE_HANDS,
    "100 in yen": many(100, "JPY"),
}
EVERY = pytest.mark.parametrize("plan", PLANS.values(), ids=PLANS)


@EVERY
def test_the_same_plan_gives_the_same_bytes(plan: PlanBook) -> None:
    """Two builds are equal byte for byte, so that freshness is a comparison."""
    assert plan_book(plan) == plan_book(plan)


def test_no_hash_or_clock_has_a_say() -> None:
    """A fresh process with another hash seed, and a brief that names no date, gives the same bytes."""
    words = (
        "import hashlib; from dataclasses import replace; from budgetfix.exports.plan_book import plan_book; "
        "from tests.exports.sample_book import BOOK; "
        "print(hashlib.sha256(plan_book(replace(BOOK, ordered=None))).hexdigest())"
    )
    found = [
        subprocess.run(
            [sys.executable, "-c", words],
            cwd=REPO,
            env=os.environ | {"PYTHONHASHSEED": seed, "PYTHONPATH": str(REPO)},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("0", "7")
    ]
    assert found[0] == found[1]


@EVERY
def test_the_sheets_and_their_paper(plan: PlanBook) -> None:
    """All sheets with ids hidden, headings frozen and repeated, one page wide, a footer, A4 for euro and yen."""
    book = opened(plan_book(plan))
    shared = len({name for task in plan.tasks for name in task.who}) > 1
    assert book.sheetnames == [name for name in SHEETS if shared or name not in SHARED]
    assert all(len(name) <= 31 for name in book.sheetnames)
    pages = [sheet(book, name) for name in book.sheetnames]
    for page in pages:
        assert page.column_dimensions["A"].hidden
        assert page.page_setup.paperSize == 9
        fits = page.sheet_properties.pageSetUpPr
        assert fits is not None
        assert (fits.fitToPage, page.page_setup.fitToWidth or 1) == (True, 1)
        assert footer(page)[1:] == ("&A", "&P / &N")
    for page in pages[1:]:
        assert (page.freeze_panes, page.print_title_rows) == ("A5", "$4:$4")


@pytest.mark.parametrize(("currency", "paper"), [("USD", 1), ("CAD", 1), ("EUR", 9), ("GBP", 9), ("JPY", 9)])
def test_paper_follows_the_currency(currency: str, paper: int) -> None:
    """Letter at the homes of the US and Canadian dollar, A4 elsewhere (common practice; ECMA-376 paper codes)."""
    assert sheet_of(replace(BOOK, currency=currency), "Buy").page_setup.paperSize == paper


@EVERY
def test_every_formula_is_stored_with_its_value(plan: PlanBook) -> None:
    """A phone or a mail preview that does not calculate still shows every number."""
    behind, shown = opened(plan_book(plan), values=False), opened(plan_book(plan))
    formulas = 0
    for page in behind:
        page_shown = values(sheet(shown, page.title))
        for place, value in values(sheet(behind, page.title)).items():
            if str(value).startswith("=") and value != FORMULA:
                formulas += 1
                assert place in page_shown, (page.title, place, value)
                assert "[" not in str(value), "plain ranges and defined names only"
    assert formulas > 4


def test_text_is_never_a_formula() -> None:
    """A product named =HYPERLINK(...) stays text everywhere it is shown."""
    page = sheet_of(many(6), "Buy", values=False)
    cell = next(cell for cell in page["C"] if cell.value == FORMULA)
    assert cell.data_type == "s"


def test_text_is_cut_to_what_a_cell_holds() -> None:
    """32,767 characters is the most that one cell takes (ECMA-376); broken letters are replaced."""
    assert len(clean("x" * 40_000)) == LONGEST == 32_767
    assert clean("a\ud800b") == "a?b"
    plan = replace(BOOK, tasks=(replace(BOOK.tasks[0], text="y" * 40_000),))
    assert len(str(rows(sheet_of(plan, "Do"))[0]["What to do"])) == LONGEST


def test_the_tiles_and_figures() -> None:
    """The first sheet says in five tiles how it stands: nothing ticked yet, all prices as planned."""
    page = sheet_of(BOOK, "Summary")
    assert under(page, "Faults fixed, hazards too") == pytest.approx(3 / 7)
    assert under(page, "Hazards left") == "0 of 1"
    assert under(page, "Money left") == pytest.approx(8.28)
    assert [under(page, "Bought"), under(page, "Done")] == ["0 of 5", "0 of 7"]
    assert [right_of(page, label) for label in ("Budget", "Held back", "Planned to spend")] == [160, 10, 141.72]
    assert right_of(page, "Planned work, minutes of every person") == 260
    assert right_of(page, "Best (this book)") == 141.72
    assert right_of(page, "After") == "█" * 18 + "  600"


def test_a_plan_without_a_budget_shows_what_is_spent() -> None:
    """Without a limit of money there is nothing left to count: the tile says what is spent."""
    page = sheet_of(NO_LIMIT, "Summary")
    assert under(page, "Spent") == 141.72
    with pytest.raises(LookupError):
        under(page, "Money left")


def test_the_sentence_says_how_sure_it_is() -> None:
    """Proven, or stopped with what may still be missing."""
    assert verdict(BOOK) == (
        "14 ft by 12 ft. No other set of these 16 remedies takes away more, with this money and these hours."
    )
    assert verdict(replace(BOOK, everything=True)) == (
        "14 ft by 12 ft. No other way to do everything ends sooner, or as soon for less, "
        "with this money and these hours."
    )
    assert verdict(replace(NO_LIMIT, proven=False, bound=960, sessions=None)) == (
        "14 ft by 12 ft. Stopped after 60 s, not proven: at best 7 points more exist."
    )


def test_a_footer_keeps_an_ampersand_and_a_number() -> None:
    """A room named `2 & 3` is not read as a font size or a code."""
    assert footer(sheet_of(replace(BOOK, title="2 & 3"), "Buy"))[0].strip() == "2 && 3"


def about(value: object) -> object:
    """A number that another program worked out."""
    return pytest.approx(value) if isinstance(value, float) else value


def through_libreoffice(folder: Path, books: dict[str, bytes]) -> dict[str, Workbook]:
    """Books opened, worked out anew and saved by LibreOffice, in one run."""
    given, saved = folder / "given", folder / "saved"
    given.mkdir()
    for name, data in books.items():
        (given / f"{name}.xlsx").write_bytes(data)
    command = [shutil.which("soffice") or "libreoffice", f"-env:UserInstallation={(folder / 'profile').as_uri()}"]
    command += ["--headless", "--convert-to", "xlsx", "--outdir", str(saved)]
    command += [str(given / f"{name}.xlsx") for name in books]
    subprocess.run(command, check=True, capture_output=True, timeout=180)
    return {name: opened((saved / f"{name}.xlsx").read_bytes()) for name in books}


@pytest.mark.libreoffice
def test_libreoffice_recalculates_without_an_error(tmp_path: Path) -> None:
    """Another program opens each book, works out every cell anew, finds no error and the same values."""
    made = {name.replace(" ", "-"): plan_book(plan) for name, plan in PLANS.items()}
    saved = through_libreoffice(tmp_path, made)
    for (name, data), plan in zip(made.items(), PLANS.values(), strict=True):
        for page in opened(data).sheetnames:
            theirs = values(sheet(saved[name], page))
            assert [(page, value) for value in theirs.values() if str(value).startswith("#")] == []
            assert theirs == {at: about(value) for at, value in values(sheet(opened(data), page)).items()}
        spent = right_of(sheet(saved[name], "Summary"), "Spent or promised, at real prices")
        assert spent == pytest.approx(plan.spent_minor / (1 if plan.currency == "JPY" else 100))


@pytest.mark.libreoffice
def test_ticks_and_real_prices_count_at_once(tmp_path: Path) -> None:
    """Somebody ticks the rod, pays 4.50 more than planned, and works two people for 60 minutes on the TV."""
    book = opened(plan_book(BOOK), values=False)
    made: dict[str, dict[str, str | float]] = {
        "Buy": {"Bought": "✓", "Paid in all": 43.5},
        "Do": {"Done": "x", "Real minutes": 60},
    }
    for name, typed in made.items():
        page = sheet(book, name)
        row = HEAD + 1 if name == "Buy" else HEAD + 2
        for heading, value in typed.items():
            page.cell(row, column_of(page, heading)).value = value
    data = io.BytesIO()
    book.save(data)
    saved = through_libreoffice(tmp_path, {"ticked": data.getvalue()})["ticked"]
    first = sheet(saved, "Summary")
    assert [under(first, label) for label in ("Bought", "Done")] == ["1 of 5", "1 of 7"]
    assert under(first, "Money left") == pytest.approx(3.78)
    assert right_of(first, "Spent or promised, at real prices") == pytest.approx(146.22)
    assert right_of(first, "Real work so far") == 120
    assert beside(sheet(saved, "Buy"), "Harrow Tools", "Counts as") == pytest.approx(70.32)
    assert beside(sheet(saved, "Do"), "Sat 6 Jun, 09:00", "Real minutes") == 120


@pytest.mark.libreoffice
def test_a_price_above_the_most_to_pay_is_said_in_words(tmp_path: Path) -> None:
    """47.28 for the rod is still fine, a cent more asks for another plan; any price is never too much."""
    made = {}
    for name, paid in (("fine", 47.28), ("dear", 47.29)):
        book = opened(plan_book(BOOK), values=False)
        page = sheet(book, "Buy")
        page.cell(HEAD + 1, column_of(page, "Paid in all")).value = paid
        page.cell(HEAD + 2, column_of(page, "Paid in all")).value = 900
        data = io.BytesIO()
        book.save(data)
        made[name] = data.getvalue()
    saved = through_libreoffice(tmp_path, made)
    said = {
        name: [text for text in values(sheet(book, "Buy")).values() if "▲▲" in str(text)]
        for name, book in saved.items()
    }
    assert said["fine"] == []
    assert said["dear"] == [f"▲▲ 1{SOME_DEAR}"]
    resting = [text for text in values(sheet_of(BOOK, "Buy")).values() if text == NONE_DEAR]
    assert len(resting) == 1
