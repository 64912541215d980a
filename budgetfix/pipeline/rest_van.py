"""What a van that has been means for the rest: what it brought is there, nothing more comes from the store."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from budgetfix.brief.models import Brief
from budgetfix.brief.van import VAN_COSTS, Slot, Vans
from budgetfix.catalog.models import Catalog, Product
from budgetfix.pipeline.rest_money import Paid

HAS_BEEN = "stays in the store: the van has been"


@dataclass(frozen=True)
class VanLeft:
    """The brief and the catalogue after the vans that have been. `loaded`: remedies that stood in their windows."""

    brief: Brief
    catalog: Catalog
    loaded: tuple[str, ...] = ()


def past_slots(brief: Brief, day: date) -> tuple[tuple[str, Slot], ...]:
    """The ways of the van that were before that day."""
    return () if brief.vans is None else tuple((name, slot) for name, slot in brief.vans.slots if slot.on < day)


def past_costs(brief: Brief, day: date) -> frozenset[str]:
    """Their fixed costs, by name."""
    return frozenset(VAN_COSTS[name] for name, _ in past_slots(brief, day))


def van_left(brief: Brief, catalog: Catalog, paid: Paid, day: date) -> VanLeft:
    """`catalog` has what was bought on hand. A van to come still carries what was taken from the store for it."""
    if brief.vans is None:
        return VanLeft(brief, catalog)
    past = dict(past_slots(brief, day))
    taken = _taken_kg(catalog, paid)
    slots = {name: None if name in past else _less(slot, taken) for name, slot in brief.vans.slots}
    products = tuple(_stays(one) if "out" in past else one for one in catalog.products)
    return VanLeft(
        Brief(**{**dict(brief), "vans": Vans(**slots)}),
        Catalog(**{**dict(catalog), "products": products}),
        tuple(sorted({slot.task for slot in past.values() if slot.task is not None})),
    )


def _taken_kg(catalog: Catalog, paid: Paid) -> Fraction:
    """What the pieces weigh that were taken from the store, as far as known."""
    heavy = {one.product: one.weight_kg or Fraction(0) for one in catalog.products if one.stock is not None}
    bought = (one.planned.line for one in paid.by_kind("product") if one.state == "bought")
    return sum((heavy.get(line.product or "", Fraction(0)) * (line.packs or 0) for line in bought), Fraction(0))


def _less(slot: Slot, taken: Fraction) -> Slot:
    if slot.load_kg is None or not taken:
        return slot
    return Slot(**{**dict(slot), "load_kg": max(Fraction(0), slot.load_kg - taken)})


def _stays(one: Product) -> Product:
    return one if one.stock is None else Product(**{**dict(one), "stock": 0, "elsewhere": HAS_BEEN})
