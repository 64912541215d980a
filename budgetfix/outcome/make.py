"""From a checked plan to the book that every output shows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from budgetfix.brief.stay import Stay
from budgetfix.catalog.bill import BillLine
from budgetfix.catalog.models import Product
from budgetfix.catalog.stay import paid_days
from budgetfix.framing.frame import Framed, Ground
from budgetfix.framing.listed import remaining
from budgetfix.framing.options import ERRAND, labour_minor
from budgetfix.framing.purses import errands_by_id, purses
from budgetfix.optimize.ceilings import Ceiling
from budgetfix.optimize.problem import Answer, Plan
from budgetfix.outcome.book import (
    ChosenRow,
    LeftOutRow,
    MoneyLine,
    MorePlan,
    NextStep,
    PlanBook,
    Side,
    Stop,
    Sums,
)
from budgetfix.outcome.by_date import dated_lines, money_days
from budgetfix.outcome.chances import chances
from budgetfix.outcome.changes import drawn
from budgetfix.outcome.check import Checked
from budgetfix.outcome.faults import fault_rows
from budgetfix.outcome.lease_rows import landlord_note, undoing
from budgetfix.outcome.lists import Lists
from budgetfix.outcome.paces import learnt
from budgetfix.outcome.remembering import numbered_on, remembered
from budgetfix.outcome.shopping import Shopped, shopped
from budgetfix.outcome.so_far import SoFar
from budgetfix.outcome.tasks import cares_of, session_rows, tasks
from budgetfix.outcome.worth import Worth
from budgetfix.remedies.candidate import Candidate

KEEP = "keep for moving out"
"""What goods are for that are only used when all is undone."""


@dataclass(frozen=True)
class Around:
    """What stands beside the best plan: the other plans, what was left out, notes."""

    title: str
    room_words: str
    seconds_limit: float
    recommended: Sums | None
    free: Sums | None
    more: tuple[MorePlan, ...]
    next: NextStep
    left_out: tuple[LeftOutRow, ...]
    notes: tuple[str, ...]
    stops: tuple[Stop, ...] = ()
    prices: Mapping[str, Ceiling] = field(default_factory=dict)
    """By product: how dear it may get, and the best plan without it."""
    accepts: Mapping[str, str] = field(default_factory=dict)
    """By product: the range of sizes that would do as well, where a remedy of the user's set them."""
    sides: tuple[Side, ...] = ()
    """The two people whose fair choice it is."""


def lists(
    base: Ground,
    framed: Framed,
    plan: Plan,
    found: Checked,
    worth: Worth,
    prices: Mapping[str, Ceiling] | None = None,
    accepts: Mapping[str, str] | None = None,
) -> Lists:
    """The lists of a checked plan. `prices`, `accepts`: by product, as far as worked out (see `Around`)."""
    ids = tuple(one.id for one in found.chosen)
    each = {id: worth.of(id, ids) for id in ids}
    paid = money(base, found.bill, found.chosen)
    if purses(base.brief):
        paid = dated_lines(base, plan, found.chosen, found.bill, paid)
    lines, todo = shopped(
        Shopped(base, framed, plan, found.room, prices or {}, accepts or {}),
        paid,
        tasks(base.brief, base.catalog, framed, plan, each),
    )
    return Lists(
        lines,
        todo,
        session_rows(base.brief, framed, plan, found.used, base.rest.live),
        fault_rows(base, found.findings, found.listed_after),
    )


def sums(plan: Plan, fixed_minor: int, points_before: int, hazards_after: int) -> Sums:
    """A plan in figures; `fixed_minor` is spent whatever is chosen."""
    chosen = tuple(id for id in plan.chosen if not id.startswith(ERRAND))
    return Sums(plan.spent_minor + fixed_minor, points_before - plan.points, hazards_after, plan.person_minutes, chosen)


def before(base: Ground) -> tuple[int, int, int]:
    """(hazards as a count, hazard points, points) as surveyed and listed."""
    findings = [finding for seen in base.seen for finding in seen.findings]
    listed = {fault.fault: remaining(fault, (), base.brief) for fault in base.faults}
    safe = [fault for fault in base.faults if fault.safety and listed[fault.fault] > 0]
    count = sum(1 for finding in findings if finding.safety and finding.fault) + len(safe)
    hazards = sum(finding.points for finding in findings if finding.safety)
    hazards += sum(listed[fault.fault] for fault in safe)
    points = sum(finding.points for finding in findings if not finding.safety)
    points += sum(listed[fault.fault] for fault in base.faults if not fault.safety)
    return count, hazards, points


def hazards_left(base: Ground, found: Checked) -> int:
    """How many hazards are still there: safety findings with severity above 0, listed ones with points left."""
    measured = sum(1 for finding in found.findings if finding.safety and finding.fault)
    return measured + sum(1 for fault in base.faults if fault.safety and found.listed_after[fault.fault] > 0)


