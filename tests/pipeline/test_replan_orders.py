"""When what is still to be bought is ordered: not before the brief says, and how long it is under way."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from tests.pipeline.listed_job import Remedy, write_job
from tests.pipeline.ticked import TODAY, back, ids, plan_of, read_at, rest


def lamp(folder: Path, **brief: object) -> None:
    """A lamp that comes two days after its order; sessions on the third and on the twelfth of June."""
    remedies: list[Remedy] = [{"remedy": "lamp", "answers": {"f1": 1}, "uses": {"lamp": 1}, "hours": 1}]
    products = [{"product": "lamp", "name": "Lamp", "price": 30, "lead_days": 2}]
    hours = [{"date": day, "start": "09:00", "hours": 1} for day in ("2026-06-03", "2026-06-12")]
    write_job(folder, (100,), remedies, {"hours": hours, **brief}, {"products": products})


def test_no_order_before_the_day_that_the_brief_names(tmp_path: Path) -> None:
    """Ordered on the tenth, the lamp is there on the twelfth, also where the rest is planned on the first."""
    lamp(tmp_path, ordered="2026-06-10")
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job)), TODAY)
    assert (found.left.job.brief.ordered, [task.session for task in found.book.tasks]) == (date(2026, 6, 10), [2])
    assert rest(job, back(plan_of(job)), date(2026, 6, 11)).left.job.brief.ordered == date(2026, 6, 11)


def test_where_the_brief_names_no_day_it_is_the_day_of_replanning(tmp_path: Path) -> None:
    """A plan of the first that is planned on as of the day before orders on that day."""
    lamp(tmp_path)
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job)), date(2026, 5, 31))
    assert (found.left.job.brief.ordered, ids(found.book)) == (date(2026, 5, 31), ["lamp"])


def test_without_dates_days_of_waiting_count_from_their_own_order(tmp_path: Path) -> None:
    """A pad that is ordered in the third session comes in the fifth, and no earlier once it is said to be bought."""
    remedies: list[Remedy] = [
        {"remedy": "x", "answers": {"f1": 1}, "steps": [{"hours": 1}, {"hours": 1}, {"hours": 2}]},
        {"remedy": "b", "answers": {"f2": 1}, "uses": {"pad": 1}, "hours": 1},
    ]
    products = [{"product": "pad", "name": "Pad", "price": 10, "lead_days": 2}]
    write_job(tmp_path, (100, 90), remedies[:1], {"hours": [1, 1, 2, 2, 2, 2]}, {"products": products})
    told = back(plan_of(read_at(tmp_path)), done=("x#1", "x#2", "x#3"))
    write_job(tmp_path, (100, 90), remedies, {"hours": [1, 1, 2, 2, 2, 2]}, {"products": products})
    job = read_at(tmp_path)
    first = rest(job, told)
    assert [(task.candidate, task.session) for task in first.book.tasks] == [("b", 5)]
    again = rest(job, back(first.book, {"product:pad": "bought"}))
    assert [(task.candidate, task.session) for task in again.book.tasks] == [("b", 5)]
