"""What became of the plan since it was made, for the lines on the screen."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

from budgetfix.optimize.problem import Plan
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.shopping import days_to_return
from budgetfix.outcome.since import Since, fresh, known_of
from budgetfix.outcome.so_far import LineBack, StepBack
from budgetfix.pipeline.planning import Walked, Wish
from budgetfix.pipeline.rest import Left
from budgetfix.pipeline.rest_facts import facts_of, shifts_of


def since(left: Left, walked: Walked, wish: Wish, unended: tuple[str, ...]) -> Since:
    """What was paid and done against plan, what is left of the hours, what changed and why."""
    facts = fresh(facts_of(left), left.so_far.remembered.known)
    off, on = shifts_of(left, walked, facts, wish)
    done = left.so_far.done
    hours = left.job.brief.hours
    budget = left.brief.budget_minor
    names = {one.candidate.id: one.candidate.name for one in left.done.begun}
    return Since(
        day=left.day,
        paid_minor=left.paid.spent_minor,
        due_minor=left.paid.due_minor,
        over_budget_minor=0 if budget is None else max(0, left.paid.spent_minor - budget),
        steps_done=len(done),
        steps=len(left.so_far.steps),
        took_minutes=sum(map(_took, done)),
        planned_minutes=sum(one.planned.task.person_minutes for one in done),
        sessions_left=None if hours is None else sum(1 for at, _ in enumerate(hours) if at >= left.rest.live),
        minutes_left=None if hours is None else sum(sum(one.minutes) for one in hours),
        off=off,
        on=on,
        facts=facts,
        unused=_unused(left, walked.answer.plan, walked),
        unended=tuple(names[id] for id in unended),
        told=left.rest.told,
    )


def knowing(book: PlanBook, left: Left) -> PlanBook:
    """The book, remembering what had come out otherwise when it was made."""
    if book.remembered is None:
        return book
    return replace(book, remembered=replace(book.remembered, known=known_of(facts_of(left))))


def _took(back: StepBack) -> int:
    """Person-minutes: whoever helped did so for as long as planned, as far as it took that long at all."""
    task, real = back.planned.task, back.real_minutes
    return task.person_minutes if real is None else real * task.people + min(task.help_minutes, real)


def _unused(left: Left, plan: Plan, walked: Walked) -> tuple[tuple[str, date | None], ...]:
    """Bought goods that neither what is done nor the plan uses, with the last day to give them back."""
    base = walked.seen.base
    users = {id for id in plan.chosen if id in walked.offer.framed.candidates} | left.done.ids
    every = {**{one.id: one for one in left.rest.done}, **walked.offer.framed.candidates}
    used = {product for id in users if id in every for product, _ in every[id].goods}
    products = {one.product: one for one in left.job.catalog.products}
    found = []
    for one in left.paid.by_kind("product"):
        id = one.planned.line.product or ""
        if one.state == "bought" and id not in used:
            days = days_to_return(base, products[id])
            found.append((one.planned.line.name, _until(one, days)))
    return tuple(found)


def _until(one: LineBack, days: int | None) -> date | None:
    """As the plan said; else the shop's days after the goods came."""
    line, ordered = one.planned.line, one.planned.ordered
    if line.return_by is not None or not days or ordered is None:
        return line.return_by
    return ordered + timedelta(days=line.lead_days + days)