def make_book(
    base: Ground, framed: Framed, answer: Answer, found: Checked, around: Around, earlier: SoFar | None = None
) -> PlanBook:
    """The book of the best plan. `earlier`: what was paid and done before, with a sum for all that counts as paid."""
    plan, brief = answer.plan, base.brief
    worth = Worth(base, framed)
    made = lists(base, framed, plan, found, worth, around.prices, around.accepts)
    odds = chances(base, framed, plan, made.tasks, worth)
    made = replace(made, tasks=numbered_on(made.tasks, earlier))
    cares = cares_of(brief, framed, plan)
    count, hazard_points, points = before(base)
    after = hazards_left(base, found)
    book = PlanBook(
        title=around.title,
        room_words=around.room_words,
        currency=brief.currency,
        unit=base.survey.household.unit if base.survey is not None else "mm",
        ordered=brief.ordered,
        budget_minor=brief.budget_minor,
        held_back_minor=brief.held_back_minor(),
        spent_minor=plan.spent_minor + brief.fixed_minor,
        hazards_before=count,
        hazards_after=after,
        hazard_points_before=hazard_points,
        hazard_points_after=plan.hazards,
        points_before=points,
        points_after=plan.points,
        proven=answer.proven,
        bound=points - plan.points if answer.proven else max(points - answer.least_points, points - plan.points),
        inspections=answer.rounds.inspections,
        placings=answer.rounds.placings,
        candidates=len(framed.candidates),
        seconds_limit=around.seconds_limit,
        people=tuple(person.name for person in brief.people),
        money=made.money,
        tasks=made.tasks,
        sessions=made.sessions,
        faults=made.faults,
        chosen=_chosen_rows(base, found, worth, cares),
        left_out=around.left_out,
        more=around.more,
        next=around.next,
        best=sums(plan, brief.fixed_minor, points, after),
        recommended=around.recommended,
        free=around.free,
        everything=brief.must_all,
        notes=around.notes,
        cautions=tuple(dict.fromkeys(care for one in found.chosen for care in cares[one.id])),
        drawn=drawn(base.survey, found.room, found.chosen, made.tasks),
        sides=around.sides,
        stops=tuple(_as_booked(stop, made, earlier) for stop in around.stops),
        undoing=undoing(base, found.chosen),
        landlord=landlord_note(base, found.chosen),
        chances=odds,
        paces=learnt(brief.pace, ()) if brief.pace else None,
        purses=money_days(base, found.bill),
    )
    return replace(book, remembered=remembered(base, framed, plan, found, made, earlier), so_far=earlier)


def _as_booked(stop: Stop, made: Lists, earlier: SoFar | None) -> Stop:
    """The book's own plan has the same lists on the slider as in the book; steps are numbered alike in all."""
    if not stop.this_one:
        return replace(stop, tasks=numbered_on(stop.tasks, earlier))
    return replace(stop, money=made.money, tasks=made.tasks, sessions=made.sessions, faults=made.faults)


def _chosen_rows(
    base: Ground, found: Checked, worth: Worth, cares: Mapping[str, tuple[str, ...]]
) -> tuple[ChosenRow, ...]:
    ids = tuple(one.id for one in found.chosen)
    return tuple(_chosen(base, one, worth.answers(one.id, ids), cares[one.id]) for one in found.chosen)


def _chosen(base: Ground, one: Candidate, measured: tuple[str, ...], cares: tuple[str, ...]) -> ChosenRow:
    listed = {fault.fault for fault in base.faults if fault.points and base.brief.priority(fault.fault)}
    answers = tuple(fault for fault, relief in one.answers if fault in listed and relief > 0)
    cost = one.cost_minor + labour_minor(one, base.brief)
    return ChosenRow(one.id, one.name, (*answers, *measured), cost, cares)


def money(base: Ground, bill: tuple[BillLine, ...], chosen: tuple[Candidate, ...]) -> tuple[MoneyLine, ...]:
    """The bill in words, with what each line is for."""
    catalog = base.catalog
    products = {product.product: product for product in catalog.products}
    shops = {shop.shop: shop.name or shop.shop for shop in catalog.shops}
    tools = {tool.tool: tool.name or tool.tool for tool in catalog.tools}
    names = {one.id: one.name for one in chosen}
    names |= {id: one.name for id, one in errands_by_id(base.brief).items()}
    return tuple(_line(line, products, shops, tools, names, chosen, catalog.stay) for line in bill)


def _line(
    line: BillLine,
    products: Mapping[str, Product],
    shops: Mapping[str, str],
    tools: Mapping[str, str],
    names: Mapping[str, str],
    chosen: tuple[Candidate, ...],
    stay: Stay | None,
) -> MoneyLine:
    shop = shops.get(line.shop or "", line.shop or "")
    if line.kind == "product":
        product = products[line.id]
        buyers = tuple(one for one in chosen if line.id in dict(one.uses))
        kept = any(line.id in dict(one.later) for one in chosen)
        return MoneyLine(
            "product",
            line.id,
            product.name or line.id,
            line.shop,
            shop,
            line.packs,
            line.unit_price_minor,
            line.line_minor,
            label=product.label,
            accepts="; ".join(
                dict.fromkeys(one.accepts for one in buyers if one.accepts and one.accepts_of == line.id)
            ),
            tasks=(*(one.name for one in buyers), *((KEEP,) if kept else ())),
            lead_days=product.lead_days,
            example=product.example,
            days=paid_days(product, stay),
            place=product.place,
        )
    words = {
        "delivery": f"Delivery, {shop}",
        "tax": f"Tax, {shop}",
        "tool": tools.get(line.id, line.id),
        "hire": f"Hire: {tools.get(line.id, line.id)}",
        "labour": f"Labour: {names.get(line.id, line.id)}",
        "fixed": line.id,
    }
    users = tuple(one.name for one in chosen if line.kind in ("tool", "hire") and line.id in one.tools)
    return MoneyLine(
        line.kind,
        None,
        words.get(line.kind, names.get(line.id, line.id)),
        line.shop,
        shop,
        line.packs,
        line.unit_price_minor,
        line.line_minor,
        tasks=users or ((names[line.id],) if line.id in names else ()),
        of=line.id,
    )
