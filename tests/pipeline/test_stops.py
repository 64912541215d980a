"""The slider's stops: each is a plan of its own, checked, with lists that add up to its figures."""

from __future__ import annotations

from budgetfix.pipeline.stops import stops
from tests.scenarios import EACH, run


@EACH
def test_each_stop_adds_up(name: str) -> None:
    """Money, minutes and points of its lists are those of its figures; one stop is the book's own plan."""
    book = run(name).book
    assert [stop.this_one for stop in book.stops].count(True) == 1
    spends = [stop.sums.spent_minor for stop in book.stops]
    assert spends == sorted(set(spends))
    for stop in book.stops:
        assert sum(line.line_minor for line in stop.money) == stop.sums.spent_minor
        assert sum(task.minutes * task.people for task in stop.tasks) == stop.sums.minutes
        left = sum(row.points_after for row in stop.faults if not row.safety)
        assert book.points_before - left == stop.sums.improvement
        assert sum(row.points_after for row in stop.faults if row.safety) == stop.hazard_points_after
        names = {task.candidate for task in stop.tasks if not task.candidate.startswith("errand:")}
        assert names == set(stop.sums.chosen)


@EACH
def test_the_stops_are_the_rows_of_what_more_buys(name: str) -> None:
    """The slider and the workbook speak of the same plans."""
    book = run(name).book
    assert [(stop.sums.spent_minor, stop.sums.improvement, stop.this_one) for stop in book.stops] == [
        (row.spent_minor, row.improvement, row.this_one) for row in book.more
    ]
    own = next(stop for stop in book.stops if stop.this_one)
    assert (own.money, own.tasks, own.sessions, own.faults) == (book.money, book.tasks, book.sessions, book.faults)
    assert stops.__doc__
