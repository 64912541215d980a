"""Candidates, errands and the brief as options, sessions and limits of one integer problem."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import timedelta
from fractions import Fraction

from budgetfix.brief.models import Brief, Errand, Person
from budgetfix.catalog.models import Catalog
from budgetfix.catalog.stay import most_packs
from budgetfix.framing.rest import WHOLE_JOB, Rest
from budgetfix.framing.scale import scaled
from budgetfix.framing.van import after_the_van
from budgetfix.optimize.problem import Limit, Option, Product, Session, Shop, Step, Tool
from budgetfix.remedies.candidate import Candidate, Work
from budgetfix.remedies.undoing import marks

ERRAND = "errand:"
"""Errands are options of their own, needed by what they fetch; their ids start with this."""


@dataclass(frozen=True)
class Scales:
    """The scales of products and limits."""

    products: Mapping[str, int]
    limits: Mapping[str, int]


def sessions(brief: Brief) -> tuple[Session, ...] | None:
    """The list of hours; None = no limit of hours."""
    if brief.hours is None:
        return None
    return tuple(
        Session(
            hours.day * 1440 + hours.start_minute,
            hours.day * 1440 + hours.start_minute + hours.length_minutes,
            hours.minutes,
            hours.quiet,
            hours.continues,
        )
        for hours in brief.hours
    )


def products(catalog: Catalog, by: Scales, rest: Rest = WHOLE_JOB) -> tuple[Product, ...]:
    """Products with whole quantities; of what is sold out there is only what is on hand."""
    out = dict(rest.sold_out)
    return tuple(
        Product(
            product.product,
            product.price_minor,
            int(product.pack * by.products[product.product]),
            int(product.on_hand * by.products[product.product]),
            product.shop,
            *_charge(catalog, product.shop),
            most=0 if product.product in out else most_packs(product, catalog.stay),
        )
        for product in sorted(catalog.products, key=lambda product: product.product)
        if product.product in by.products
    )


def _charge(catalog: Catalog, shop: str | None) -> tuple[int, int]:
    """What a line of this shop's goods is charged at, as (numerator, denominator)."""
    rate = next((1 + one.markup for one in catalog.shops if one.shop == shop), Fraction(1))
    return rate.numerator, rate.denominator


def labour_minor(candidate: Candidate, brief: Brief) -> int:
    """The pay for a candidate's planned person-minutes."""
    return brief.pay_minor(candidate.id, sum(work.person_minutes for work in candidate.work))


def tools(catalog: Catalog, rest: Rest = WHOLE_JOB) -> tuple[Tool, ...]:
    """Tools, by id."""
    prepaid, held = dict(rest.prepaid), dict(rest.held)
    return tuple(
        Tool(
            tool.tool,
            tool.own,
            tool.buy_minor,
            tool.hire_minor,
            prepaid.get(tool.tool, 0),
            held.get(tool.tool, ()) if tool.tool in prepaid else (),
        )
        for tool in sorted(catalog.tools, key=lambda tool: tool.tool)
    )


def shops(catalog: Catalog) -> tuple[Shop, ...]:
    """Shops, by id; tax as an exact fraction."""
    return tuple(
        Shop(shop.shop, shop.delivery_minor, shop.free_over_minor, shop.tax.numerator, shop.tax.denominator)
        for shop in sorted(catalog.shops, key=lambda shop: shop.shop)
    )


def limits(brief: Brief, by: Scales) -> tuple[Limit, ...]:
    """The brief's extra limits; a limit is rounded down to the scale, which loses nothing that fits."""
    return tuple(Limit(name, int(most * by.limits.get(name, 1))) for name, most in sorted(brief.limits))


def barred(person: Person, candidate: Candidate) -> bool:
    """True where someone does not do this: a refused word is a tool or a hazard of the candidate."""
    words = {word.casefold() for word in (*candidate.tools, *candidate.hazards)}
    return any(refused.casefold() in words for refused in person.refuses)


def first_session(lead_days: int, brief: Brief, ordered_day: int = 0) -> int:
    """First session on or after `ordered` + lead days; the number of sessions when there is none.

    `ordered_day`: the day of the order among sessions without dates.
    """
    if brief.hours is None or lead_days <= 0:
        return 0
    for index, hours in enumerate(brief.hours):
        if hours.on is not None and brief.ordered is not None:
            if hours.on >= brief.ordered + timedelta(days=lead_days):
                return index
        elif hours.day >= ordered_day + lead_days:
            return index
    return len(brief.hours)


def lead_days(candidate: Candidate, catalog: Catalog, totals: Mapping[str, Fraction], rest: Rest = WHOLE_JOB) -> int:
    """The longest wait for goods; what is on hand for everybody, or for this (see `Rest.covered`), does not wait."""
    leads = {
        product.product: product.lead_days
        for product in catalog.products
        if product.on_hand < totals.get(product.product, Fraction(0))
    }
    waited = (product for product, units in candidate.uses if units > 0 and rest.needs_order(candidate.id, product))
    return max((leads.get(product, 0) for product in waited), default=0)


