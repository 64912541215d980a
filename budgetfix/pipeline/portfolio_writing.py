"""From jobs planned together to one portfolio, written with all their files or not at all."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from budgetfix.exports.files import write_whole
from budgetfix.exports.portfolio_book import portfolio_book
from budgetfix.exports.portfolio_csv import portfolio_csv
from budgetfix.intake.earlier import outdated
from budgetfix.intake.job import Job
from budgetfix.intake.kept import as_it_is
from budgetfix.intake.plan_ticks import altered
from budgetfix.optimize.sharing import Shared
from budgetfix.optimize.stock import Stock, conflicts
from budgetfix.outcome.portfolio import House, Portfolio, house_name, house_names
from budgetfix.pipeline.portfolio import Group, Together
from budgetfix.pipeline.standing import Holding, pieces, runs, stay_of, undated
from budgetfix.pipeline.writing import PLAN, Touched, refuse_gone, refuse_open, refuse_touched

BOOK, TABLE = "portfolio.xlsx", "portfolio.csv"
HAZARDS = 2
"""Entries of what jobs leave that come before points (`seat.left_by`)."""


class StandsTwice(Exception):
    """A piece would stand in two houses on one day: our fault, never the user's."""


def refuse_any_touched(folder: Path, names: Sequence[str]) -> None:
    """Errors: Touched for the first plan that holds ticks, or a portfolio that somebody typed into."""
    for name in names:
        refuse_touched(folder / name)
    if (folder / BOOK).exists() and altered(folder / BOOK):
        raise Touched(str(folder / BOOK))


def refuse_any_open(folder: Path, names: Sequence[str]) -> None:
    """Errors: OpenElsewhere for the first workbook that another program has open."""
    for book in _books(folder, names):
        refuse_open(book)


def _books(folder: Path, names: Sequence[str]) -> tuple[Path, ...]:
    return (*(folder / name / PLAN for name in names), folder / BOOK)


def put_together(folder: Path, jobs: Sequence[Job], found: Together, seconds: float) -> Portfolio:
    """The portfolio as all outputs show it. Errors: StandsTwice."""
    names = house_names([job.name for job in jobs])
    alone, held = _alone(found), _held(jobs, found)
    holdings = [Holding(names[at], job, held[at], alone[at], found.chosen[at].ceilings) for at, job in enumerate(jobs)]
    _stands_once(holdings)
    houses = tuple(
        House(
            job.name,
            name,
            made.book,
            tuple(str(folder / job.name / file) for file in made.files),
            job.brief.stay.first if job.brief.stay is not None else None,
            job.brief.stay.until if job.brief.stay is not None else None,
            _stock(job),
        )
        for job, name, made in zip(jobs, names, found.made, strict=True)
    )
    return Portfolio(
        name=house_name(folder.resolve().name),
        folder=str(folder),
        currency=jobs[0].brief.currency,
        ordered=max((job.brief.ordered for job in jobs if job.brief.ordered is not None), default=None),
        houses=houses,
        pieces=pieces(_by_catalog(holdings)),
        runs=runs(holdings),
        proven=all(shared.proven for _, shared in found.groups) and all(one.book.proven for one in found.made),
        bound=sum(_bound(jobs, group, shared, found) for group, shared in found.groups),
        seconds_limit=seconds,
        files=(str(folder / BOOK), str(folder / TABLE)),
        notes=tuple(note for one in holdings for note in undated(one)),
    )


def _stock(job: Job) -> tuple[str, ...]:
    return tuple(one.product for one in job.catalog.products if one.stock is not None)


def _held(jobs: Sequence[Job], found: Together) -> list[tuple[tuple[str, int], ...]]:
    """The packs from stock that each job's lists say, by piece: not what the search claims."""
    stock = [_stock(job) for job in jobs]
    return [
        tuple(
            sorted(
                (line.product, line.packs)
                for line in made.book.money
                if line.kind == "product" and line.product in mine and line.packs
            )
        )
        for made, mine in zip(found.made, stock, strict=True)
    ]


def _alone(found: Together) -> dict[int, tuple[tuple[str, int], ...]]:
    """By place of the job, what it would hold if it were the only one."""
    return {at: held for group, shared in found.groups for at, held in zip(group.places, shared.alone, strict=True)}


def _by_catalog(holdings: Sequence[Holding]) -> dict[str, list[Holding]]:
    """Jobs with a stock, by the file that it stands in."""
    found: dict[str, list[Holding]] = {}
    for one in holdings:
        if any(product.stock is not None for product in one.job.catalog.products):
            found.setdefault(one.job.catalog_file, []).append(one)
    return found


def _stands_once(holdings: Sequence[Holding]) -> None:
    """Counted again, day by day, from the lists themselves. Errors: StandsTwice."""
    for mine in _by_catalog(holdings).values():
        packs = {one.product: one.stock for one in mine[0].job.catalog.products if one.stock is not None}
        clash = conflicts(Stock(packs, tuple(stay_of(one.job) for one in mine)), [one.held for one in mine])
        if clash:
            raise StandsTwice(f"{clash[0].piece}: {', '.join(mine[at].house for at in clash[0].jobs)}")


def _bound(jobs: Sequence[Job], group: Group, shared: Shared, found: Together) -> int:
    """The least proven ceiling on the improvement of the jobs of a group."""
    books = [found.made[at].book for at in group.places]
    improvement = sum(one.improvement for one in books)
    if shared.proven:
        return improvement
    if len(books) == 1:
        return books[0].bound
    points = sum(one.points_before for one in books)
    same = shared.floor[:HAZARDS] == shared.left[:HAZARDS] and all(jobs[at].brief.hazards_first for at in group.places)
    return max(improvement, points - shared.floor[HAZARDS]) if same else max(improvement, points)


def write_portfolio(folder: Path, portfolio: Portfolio, found: Together) -> None:
    """All files of all jobs and those of the portfolio, or none.

    Errors: Touched, OpenElsewhere, also where that came about just now; Busy, ChangedMeanwhile, OSError, HalfMoved.
    """
    names = [house.folder for house in portfolio.houses]
    seen = [as_it_is(book) for book in _books(folder, names)]
    refuse_any_touched(folder, names)
    files = {
        f"{name}/{file}": data
        for name, made in zip(names, found.made, strict=True)
        for file, data in made.files.items()
    }
    old = [
        f"{name}/{file}"
        for name, made in zip(names, found.made, strict=True)
        for file in outdated(folder / name, made.files)
    ]

    def check() -> None:
        refuse_any_open(folder, names)
        if [as_it_is(book) for book in _books(folder, names)] != seen:
            refuse_any_touched(folder, names)

    for name in names:
        refuse_gone(folder / name)
    write_whole(folder, {**files, BOOK: portfolio_book(portfolio), TABLE: portfolio_csv(portfolio)}, old, check)
