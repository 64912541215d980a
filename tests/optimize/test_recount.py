"""Money, packs and promises counted again, by hand-made examples."""

from __future__ import annotations

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.problem import Option, Placed, Problem, Product, Session, Shop, Step, Tool
from budgetfix.optimize.recount import Bill, bill, broken, delivery_and_tax, minutes_of


def test_tax_is_half_up_and_delivery_free_from_the_threshold() -> None:
    """8.25 % of 6.00 is 49.5 cents, half up 50; at 60.00 delivery is free."""
    shop = Shop("mill", 590, 6000, 33, 400)
    assert delivery_and_tax(shop, 600) == 50 + 590
    assert delivery_and_tax(shop, 599) == 49 + 590
    assert delivery_and_tax(shop, 6000) == 495
    assert delivery_and_tax(shop, 5999) == 495 + 590


def test_a_bill_with_everything() -> None:
    """Packs less what is on hand, a bought and a hired tool, one order."""
    options = (Option("a", uses=(("tin", 4),), tools=("drill", "saw"), steps=(Step(10),)), Option("b", cost_minor=5))
    problem = Problem(
        options,
        products=(Product("tin", 100, 2, 1, "mill"),),
        tools=(Tool("drill", buy_minor=40, hire_minor=40), Tool("saw", buy_minor=99, hire_minor=30)),
        shops=(Shop("mill", 7),),
        sessions=(Session(0, 60, (60,)),),
    )
    placed = (Placed("a", 0, 0, ("1",)),)
    found = bill(Facts.of(problem), ("b", "a"), placed)
    assert found == Bill((("tin", 2),), ("drill",), (("saw", 1),), 5 + 200 + 7 + 40 + 30)
    assert minutes_of(Facts.of(problem), ("a", "b")) == 10


def test_broken_promises_are_named() -> None:
    """A need left out, a session too full, a step too early: each is said."""
    options = (Option("a", needs=("b",), steps=(Step(40), Step(40, wait_sessions=1))), Option("b", steps=(Step(10),)))
    facts = Facts.of(Problem(options, sessions=(Session(0, 60, (60,)), Session(1440, 1500, (60,)))))
    placed = (Placed("a", 0, 0, ("1",)), Placed("a", 1, 0, ("1",)))
    assert broken(facts, ("a",), placed) == ("a needs b", "1 works too long in 0", "a step 1 comes too early")
    late = (Placed("a", 0, 0, ("1",)), Placed("a", 1, 1, ("1",)), Placed("b", 0, 1, ("1",)))
    assert broken(facts, ("a", "b"), late) == ("a step 0 comes too early",)
