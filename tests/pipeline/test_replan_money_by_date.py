"""The rest of a job whose money comes by date: what has come is one sum, less what was paid; the rest still comes."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from budgetfix.brief.incomes import Income
from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline.rest_money import incomes_left
from tests.pipeline.listed_job import Remedy, write_job
from tests.pipeline.test_money_by_date import MONTHLY, POINTS, TWO_DAYS, WANTS
from tests.pipeline.ticked import TODAY, back, everything, ids, plan_of, read_at, rest

LATER = date(2026, 6, 8)


def days(book: PlanBook) -> list[tuple[date | None, int, int]]:
    """(day, there, spent by then) of the money of a book."""
    return [(one.on, one.there_minor, one.spent_minor) for one in book.purses]


def test_nothing_ticked_is_the_same_plan(tmp_path: Path) -> None:
    """On the day of the plan, with nothing said, all is as planned, day by day."""
    write_job(tmp_path, POINTS, WANTS, {"money": MONTHLY, "hours": TWO_DAYS})
    job = read_at(tmp_path)
    book = plan_of(job)
    again = rest(job, back(book))
    assert (ids(again.book), days(again.book)) == (ids(book), days(book))


def test_what_has_come_less_what_was_paid(tmp_path: Path) -> None:
    """June's lamp is bought and up: 90.00 of June are left, and the rug still waits for July's 150.00."""
    write_job(tmp_path, POINTS, WANTS, {"money": MONTHLY, "hours": TWO_DAYS})
    job = read_at(tmp_path)
    told = back(plan_of(job), {"remedy:lamp": "bought"}, done=("lamp#1",))
    found = rest(job, told, LATER)
    assert found.left.job.brief.incomes == (Income(9000, LATER), Income(15000, date(2026, 7, 1)))
    assert (found.book.budget_minor, ids(found.book)) == (24000, ["rug"])
    assert days(found.book) == [(LATER, 9000, 0), (date(2026, 7, 1), 24000, 20000)]


def test_a_lamp_that_was_dearer_leaves_too_little(tmp_path: Path) -> None:
    """120.00 for the lamp: 30.00 and July's 150.00 do not pay the rug; the hooks of 50.00 come instead."""
    write_job(tmp_path, POINTS, WANTS, {"money": MONTHLY, "hours": TWO_DAYS})
    job = read_at(tmp_path)
    told = back(plan_of(job), {"remedy:lamp": "bought"}, {"remedy:lamp": 12000}, done=("lamp#1",))
    found = rest(job, told, LATER)
    assert ids(found.book) == ["hooks"]
    assert days(found.book)[-1] == (date(2026, 7, 1), 18000, 5000)


def test_all_done_leaves_nothing(tmp_path: Path) -> None:
    """Everything bought and done on the last day: nothing is left to do, and 40.00 over."""
    write_job(tmp_path, POINTS, WANTS, {"money": MONTHLY, "hours": TWO_DAYS})
    job = read_at(tmp_path)
    found = rest(job, everything(plan_of(job)), date(2026, 7, 4))
    assert (ids(found.book), found.book.spent_minor, found.book.budget_minor) == ([], 0, 4000)


def test_sessions_without_dates(tmp_path: Path) -> None:
    """In the second session both sums have come; what was paid comes off them."""
    money = [{"session": 1, "amount": 150}, {"session": 2, "amount": 150}]
    write_job(tmp_path, POINTS, WANTS, {"money": money, "hours": [3, 3]})
    job = read_at(tmp_path)
    paid = rest(job, back(plan_of(job), {"remedy:lamp": "bought"}, done=("lamp#1",)), TODAY).left.paid
    assert incomes_left(job.brief, paid, TODAY, 0) == (Income(9000, session=1), Income(15000, session=2))
    assert incomes_left(job.brief, paid, TODAY, 1) == (Income(24000, session=2),)


def two_wants(folder: Path, **brief: object) -> None:
    """Want a for 25.00, b for 20.00; 50.00 on 1 June and 50.00 on 1 July, 10% held back; sessions in June and July."""
    wants = [
        {"remedy": id, "answers": {f"f{at}": 1}, "cost": cost, "hours": 1}
        for at, (id, cost) in enumerate((("a", 25), ("b", 20)), 1)
    ]
    money = [{"date": "2026-06-01", "amount": 50}, {"date": "2026-07-01", "amount": 50}]
    hours = [{"date": on, "hours": 1} for on in ("2026-06-08", "2026-06-16", "2026-07-16")]
    write_job(folder, (100, 90), wants, {"money": money, "contingency": "10%", "hours": hours, **brief})


def sessions_of(book: PlanBook) -> list[tuple[str, int | None]]:
    """(remedy, session) of the steps."""
    return [(one.candidate, one.session) for one in book.tasks]


def test_of_each_sum_is_held_back_what_the_plan_held_back(tmp_path: Path) -> None:
    """Want a is paid as planned: 5.00 of June's sum stay held back, 20.00 are there for b, which stays in June."""
    two_wants(tmp_path)
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job), {"remedy:a": "bought"}, done=("a#1",)), date(2026, 6, 8))
    assert sessions_of(found.book) == [("b", 2)]
    assert (found.book.held_back_minor, days(found.book)[0]) == (1000, (date(2026, 6, 8), 2000, 2000))
    again = rest(job, back(found.book), date(2026, 6, 8))
    assert (sessions_of(again.book), days(again.book)) == (sessions_of(found.book), days(found.book))


def test_what_was_overpaid_comes_off_what_is_held_back(tmp_path: Path) -> None:
    """4.00 above plan: 1.00 of June's 5.00 is left to hold back; 6.00 above: nothing, and b waits for July."""
    two_wants(tmp_path)
    job = read_at(tmp_path)
    book = plan_of(job)
    dear = rest(job, back(book, paid={"remedy:a": 2900}, done=("a#1",)), date(2026, 6, 8))
    assert (sessions_of(dear.book), dear.book.held_back_minor) == ([("b", 2)], 600)
    dearer = rest(job, back(book, paid={"remedy:a": 3100}, done=("a#1",)), date(2026, 6, 8))
    assert (sessions_of(dearer.book), dearer.book.held_back_minor) == ([("b", 3)], 400)


def test_hire_in_use_is_for_its_own_session(tmp_path: Path) -> None:
    """June's session of hire is over with its hours: July's is paid from July's money."""
    remedies: list[Remedy] = [
        {"remedy": id, "answers": {f"f{at}": 1}, "hours": 1, "tools": ["saw"]} for at, id in enumerate("ab", 1)
    ]
    tools = [{"tool": "saw", "name": "Saw", "hire_per_session": 10}]
    money = [{"date": "2026-06-01", "amount": 10}, {"date": "2026-07-01", "amount": 10}]
    hours = [{"date": f"2026-{month}-06", "start": "09:00", "hours": 2} for month in ("06", "07")]
    write_job(tmp_path, (100, 90), remedies, {"money": money, "hours": hours, "learn": False}, {"tools": tools})
    job = read_at(tmp_path)
    told = back(plan_of(job), {"hire:Hire: Saw": "bought"}, done=("a#1",), minutes={"a#1": 120})
    found = rest(job, told, date(2026, 6, 6))
    assert [(line.name, line.line_minor, line.buy_on) for line in found.book.money] == [
        ("Hire: Saw", 1000, date(2026, 7, 1))
    ]
    quick = back(plan_of(job), {"hire:Hire: Saw": "bought"}, done=("a#1",))
    assert rest(job, quick, date(2026, 6, 6)).book.money == ()
