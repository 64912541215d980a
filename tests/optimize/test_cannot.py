"""Options that no plan can hold, one reason each."""

from __future__ import annotations

import pytest

from budgetfix.optimize import impossible
from budgetfix.optimize.problem import Limit, Load, Option, Problem, Product, Session, Shop, Step, Tool

HOURS = (Session(0, 60, (60,)), Session(1440, 1500, (60,)))

CASES = [
    (Option("m", steps=(Step(61),)), "step-too-long"),
    (Option("m", steps=(Step(60),)), None),
    (Option("m", steps=(Step(10, 2),)), "too-few-people"),
    (Option("m", steps=(Step(10, barred=("1",)),)), "too-few-people"),
    (Option("m", steps=(Step(10), Step(10, wait_sessions=2))), "too-late"),
    (Option("m", steps=(Step(10),), first_session=2), "too-late"),
    (Option("m", steps=(Step(10, loud=True),)), None),
    (Option("m", steps=(Step(10),), first_session=1), None),
    (Option("m", tools=("lathe",)), "tool-not-to-be-had"),
    (Option("m", tools=("saw",)), None),
    (Option("m", cost_minor=1001), "over-budget"),
    (Option("m", cost_minor=1000), None),
    (Option("m", cost_minor=701, tools=("saw",)), "over-budget"),
    (Option("m", uses=(("tin", 5),)), "over-budget"),
    (Option("m", uses=(("tin", 4),)), None),
    (Option("m", spends=(("holes", 3),)), "over-limit"),
    (Option("m", uses=(("lid", 4),)), "not-enough-there"),
    (Option("m", uses=(("lid", 3),)), None),
    (Option("m", uses=(("vase", 1),)), "not-enough-there"),
    (Option("m", uses=(("bell", 2),)), "too-heavy"),
    (Option("m", uses=(("bell", 1),)), None),
    (Option("m", steps=(Step(10, wait_sessions=1),), first_session=1, last_session=0), "too-late"),
    (Option("m", needs=("gone",)), "needs-clash"),
    (Option("m", needs=("other",), excludes=("other",)), "needs-clash"),
    (Option("m", "wall", needs=("other",)), "needs-clash"),
    (Option("m", needs=("long",)), "step-too-long"),
    (Option("m", steps=(Step(0, loud=True),)), None),
    (Option("m", steps=(Step(10),), last_session=-1), "too-late"),
    (Option("m", first_session=2), "too-late"),
    (Option("m", steps=(Step(10), Step(10, wait_sessions=1))), None),
    (Option("m", spends=(("holes", 2),)), None),
    (Option("m", spends=(("pins", 3),)), None),
    (Option("m", cost_minor=700, tools=("saw",)), None),
    (Option("m", cost_minor=701, tools=("brush",)), None),
]


@pytest.mark.parametrize(("option", "reason"), CASES)
def test_reasons(option: Option, reason: str | None) -> None:
    """Each case is impossible for one reason, or just possible."""
    others = (
        Option("other", "wall", spends=(("pins", -1),)),
        Option("more", spends=(("pins", 1),)),
        Option("long", steps=(Step(90),)),
    )
    problem = Problem(
        (option, *others),
        products=(
            Product("tin", 400, 2, 0, "mill"),
            Product("lid", 1, 2, 1, most=1),
            Product("vase", 1, most=0),
            Product("bell", 1),
        ),
        tools=(Tool("saw", hire_minor=300), Tool("lathe"), Tool("brush", owned=True)),
        shops=(Shop("mill", 150, None, 1, 20),),
        limits=(Limit("holes", 2), Limit("pins", 2)),
        loads=(Load("out", 100, (("bell", 60),)),),
        sessions=HOURS,
        budget_minor=1000,
    )
    assert impossible(problem).get("m") == reason
    assert impossible(problem)["long"] == "step-too-long"


def test_free_delivery_does_not_forbid_too_much() -> None:
    """Goods of 900 with delivery of 200 are above 1000 alone, yet together with 50 more delivery is free."""
    options = (Option("m", uses=(("tin", 1),)), Option("n", uses=(("lid", 1),)))
    problem = Problem(
        options,
        products=(Product("tin", 900, shop="mill"), Product("lid", 50, shop="mill")),
        shops=(Shop("mill", 200, 950),),
        budget_minor=1000,
    )
    assert impossible(problem) == {}


def test_what_is_too_loud_for_every_session() -> None:
    """One session is quiet, the other too short: nobody can drill for an hour, but sweep they can."""
    hours = (Session(0, 60, (60,), quiet=True), Session(1440, 1470, (30,)))
    options = (Option("drill", steps=(Step(60, loud=True),)), Option("sweep", steps=(Step(60),)))
    assert impossible(Problem(options, sessions=hours)) == {"drill": "too-loud"}


def test_delivery_that_is_free_is_not_taken_off_again() -> None:
    """Two tins of 475 reach the threshold of 950 and have no delivery: 950 are over a budget of 900."""
    problem = Problem(
        (Option("m", uses=(("tin", 2),)),),
        products=(Product("tin", 475, shop="mill"),),
        shops=(Shop("mill", 200, 950),),
        budget_minor=900,
    )
    assert impossible(problem) == {"m": "over-budget"}
