"""The two guides for people: what they say of sheets, headings, marks and usual sizes is what the code does."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from pathlib import Path

import pytest
from openpyxl import load_workbook

from budgetfix.base.tape import read_length, write_length
from budgetfix.brief.models import Brief
from budgetfix.exports.drawings.draw import pictures
from budgetfix.exports.lettering import SIGNS
from budgetfix.exports.plan_book import plan_book
from budgetfix.exports.plan_book_buy import COLUMNS as BUY
from budgetfix.exports.plan_book_do import COLUMNS as DO
from budgetfix.exports.plan_screen import plan_text
from budgetfix.exports.replan_words import replan_lines
from budgetfix.exports.survey_look import live_value
from budgetfix.forms.column import Column
from budgetfix.forms.survey_form import FORM_OF, SHEETS, START_TITLE, WALLS
from budgetfix.intake.plan_cells import read_minutes, read_state
from budgetfix.outcome.book import Drawn, Mark
from budgetfix.outcome.since import Fact, Shift, Since
from budgetfix.pipeline.asking_back import MOST
from budgetfix.pipeline.reading import JobOptions, read
from budgetfix.pipeline.writing import write_plan
from budgetfix.room.survey import Household, Survey
from tests.exports.sample_book import BOOK
from tests.exports.sample_quote import QUOTED
from tests.exports.test_chance_words import CHANCES
from tests.exports.test_landlord import LEASED
from tests.inspection.rooms import room
from tests.pipeline.listed_job import TODAY, one_each, write_job

REPORTS = Path(__file__).resolve().parents[2] / "reports"
MEASURE = (REPORTS / "measure-your-room.md").read_text(encoding="utf-8")
READ = (REPORTS / "read-your-plan.md").read_text(encoding="utf-8")
AFTER = (REPORTS / "after-the-plan.md").read_text(encoding="utf-8")


def table(text: str, first: str) -> list[list[str]]:
    """The rows of the table whose first heading is that."""
    lines = text.splitlines()
    at = next(number for number, line in enumerate(lines) if line.startswith(f"| {first} |"))
    rows = []
    for line in lines[at + 2 :]:
        if not line.startswith("|"):
            break
        rows.append([cell.strip() for cell in line.strip("|").split("|")])
    return rows


def bold(text: str) -> list[str]:
    """What stands in bold, in order."""
    return re.findall(r"\*\*(.+?)\*\*", text)


def test_the_sheets_are_walked_in_order_in_half_an_hour() -> None:
    """Every sheet of the form, as it is called there, and thirty minutes in all."""
    rows = table(MEASURE, "sheet")
    assert [bold(row[0])[0] for row in rows] == [START_TITLE, *(sheet.title for sheet in SHEETS)]
    assert sum(int(row[1]) for row in rows) == 30


def usual(words: str) -> tuple[Column, str]:
    """The column and the sort of thing that a line of the guide speaks of."""
    heading, _, sort = words.partition(", ")
    what = {"bench": "screen bench"}.get(sort, sort)
    found = [
        column
        for columns in FORM_OF.values()
        for column in columns
        if column.heading.lower() == heading and column.defaults and column.usual_for(what, True) is not None
    ]
    assert len(found) == 1, words
    return found[0], what


def figure(text: str, length: bool) -> float:
    """A figure of the guide, lengths in mm."""
    return read_length(text, "mm") if length else float(text)


@pytest.mark.parametrize("row", table(MEASURE, "left blank"), ids=lambda row: str(row[0]))
def test_what_is_assumed_is_what_the_form_takes(row: list[str]) -> None:
    """The usual size in both units, and the ends between which it usually lies."""
    column, what = usual(row[0])
    length = column.kind == "length"
    low, taken, high = column.usual_for(what, metric=True) or (0, 0, 0)
    assert figure(row[1], length) == taken
    inches = column.default_for(what, metric=False)
    assert inches is not None
    assert row[2] == (write_length(inches, "in") if length else f"{inches:g}")
    ends = re.fullmatch(r"(\d+) and (\d+)(?: mm)?", row[3])
    assert ends is not None
    assert (float(ends[1]), float(ends[2])) == (low, high)


def test_every_figure_that_may_be_left_blank_is_told() -> None:
    """One line for each default of the form."""
    told = {usual(row[0])[0].field + usual(row[0])[1] for row in table(MEASURE, "left blank")}
    defaults = [(column, default) for columns in FORM_OF.values() for column in columns for default in column.defaults]
    for column, default in defaults:
        assert any(column.field + what in told for what in (default.whats or ("", "ceiling"))), column.heading
    assert len(told) == len(defaults)


def test_the_form_says_ready_as_the_guide_says() -> None:
    """Column A in the guide's words; three figures are asked back; a fraction needs its nought."""
    assert f"`{live_value('walls', WALLS, {'wall': 'A', 'length': 3})}`" in MEASURE
    assert MOST == 3
    assert "asks back for the three" in MEASURE
    assert read_length("0 5/8", "in") == 5 / 8 * 25.4


def test_lengths_in_the_guide_can_be_read() -> None:
    """Every way of writing a length that the guide shows."""
    shown = re.search(r"Write what the tape says: (.+?)\. A bare", MEASURE, re.DOTALL)
    assert shown is not None
    lengths = re.findall(r"`(.+?)`", shown[1])
    assert len(lengths) == 5
    assert all(read_length(length, "in") > 0 for length in lengths)


