"""A conflict cut forbids the set that failed, and nothing that can be placed."""

from __future__ import annotations

from dataclasses import replace

import pytest

from budgetfix.optimize.choice_rows import x
from budgetfix.optimize.cuts import conflict
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.model import placing
from budgetfix.optimize.money_rows import b, v
from budgetfix.optimize.placing import Placer, Placing, given_out
from budgetfix.optimize.solver import Row, run
from tests.optimize import brute
from tests.optimize.worlds import World, random_world


def _keeps(world: World, row_terms: dict[str, int], right: float, chosen: frozenset[str], where: brute.Where) -> bool:
    """Whether a placed set, with the tools it takes, satisfies a row."""
    by_id = {one.id: one for one in world.problem.options}
    total = sum(row_terms.get(x(id), 0) for id in chosen)
    for tool in world.problem.tools:
        days = len({place for (id, _), (place, _) in where.items() if tool.id in by_id[id].tools})
        if days and tool.hire_minor is not None:
            total += sum(row_terms.get(v(tool.id, count), 0) for count in range(1, days + 1))
    return total <= right


@pytest.mark.parametrize("number", range(600, 630))
def test_a_cut_leaves_every_placeable_set_alive(number: int) -> None:
    """Every set that cannot be placed gives a cut; every placing of every set, hire counted, keeps all cuts."""
    world = random_world(number, people=1 + number % 2, options=5, sessions=2, long=True)
    problem = replace(world.problem, budget_minor=None, must=(), last_session=None)
    facts = Facts.of(problem)
    placer = Placer(facts, lambda: 60.0)
    ways = {chosen: list(brute.placings(problem, chosen)) for chosen in brute.subsets(problem)}
    cuts: list[Row] = []
    for chosen, found in ways.items():
        assert isinstance(placer.place(chosen, facts.horizon, None), Placing) == bool(found)
        if not found:
            cut = conflict(placer, facts, chosen, {}, len(cuts))
            cuts.append(cut)
            terms = {name: by for by, name in cut.terms}
            assert sum(terms.get(x(id), 0) for id in chosen) > cut.right
    for cut in cuts:
        terms = {name: by for by, name in cut.terms}
        assert all(_keeps(world, terms, cut.right, chosen, where) for chosen, found in ways.items() for where in found)


def test_a_cut_by_hire_asks_for_one_more_session() -> None:
    """Two long jobs with one hired saw and one session of hire: both only with a second session."""
    world = random_world(1)
    options = tuple(
        replace(
            world.problem.options[0],
            id=id,
            group=None,
            steps=(replace(step, minutes=70, people=1, barred=()),),
            tools=("saw",),
            needs=(),
            excludes=(),
            uses=(),
            spends=(),
            first_session=0,
        )
        for id in ("a", "b")
        for step in [next(step for one in world.problem.options for step in one.steps)]
    )
    hours = tuple(replace(one, minutes=(120,)) for one in world.problem.sessions or ())
    problem = replace(world.problem, options=options, sessions=hours, setup_minutes=0, last_session=None)
    facts = Facts.of(problem)
    placer = Placer(facts, lambda: 60.0)
    cut = conflict(placer, facts, frozenset("ab"), {"saw": 1}, 0)
    assert {name: by for by, name in cut.terms} == {x("a"): 1, x("b"): 1, v("saw", 2): -1}
    assert cut.right == 1
    program, kinds = placing(facts, 600)
    assert b("saw") not in program.variables
    solved = run(program, (), 60.0)
    assert solved.values is not None
    assert len({one.session for one in given_out(facts, kinds, solved.values)}) == 2
    assert run(placing(facts, 599)[0], (), 60.0).status == "infeasible"
