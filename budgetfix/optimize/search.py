"""The loop: choose, count again, look again, place, cut; until what is chosen is known and placed."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from typing import Literal

from budgetfix.optimize import model, recount, worth_rows
from budgetfix.optimize.buying import billed
from budgetfix.optimize.choice_rows import marks_terms, minutes_terms, x
from budgetfix.optimize.cuts import conflict
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import Growth, remaining, value
from budgetfix.optimize.linear import relaxed
from budgetfix.optimize.merging import merged
from budgetfix.optimize.money_rows import b, v
from budgetfix.optimize.place_rows import Kind
from budgetfix.optimize.placing import Placer, Placing, given_out
from budgetfix.optimize.problem import Extra, Phase, Report, Round
from budgetfix.optimize.recount import SolverDisagrees
from budgetfix.optimize.solver import Engine, Program, Row, Solved, Terms, run
from budgetfix.optimize.wishes import VOICES, WORTH, Held, Wish, held, wishes
from budgetfix.optimize.worth_rows import Family

Outcome = Literal["proven", "none", "stopped"]
FAILS_BEFORE_TIMETABLE = 2
"""Failed placings after which the choosing program carries a timetable of its own."""
LOOKS_AHEAD = 100
"""Linear relaxations before each round, at most."""
SOME = 1e-6
"""Share of a leaf below which a relaxation does not stand on it."""
WORTH_PINNING = 24
"""Options from which on a linear relaxation after each wish costs less than it saves."""
REPAIR_SECONDS = 3.0
"""How long the best placeable part of a failed set is looked for."""


@dataclass
class Search:
    """All that is known while one problem is being solved."""

    facts: Facts
    growth: Growth
    extra: Extra
    clock: Callable[[], float]
    report: Report | None
    until: float
    engine: Engine = "highs"
    horizon: int = 0
    best: Held | None = None
    placed: Held | None = None
    """The set that was placed last, best or not."""
    ceilings: dict[Wish, int] = field(default_factory=dict)
    floors: dict[Wish, int] = field(default_factory=dict)
    timetable: bool = False
    tight: bool = False
    """True once the solver's usual tolerances were too coarse."""
    fails: int = 0
    inspections: int = 0
    placings: int = 0
    _cuts: list[tuple[int, Row]] = field(default_factory=list)
    _refuted: set[frozenset[str]] = field(default_factory=set)
    _bases: dict[tuple[int, int | None, bool], tuple[Program, tuple[Kind, ...]]] = field(default_factory=dict)
    _families: tuple[int, tuple[Family, ...]] = (-1, ())
    _pinned: dict[str, int] = field(default_factory=dict)
    """Options whose answer is known, by variable; holds for this horizon and shorter ones."""

    def __post_init__(self) -> None:
        self.horizon = self.facts.horizon
        self._now = self.facts
        self.order = wishes(self.facts.problem, self.extra)
        self.timetable = self.timetable or self.facts.long_steps
        self.placer = Placer(self.facts, self.left, self.engine)
        self.possible = frozenset(self.facts.by_id)
        self._kinds: tuple[Kind, ...] = ()
        self._known, self._merged = self.growth.read.setdefault(self.possible, ({}, {}))
        if self.extra.hazards_at_most is not None:
            self.ceilings["hazards"] = self.extra.hazards_at_most
        if self.extra.points_at_most is not None:
            self.ceilings["points"] = self.extra.points_at_most
        if self.extra.marks_at_most is not None:
            self.ceilings["marks"] = self.extra.marks_at_most
        if self.extra.both_at_most is not None:
            self.ceilings["both"] = self.extra.both_at_most
        for voice, most in zip(VOICES, self.extra.voices_at_most, strict=False):
            if most is not None:
                self.ceilings[voice] = most

    def left(self) -> float:
        """Seconds left."""
        return self.until - self.clock()

    def half_time(self) -> Callable[[], bool]:
        """Whether half of the seconds that are left now have gone: a large house is not looked at for its own sake."""
        until = self.clock() + self.left() / 2
        return lambda: self.clock() > until

    @property
    def money(self) -> int | None:
        """Most money that may be spent."""
        known = (self.facts.problem.budget_minor, self.extra.spend_at_most, self.ceilings.get("spend"))
        return min((one for one in known if one is not None), default=None)

    @property
    def now(self) -> Facts:
        """The facts within the horizon of the moment."""
        if self._now.horizon != self.horizon:
            self._now = self.facts.within(self.horizon)
        return self._now

    def families(self) -> tuple[Family, ...]:
        """Leaves as they are known now."""
        if self._families[0] != self.growth.version:
            found = merged(self.facts, self.apart(), known=self._merged)
            self._families = (self.growth.version, found)
        return self._families[1]

    def apart(self) -> tuple[Family, ...]:
        """The same leaves, tree by tree."""
        return worth_rows.families(self.facts, self.growth, self._known)

    def terms(self, wish: Wish, families: tuple[Family, ...] | None = None) -> Terms:
        """A wish as an objective, over these leaves or those known now."""
        if wish in WORTH:
            found = self.families() if families is None else families
            if wish in VOICES:
                return worth_rows.voice_terms(found, VOICES.index(wish))
            hazards = worth_rows.hazard_terms(found) if wish != "points" else ()
            return (*hazards, *(worth_rows.point_terms(found) if wish != "hazards" else ()))
        if wish == "marks":
            return marks_terms(self.facts)
        return model.spend_terms(self.now) if wish == "spend" else minutes_terms(self.facts)

    def program(self, families: tuple[Family, ...] | None = None) -> Program:
        """The choosing program as it stands, over these leaves or those known now."""
        found = self.families() if families is None else families
        key = (self.horizon, self.money, self.timetable)
        facts = self.now
        if key not in self._bases:
            base = model.choosing(facts, self.extra, self.money)
            kinds: tuple[Kind, ...] = ()
            if self.timetable or facts.phases:
                kinds = model.add_timetable(facts, base, model.sure(facts, self.extra))
            self._bases = {key: (base, kinds)}
        base, self._kinds = self._bases[key]
        program = base.copy()
        model.add_worth(program, found)
        for horizon, row in self._cuts:
            if horizon >= self.horizon:
                terms = tuple(term for term in row.terms if term[1] in program.variables)
                program.add([replace(row, terms=terms)])
        for wish in (*WORTH, "marks", "minutes"):
            if wish in self.ceilings:
                name = f"most_{wish.replace(' ', '_')}"
                program.add([Row(name, self.terms(wish, found), "<=", self.ceilings[wish] + 0.5)])
        for name, answer in self._pinned.items():
            program.fix(name, answer)
        return program

    def reach(self, wish: Wish, more: Callable[[Program], Terms] | None = None) -> Outcome:
        """The least of a wish, everything fixed before kept. `more` adds rows and gives another objective.

        "proven": the plan in hand is best. "none": no plan at all keeps the rows. "stopped": by the clock.
        """
        self.say(wish)
        while True:
            if not more and self.engine == "highs":
                self._look_ahead(wish)
            program = self.program()
            objective = more(program) if more else self.terms(wish)
            solved = run(program, objective, self.left(), self.engine, tight=self.tight)
            if solved.status == "infeasible":
                return "none"
            if not more and self._noted(wish, solved.bound):
                return "proven"
            if solved.values is None:
                return "stopped"
            chosen, values = self._read(program, objective, solved)
            if values is None:
                self._not_again(chosen)
                continue
            claimed = round(solved.objective) if wish == "spend" and not more else self.money
            outcome = self._settle(chosen, values, claimed)
            self.say(wish)
            if outcome == "settled" and solved.status == "optimal":
                if self._claimed_too_much(wish, -math.inf if more else solved.bound):
                    if self.tight:
                        raise SolverDisagrees(f"{wish}: {solved.objective} claimed for {sorted(chosen)}")
                    self.tight = True
                    continue
                self._noted(wish, solved.bound if not more else -math.inf)
                return "proven"
            if solved.status == "stopped" or outcome == "stopped":
                return "proven" if not more and self._noted(wish, solved.bound) else "stopped"
            if not more and self._noted(wish, solved.bound):
                return "proven"

    def _look_ahead(self, wish: Wish) -> None:
        """Ask where the linear relaxation stands on what is not known yet: cheaper than whole rounds."""
        for _ in range(LOOKS_AHEAD):
            apart = self.apart()
            if not any(family.unknown for family in apart):
                return
            found = relaxed(self.program(apart), self.terms(wish, apart), self.left())
            if found is None:
                return
            stood = [
                node
                for family in apart
                for leaf in family.unknown
                if found.values.get(leaf.name, 0.0) > SOME
                for node in leaf.unknown
            ]
            if not self.growth.grow_at(stood, self.possible):
                return
            self.inspections += 1
            self.say(wish)

    def _claimed_too_much(self, wish: Wish, bound: float) -> bool:
        """True where the set just placed breaks a ceiling or a bound: tolerances blur sums of a million and more."""
        one = self.placed
        over = one is None or any(one.measure(name) > most for name, most in self.ceilings.items())
        return over or (math.isfinite(bound) and one is not None and one.measure(wish) > math.ceil(bound - 1e-6))

    def _noted(self, wish: Wish, bound: float) -> bool:
        """Remember a proven floor; True where the plan in hand reaches it."""
        if math.isfinite(bound):
            self.floors[wish] = max(self.floors.get(wish, 0), math.ceil(bound - 1e-6))
        return self.best is not None and wish in self.floors and self.best.measure(wish) <= self.floors[wish]

    def say(self, wish: Wish) -> None:
        """Tell how far a wish is."""
        self.tell(wish, None if self.best is None else self.best.measure(wish), self.floors.get(wish))

    def tell(self, phase: Phase, best: int | None = None, floor: int | None = None) -> None:
        """Tell how far this is, where somebody listens."""
        if self.report is not None:
            self.report(Round(phase, best, floor, self.inspections + self.placings))

    def _read(
        self, program: Program, objective: Terms, solved: Solved
    ) -> tuple[frozenset[str], Mapping[str, float] | None]:
        """The chosen set, counted again; once more with finer tolerances where they disagree.

        Without values: the solver claims twice what does not come out again.
        """
        values = solved.values or {}
        chosen = self._chosen(values)
        if not self.wrong(chosen):
            return chosen, values
        finer = run(program, objective, self.left(), self.engine, tight=True)
        again = self._chosen(finer.values or {})
        if finer.values is None or self.wrong(again):
            return chosen, None
        return again, finer.values

    def _not_again(self, chosen: frozenset[str]) -> None:
        """A row that keeps a set from being claimed once more: counted exactly, it breaks a promise.

        Errors: SolverDisagrees where the solver claims it in spite of its row.
        """
        if chosen in self._refuted:
            raise SolverDisagrees("; ".join(self.wrong(chosen)))
        self._refuted.add(chosen)
        terms = tuple((-1 if one.id in chosen else 1, x(one.id)) for one in self.facts.options)
        self._cuts.append((self.facts.horizon, Row(f"wrong_{len(self._cuts)}", terms, ">=", 1 - len(chosen))))

    def _hands(self, chosen: frozenset[str], values: Mapping[str, float]) -> dict[str, int]:
        """Tools of a set as they are paid for."""
        used = {tool for id in chosen for tool in self.facts.by_id[id].tools}
        hands = {}
        for tool, most in self.now.hirable.items():
            if tool in used:
                bought = values.get(b(tool), 0.0) > 0.5
                hands[tool] = -1 if bought else sum(values[v(tool, count)] > 0.5 for count in range(1, most + 1))
        return hands

    def _chosen(self, values: Mapping[str, float]) -> frozenset[str]:
        return frozenset(id for id in self.facts.by_id if values.get(x(id), 0.0) > 0.5)

    def wrong(self, chosen: frozenset[str]) -> tuple[str, ...]:
        """The promises that a set breaks before anything is placed, in words."""
        facts = self.facts.unplaced
        words = recount.choice_broken(facts, chosen)
        words += [f"without {id}" for id in self.extra.chosen if id not in chosen]
        cost = recount.bill(facts, chosen, ())
        least, packs = cost.spent_minor, dict(cost.packs)
        words += [f"too many packs of {id}" for id, most in self.extra.packs_at_most if packs.get(id, 0) > most]
        dear = self.money is not None and least > self.money and not self.facts.phases
        return (*words, *(("budget",) if dear else ()))

    def _settle(
        self, chosen: frozenset[str], values: Mapping[str, float], ceiling: int | None
    ) -> Literal["settled", "again", "stopped"]:
        """Look again, then place for no more than `ceiling`; what can be placed is kept in hand."""
        if self.facts.phases:
            return self._settle_by_date(chosen, values)
        if self.growth.grow_along(chosen, self.possible, self.half_time()):
            self.inspections += 1
            quick = self.placer.quick(chosen, self.horizon, self.money)
            if quick is not None:
                self.consider(chosen, quick)
            return "again"
        self.placings += 1
        placing = self.placer.place(chosen, self.horizon, ceiling)
        if isinstance(placing, Placing):
            self.consider(chosen, placing)
            return "settled"
        self.fails += 1
        self._repair(chosen)
        if placing == "unknown":
            return "stopped"
        hands = self._hands(chosen, values)
        self._cuts.append((self.horizon, conflict(self.placer, self.now, chosen, hands, len(self._cuts))))
        self.timetable = self.timetable or self.fails >= FAILS_BEFORE_TIMETABLE
        return "again"

    def _settle_by_date(self, chosen: frozenset[str], values: Mapping[str, float]) -> Literal["settled", "again"]:
        """Look again; where money comes in phases, the choosing program has placed the set already."""
        grown = self.growth.grow_along(chosen, self.possible, self.half_time())
        self.inspections += grown
        self.placings += not grown
        placed = given_out(self.now, self._kinds, values)
        cost = billed(self.now, chosen, placed, self.engine)
        if cost is None:
            raise SolverDisagrees(f"{sorted(chosen)} cannot be bought as it was placed")
        self.consider(chosen, Placing(placed, cost))
        return "again" if grown else "settled"

    def _repair(self, chosen: frozenset[str]) -> None:
        """The best placeable part of a set that cannot be placed, into the hand."""
        facts = replace(self.facts.only(chosen), horizon=self.horizon)
        program = model.choosing(facts, self.extra, self.money)
        kinds = model.add_timetable(facts, program, model.sure(facts, self.extra))
        found = worth_rows.families(facts, self.growth)
        model.add_worth(program, found)
        objective = (*worth_rows.hazard_terms(found), *worth_rows.point_terms(found))
        solved = run(program, objective, min(REPAIR_SECONDS, self.left()), self.engine)
        if solved.values is not None:
            part = frozenset(id for id in chosen if solved.values[x(id)] > 0.5)
            if not self.wrong(part):
                placed = given_out(facts, kinds, solved.values)
                self.consider(part, Placing(placed, recount.bill(facts, part, placed)))

    def consider(self, chosen: frozenset[str], placing: Placing) -> bool:
        """Keep a placed set where it beats the one in hand and keeps every ceiling. True where it was kept."""
        if not self.growth.allowed(chosen):
            return False
        one = held(self.facts, chosen, placing, remaining(self.growth, chosen))
        self.placed = one
        spent = placing.bill.spent_minor
        if (self.money is not None and spent > self.money) or placing.last >= max(self.horizon, 0) > 0:
            return False
        if any(one.measure(wish) > most for wish, most in self.ceilings.items()):
            return False
        if self.best is not None and one.key(self.facts, self.order) >= self.best.key(self.facts, self.order):
            return False
        self.best = one
        return True

    def freeze(self, wish: Wish, *, pin: bool = True) -> None:
        """Nothing later may be worse than the plan in hand in this wish. `pin`: other wishes follow."""
        if self.best is None:
            raise SolverDisagrees(f"no plan reaches {wish}")
        self.ceilings[wish] = self.best.measure(wish)
        if pin and len(self.possible) >= WORTH_PINNING and self.engine == "highs" and self.terms(wish):
            self._pin(wish)

    def _pin(self, wish: Wish) -> None:
        """Pin options that no plan as good as the one in hand can choose, or do without: reduced cost fixing.

        After G.L. Nemhauser and L.A. Wolsey, Integer and Combinatorial Optimization, Wiley 1988, section II.5.2.
        """
        program = self.program()
        found = relaxed(program, self.terms(wish), self.left())
        if found is not None:
            for id in self.facts.by_id:
                way = found.dearer(x(id), self.ceilings[wish])
                if way is not None and x(id) not in self._pinned:
                    self._pinned[x(id)] = int(way == "down")

    def try_set(self, chosen: frozenset[str]) -> None:
        """Place a set by rules, to have something in hand."""
        if self.wrong(chosen):
            return
        quick = self.placer.quick(chosen, self.horizon, self.money)
        if quick is not None:
            self.consider(chosen, quick)

    def try_placed(self, chosen: frozenset[str], placing: Placing) -> None:
        """Take a plan that is known from elsewhere, where it keeps every promise here too."""
        if not self.wrong(chosen) and not recount.broken(self.facts, chosen, placing.placed):
            self.consider(chosen, placing)

    def left_over(self, chosen: frozenset[str]) -> tuple[int, int]:
        """(hazard points, points) that remain after a set."""
        return value(self.growth, chosen)
