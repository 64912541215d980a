"""Programs put together from the rows: choosing, choosing with a timetable, placing one set."""

from __future__ import annotations

from collections.abc import Iterable

from budgetfix.optimize import choice_rows, hours_rows, money_rows, phase_places, phase_rows, place_rows
from budgetfix.optimize.choice_rows import x
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.place_rows import Kind
from budgetfix.optimize.problem import Extra
from budgetfix.optimize.solver import Program, Terms
from budgetfix.optimize.windows import windows
from budgetfix.optimize.worth_rows import Family


def choosing(facts: Facts, extra: Extra, ceiling: int | None) -> Program:
    """Which options: everything but worth and timetable. `ceiling`: most money, None for no limit."""
    program = Program()
    for one in facts.options:
        program.binary(x(one.id))
    program.add(choice_rows.exclusions(facts))
    program.add(choice_rows.needs(facts))
    program.add(choice_rows.musts(facts))
    program.add(choice_rows.limits(facts))
    program.add(choice_rows.forced(facts, extra))
    _money(facts, program, ceiling)
    program.add(money_rows.packs_at_most(facts, extra))
    program.add(money_rows.loads(facts))
    found = windows(facts, sure(facts, extra))
    program.add(hours_rows.somewhere(facts, found))
    program.add(hours_rows.enough_minutes(facts, found))
    program.add(hours_rows.joint_minutes(facts, found))
    program.add(hours_rows.enough_places(facts, found))
    return program


def sure(facts: Facts, extra: Extra) -> frozenset[str]:
    """Options that every plan holds."""
    return frozenset([*extra.chosen, *(must[0] for must in facts.problem.must if len(must) == 1)])


def spend_terms(facts: Facts) -> Terms:
    """All that is spent."""
    return phase_rows.spend_through(facts, len(facts.phases) - 1) if facts.phases else money_rows.spend_terms(facts)


def _money(facts: Facts, program: Program, ceiling: int | None) -> None:
    if facts.phases:
        phase_rows.variables(facts, program)
        program.add(phase_rows.all_rows(facts, ceiling))
        return
    money_rows.money_variables(facts, program)
    program.add(money_rows.enough_packs(facts))
    program.add(money_rows.one_pack_at_least(facts))
    program.add(money_rows.no_spare_pack(facts))
    program.add(money_rows.one_order(facts))
    program.add(money_rows.free_delivery(facts))
    program.add(money_rows.tax_half_up(facts))
    program.add(money_rows.line_half_up(facts))
    program.add(money_rows.tool_at_hand(facts))
    program.add(money_rows.hire_in_order(facts))
    program.add(money_rows.hire_long_enough(facts))
    program.add(money_rows.budget(facts, ceiling))


def add_worth(program: Program, found: tuple[Family, ...]) -> None:
    """What remains, tree by tree."""
    for family in found:
        for leaf in family.leaves:
            program.share(leaf.name)
        program.add(family.rows)


def add_timetable(facts: Facts, program: Program, sure_ids: Iterable[str], *, grouped: bool = True) -> tuple[Kind, ...]:
    """Sessions for the steps of whatever is chosen; not before its goods can be paid for."""
    kinds = place_rows.kinds(facts, windows(facts, sure_ids), grouped=grouped and not facts.phases)
    place_rows.timetable_variables(facts, kinds, program)
    program.add(place_rows.every_step_stands(kinds))
    program.add(place_rows.within_minutes(facts, kinds))
    program.add(place_rows.joint_within_session(facts, kinds))
    program.add(place_rows.after_the_step_before(facts, kinds))
    program.add(place_rows.after_what_is_needed(facts, kinds))
    program.add(place_rows.finished_the_same_day(facts, kinds))
    program.add(place_rows.hired_when_used(facts, kinds))
    if not facts.phases:
        program.add(place_rows.hire_is_paid(facts, kinds))
        return kinds
    program.add(phase_places.bought_in_time(facts, kinds))
    program.add(phase_places.rounds_are_run(facts))
    program.add(phase_places.after_its_round(facts, kinds))
    return kinds


def placing(facts: Facts, ceiling: int | None, *, grouped: bool = True) -> tuple[Program, tuple[Kind, ...]]:
    """A timetable for exactly these options. `ceiling`: most money for tools, None for no limit.

    Where money comes in phases, `ceiling` is for everything.
    """
    program = Program()
    for one in facts.options:
        program.binary(x(one.id))
        program.fix(x(one.id), 1)
    if facts.phases:
        _money(facts, program, ceiling)
        return program, add_timetable(facts, program, [one.id for one in facts.options])
    for id, tool in facts.tools.items():
        if tool.buy_minor is not None:
            program.binary(money_rows.b(id))
        for count in range(1, facts.hirable.get(id, 0) + 1):
            program.binary(money_rows.v(id, count))
    program.add(money_rows.tool_at_hand(facts))
    program.add(money_rows.hire_in_order(facts))
    if ceiling is not None:
        program.add([money_rows.tools_budget(facts, ceiling)])
    kinds = add_timetable(facts, program, [one.id for one in facts.options], grouped=grouped)
    return program, kinds
