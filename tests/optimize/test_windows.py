"""The sessions in which steps can stand: by hand, over a day of two sessions and the next morning."""

from __future__ import annotations

from budgetfix.optimize.cannot import impossible
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.problem import Option, Problem, Session, Step
from budgetfix.optimize.windows import windows

HOURS = (Session(540, 600, (60, 60)), Session(840, 900, (60, 60)), Session(1980, 2040, (60, 60)))
ANN, BEN = Step(10, barred=("ben",)), Step(10, barred=("ann",))


def found(*options: Option) -> dict[tuple[str, int], tuple[int, int]]:
    """Windows of a job of ann and ben."""
    return windows(Facts.of(Problem(options, sessions=HOURS, people=("ann", "ben"))))


def test_hands_change_with_the_session() -> None:
    """Ann begins and Ben goes on: a later session for him, and the same one for what he does next, all on one day."""
    within = found(Option("m", steps=(ANN, BEN, BEN), one_day=True))
    assert [first for first, _ in within.values()] == [0, 1, 1]
    assert [last for _, last in within.values()] == [1, 1, 1]
    assert found(Option("m", steps=(ANN, BEN, BEN)))[("m", 0)] == (0, 1)


def test_three_changes_take_three_sessions() -> None:
    """Ann, Ben, Ann: three sessions, so never within a day of two."""
    assert found(Option("m", steps=(ANN, BEN, ANN))) == {("m", 0): (0, 0), ("m", 1): (1, 1), ("m", 2): (2, 2)}
    assert found(Option("m", steps=(ANN, BEN, ANN), one_day=True)) == {("m", at): (3, -1) for at in range(3)}


def test_what_takes_no_time_is_never_too_long() -> None:
    """Setting up takes longer than any session: an hour's work is too long for it, work of no minutes is not."""
    options = (Option("all", steps=(Step(60),)), Option("none", steps=(Step(0),)))
    problem = Problem(options, sessions=HOURS, people=("ann", "ben"), setup_minutes=70)
    assert impossible(problem) == {"all": "step-too-long"}
