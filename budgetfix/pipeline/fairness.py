"""The fair plan of two people with priorities of their own, and what stands beside it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from budgetfix.framing.options import ERRAND
from budgetfix.optimize.fair import Fair, fairest, missed
from budgetfix.optimize.losses import Loss, losses
from budgetfix.optimize.problem import Answer, Extra, NoPlan, Plan
from budgetfix.outcome.book import Side
from budgetfix.pipeline.plans import Chooser, Others, with_money_for

MARKS = (0, 2, 3, 1, 5)
"""Sums of money tried, in quarters of what the fair plan spends; first those that tell most."""


def fair_matters(chooser: Chooser, answer: Answer) -> bool:
    """Whether there is anything to share: two voices, faults, a proven plan, and not everything asked for."""
    problem = chooser.framed.problem
    return bool(chooser.base.brief.voices and answer.plan.voices and answer.proven and not problem.must_all)


def fair_answer(chooser: Chooser, best: Answer, seconds: float) -> tuple[Answer, Fair] | None:
    """The fair plan whole, and how it was come by; None where the clock ended before both ideals were known.

    `best` is the household's plan; it is where the search starts.
    """
    until = chooser.clock() + seconds
    fair = _fairest(chooser, seconds, Extra(), (best.plan,))
    if not isinstance(fair, Fair):
        return None
    whole = chooser.best(max(1.0, until - chooser.clock()), _kept(chooser, fair.plan), "all")
    if isinstance(whole, NoPlan):
        return None
    return replace(whole, proven=whole.proven and fair.proven, rounds=whole.rounds + best.rounds), fair


def _fairest(chooser: Chooser, seconds: float, extra: Extra, known: tuple[Plan, ...] = ()) -> Fair | NoPlan | None:
    return fairest(
        chooser.framed.problem,
        seconds=seconds,
        clock=chooser.clock,
        growth=chooser.growth,
        report=chooser.report,
        extra=extra,
        known=known,
    )


def _kept(chooser: Chooser, plan: Plan, extra: Extra | None = None) -> Extra:
    """Asks for a plan in which each gets as much, as safely."""
    safe = plan.hazards if chooser.framed.problem.hazards_first else None
    return replace(extra or Extra(), hazards_at_most=safe, voices_at_most=plan.voices)


def sides(chooser: Chooser, fair: Fair, plan: Plan, left: Callable[[], float]) -> tuple[Side, Side]:
    """What the fair plan is for each of the two."""
    first, second = chooser.base.brief.voices
    return (
        _side(chooser, fair, plan, 0, first.name, left),
        _side(chooser, fair, plan, 1, second.name, left),
    )


def _side(chooser: Chooser, fair: Fair, plan: Plan, voice: int, name: str, left: Callable[[], float]) -> Side:
    there = fair.gains[voice] + fair.plan.voices[voice]
    gets = there - plan.voices[voice]
    order = (voice, 1 - voice)
    names = {id: one.name for id, one in chooser.framed.candidates.items()}
    gives_up = [
        id for id in missed(chooser.framed.problem, chooser.growth, fair, plan, voice) if not id.startswith(ERRAND)
    ]
    return Side(
        name,
        gets,
        fair.ideals[voice],
        _with_half(chooser, there, order, left),
        tuple(names[id] for id in gives_up) if gets < fair.ideals[voice] else (),
    )


def _with_half(chooser: Chooser, there: int, order: tuple[int, int], left: Callable[[], float]) -> int | None:
    """What this person alone would get with half the money; None without a budget, or where the clock ended.

    Where money comes in phases it is no matter of one sum: None as well.
    """
    budget = chooser.framed.problem.budget_minor
    if budget is None or chooser.framed.problem.phases or left() <= 0:
        return None
    half = chooser.best(left(), Extra(spend_at_most=budget // 2, voices=order), "worth")
    return there - half.plan.voices[order[0]] if isinstance(half, Answer) and half.proven else None


def fair_sums(chooser: Chooser, answer: Answer, seconds: float) -> Others:
    """The fair plans for some other sums of money, cheapest first, the one in hand among them."""
    until, mine = chooser.clock() + seconds, answer.plan
    lifted = replace(
        chooser, framed=replace(chooser.framed, problem=replace(chooser.framed.problem, budget_minor=None))
    )
    found = {mine.spent_minor: mine}
    for mark in MARKS:
        most = mine.spent_minor * mark // 4
        left = until - chooser.clock()
        if left <= 0:
            break
        plan = _at(lifted, Extra(spend_at_most=most), left)
        if plan is not None:
            found.setdefault(plan.spent_minor, plan)
    return Others(tuple(found[spent] for spent in sorted(found)))


def _at(chooser: Chooser, extra: Extra, seconds: float) -> Plan | None:
    """The fair plan within a sum of money, its set settled."""
    until = chooser.clock() + seconds
    fair = _fairest(chooser, seconds, extra)
    if not isinstance(fair, Fair) or not fair.proven:
        return None
    whole = chooser.best(until - chooser.clock(), _kept(chooser, fair.plan, extra), "set")
    return whole.plan if isinstance(whole, Answer) and whole.proven else None


def why_not_words(chooser: Chooser, fair: Fair, plan: Plan, seconds: float) -> dict[str, str]:
    """Why not, said for two people, by candidate, as far as the clock allows: what either would have alone first."""
    wished = {id for alone in fair.alone for id in alone.chosen}
    found = losses(
        with_money_for(chooser.framed.problem, plan),
        plan,
        sorted(chooser.framed.candidates, key=lambda id: (id not in wished, id)),
        seconds=seconds,
        clock=chooser.clock,
        growth=chooser.growth,
        report=chooser.report,
    )
    names = tuple(person.name for person in chooser.base.brief.voices)
    return {id: _said(loss, names) for id, loss in found.items()}


def _said(loss: Loss, names: tuple[str, ...]) -> str:
    if loss.nothing:
        return "no plan with it fits the money, the hours and the limits"
    if 0 in loss.least:
        return "neither gains by it, beside what is chosen"
    parts = [f"{name} {least:,} points" for name, least in zip(names, loss.least, strict=True) if least]
    return f"would cost {' or '.join(parts)}" if parts else f"would cost both {' and '.join(names)} points"
