"""A problem looked at once: days, crews, and how often hiring can be cheaper than buying."""

from __future__ import annotations

from dataclasses import replace

import pytest

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.problem import Instalment, Option, Problem, Session, Step, Tool


def hours(*starts: int) -> tuple[Session, ...]:
    """Sessions of an hour for ann and ben."""
    return tuple(Session(start, start + 60, (60, 60)) for start in starts)


def test_a_day_has_1440_minutes() -> None:
    """One minute to midnight is today, midnight is tomorrow; a week on as well."""
    facts = Facts.of(Problem((), people=("ann", "ben"), sessions=hours(0, 1439, 1440, 7 * 1440 - 1, 7 * 1440)))
    assert facts.days == (0, 0, 1, 6, 7)


def test_crews_with_and_without_a_helper() -> None:
    """Alone either of them, together both, a helper second; who bars it does not do it, and may still help."""
    facts = Facts.of(Problem((), people=("ann", "ben"), sessions=hours(0)))
    assert facts.crews(Step(10)) == ((0,), (1,))
    assert facts.crews(Step(10, help=1)) == ((0, 1), (1, 0))
    assert facts.crews(Step(10, help=5)) == ((0, 1), (1, 0))
    assert facts.crews(Step(10, 2)) == ((0, 1),)
    assert facts.crews(Step(10, barred=("ann",))) == ((1,),)
    assert facts.crews(Step(10, barred=("ann",), help=5)) == ((1, 0),)
    assert facts.crews(Step(10, help=5, no_help=("ann",))) == ((0, 1),)


def test_goods_of_which_phase_come_in_time() -> None:
    """Bought in the second phase they are there for the second session; in the first where nothing is ever in time."""
    options = (Option("rug", arrivals=(0, 1, 2)), Option("sofa", arrivals=(2, 2, 2)))
    money = (Instalment(50, 0), Instalment(90, 1), Instalment(None, 1))
    problem = Problem(options, people=("ann", "ben"), sessions=hours(0, 1440), phases=money)
    assert Facts.of(problem).last_phases == {"rug": 1, "sofa": 0}
    assert Facts.of(replace(problem, last_session=0)).last_phases == {"rug": 0, "sofa": 0}


def test_steps_are_long_where_they_fill_half_a_session_on_average() -> None:
    """Sessions of an hour: half an hour is not more than half, a minute more is; steps of no time do not count."""

    def long(*minutes: int) -> bool:
        option = Option("rug", steps=tuple(map(Step, minutes)))
        return Facts.of(Problem((option,), people=("ann", "ben"), sessions=hours(0, 1440))).long_steps

    assert not long(30)
    assert long(31)
    assert not long(59, 1)
    assert long(60, 1, 0)
    assert not long()


@pytest.mark.parametrize(
    ("tool", "most"),
    [
        (Tool("saw", hire_minor=30), 3),
        (Tool("saw", buy_minor=60), None),
        (Tool("saw", buy_minor=60, hire_minor=30), 1),  # a second session costs as much as buying
        (Tool("saw", buy_minor=61, hire_minor=30), 2),
        (Tool("saw", buy_minor=30, hire_minor=30), None),
        (Tool("saw", buy_minor=31, hire_minor=30), 1),
        (Tool("saw", buy_minor=0, hire_minor=0), None),
        (Tool("saw", buy_minor=1, hire_minor=0), 3),
        (Tool("saw", hire_minor=0), 3),
        (Tool("saw", buy_minor=60, hire_minor=30, prepaid=1), 2),
        (Tool("saw", prepaid=2), 2),
        (Tool("saw", owned=True, hire_minor=1), None),
    ],
)
def test_how_often_hiring_can_be_cheaper(tool: Tool, most: int | None) -> None:
    """No more sessions than there are, and none from which on buying costs no more; what is paid for comes on top."""
    option = Option("m", tools=("saw",), steps=(Step(10),))
    facts = Facts.of(Problem((option,), tools=(tool,), people=("ann", "ben"), sessions=hours(0, 1440, 2880)))
    assert facts.hirable == ({} if most is None else {"saw": most})
