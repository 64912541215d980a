"""Every constraint function has a reviewed `.lp` text, made from one small named job.

UPDATE_LP=1 writes the texts anew; read them before they are taken over.
"""

from __future__ import annotations

import inspect
import os
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from types import ModuleType

import pytest

from budgetfix.optimize import (
    choice_rows,
    flow,
    hours_rows,
    money_rows,
    phase_places,
    phase_rows,
    place_rows,
    relax,
    worth_rows,
)
from budgetfix.optimize.cuts import conflict_row
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.problem import (
    Extra,
    Instalment,
    Limit,
    Load,
    Option,
    Problem,
    Product,
    Session,
    Shop,
    Step,
    Tool,
)
from budgetfix.optimize.solver import Program, Row, lp_text
from budgetfix.optimize.windows import windows
from tests.optimize.worlds import table_tree

TEXTS = Path(__file__).parent / "lp"


def living_room() -> Problem:
    """Two evenings, two people: paint the wall or hang paper, raise the rod, lay the rug, fill holes."""
    options = (
        Option("fill", None, (Step(30),), 0, (("filler", 2),), ("drill",), (), (), (("holes", 0),)),
        Option("paint", "wall", (Step(60), Step(60, wait_sessions=1)), 0, (("tin", 7),), (), ("fill",)),
        Option("paper", "wall", (Step(90, 2),), 4000, (), ("drill",), (), ("rod",)),
        Option("rod", None, (Step(45, 1, ("ben",)),), 2500, (), ("drill", "level"), (), (), (("holes", 4),)),
        Option("rug", None, (Step(20, 2), Step(10)), 0, (("rug", 1),), (), (), (), (), 1),
    )
    table = {
        frozenset[str](): (40, 200),
        frozenset({"rod"}): (0, 120),
        frozenset({"paint"}): (40, 90),
        frozenset({"rod", "paint"}): (0, 30),
        frozenset({"paper"}): (40, 80),
    }
    return Problem(
        options,
        (table_tree("wall", options, table, ("paint", "paper", "rod")),),
        (Product("filler", 450, 5, 1, "mill"), Product("rug", 9900, 1, 0, None), Product("tin", 2200, 3, 0, "mill")),
        (Tool("drill", False, 5900, 1400), Tool("level", False, 900, None)),
        (Shop("mill", 590, 6000, 825, 10000),),
        (Limit("holes", 6),),
        ("ann", "ben"),
        (Session(540, 690, (150, 120)), Session(1980, 2070, (90, 60))),
        20000,
        (("rod", "rug"),),
    )


def _facts(problem: Problem | None = None) -> Facts:
    return Facts.of(problem or living_room())


def _families() -> tuple[worth_rows.Family, ...]:
    growth = Growth(living_room())
    growth.grow_up_front(frozenset(one.id for one in living_room().options))
    return worth_rows.families(_facts(), growth)


def _kinds() -> tuple[place_rows.Kind, ...]:
    facts = _facts()
    return place_rows.kinds(facts, windows(facts))


def _three() -> Facts:
    problem = living_room()
    sessions = tuple(replace(one, minutes=(*one.minutes, 60)) for one in problem.sessions or ())
    return _facts(replace(problem, people=("ann", "ben", "cem"), sessions=sessions))


def _marked_up() -> Facts:
    problem = living_room()
    goods = tuple(replace(one, charge_numerator=23, charge_denominator=20) for one in problem.products)
    return _facts(replace(problem, products=goods))


def _scarce() -> Facts:
    problem = living_room()
    return _facts(
        replace(problem, products=tuple(replace(one, most=1 if one.id == "tin" else 2) for one in problem.products))
    )


def _loaded() -> Facts:
    weights = (("rug", 28), ("tin", 7), ("vase", 3))
    return _facts(replace(living_room(), loads=(Load("out", 40, weights), Load("back", 35, weights))))


def _short() -> Facts:
    problem = living_room()
    return _facts(replace(problem, sessions=tuple(replace(one, minutes=(60, 30)) for one in problem.sessions or ())))


def _helped() -> Facts:
    """The rod is for Ann with Ben at the other end for ten minutes; then the rug together."""
    problem = living_room()
    rod = replace(problem.options[3], steps=(Step(45, 1, ("ben",), help=10), Step(15, wait_minutes=0)))
    return _three_or_two(replace(problem, options=(*problem.options[:3], rod, *problem.options[4:])))


def _three_or_two(problem: Problem) -> Facts:
    """The same job with a third pair of hands."""
    sessions = tuple(replace(one, minutes=(*one.minutes, 60)) for one in problem.sessions or ())
    return _facts(replace(problem, people=("ann", "ben", "cem"), sessions=sessions))


def _helped_kinds() -> tuple[place_rows.Kind, ...]:
    return place_rows.kinds(_helped(), windows(_helped()))


