"""Money, packs and promises counted again, by hand-made examples."""

from __future__ import annotations

import pytest

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.problem import Limit, Load, Option, Placed, Problem, Product, Session, Shop, Step, Tool
from budgetfix.optimize.recount import (
    Bill,
    SolverDisagrees,
    bill,
    broken,
    charged,
    choice_broken,
    delivery_and_tax,
    goods_minor,
    minutes_of,
    tool_choices,
    tools_minor,
)


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


@pytest.mark.parametrize(
    ("tool", "sessions", "found"),
    [
        (Tool("saw", buy_minor=60, hire_minor=30), 2, (("saw",), ())),  # equal prices: bought
        (Tool("saw", buy_minor=61, hire_minor=30), 2, ((), (("saw", 2),))),
        (Tool("saw", buy_minor=59, hire_minor=30), 2, (("saw",), ())),
        (Tool("saw", buy_minor=60, hire_minor=30), 0, ((), (("saw", 1),))),  # hired for one session at least
        (Tool("saw", hire_minor=30), 3, ((), (("saw", 3),))),
        (Tool("saw", buy_minor=0, hire_minor=0), 1, (("saw",), ())),
        (Tool("saw", hire_minor=30, prepaid=2), 3, ((), (("saw", 1),))),
        (Tool("saw", hire_minor=30, prepaid=2), 2, ((), ())),
        (Tool("saw", buy_minor=90, prepaid=1), 2, (("saw",), ())),
        (Tool("saw", owned=True), 2, ((), ())),
    ],
)
def test_a_tool_is_had_the_cheaper_way(tool: Tool, sessions: int, found: tuple[object, object]) -> None:
    """Bought where that costs no more than all its hire; hire that is paid for already is used up first."""
    facts = Facts.of(Problem((Option("m", tools=("saw",)), Option("n")), tools=(tool, Tool("axe", buy_minor=1))))
    assert tool_choices(facts, ("m", "n"), {"saw": sessions}) == found


@pytest.mark.parametrize(("tool", "words"), [(Tool("saw"), "cannot be had"), (Tool("saw", prepaid=1), "so often")])
def test_a_tool_that_cannot_be_had_is_our_mistake(tool: Tool, words: str) -> None:
    """No plan may hold it: a tool without a price, or with less hire than it takes."""
    with pytest.raises(SolverDisagrees, match=words):
        tool_choices(Facts.of(Problem((Option("m", tools=("saw",)),), tools=(tool,))), ("m",), {"saw": 2})


def test_a_line_is_charged_half_up() -> None:
    """4.50 with 15 % is 5.175, half up 5.18, and two of it 10.35; a charge of nothing is nothing."""
    tin = Product("tin", 450, charge_numerator=115, charge_denominator=100)
    assert [charged(tin, count) for count in (0, 1, 2)] == [0, 518, 1035]


def test_goods_are_ordered_shop_by_shop() -> None:
    """Two orders with their own delivery, goods without a shop without any; what is not bought orders nothing."""
    goods = (
        Product("a", 100, shop="mill"),
        Product("b", 50, shop="yard"),
        Product("c", 7),
        Product("d", 1, shop="barn"),
    )
    shops = (Shop("mill", 10, 300), Shop("yard", 20), Shop("barn", 1000))
    facts = Facts.of(Problem((), products=goods, shops=shops))
    assert goods_minor(facts, {"a": 2, "b": 1, "c": 3, "d": 0}) == 200 + 10 + 50 + 20 + 21
    assert goods_minor(facts, {"a": 3}) == 300
    elsewhere = Facts.of(Problem((), products=(Product("e", 9, shop="gone"),), shops=shops))
    assert goods_minor(elsewhere, {"e": 2}) == 18


def test_money_for_tools() -> None:
    """A saw bought for 99, a drill hired twice at 40, an axe that is lent for nothing."""
    tools = (Tool("saw", buy_minor=99), Tool("drill", hire_minor=40), Tool("axe", buy_minor=0, hire_minor=0))
    facts = Facts.of(Problem((Option("m", tools=("saw", "drill", "axe")),), tools=tools))
    assert tools_minor(facts, ("axe", "saw"), (("drill", 2), ("axe", 3))) == 179


SET = {
    "against": ((Option("a", excludes=("b",)), Option("b")), {}, ["a against b"]),
    "group": ((Option("a", "g"), Option("b", "g"), Option("c", "h")), {}, ["a against b"]),
    "need": ((Option("a", needs=("z",)), Option("b")), {}, ["a needs z"]),
    "must": ((Option("a"),), {"must": (("y", "z"), ("a", "z"))}, ["must y,z"]),
    "limit": ((Option("a", spends=(("holes", 3),)), Option("b", spends=(("holes", -1), ("pins", 9)))), {}, []),
    "over": ((Option("a", spends=(("holes", 3),)),), {}, ["limit holes"]),
    "there": ((Option("a", uses=(("tin", 3),)),), {}, []),
    "more": ((Option("a", uses=(("tin", 3),)), Option("b", uses=(("tin", 1),))), {}, ["more of tin than there is"]),
    "heavy": ((Option("a", uses=(("bell", 2),)),), {}, ["too heavy for van"]),
    "light": ((Option("a", uses=(("bell", 1),)),), {}, []),
}


