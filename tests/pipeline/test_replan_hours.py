"""Hours after the plan: twice as long, a session missed, waits on what is done, hours of the whole job."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from budgetfix.outcome.since import Fact
from tests.pipeline.listed_job import Remedy, write_job
from tests.pipeline.ticked import back, everything, ids, plan_of, read_at, rest

SATURDAYS = ("2026-06-06", "2026-06-13", "2026-06-20")


def work(folder: Path, hours: object, minutes: tuple[int, ...] = (60, 60, 60), **brief: object) -> None:
    """Remedies m1, m2, ... of so many minutes each; the first does most."""
    remedies: list[Remedy] = [
        {"remedy": f"m{at}", "name": f"Job {at}", "answers": {f"f{at}": 1}, "hours": long / 60}
        for at, long in enumerate(minutes, 1)
    ]
    write_job(folder, [100 - 10 * at for at in range(len(minutes))], remedies, {"hours": hours, **brief})


def dated(hours: float, count: int = 3) -> list[dict[str, object]]:
    """So many Saturdays, from nine."""
    return [{"date": day, "start": "09:00", "hours": hours} for day in SATURDAYS[:count]]


def sessions(book: object) -> dict[str, int | None]:
    """The session of each task, by candidate."""
    return {task.candidate: task.session for task in book.tasks}  # type: ignore[attr-defined]


def test_two_that_took_longer_are_no_time_for_the_last(tmp_path: Path) -> None:
    """Neither 40 nor 30 minutes more is the one reason, but hours it is; real minutes that teach are a fact, too."""
    for learn, facts in ((False, ["longer", "longer"]), (True, ["longer", "longer", "pace"])):
        work(tmp_path, [4], (60, 60, 120), learn=learn)
        job = read_at(tmp_path)
        found = rest(job, back(plan_of(job), done=("m1#1", "m2#1"), minutes={"m1#1": 100, "m2#1": 90}))
        assert ids(found.book) == []
        assert [(one.names, one.why) for one in found.since.off] == [(("Job 3",), Fact("no time"))]
        assert [fact.kind for fact in found.since.facts] == facts


def test_what_the_last_plan_knew_is_no_reason_any_more(tmp_path: Path) -> None:
    """Job 1 took longer, so job 3 fell off; a week later a missed Saturday is why job 2 does, and job 1 is not told."""
    work(tmp_path, dated(1, 3), learn=False)
    job = read_at(tmp_path)
    first = rest(job, back(plan_of(job), done=("m1#1",), minutes={"m1#1": 90}), date(2026, 6, 13))
    assert [fact.kind for fact in first.since.facts] == ["longer"]
    again = rest(job, back(first.book), date(2026, 6, 13))
    assert again.since.facts == ()
    assert again.book.remembered == first.book.remembered
    later = rest(job, back(first.book), date(2026, 6, 21))
    assert {fact.kind for fact in later.since.facts} <= {"gone", "late"}
    assert {one.why for one in later.since.off} <= {*later.since.facts, Fact("no time")}
    assert later.since.off


def test_minutes_of_help_count_on_both_sides(tmp_path: Path) -> None:
    """An hour with 15 minutes of help that took an hour is 75 person-minutes as planned; ten minutes take ten of it."""
    steps = [{"hours": 1, "help": 15}]
    remedies: list[Remedy] = [{"remedy": f"m{at}", "answers": {f"f{at}": 1}, "steps": steps} for at in (1, 2)]
    hours = [{"date": "2026-06-06", "people": {"ann": 4, "ben": 2}}]
    write_job(tmp_path, (100, 90), remedies, {"people": {"ann": None, "ben": None}, "hours": hours})
    job = read_at(tmp_path)
    for real, took in ((60, 75), (90, 105), (10, 20)):
        found = rest(job, back(plan_of(job), done=("m1#1",), minutes={"m1#1": real}), date(2026, 6, 6))
        assert (found.since.took_minutes, found.since.planned_minutes) == (took, 75)


def test_twice_as_long(tmp_path: Path) -> None:
    """In three hours there were three jobs; the first took two of them, so the last falls off, and that is why."""
    work(tmp_path, [3], learn=False)
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job), done=("m1#1",), minutes={"m1#1": 120}))
    assert ids(found.book) == ["m2"]
    assert [row.minutes_available for row in found.book.sessions or ()] == [60]
    assert [(one.names, one.why) for one in found.since.off] == [(("Job 3",), Fact("longer", "Job 1", 60))]
    assert (found.since.took_minutes, found.since.planned_minutes) == (120, 60)


def test_a_session_missed_by_its_date(tmp_path: Path) -> None:
    """Two Saturdays of two hours; on the second one nothing is done yet, so one job has no place any more."""
    work(tmp_path, dated(2, 2))
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job)), date(2026, 6, 13))
    assert ids(found.book) == ["m1", "m2"]
    assert set(sessions(found.book).values()) == {2}
    assert [(row.minutes_available, row.gone) for row in found.book.sessions or ()] == [(0, True), (120, False)]
    assert [(one.names, one.why and one.why.kind) for one in found.since.off] == [(("Job 3",), "gone")]


def test_a_session_missed_without_dates(tmp_path: Path) -> None:
    """Something was done in the second session, so the first is over, whatever was not done in it."""
    work(tmp_path, [1, 1, 1])
    job = read_at(tmp_path)
    book = plan_of(job)
    second = next(task for task in book.tasks if task.session == 2)
    found = rest(job, back(book, done=(f"{second.candidate}#1",)))
    assert (found.left.rest.live, len(found.book.tasks)) == (1, 1)
    assert sessions(found.book) == {"m1": 3}


def test_every_session_is_over(tmp_path: Path) -> None:
    """What takes no time is still planned, and it is said that every session is over."""
    write_job(
        tmp_path,
        (100, 50),
        [{"remedy": "m1", "answers": {"f1": 1}, "hours": 1}, {"remedy": "m2", "answers": {"f2": 1}, "cost": 5}],
        {"hours": dated(1, 1), "budget": 20},
    )
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job)), date(2026, 7, 1))
    assert (ids(found.book), found.since.sessions_left) == (["m2"], 0)


def test_the_day_itself_is_not_over(tmp_path: Path) -> None:
    """On the morning of a session it is still there."""
    work(tmp_path, dated(3, 1))
    job = read_at(tmp_path)
    assert ids(rest(job, back(plan_of(job)), date(2026, 6, 6)).book) == ["m1", "m2", "m3"]
    assert ids(rest(job, back(plan_of(job)), date(2026, 6, 7)).book) == []


def test_hours_are_those_of_the_whole_job(tmp_path: Path) -> None:
    """The list of hours is read as it was, sessions keep their numbers, and what is done comes off its own session."""
    work(tmp_path, dated(2))
    job = read_at(tmp_path)
    book = plan_of(job)
    assert sessions(book) == {"m1": 1, "m2": 1, "m3": 2}
    found = rest(job, back(book, done=("m1#1",)), date(2026, 6, 6))
    assert [row.minutes_available for row in found.book.sessions or ()] == [60, 120, 120]
    assert sessions(found.book) == {"m2": 1, "m3": 2}


@pytest.mark.parametrize(("wait", "day", "session"), [(20, 6, 2), (24 * 8, 6, 3), (24 * 8, 13, 3), (24 * 9, 20, 3)])
def test_a_wait_counts_from_the_step_that_is_done(tmp_path: Path, wait: int, day: int, session: int) -> None:
    """Filler that dries for so many hours, put on on the first Saturday: whether that one is over or not."""
    steps: list[Remedy] = [{"hours": 1}, {"hours": 1, "wait_hours": wait}]
    write_job(tmp_path, (100,), [{"remedy": "m1", "answers": {"f1": 1}, "steps": steps}], {"hours": dated(2)})
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job), done=("m1#1",)), date(2026, 6, day))
    assert sessions(found.book) == {"m1": session}
    assert [(task.step, task.steps) for task in found.book.tasks] == [(2, 2)]


def test_a_wait_on_what_is_needed_counts_as_well(tmp_path: Path) -> None:
    """The second remedy needs the first, which is done, and waits a session for it."""
    remedies: list[Remedy] = [
        {"remedy": "m1", "answers": {"f1": 1}, "hours": 1},
        {"remedy": "m2", "answers": {"f2": 1}, "steps": [{"hours": 1, "wait_sessions": 1}], "needs": ["m1"]},
    ]
    write_job(tmp_path, (100, 50), remedies, {"hours": [3, 3]})
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job), done=("m1#1",)))
    assert sessions(found.book) == {"m2": 2}


def test_what_is_begun_must_be_ended(tmp_path: Path) -> None:
    """Half of a remedy is done: the other half is in the plan, even where something else would do more."""
    remedies: list[Remedy] = [
        {"remedy": "m1", "answers": {"f1": 1}, "steps": [{"hours": 1}, {"hours": 1}]},
        {"remedy": "m2", "answers": {"f2": 1}, "hours": 1},
    ]
    write_job(tmp_path, (60, 100), remedies, {"hours": [1, 1, 1]})
    job = read_at(tmp_path)
    book = plan_of(job)
    assert ids(book) == ["m1", "m2"]
    found = rest(job, back(book, done=("m1#1",), minutes={"m1#1": 60}))
    assert "m1" in ids(found.book)


def test_what_is_begun_and_cannot_be_ended_is_told(tmp_path: Path) -> None:
    """There is no session for its second half: the rest is planned without it."""
    steps = [{"hours": 1}, {"hours": 1}]
    write_job(
        tmp_path, (60,), [{"remedy": "m1", "name": "Paint", "answers": {"f1": 1}, "steps": steps}], {"hours": [1, 1]}
    )
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job), done=("m1#2",)))
    assert (ids(found.book), found.since.unended) == ([], ("Paint",))


def test_no_limit_of_hours(tmp_path: Path) -> None:
    """Without a list of hours nothing is over, and what is left is planned as before."""
    work(tmp_path, None)
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job), done=("m2#1",), minutes={"m2#1": 500}), date(2027, 1, 1))
    assert (ids(found.book), found.book.sessions) == (["m1", "m3"], None)


def test_finish_by_counts_sessions_of_the_whole_job(tmp_path: Path) -> None:
    """The second session is the last that may be used, also where the first is over."""
    work(tmp_path, dated(1), finish_by=2)
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job)), date(2026, 6, 13))
    assert sessions(found.book) == {"m1": 2}


def test_everything_done_leaves_nothing(tmp_path: Path) -> None:
    """An empty plan: nothing to do, nothing to buy, nothing to gain, and that is proven."""
    work(tmp_path, [2, 2])
    job = read_at(tmp_path)
    book = plan_of(job)
    found = rest(job, everything(book)).book
    assert (found.chosen, found.money, found.improvement, found.proven) == ((), (), 0, True)
    assert found.points_before == book.points_after


def test_every_stop_of_the_slider_numbers_its_steps_alike(tmp_path: Path) -> None:
    """What is left of a begun remedy is its second step in each of the plans for other sums of money."""
    steps = [{"hours": 1}, {"hours": 1}]
    remedies: list[Remedy] = [
        {"remedy": "m1", "answers": {"f1": 1}, "steps": steps},
        {"remedy": "m2", "answers": {"f2": 1}, "hours": 1, "cost": 10},
    ]
    write_job(tmp_path, (100, 50), remedies, {"hours": [3, 3], "budget": 20})
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job), done=("m1#1",))).book
    assert len(found.stops) == 2
    for stop in found.stops:
        assert [(task.step, task.steps) for task in stop.tasks if task.candidate == "m1"] == [(2, 2)]


def test_a_step_ticked_out_of_order(tmp_path: Path) -> None:
    """Only the second of three steps is ticked: the first may be done at once, the third waits for the second."""
    steps: list[dict[str, object]] = [{"hours": 1}, {"hours": 1, "wait_sessions": 1}, {"hours": 1, "wait_sessions": 1}]
    remedies: list[Remedy] = [{"remedy": "a", "answers": {"f1": 1}, "steps": steps}]
    write_job(tmp_path, (100,), remedies, {"hours": dated(1), "ordered": "2026-06-01"})
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job), done=("a#2",)))
    assert [(task.step, task.session) for task in found.book.tasks] == [(1, 1), (3, 3)]
    assert found.left.rest.earliest == (("a", 1, 2),)


def test_of_the_hours_that_are_left_the_load_holds(tmp_path: Path) -> None:
    """Two hours at three quarters are 90 minutes: after a real hour 45 are left; after 45 planned minutes, 45, too."""
    work(tmp_path, dated(2, 1), (45, 45), load=0.75, learn=False)
    job = read_at(tmp_path)
    book = plan_of(job)
    real = rest(job, back(book, done=("m1#1",), minutes={"m1#1": 60}))
    assert ([row.minutes_available for row in real.book.sessions or ()], ids(real.book)) == ([45], ["m2"])
    assert [one.typed_minutes for one in real.left.job.brief.hours or ()] == [(60,)]
    assert [row.minutes_available for row in rest(job, back(book, done=("m1#1",))).book.sessions or ()] == [45]
