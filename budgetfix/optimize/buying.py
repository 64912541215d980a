"""The bill of a placed set; where money comes in phases, with what is bought when, as late as can be.

Of all ways to buy that are in time and within the money of each phase: the cheapest; then tools bought rather than
hired, by id; then each option in the latest phase, by id (one that takes no time in the earliest, since nothing waits
for it). So the same placing always has the same bill.
"""

from __future__ import annotations

from collections.abc import Iterable

from budgetfix.optimize import phase_rows
from budgetfix.optimize.choice_rows import x
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.money_rows import b
from budgetfix.optimize.phase_count import can_be_bought, counted, phases_broken, used_tools
from budgetfix.optimize.phase_places import in_phase
from budgetfix.optimize.place_rows import u
from budgetfix.optimize.problem import Placed
from budgetfix.optimize.recount import Bill, SolverDisagrees, bill
from budgetfix.optimize.solver import Engine, Program, Row, Terms, run

SECONDS = 30.0
"""For one small program, at most."""
HEAVIEST = 2**20
"""Largest weight in one objective."""
Digit = tuple[Terms, int]
"""(what is to be as small as can be, how many values it has)."""


def billed(facts: Facts, chosen: Iterable[str], placed: Iterable[Placed], engine: Engine = "highs") -> Bill | None:
    """The bill of a set in its sessions; None where it cannot be bought in time for the money that has come."""
    if not facts.phases:
        return bill(facts, chosen, placed)
    ids, steps = frozenset(chosen), tuple(placed)
    mine = facts.only(ids)
    program = _program(mine, ids, steps)
    spend = phase_rows.spend_through(mine, len(mine.phases) - 1)
    solved = run(program, spend, SECONDS, engine)
    if solved.values is None:
        return None
    program.add([Row("cheapest", spend, "<=", round(solved.objective))])
    values = _settled(program, _digits(mine), solved.values, engine)
    return _read(mine, ids, steps, values, round(solved.objective))


def _program(facts: Facts, ids: frozenset[str], placed: tuple[Placed, ...]) -> Program:
    """Money by phases for exactly these options where they stand."""
    program = Program()
    for id in sorted(ids):
        program.binary(x(id))
        program.fix(x(id), 1)
    phase_rows.variables(facts, program)
    program.add(phase_rows.all_rows(facts, None))
    where = {(one.option, one.step): one for one in placed}
    for id, last in facts.last_phases.items():
        for phase in range(last + 1):
            if not can_be_bought(facts, ids, where, id, phase):
                program.add([Row(f"not_{id}_{phase}", in_phase(facts, id, phase), "<=", 0)])
    for tool in used_tools(facts, ids):
        numbers = {facts.whole[one.session] for one in placed if one.session is not None and _uses(facts, one, tool)}
        for number in sorted(numbers) if facts.tools[tool].for_hire else ():
            program.binary(u(tool, number))
            buy = ((1, b(tool)),) if facts.tools[tool].buy_minor is not None else ()
            program.add([Row(f"hire_{tool}_{number}", ((1, u(tool, number)), *buy), ">=", 1)])
    return program


def _uses(facts: Facts, one: Placed, tool: str) -> bool:
    return tool in facts.by_id[one.option].tools


def _digits(facts: Facts) -> list[Digit]:
    """What makes one way to buy the only one: tools hired, then phases by which each option is bought already."""
    found: list[Digit] = [
        (((1, phase_rows.hired(id)),), 2)
        for id, tool in facts.tools.items()
        if tool.buy_minor is not None and tool.for_hire
    ]
    for id, last in facts.last_phases.items():
        sign = 1 if facts.by_id[id].steps else -1
        terms = tuple((sign, phase_rows.by(facts, id, phase)) for phase in range(last))
        found += [(terms, last + 1)] if terms else []
    return found


def _settled(program: Program, digits: list[Digit], values: dict[str, float], engine: Engine) -> dict[str, float]:
    """The digits as small as can be, the first ones first, as many at a time as one objective holds."""
    waiting = list(digits)
    while waiting:
        weight, block = 1, list[Digit]()
        while waiting and weight * waiting[0][1] <= HEAVIEST:
            weight *= waiting[0][1]
            block.append(waiting.pop(0))
        if not block:
            block.append(waiting.pop(0))
        terms: list[tuple[int, str]] = []
        for mine, size in block:
            weight //= size
            terms += [(weight * sign, name) for sign, name in mine]
        solved = run(program, tuple(terms), SECONDS, engine)
        if solved.values is None:
            raise SolverDisagrees("what could be bought cannot be bought")
        values = solved.values
        for name in dict.fromkeys(name for _, name in terms):
            program.fix(name, round(values[name]))
    return values


def _read(facts: Facts, ids: frozenset[str], placed: tuple[Placed, ...], values: dict[str, float], spent: int) -> Bill:
    """The bill counted again. Errors: SolverDisagrees where it comes to something else, or is not in time."""
    buys = {
        id: next((phase for phase in range(last) if values[phase_rows.by(facts, id, phase)] > 0.5), last)
        for id, last in facts.last_phases.items()
    }
    bought = [id for id in used_tools(facts, ids) if values.get(b(id), 0.0) > 0.5]
    found = counted(facts, ids, placed, buys, bought)
    words = phases_broken(facts, ids, placed, found)
    if found.spent_minor != spent or words:
        raise SolverDisagrees("; ".join((f"{found.spent_minor} is spent, not {spent}", *words)))
    return found