def _whole_days() -> Facts:
    """A morning and an afternoon, then another morning: paint and rug are each done within a day."""
    problem = living_room()
    options = tuple(replace(one, one_day=one.id in ("paint", "rug")) for one in problem.options)
    sessions = (Session(540, 690, (150, 120)), Session(840, 990, (150, 120)), Session(1980, 2070, (90, 60)))
    return _facts(replace(problem, options=options, sessions=sessions))


def _by_date() -> Facts:
    """120.00 at once, all 200.00 from the second evening on; paint is fetched by a round of its phase."""
    problem = living_room()
    late = {"paint": (0, 1), "paper": (0, 1), "rod": (0, 1), "rug": (0, 1), "fill": (0, 1), "board": (0, 1)}
    rounds = tuple(
        Option(f"round {number}", steps=(Step(15),), first_session=place) for place, number in enumerate(("one", "two"))
    )
    options = tuple(
        replace(
            one,
            first_session=0,
            arrivals=late[one.id],
            rounds=(("round one", "round two"),) if one.id == "paint" else (),
        )
        for one in (*problem.options, Option("board", tools=("saw",)))
    )
    return _facts(
        replace(
            problem,
            options=(*options, *rounds),
            tools=(*problem.tools, Tool("saw", False, None, 700)),
            products=tuple(replace(one, charge_numerator=23, charge_denominator=20) for one in problem.products),
            phases=(Instalment(12000, 0), Instalment(20000, 1)),
        )
    )


def _prepaid() -> Facts:
    """The same with a session of the drill and one of the saw paid for already."""
    problem = _by_date().problem
    return _facts(replace(problem, tools=tuple(replace(one, prepaid=1) for one in problem.tools if one.id != "level")))


def _dated_kinds() -> tuple[place_rows.Kind, ...]:
    return place_rows.kinds(_by_date(), windows(_by_date()), grouped=False)


