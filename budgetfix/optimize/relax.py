"""The smallest set of wishes that cannot stand together, and which single one, given up, would let a plan exist.

The smallest such set by hitting sets: it must hold a wish of every set that some plan gives up. After A. Ignatiev,
A. Previti, M. Liffiton and J. Marques-Silva, Smallest MUS extraction with minimal hitting set dualization, CP 2015.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field, replace

from budgetfix.optimize.cannot import impossible
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.phase_count import all_at_once
from budgetfix.optimize.problem import Extra, Instalment, NoPlan, Problem, Report, Round
from budgetfix.optimize.recount import too_heavy, too_many
from budgetfix.optimize.search import Search
from budgetfix.optimize.solver import Engine, Program, Row, run
from budgetfix.optimize.wishes import Held

SECONDS = 15.0
"""For all of it, at most."""
ALL = "must:all"
LOAD = "load:"
"""The wish not to load more than is allowed; its id follows."""
MOST = "most:"
"""The wish not to use more of a product than there is; its id follows."""


PHASES = "phases"
"""The wish to spend no money before it is there."""


class _OutOfTime(Exception):
    """The clock stopped a question whose answer is needed."""


def relaxed(
    problem: Problem, seconds: float, clock: Callable[[], float], engine: Engine, report: Report | None = None
) -> NoPlan:
    """What clashes, and what to give up; as far as the clock allows."""
    if report is not None:
        report(Round("clash", None, None))
    wishes = _Wishes(problem, clock, clock() + min(seconds, SECONDS), engine)
    clash: tuple[str, ...] = ()
    try:
        clash = _smallest(wishes)
        relax = tuple(name for name in clash if wishes.plan(set(wishes.names) - {name}) is not None)
        money = _least_money(wishes) if "budget" in relax else None
    except _OutOfTime:
        return NoPlan((), clash, None, _hopeless(problem, clash), open=True)
    return NoPlan(relax, clash, money, _hopeless(problem, clash))


@dataclass
class _Wishes:
    """The wishes of a problem by name, and plans for some of them."""

    problem: Problem
    clock: Callable[[], float]
    until: float
    engine: Engine
    names: tuple[str, ...] = field(init=False)
    growth: Growth = field(init=False)

    def __post_init__(self) -> None:
        problem = self.problem
        musts = [ALL] if problem.must_all else [f"must:{','.join(must)}" for must in problem.must]
        names = [*musts, *(["budget"] if problem.budget_minor is not None else [])]
        names += [PHASES] if problem.phases and problem.sessions else []
        names += [f"limit:{limit.id}" for limit in problem.limits]
        names += [f"{MOST}{id}" for id in self._scarce()]
        names += [f"{LOAD}{load.id}" for load in problem.loads]
        names += ["sessions"] if problem.sessions is not None else []
        names += ["last_session"] if problem.last_session is not None else []
        self.names = tuple(dict.fromkeys(names))
        self.growth = Growth(problem, asks=0, asks_a_tree=0)

    def with_only(self, kept: set[str]) -> Problem:
        """The problem with some of its wishes."""
        problem = self.problem
        dated = PHASES in kept
        musts = tuple(must for must in problem.must if {ALL, f"must:{','.join(must)}"} & kept)
        return replace(
            problem,
            must=musts,
            must_all=problem.must_all and ALL in kept,
            budget_minor=problem.budget_minor if "budget" in kept else None,
            phases=self._phases("budget" in kept) if dated else (),
            options=problem.options if dated else all_at_once(problem).options,
            limits=tuple(limit for limit in problem.limits if f"limit:{limit.id}" in kept),
            products=tuple(
                one if one.most is None or f"{MOST}{one.id}" in kept else replace(one, most=None)
                for one in problem.products
            ),
            loads=tuple(load for load in problem.loads if f"{LOAD}{load.id}" in kept),
            sessions=problem.sessions if "sessions" in kept else None,
            last_session=problem.last_session if {"sessions", "last_session"} <= kept else None,
        )

    def _phases(self, in_all: bool) -> tuple[Instalment, ...]:
        """The phases of money; where the budget is given up, as much as is wanted comes with the last one."""
        phases = self.problem.phases
        return phases if in_all else (*phases[:-1], replace(phases[-1], most_minor=None))

    def plan(self, kept: set[str]) -> Held | None:
        """Any plan that keeps these wishes; None: there is none. Errors: _OutOfTime."""
        problem = self.with_only(kept)
        facts = Facts.of(problem, without=impossible(problem))
        search = Search(facts, self.growth, Extra(), self.clock, None, self.until, self.engine)
        outcome = search.reach("minutes", lambda _: ())
        if search.best is None and outcome == "stopped":
            raise _OutOfTime
        return search.best

    def kept_by(self, held: Held, asked: set[str]) -> set[str]:
        """Wishes that a plan keeps: those it was asked for, and the rest where that is plain to see."""
        problem, chosen = self.problem, held.chosen
        found = {name for name in asked if name in ("sessions", "last_session", PHASES)}
        musts = [must for must in problem.must if not chosen.isdisjoint(must)]
        found |= {f"must:{','.join(must)}" for must in musts if not problem.must_all}
        found |= {ALL} if problem.must_all and len(musts) == len(problem.must) else set()
        if problem.budget_minor is not None and held.placing.bill.spent_minor <= problem.budget_minor:
            found.add("budget")
        options = {one.id: one for one in problem.options}
        for limit in problem.limits:
            spent = sum(amount for id in chosen for name, amount in options[id].spends if name == limit.id)
            found |= {f"limit:{limit.id}"} if spent <= limit.most else set()
        heavy = too_heavy(Facts.of(problem), chosen)
        found |= {f"{LOAD}{load.id}" for load in problem.loads if load not in heavy}
        over = too_many(Facts.of(problem), chosen)
        return found | {f"{MOST}{id}" for id in self._scarce() if id not in over}

    def _scarce(self) -> list[str]:
        """Products of which all options together would take more than there is."""
        return too_many(Facts.of(self.problem), [one.id for one in self.problem.options])


def _smallest(wishes: _Wishes) -> tuple[str, ...]:
    """The fewest wishes that no plan keeps together. Errors: _OutOfTime."""
    given_up: list[frozenset[str]] = []
    while True:
        some = _hitting(wishes, given_up)
        held = wishes.plan(some)
        if held is None:
            return tuple(name for name in wishes.names if name in some)
        kept = some | wishes.kept_by(held, some)
        for name in wishes.names:
            if name not in kept:
                held = wishes.plan(kept | {name})
                if held is not None:
                    kept |= {name} | wishes.kept_by(held, kept | {name})
        given_up.append(frozenset(wishes.names) - kept)


def _hitting(wishes: _Wishes, given_up: Iterable[frozenset[str]]) -> set[str]:
    """The fewest wishes that hold one of every set, those named first preferred. Errors: _OutOfTime."""
    program = Program()
    weight = len(wishes.names) ** 2
    for name in wishes.names:
        program.binary(name)
    program.add(one_of_each(given_up))
    objective = tuple((weight + place, name) for place, name in enumerate(wishes.names))
    solved = run(program, objective, wishes.until - wishes.clock(), wishes.engine)
    if solved.status != "optimal" or solved.values is None:
        raise _OutOfTime
    return {name for name in wishes.names if solved.values[name] > 0.5}


def one_of_each(sets: Iterable[frozenset[str]]) -> Iterator[Row]:
    """Of every set of wishes that some plan gives up, one is held."""
    for number, some in enumerate(sets):
        yield Row(f"one_of_{number}", tuple((1, name) for name in sorted(some)), ">=", 1)


def _least_money(wishes: _Wishes) -> int | None:
    """The least money with which all other wishes can be kept. Errors: _OutOfTime."""
    problem = wishes.with_only(set(wishes.names) - {"budget"})
    facts = Facts.of(problem, without=impossible(problem))
    search = Search(facts, wishes.growth, Extra(spend_first=True), wishes.clock, None, wishes.until, wishes.engine)
    outcome = search.reach("spend")
    return search.best.measure("spend") if outcome == "proven" and search.best is not None else None


def _hopeless(problem: Problem, clash: Iterable[str]) -> tuple[tuple[str, str], ...]:
    """Options of the clashing musts that could never be chosen, and why."""
    cannot = impossible(problem)
    ids = {id for name in clash if name.startswith("must:") for id in name.removeprefix("must:").split(",")}
    return tuple((id, cannot[id]) for id in sorted(ids & cannot.keys()))