def goods_there(
    candidate: Candidate, brief: Brief, catalog: Catalog, totals: Mapping[str, Fraction], rest: Rest = WHOLE_JOB
) -> int:
    """First session in which all goods of a candidate are there: those to be ordered, and those that are on the way."""
    arriving = dict(rest.arriving)
    ways = [first_session(lead_days(candidate, catalog, totals, rest), brief, rest.day)]
    for product, units in candidate.uses:
        there = rest.there(candidate.id, product)
        ways.append(there if there is not None else arriving.get(product, 0) if units > 0 else 0)
    return max(ways)


WITH_HELP = ("ladder", "drill")
"""Work of one pair of hands, however many hold, hand and steady from the floor (common practice)."""


def refusing(work: Work, candidate: Candidate, brief: Brief) -> tuple[str, ...]:
    """Who takes no part in a step. Whoever only stays off the ladder helps from the floor, if somebody else goes up.

    Of those, one fewer than the step asks for may help, the first in the brief: then somebody goes up in every crew.
    """
    barring = tuple(person.name for person in brief.people if barred(person, candidate))
    if len(barring) == len(brief.people):
        return barring
    never = unwilling(candidate, brief)
    below = [name for name in barring if name not in never]
    return tuple(name for name in barring if name in never or name in below[work.people - 1 :])


def unwilling(candidate: Candidate, brief: Brief) -> tuple[str, ...]:
    """Who does not even help from the floor."""
    plain = replace(
        candidate,
        hazards=tuple(word for word in candidate.hazards if word not in WITH_HELP),
        tools=tuple(word for word in candidate.tools if word not in WITH_HELP),
    )
    return tuple(person.name for person in brief.people if barred(person, plain))


LOUD = frozenset({"drill", "hammer", "saw"})
"""Tools and hazards that wake people up; pins are hammered in, strips are not."""


def loud(candidate: Candidate) -> bool:
    """True where the work is too loud for a quiet session (common practice: no drilling, no hammering)."""
    words = {word.casefold() for word in (*candidate.tools, *candidate.hazards)}
    return bool(words & LOUD) or ("pins" in words and "strips" not in words)


def option(
    candidate: Candidate,
    brief: Brief,
    catalog: Catalog,
    by: Scales,
    totals: Mapping[str, Fraction],
    needs: tuple[str, ...],
    rest: Rest = WHOLE_JOB,
) -> Option:
    """One candidate as an option."""
    waits = [(place, at) for id, place, at in rest.earliest if id == candidate.id]
    earliest = max((at for place, at in waits if place == 0), default=0)
    van = after_the_van(candidate, catalog, brief)
    return Option(
        id=candidate.id,
        group=candidate.pick_one or None,
        one_day=brief.whole_days is not None and brief.whole_days.covers(candidate.room),
        steps=tuple(
            Step(
                work.minutes,
                work.people,
                refusing(work, candidate, brief),
                work.wait_sessions,
                work.wait_minutes,
                loud(candidate),
                max([van if work.from_stock else 0, *(at for mine, at in waits if place and mine == place)]),
                help=work.help,
                no_help=unwilling(candidate, brief) if work.help else (),
            )
            for place, work in enumerate(candidate.work)
        ),
        cost_minor=candidate.cost_minor + labour_minor(candidate, brief),
        uses=scaled(candidate.goods, by.products),
        tools=tuple(sorted(candidate.tools)),
        needs=tuple(sorted({*candidate.needs, *needs})),
        excludes=tuple(sorted(candidate.excludes)),
        spends=scaled(candidate.spends, by.limits),
        first_session=max(
            goods_there(candidate, brief, catalog, totals, rest), earliest, rest.live if candidate.work else 0
        ),
        marks=marks(candidate) if brief.lease is not None and brief.lease.reversible_first else 0,
    )


def errand_option(errand: Errand, brief: Brief, rest: Rest = WHOLE_JOB) -> Option:
    """An errand as an option that only those need who need its goods."""
    paid = brief.pay_minor(ERRAND + errand.errand, errand.minutes * errand.people)
    steps = (Step(errand.minutes, errand.people),)
    return Option(id=ERRAND + errand.errand, steps=steps, cost_minor=paid, first_session=rest.live)


def errands_of(
    candidate: Candidate, catalog: Catalog, errands: Iterable[Errand], rest: Rest = WHOLE_JOB
) -> tuple[str, ...]:
    """The errands that fetch this candidate's goods, as far as they are not bought or on hand for it."""
    shop_of = {product.product: product.shop for product in catalog.products}
    missing = (product for product, units in candidate.uses if units > 0 and rest.needs_order(candidate.id, product))
    wanted = {shop_of.get(product) for product in missing}
    return tuple(ERRAND + errand.errand for errand in errands if wanted & set(errand.shops))
