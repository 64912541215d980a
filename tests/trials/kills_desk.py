"""Folders before and after a writing, made once of real plans, and the product's own functions that write."""

from __future__ import annotations

import shutil
import time
import warnings
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path
from unittest.mock import patch

from budgetfix.intake.plan_back import back_from
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.portfolio import Portfolio
from budgetfix.pipeline import writing
from budgetfix.pipeline.holding import holding
from budgetfix.pipeline.portfolio import Together
from budgetfix.pipeline.portfolio_writing import put_together, write_portfolio
from tests.intake.ticked import Desk, said
from tests.pipeline.listed_job import chosen_plan, one_each, write_job
from tests.pipeline.street import OVERLAPPING, only_plans, plan_street, read_street, write_house, write_street
from tests.pipeline.ticked import TODAY, read_at
from tests.pipeline.ticked import rest as rest_of

Files = Mapping[str, bytes]
PLAN = writing.PLAN
LEFT_BEHIND = {"plan-zoe.ics": b"BEGIN:VCALENDAR\nPRODID:-//budgetfix//\n", "landlord.txt": b"Date: ____\n"}
"""Files of an earlier plan that the new one does not have: they are taken away."""


@dataclass(frozen=True)
class Case:
    """One way to write: the folder before, what is to be there after, and the product's function for it.

    `ticks`: the workbook with ticks, by name, which must never be lost; None where nobody had ticked anything.
    """

    name: str
    before: Files
    after: Files
    write: Callable[[Path], None]
    ticks: bytes | None = None
    names: tuple[str, ...] = ()

    def lay(self, folder: Path) -> None:
        """The folder as it is before."""
        shutil.rmtree(folder, ignore_errors=True)
        folder.mkdir(parents=True)
        for name, data in self.before.items():
            (folder / name).parent.mkdir(exist_ok=True)
            (folder / name).write_bytes(data)

    def run(self, folder: Path) -> None:
        """What the command does with its folder: hold it, end what was left, write."""
        with holding(folder, self.names):
            self.write(folder)


def contents(folder: Path) -> dict[str, bytes]:
    """Every file below a folder, hidden ones as well."""
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def cases(folder: Path) -> tuple[Case, ...]:
    """A plan over an earlier one, the rest over a ticked workbook, three houses over their earlier plans."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return (*_one_job(folder / "job"), _street(folder / "street"))


def _one_job(folder: Path) -> Iterator[Case]:
    folder.mkdir(parents=True)
    remedies = [{**one, "hours": 1} for one in one_each((100, 40), (10, 5))]
    write_job(folder, (100, 40), remedies, {"budget": 10, "hours": [2, 2], "ordered": "2026-06-01"})
    own = contents(folder)
    first = _plan(folder)
    write_job(folder, (100, 40), remedies, {"budget": 15, "hours": [2, 2], "ordered": "2026-06-01"})
    second = _plan(folder)
    earlier, later = writing.plan_files(first), writing.plan_files(second)
    yield Case(
        "plan", {**own, **LEFT_BEHIND, **earlier}, {**own, **later}, lambda where: _write_plan(where, second, later)
    )
    yield Case("first plan", own, {**own, **later}, lambda where: _write_plan(where, second, later))
    desk = Desk(second, later[PLAN])
    desk.type("Do", "i1#1", "Done", "x")
    ticked = desk.saved()
    back, problems = back_from(ticked, PLAN, "USD")
    assert back is not None, problems
    rest = rest_of(read_at(folder), back, TODAY).book
    new = writing.plan_files(rest)
    yield Case(
        "replan",
        {**own, **LEFT_BEHIND, **later, PLAN: ticked},
        {**own, **new, "plan-kept-1.xlsx": ticked},
        lambda where: _write_rest(where, rest, new, ticked),
        ticked,
    )


def _plan(folder: Path) -> PlanBook:
    book = chosen_plan(folder)
    assert isinstance(book, PlanBook)
    return book


@contextmanager
def _prepared(files: Files) -> Iterator[None]:
    with patch.object(writing, "plan_files", lambda _: dict(files)):
        yield


def _write_plan(folder: Path, book: PlanBook, files: Files) -> None:
    with _prepared(files):
        writing.write_plan(folder, book)


def _write_rest(folder: Path, book: PlanBook, files: Files, read: bytes) -> None:
    with _prepared(files):
        writing.write_replanned(folder, book, read)


def _street(folder: Path) -> Case:
    """Three houses planned once more, with another order of what matters in one of them."""
    write_street(folder)
    write_house(folder / "oak-lane", (40, 10), OVERLAPPING)
    earlier, _, _ = _planned_street(folder)
    write_street(folder)
    own = contents(folder)
    after, portfolio, found = _planned_street(folder)
    left = {f"{house.folder}/landlord.txt": LEFT_BEHIND["landlord.txt"] for house in portfolio.houses}
    return Case(
        "three houses",
        {**own, **left, **earlier},
        {**own, **after},
        lambda where: write_portfolio(where, portfolio, found),
        names=tuple(house.folder for house in portfolio.houses),
    )


def _planned_street(folder: Path) -> tuple[dict[str, bytes], Portfolio, Together]:
    """What the portfolio's writing adds to a folder, which is then as it was."""
    own = contents(folder)
    with only_plans():
        found = plan_street(folder)
    assert isinstance(found, Together)
    found = replace(found, made=tuple(replace(one, files=dict(writing.plan_files(one.book))) for one in found.made))
    portfolio = put_together(folder, read_street(folder), found, 60.0)
    write_portfolio(folder, portfolio, found)
    made = {name: data for name, data in contents(folder).items() if name not in own}
    for name in made:
        (folder / name).unlink()
    return made, portfolio, found


def same_ticks(case: Case, folder: Path, known: dict[bytes, dict[str, tuple[object, object]]]) -> bool:
    """Whether the workbook that is there now still says all that was ticked. `known`: what was read back before."""
    if case.ticks is None:
        return True
    now = (folder / PLAN).read_bytes()
    for data in (case.ticks, now):
        if data not in known:
            back, _ = back_from(data, PLAN, "USD")
            known[data] = said(back) if back is not None else {}
    return known[case.ticks].items() <= known[now].items() and bool(known[case.ticks])


def ticked_more(case: Case, name: str) -> bytes:
    """The workbook of that name with one thing more typed into it."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        desk = Desk(data=case.before[name])
        page = desk.page("Buy")
        head = next(cell for row in page.iter_rows(max_row=12) for cell in row if cell.value == "Paid in all")
        row = next(cell.row for cell in page["A"] if isinstance(cell.value, str) and ":" in cell.value)
        page.cell(row, head.column, 7)
        return desk.saved()


def clock() -> float:
    """Seconds, from some moment on."""
    return time.monotonic()
