"""Remedies that are begun and cannot be ended: what they have taken stays taken, and what they keep out stays out."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from fractions import Fraction

from budgetfix.brief.models import Brief
from budgetfix.catalog.models import Catalog, Product
from budgetfix.optimize.problem import NoPlan
from budgetfix.pipeline.planning import Walked
from budgetfix.pipeline.rest import Left
from budgetfix.remedies.candidate import Candidate

Walk = Callable[[Left], Walked | NoPlan]


def unended(left: Left, ids: Iterable[str]) -> Left:
    """The rest without these begun remedies: their limits and goods are spent, they are on offer no more."""
    gone = tuple(sorted({*ids} & set(left.done.begun_ids)))
    if not gone:
        return left
    ones = [one.candidate for one in left.done.begun if one.candidate.id in gone]
    job = replace(left.job, brief=_spent(left.job.brief, ones), catalog=_used(left.job.catalog, ones))
    begun = tuple(id for id in left.rest.begun if id not in gone)
    return replace(left, job=job, rest=replace(left.rest, begun=begun, unended=(*left.rest.unended, *gone)))


def ended_if_possible(left: Left, walk: Walk) -> tuple[Left, Walked | NoPlan]:
    """The best plan of the rest that ends what is begun; where none does, without as little of it as that needs.

    What is given up is part of what clashes, one after the other; of the first two by id both ways are tried, and the
    one is taken that gives up fewer, then the better plan.
    """
    found = walk(left)
    if not isinstance(found, NoPlan) or not left.rest.begun:
        return left, found
    named = [id for id in left.rest.begun if f"must:{id}" in found.clash] or list(left.rest.begun)
    tried = [ended_if_possible(unended(left, (id,)), walk) for id in named[:2]]
    return min(tried, key=_given_up)


def _given_up(one: tuple[Left, Walked | NoPlan]) -> tuple[bool, int, int, int]:
    left, found = one
    if isinstance(found, NoPlan):
        return True, 0, 0, 0
    return False, len(left.rest.unended), found.answer.plan.hazards, found.answer.plan.points


def _spent(brief: Brief, ones: Iterable[Candidate]) -> Brief:
    """The limits, never below 0, without what these have spent of them."""
    left = dict(brief.limits)
    for one in ones:
        for name, amount in one.spends:
            left[name] = max(Fraction(0), left[name] - amount) if name in left else Fraction(0)
    limits = tuple((name, left[name]) for name, _ in brief.limits)
    return Brief(**{**dict(brief), "limits": limits})


def _used(catalog: Catalog, ones: Iterable[Candidate]) -> Catalog:
    """What is on hand without the goods of these, as far as there are any."""
    used: dict[str, Fraction] = {}
    for one in ones:
        for product, amount in one.goods:
            used[product] = used.get(product, Fraction(0)) + amount
    products = tuple(_less(one, used.get(one.product, Fraction(0))) for one in catalog.products)
    return Catalog(**{**dict(catalog), "products": products})


def _less(one: Product, amount: Fraction) -> Product:
    if not amount:
        return one
    return Product(**{**dict(one), "on_hand": max(Fraction(0), one.on_hand - amount)})