@pytest.mark.parametrize("name", SET)
def test_what_a_set_alone_breaks(name: str) -> None:
    """Groups, excludes, needs, musts, limits, stock and loads: each just kept and just broken."""
    options, more, words = SET[name]
    fixed = {
        "limits": (Limit("holes", 2),),
        "products": (Product("tin", 1, on_hand=1, most=2), Product("bell", 1)),
        "loads": (Load("van", 60, (("bell", 60),)),),
    }
    problem = Problem(options, **{**fixed, **more})  # type: ignore[arg-type]
    assert choice_broken(Facts.of(problem), frozenset(one.id for one in options)) == words


DAYS = (Session(540, 600, (60, 30)), Session(840, 900, (60, 60), quiet=True), Session(1980, 2040, (60, 60)))


def hours(steps: tuple[Step, ...], *placed: tuple[int, tuple[str, ...]], **more: object) -> tuple[str, ...]:
    """What is broken where the steps of one option stand in these sessions with these people: ann and ben."""
    option = Option("m", steps=steps, **more)  # type: ignore[arg-type]
    facts = Facts.of(Problem((option,), sessions=DAYS, people=("ann", "ben")))
    return broken(facts, ("m",), [Placed("m", at, session, people) for at, (session, people) in enumerate(placed)])


@pytest.mark.parametrize(
    ("step", "session", "people", "words"),
    [
        (Step(60), 0, ("ann",), ()),
        (Step(61), 0, ("ann",), ("ann works too long in 0",)),
        (Step(31), 0, ("ben",), ("ben works too long in 0",)),
        (Step(10), 0, ("ann", "ben"), ("m step 0 has the wrong people",)),
        (Step(10, 2), 0, ("ann",), ("m step 0 has the wrong people",)),
        (Step(10, 2), 0, ("ann", "ann"), ("m step 0 has the wrong people",)),
        (Step(10, barred=("ann",)), 0, ("ann",), ("m step 0 has the wrong people",)),
        (Step(10, barred=("ann",), help=5), 0, ("ben", "ann"), ()),
        (Step(10, no_help=("ann",), help=5), 0, ("ben", "ann"), ("m step 0 has the wrong people",)),
        (Step(60, help=30), 0, ("ann", "ben"), ()),
        (Step(60, help=31), 0, ("ann", "ben"), ("ben works too long in 0",)),
        (Step(10, loud=True), 1, ("ann",), ("m step 0 is too loud for its session",)),
        (Step(10, loud=True), 2, ("ann",), ()),
        (Step(10, first_session=1), 0, ("ann",), ("m step 0 is in a wrong session",)),
        (Step(10, first_session=1), 1, ("ann",), ()),
        (Step(10), 3, ("ann",), ("m step 0 is in a wrong session",)),
    ],
)
def test_what_one_step_breaks(step: Step, session: int, people: tuple[str, ...], words: tuple[str, ...]) -> None:
    """People, minutes, noise and sessions: each just kept and just broken."""
    assert hours((step,), (session, people)) == words


@pytest.mark.parametrize(
    ("second", "places", "words"),
    [
        (Step(10), (0, 0), ()),
        (Step(10), (1, 0), ("m step 1 comes too early",)),
        (Step(10, wait_sessions=1), (0, 0), ("m step 1 comes too early",)),
        (Step(10, wait_sessions=1), (0, 1), ()),
        (Step(10, wait_minutes=240), (0, 1), ()),
        (Step(10, wait_minutes=241), (0, 1), ("m step 1 comes too early",)),
        (Step(10, wait_minutes=241), (0, 2), ()),
    ],
)
def test_what_two_steps_break(second: Step, places: tuple[int, int], words: tuple[str, ...]) -> None:
    """Order and waits, which count from the end of the session at 600: 240 minutes later the next one begins."""
    assert hours((Step(10), second), *((place, ("ann",)) for place in places)) == words


def test_one_day_and_one_pair_of_hands() -> None:
    """Two sessions of one day are a day, two days are not; who goes on in a session was there when it began."""
    steps = (Step(10), Step(10))
    assert hours(steps, (0, ("ann",)), (1, ("ann",)), one_day=True) == ()
    assert hours(steps, (1, ("ann",)), (2, ("ann",)), one_day=True) == ("m is left half done overnight",)
    assert hours(steps, (1, ("ann",)), (2, ("ann",))) == ()
    assert hours(steps, (0, ("ann",)), (0, ("ben",))) == ("m step 1 comes too early",)
    assert hours(steps, (0, ("ann",)), (1, ("ben",))) == ()
    assert hours(steps, (0, ("ann",))) == ("m step 1 is nowhere",)
    assert hours(steps, (0, ("ann",)), (1, ("ann",)), last_session=0) == ("m step 1 is in a wrong session",)


def test_joint_work_is_no_longer_than_a_session() -> None:
    """Two joint steps of 30 fit into an hour for both, 30 and 31 do not, whoever has how many minutes."""

    def joint(second: int) -> tuple[str, ...]:
        options = (Option("a", steps=(Step(30, 2),)), Option("b", steps=(Step(second, 2),)))
        facts = Facts.of(Problem(options, sessions=DAYS, people=("ann", "ben")))
        return broken(facts, ("a", "b"), [Placed(name, 0, 1, ("ann", "ben")) for name in "ab"])

    assert joint(30) == ()
    assert joint(31) == ("ann works too long in 1", "ben works too long in 1", "joint work is too long in 1")
