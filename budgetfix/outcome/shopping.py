"""What a shop and the way home need beside the bill: bags, days to give back, how dear it may get, what else would do.

One bag a task that has goods, lettered in the order of work, so that on the day nobody searches. The last day to give
something back counts from the day it is there: the day of its round of shops, or so many days after the order.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date, timedelta

from budgetfix.catalog.models import Product
from budgetfix.framing.frame import Framed, Ground
from budgetfix.framing.options import ERRAND
from budgetfix.framing.purses import purses, round_id
from budgetfix.optimize.ceilings import Ceiling
from budgetfix.optimize.problem import Plan
from budgetfix.outcome.book import MoneyLine, Task
from budgetfix.outcome.second_choice import second_choice
from budgetfix.outcome.take_along import take_along
from budgetfix.remedies.candidate import Candidate
from budgetfix.room.survey import Survey

MAY_WAIT = "any like it; it may wait until you move out"
"""Of what nobody uses before that."""
CHECK_BEFORE = "it is used after the last day to give it back: unpack and check it before"
CHECK_THERE = "it cannot be given back: look it over before you pay"


@dataclass(frozen=True)
class Shopped:
    """One plan that was shopped for. `room`: as the plan leaves it. `prices`: by product, as far as worked out."""

    base: Ground
    framed: Framed
    plan: Plan
    room: Survey | None
    prices: Mapping[str, Ceiling]
    accepts: Mapping[str, str]
    """By product, the range of sizes that would do as well, where no remedy kind said it."""

    def chosen(self) -> tuple[Candidate, ...]:
        """The chosen candidates, by id."""
        return tuple(self.framed.candidates[id] for id in self.plan.chosen if not id.startswith(ERRAND))

    def buyers(self, product: str) -> tuple[Candidate, ...]:
        """Whoever uses it."""
        return tuple(one for one in self.chosen() if product in dict(one.uses))


def shopped(
    about: Shopped, lines: tuple[MoneyLine, ...], todo: tuple[Task, ...]
) -> tuple[tuple[MoneyLine, ...], tuple[Task, ...]]:
    """The lines of money and the tasks, with all that the shop needs written on them."""
    bags = bags_of(about, lines, todo)
    products = {one.product: one for one in about.base.catalog.products}
    full = tuple(line if line.product is None else _line(about, line, products[line.product], bags) for line in lines)
    packed = tuple(replace(task, bag=bags.get(task.candidate, "") if task.step <= 1 else "") for task in todo)
    return full, packed


def _line(about: Shopped, line: MoneyLine, product: Product, bags: Mapping[str, str]) -> MoneyLine:
    own = product.stock is not None
    price = Ceiling(product.product) if own else about.prices.get(product.product, Ceiling(product.product))
    buyers = about.buyers(product.product)
    days = days_to_return(about.base, product)
    until = give_back_by(about, product, line)
    return replace(
        line,
        accepts=line.accepts or about.accepts.get(product.product, ""),
        second_choice="" if own else second_choice(about.base, about.framed, about.plan, price) if buyers else MAY_WAIT,
        most_minor=None if price.more_minor is None else line.line_minor + price.more_minor,
        any_price=price.any_price,
        take_along=product.take_along or _from_the_shop(about, product, buyers),
        return_by=until,
        no_return=days == 0,
        mind=CHECK_THERE if days == 0 else CHECK_BEFORE if _too_late(about, buyers, until) else "",
        bag=", ".join(dict.fromkeys(bags[one.id] for one in sorted(buyers, key=lambda one: _order(bags[one.id])))),
    )


def _from_the_shop(about: Shopped, product: Product, buyers: tuple[Candidate, ...]) -> str:
    """What to have in the bag at the shop; nothing for what stands in one's own store."""
    return "" if product.stock is not None else take_along(product, buyers, about.base.survey, about.room)


def bags_of(about: Shopped, lines: tuple[MoneyLine, ...], todo: tuple[Task, ...]) -> dict[str, str]:
    """The letter of each task that has goods, by candidate, in the order of work."""
    bought = {line.product for line in lines if line.product is not None}
    uses = {one.id: {product for product, _ in one.uses} for one in about.chosen()}
    with_goods = [id for id in dict.fromkeys(task.candidate for task in todo) if uses.get(id, set()) & bought]
    return {id: letters(number) for number, id in enumerate(with_goods)}


def letters(number: int) -> str:
    """A ... Z, AA, AB ...; `number` from 0."""
    more, rest = divmod(number, 26)
    return (letters(more - 1) if more else "") + chr(ord("A") + rest)


def _order(bag: str) -> tuple[int, str]:
    return len(bag), bag


def days_to_return(base: Ground, product: Product) -> int | None:
    """Days within which it can be given back: its own, else its shop's; None where nobody says."""
    if product.return_days is not None:
        return product.return_days
    return next((shop.return_days for shop in base.catalog.shops if shop.shop == product.shop), None)


def give_back_by(about: Shopped, product: Product, line: MoneyLine) -> date | None:
    """The last day to give it back; None where it cannot be, or days or dates are not known."""
    days, there = days_to_return(about.base, product), there_on(about, product, line)
    return there + timedelta(days=days) if days and there is not None else None


def there_on(about: Shopped, product: Product, line: MoneyLine) -> date | None:
    """The day on which it is there: when its errand is run, or its days after the order, whichever is later.

    What waits for money is ordered on the day on which that comes, and fetched by the round of that day.
    """
    brief = about.base.brief
    errands = [errand for errand in brief.errands if product.shop in errand.shops]
    phases = range(line.phase, max(1, len(purses(brief))))
    days = [_run_on(about, {round_id(errand, phase) for phase in phases}) for errand in errands]
    ordered = line.buy_on or brief.ordered
    days += [ordered + timedelta(days=product.lead_days)] if ordered is not None else []
    return max((day for day in days if day is not None), default=None)


def _run_on(about: Shopped, rounds: set[str]) -> date | None:
    """The day of the first of some rounds that is run."""
    hours = about.base.brief.hours or ()
    sessions = [one.session for one in about.plan.placed if one.option in rounds and one.session is not None]
    return hours[min(sessions)].on if sessions else None


def _too_late(about: Shopped, buyers: tuple[Candidate, ...], until: date | None) -> bool:
    """True where the day to give it back is over before the first session in which it is used."""
    hours, ids = about.base.brief.hours or (), {one.id for one in buyers}
    used = [hours[one.session].on for one in about.plan.placed if one.option in ids and one.session is not None]
    first = min((day for day in used if day is not None), default=None)
    return until is not None and first is not None and until < first