def test_the_files_are_those_that_a_plan_writes(tmp_path: Path) -> None:
    """In the order in which they are named on the screen; one person's calendar stands for all."""
    book = replace(BOOK, landlord=LEASED.landlord, quote=QUOTED.quote)
    written = [Path(name).name for name in write_plan(tmp_path, book)]
    assert written.pop(6) == "plan-ben.ics"
    assert [bold(row[0])[0] for row in table(READ, "file")] == written


def sofa(gap: int, rent: bool) -> Survey:
    """A room with a sofa that far from its wall."""
    facts = {"name": "sofa", "what": "sofa", "plan": (500, gap, 2000, 900), "height": 800.0, "faces": "C"}
    made = room("mm", (4000, 5000), {"ceiling": 2400.0, "furniture": [facts]})
    kept = {name: getattr(made, name) for name in Survey.model_fields}
    return Survey.model_validate({**kept, "household": Household(unit="mm", rent=rent)})


@pytest.mark.parametrize(("rent", "last"), [(True, "Moving out"), (False, "As it was")])
def test_the_sheets_of_the_plan_are_told_in_order(rent: bool, last: str) -> None:
    """Every sheet of a measured room that changes; how it was has another name for those who own their home."""
    drawn = Drawn(sofa(0, rent), sofa(300, rent), (Mark("sofa", (1,)),))
    book = replace(BOOK, drawn=drawn, landlord=LEASED.landlord, chances=CHANCES)
    book = replace(book, quote=QUOTED.quote, costing=QUOTED.costing)
    named = [name for row in table(READ, "sheet") for name in bold(row[0])]
    made = load_workbook(io.BytesIO(plan_book(book, pictures(book)))).sheetnames
    assert made.pop(4) == "Ben"
    assert made == [last if name == "Moving out" else name for name in named]
    assert last in bold(" ".join(" ".join(row) for row in table(READ, "sheet")))


def test_what_is_yours_is_told() -> None:
    """The cells to fill in on Buy and Do, by their headings."""
    yours = {bold(row[0])[0]: bold(row[2]) for row in table(READ, "sheet")}
    assert yours["Buy"] == [column.heading for column in BUY if column.yours]
    assert yours["Do"] == [column.heading for column in DO if column.yours]
    assert all(not marks for sheet, marks in yours.items() if sheet not in ("Buy", "Do"))


def test_every_mark_is_explained() -> None:
    """The signs of the workbook and of the screen."""
    marks = [row[0] for row in table(READ, "mark")]
    assert marks[: len(SIGNS)] == [f"{sign} {state}" for state, sign in SIGNS.items()]
    assert marks[len(SIGNS) :] == ["~", "!"]


def test_the_proof_is_quoted_as_the_screen_says_it() -> None:
    """Words of the terminal that the guide explains."""
    screen = plan_text(BOOK, ())
    quoted = re.search(r"`(PROOF no other set of these )\d+( remedies takes away more)`", READ)
    assert quoted is not None
    assert all(part in screen for part in quoted.groups())


def test_what_may_be_typed_is_read_so() -> None:
    """Every cell of the guide to what comes after is the user's, and every word that it shows is read as it says."""
    rows = [(bold(row[0])[0], row[1]) for row in table(AFTER, "cell")]
    assert {cell for cell, _ in rows} == {column.heading for column in (*BUY, *DO) if column.yours}
    said = [words for cell, words in rows if cell == "Bought"]
    assert [read_state(words.split()[0]) for words in said[:2]] == ["bought", "returned"]
    assert [read_state(word) for word in re.findall(r"\w+", said[0].split("or", 1)[1])] == ["bought"] * 3
    assert read_state(said[2]) == "sold out"
    assert read_minutes(re.findall(r"\d+:\d+", dict(rows)["Real minutes"])[0]) == 75


def test_the_briefs_of_the_guide_are_read(tmp_path: Path) -> None:
    """The lines for the brief that the guide shows: money by date in both ways is the same, pace and learning."""
    block = re.search(r"```yaml\n(money: .+?)\n# the same: (money: .+?)\n```", AFTER)
    assert block is not None
    pace = re.search(r"`(pace: .+?)`", AFTER)
    assert pace is not None
    one, other = (brief_of(tmp_path, f"{line}\n{pace[1]}\nlearn: off\n") for line in block.groups())
    assert one == other
    assert one.budget_minor == 30000
    assert (len(one.incomes), one.learn) == (2, False)


def brief_of(folder: Path, text: str) -> Brief:
    """A brief as a job reads it."""
    write_job(folder, [100], one_each([100], [10]), {})
    (folder / "brief.yaml").write_text(text, encoding="utf-8")
    return read(folder, JobOptions(), TODAY).brief


def test_the_heads_of_the_five_lines() -> None:
    """What the lines of `replan` begin with."""
    heads = [head for row in table(AFTER, "line") for head in row[0].split(", ")]
    said = Since(
        TODAY, 500, 400, 0, 1, 2, 30, 20, 1, 60,
        (Shift(("Sweep",)),), (Shift(("Dust",)),), (Fact("dearer", "Broom", 100),), told=True,
    )  # fmt: skip
    assert [line.split("  ")[0] for line in replan_lines(said, BOOK)] == heads


@pytest.mark.parametrize("text", [MEASURE, READ, AFTER])
def test_the_guides_are_short_enough_to_read_standing(text: str) -> None:
    """At most two printed pages, no line wider than the house's, every file that is linked is there."""
    assert len(text.splitlines()) <= 110
    assert max(map(len, text.splitlines())) <= 125
    for link in re.findall(r"\]\((.+?)\)", text):
        assert (REPORTS / link).is_file()