MADE: dict[str, Callable[[], Iterator[Row]]] = {
    "choice_rows.exclusions": lambda: choice_rows.exclusions(_facts()),
    "choice_rows.needs": lambda: choice_rows.needs(_facts()),
    "choice_rows.musts": lambda: choice_rows.musts(_facts()),
    "choice_rows.limits": lambda: choice_rows.limits(_facts()),
    "choice_rows.forced": lambda: choice_rows.forced(_facts(), Extra(chosen=("rug", "gone"), refused=("paper",))),
    "money_rows.enough_packs": lambda: money_rows.enough_packs(_facts()),
    "money_rows.one_pack_at_least": lambda: money_rows.one_pack_at_least(_facts()),
    "money_rows.packs_at_most": lambda: money_rows.packs_at_most(
        _scarce(), Extra(packs_at_most=(("filler", 0), ("tin", 2)))
    ),
    "money_rows.loads": lambda: money_rows.loads(_loaded()),
    "money_rows.no_spare_pack": lambda: money_rows.no_spare_pack(_facts()),
    "money_rows.one_order": lambda: money_rows.one_order(_facts()),
    "money_rows.free_delivery": lambda: money_rows.free_delivery(_facts()),
    "money_rows.tax_half_up": lambda: money_rows.tax_half_up(_facts()),
    "money_rows.line_half_up": lambda: money_rows.line_half_up(_marked_up()),
    "money_rows.tool_at_hand": lambda: money_rows.tool_at_hand(_facts()),
    "money_rows.hire_in_order": lambda: money_rows.hire_in_order(_facts()),
    "money_rows.hire_long_enough": lambda: money_rows.hire_long_enough(_short()),
    "money_rows.budget": lambda: money_rows.budget(_facts(), 20000),
    "money_rows.tools_budget": lambda: iter([money_rows.tools_budget(_facts(), 3000)]),
    "hours_rows.somewhere": lambda: hours_rows.somewhere(_short(), windows(_short())),
    "hours_rows.enough_minutes": lambda: hours_rows.enough_minutes(_short(), windows(_short())),
    "hours_rows.joint_minutes": lambda: hours_rows.joint_minutes(_short(), windows(_short())),
    "hours_rows.enough_places": lambda: hours_rows.enough_places(_short(), windows(_short())),
    "phase_rows.bought_for_good": lambda: phase_rows.bought_for_good(_by_date()),
    "phase_rows.enough_packs_by": lambda: phase_rows.enough_packs_by(_by_date()),
    "phase_rows.no_pack_ahead": lambda: phase_rows.no_pack_ahead(_by_date()),
    "phase_rows.one_order_a_phase": lambda: phase_rows.one_order_a_phase(_by_date()),
    "phase_rows.free_delivery_a_phase": lambda: phase_rows.free_delivery_a_phase(_by_date()),
    "phase_rows.tax_half_up_a_phase": lambda: phase_rows.tax_half_up_a_phase(_by_date()),
    "phase_rows.line_half_up_a_phase": lambda: phase_rows.line_half_up_a_phase(_by_date()),
    "phase_rows.tool_in_its_phase": lambda: phase_rows.tool_in_its_phase(_by_date()),
    "phase_rows.hire_without_work": lambda: phase_rows.hire_without_work(_by_date()),
    "phase_rows.hire_beyond_prepaid": lambda: phase_rows.hire_beyond_prepaid(_prepaid()),
    "phase_rows.money_by_date+prepaid": lambda: phase_rows.money_by_date(_prepaid(), None),
    "phase_rows.money_by_date": lambda: phase_rows.money_by_date(_by_date(), 19000),
    "phase_places.bought_in_time": lambda: phase_places.bought_in_time(_by_date(), _dated_kinds()),
    "phase_places.rounds_are_run": lambda: phase_places.rounds_are_run(_by_date()),
    "phase_places.after_its_round": lambda: phase_places.after_its_round(_by_date(), _dated_kinds()),
    "worth_rows.one_leaf": lambda: worth_rows.one_leaf(_families()),
    "worth_rows.leaf_needs_its_options": lambda: worth_rows.leaf_needs_its_options(_families()),
    "worth_rows.leaf_without_its_refused": lambda: worth_rows.leaf_without_its_refused(_families()),
    "place_rows.every_step_stands": lambda: place_rows.every_step_stands(_kinds()),
    "place_rows.within_minutes": lambda: place_rows.within_minutes(_facts(), _kinds()),
    "place_rows.joint_within_session": lambda: place_rows.joint_within_session(
        _three(), place_rows.kinds(_three(), windows(_three()))
    ),
    "place_rows.after_the_step_before": lambda: place_rows.after_the_step_before(_facts(), _kinds()),
    "place_rows.within_minutes+help": lambda: place_rows.within_minutes(_helped(), _helped_kinds()),
    "place_rows.joint_within_session+help": lambda: place_rows.joint_within_session(_helped(), _helped_kinds()),
    "place_rows.after_the_step_before+help": lambda: place_rows.after_the_step_before(_helped(), _helped_kinds()),
    "place_rows.after_what_is_needed": lambda: place_rows.after_what_is_needed(_facts(), _kinds()),
    "place_rows.finished_the_same_day": lambda: place_rows.finished_the_same_day(
        _whole_days(), place_rows.kinds(_whole_days(), windows(_whole_days()))
    ),
    "place_rows.hired_when_used": lambda: place_rows.hired_when_used(_facts(), _kinds()),
    "place_rows.hire_is_paid": lambda: place_rows.hire_is_paid(_facts(), _kinds()),
    "place_rows.worth_in": lambda: iter([place_rows.worth_in(_kinds(), {"paint": 110, "rug": 40}, 1, "w[1,1]")]),
    "flow.demands": lambda: flow.demands(Counter((40, 30, 30)), ((0, 40), (0, 30), (30, 30), (40, 30))),
    "flow.levels": lambda: flow.levels(((0, 40), (0, 30), (30, 30), (40, 30))),
    "relax.one_of_each": lambda: relax.one_of_each([frozenset({"budget", "must:rod"}), frozenset({"sessions"})]),
    "cuts.conflict_row": lambda: iter([conflict_row(_facts(), frozenset({"fill", "rod"}), {"drill": 1}, 0)]),
}


def written(rows: Iterator[Row]) -> str:
    """Rows as `.lp` text; bounds of variables have a text of their own."""
    program = Program()
    program.add(rows)
    return lp_text(program)


@pytest.mark.parametrize("name", sorted(MADE))
def test_rows_are_as_reviewed(name: str) -> None:
    """The rows of one sentence, for the living room, are the ones that somebody has read."""
    text = written(MADE[name]())
    path = TEXTS / f"{name}.lp"
    if os.environ.get("UPDATE_LP") == "1":
        path.write_text(text)
    assert ":" in text.split("Subject To")[1]
    assert path.read_text() == text


def constraint_functions(module: ModuleType) -> list[str]:
    """Public functions of a module that give rows."""
    return [
        f"{module.__name__.split('.')[-1]}.{name}"
        for name, function in inspect.getmembers(module, inspect.isfunction)
        if function.__module__ == module.__name__
        and not name.startswith("_")
        and function.__annotations__.get("return") in ("Iterator[Row]", "Row")
    ]


def test_every_constraint_has_a_text() -> None:
    """No constraint function without a reviewed text, no text without its function."""
    functions = {
        name
        for module in (
            choice_rows,
            flow,
            money_rows,
            hours_rows,
            worth_rows,
            place_rows,
            phase_rows,
            phase_places,
            relax,
        )
        for name in constraint_functions(module)
    } - {"money_rows.smaller", "phase_rows.all_rows"} | {"cuts.conflict_row"}
    assert functions == {name.split("+")[0] for name in MADE}
    assert {path.stem for path in TEXTS.glob("*.lp")} == set(MADE)
