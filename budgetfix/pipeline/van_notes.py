"""What a reader must know of the van and the photographs, in sentences."""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.days import DAYS
from budgetfix.brief.models import Brief
from budgetfix.brief.van import Slot
from budgetfix.catalog.models import Catalog
from budgetfix.exports.lettering import clock, long_day
from budgetfix.framing.van import weights
from budgetfix.intake.job import Job
from budgetfix.optimize.problem import Plan

NUMBERS = {2: "two", 3: "three", 4: "four"}


def van_notes(job: Job, plan: Plan) -> tuple[str, ...]:
    """Window and load of each slot, goods whose weight nobody knows, and the photographs' hour.

    Without a list of hours nothing is placed, so that nothing is promised of when it is done.
    """
    vans, photographs = job.brief.vans, job.brief.photographs
    timed = job.brief.hours is not None
    notes = []
    for name, slot in vans.slots if vans is not None else ():
        window = f"{clock(slot.start_minute)} to {clock(slot.end_minute)}"
        waits = f"; nothing from stock is placed before {clock(slot.end_minute)}" if timed and name == "out" else ""
        notes.append(f"Van {name}: {long_day(slot.on)}, {window}{_load(job.catalog, plan, slot.load_kg)}{waits}.")
        notes[-1] += _parts(job.brief, slot) if name == "out" else ""
    if vans is not None and any(slot.load_kg is not None for _, slot in vans.slots):
        notes += _unweighed(job.catalog, plan)
    if photographs is not None:
        ends = " All work ends before." if timed else ""
        notes.append(f"Photographs: {long_day(photographs.on)} at {clock(photographs.minute)}.{ends}")
    return tuple(notes)


def _parts(brief: Brief, slot: Slot) -> str:
    """Which numbers the parts of a session have that the window cuts: plans count them as sessions of their own."""
    hours = brief.hours or ()
    cut = [at for at, one in enumerate(hours) if one.continues]
    numbers = sorted({*cut, *(at + 1 for at in cut)})
    if not numbers:
        return ""
    *most, last = (str(number) for number in numbers)
    count = NUMBERS.get(len(numbers), str(len(numbers)))
    return f" The van's window makes {count} sessions of {DAYS[slot.on.weekday()]}: {', '.join(most)} and {last}."


def load_kg(catalog: Catalog, plan: Plan) -> float:
    """What the plan's pieces from stock weigh together, as far as known."""
    known = weights(catalog)
    return float(sum(known[id] * packs for id, packs in plan.packs if id in known))


def _load(catalog: Catalog, plan: Plan, most: Fraction | None) -> str:
    return "" if most is None else f", {load_kg(catalog, plan):g} kg of {float(most):g} kg"


def _unweighed(catalog: Catalog, plan: Plan) -> list[str]:
    known, packs = weights(catalog), dict(plan.packs)
    missing = [
        one.name or one.product
        for one in catalog.products
        if one.stock is not None and one.product in packs and one.product not in known
    ]
    return [f"The load leaves out what has no weight in the catalogue: {', '.join(missing)}."] if missing else []
