"""A workbench for kinds: a fault of a room as a site, products to choose from, and what is left of the fault."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from budgetfix.brief.models import Brief
from budgetfix.catalog.models import Catalog, Product
from budgetfix.inspection.inspect import judge_one, look_at
from budgetfix.inspection.judging import Block, Judge, judges
from budgetfix.inspection.look import Look
from budgetfix.inspection.registry import RULES
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Site
from budgetfix.room.items import Item, Table
from budgetfix.room.overlaps import in_doorways, overlaps
from budgetfix.room.survey import Change, Survey

BRIEF = Brief()
JUDGES: dict[str, Judge] = {judge.rule.slug: judge for judge in judges(RULES, BRIEF)}


def product(name: str, what: str, **more: Any) -> Product:
    """A product at 10.00 unless said otherwise; sizes in millimetres."""
    return Product.model_validate({"product": name, "what": what, "price_minor": 1000, **more})


def site(survey: Survey, rule: str, subject: str, *products: Product) -> Site:
    """The fault that the rule finds on the subject, to be answered with these products. It must be there."""
    judge = JUDGES[rule]
    block = Block("r", rule, (judge,))
    finding = next(one for one in look_at(block, survey, BRIEF).findings if one.subject == subject and one.fault)
    return Site(survey, "r", subject, Catalog(products=products), BRIEF, finding, judge, judges=JUDGES)


def fitted(kind: Kind, survey: Survey, rule: str, subject: str, *products: Product) -> tuple[Candidate, ...]:
    """What the kind offers for a fault; every offer leaves no new overlap, uses what is sold, and says what to do."""
    offers = kind.fit(site(survey, rule, subject, *products))
    sold = {one.product for one in products}
    for one in offers:
        after = survey.changed(one.changes)
        assert set(overlaps(after, "r")) <= set(overlaps(survey, "r")), one.id
        assert set(in_doorways(after, "r")) <= set(in_doorways(survey, "r")), one.id
        assert {name for name, _ in one.uses} <= sold
        assert one.own
        assert one.changes
        assert one.done_when
        assert all(work.text and work.minutes > 0 for work in one.work)
        assert rule in one.targets
    assert len({one.id for one in offers}) == len(offers)
    return offers


def left(survey: Survey, candidate: Candidate, rule: str, subject: str) -> Fraction:
    """What the candidate leaves of a fault, as severity; 0 where the rule falls silent or passes."""
    look = Look(survey.changed(candidate.changes), "r")
    finding = judge_one(JUDGES[rule], look, subject, BRIEF)
    return Fraction(0) if finding is None else finding.severity


def severity(survey: Survey, rule: str, subject: str) -> Fraction:
    """The severity before anything is done."""
    finding = judge_one(JUDGES[rule], Look(survey, "r"), subject, BRIEF)
    assert finding is not None
    return finding.severity


def added(survey: Survey, table: Table, *things: Item) -> Survey:
    """The survey with more things in one of its tables."""
    return survey.changed(Change(table, thing.name, add=thing) for thing in things)


def altered(survey: Survey, name: str, **new: Any) -> Survey:
    """The survey with some figures (millimetres) of one thing changed."""
    return survey.changed((Change(survey.named[name][0], name, tuple(new.items())),))


def without(survey: Survey, *names: str) -> Survey:
    """The survey without these things."""
    return survey.changed(Change(survey.named[name][0], name, remove=True) for name in names)


def fields(candidate: Candidate, item: str) -> dict[str, Any]:
    """What a candidate sets on a thing."""
    return {name: value for change in candidate.changes if change.item == item for name, value in change.set}


def uses(candidate: Candidate) -> dict[str, int]:
    """Units of each product."""
    return {name: int(units) for name, units in candidate.uses}


def holes(candidate: Candidate) -> int:
    """New plug holes."""
    return int(dict(candidate.spends).get("holes", Fraction(0)))
