"""The catalog: the user's remedies, products, tools and shops. Money in minor units, quantities exact."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

from pydantic import BaseModel, ConfigDict, Field

from budgetfix.brief.stay import Stay
from budgetfix.room.items import Table
from budgetfix.room.survey import Value


class Frozen(BaseModel):
    """Records do not change, and refuse what they do not know."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True, arbitrary_types_allowed=True)


class Product(Frozen):
    """Something sold in whole packs. `what` and the sizes let a kind find what fits; sizes in millimetres."""

    product: str
    name: str = ""
    shop: str | None = None
    price_minor: int
    pack: Fraction = Fraction(1)
    unit: str = ""
    on_hand: Fraction = Fraction(0)
    lead_days: int = 0
    return_days: int | None = None
    """Days after it has come within which it can be given back; None: as its shop has it."""
    take_along: str = ""
    """What to have in the bag at the shop, in words; empty: as budgetfix would say it."""
    example: bool = False
    """The price is an example of ours, not a shop's."""
    label: str = ""
    """The size as the shop prints it."""
    what: str = ""
    """One of `WHATS`: rug, pad, rod, panels, console, ... ; empty: used only where a remedy names it."""
    width: float | None = None
    width_to: float | None = None
    """The longest that an extending rod reaches."""
    depth: float | None = None
    height: float | None = None
    drop: float | None = None
    heading: str = ""
    cloth: str = ""
    round: bool = False
    lumens: float | None = None
    kelvin: float | None = None
    lead: float | None = None
    """Length of its lead, mm."""
    carries: float | None = None
    """Kilograms."""
    stock: int | None = None
    """Packs of it that there are, in one's own store; None: sold without limit."""
    place: str = ""
    """Where it stands in the store."""
    weight_kg: Fraction | None = None
    """Kilograms of a pack."""
    free_from: date | None = None
    free_until: date | None = None
    term_days: int | None = None
    """The price is for so many days; None: it is one price for good."""
    least_days: int | None = None
    """The least that is charged."""
    elsewhere: str = ""
    """Where the packs stand that this job cannot have, and until when, in words (`catalog.stay.lent`)."""
    price_low_minor: int | None = None
    price_likely_minor: int | None = None
    price_high_minor: int | None = None
    """The three figures behind `price_minor`, which is their mean, half up; None: one price is known."""


WHATS = (
    "rug",
    "pad",
    "rod",
    "clamp rod",
    "panels",
    "hem tape",
    "clip rings",
    "console",
    "coffee table",
    "side table",
    "nightstand",
    "lamp",
    "floor lamp",
    "table lamp",
    "picture",
    "strap",
    "screen strap",
    "strips",
    "hooks",
    "basket",
    "cord cleat",
    "cable cover",
    "plant",
    "filler",
    "paint",
    "wall paint",
    "headboard",
    "blind",
    "electrician visit",
    "wall light",
    "sconce",
    "shade",
    "ceiling hook",
    "frame",
    "picture light",
    "print",
    "screws",
    "cable ties",
    "cable channel",
    "coat rack",
    "mat",
    "console table",
)


class Tool(Frozen):
    """Owned, bought, or hired by the session."""

    tool: str
    name: str = ""
    own: bool = False
    buy_minor: int | None = None
    hire_minor: int | None = None


class Shop(Frozen):
    """Delivery once an order, free from a sum of goods on; tax on goods as an exact fraction.

    `markup`: what is put on each line of goods for a client, halves up; delivery, tax and thresholds go by the shelf
    price.
    """

    shop: str
    name: str = ""
    delivery_minor: int = 0
    free_over_minor: int | None = None
    tax: Fraction = Fraction(0)
    markup: Fraction = Fraction(0)
    return_days: int | None = None
    """Days after goods have come within which they can be given back; None: not known."""


class WorkStep(Frozen):
    """One step. `minutes` is planned (the mean of three when three are given), rounded up to whole minutes."""

    minutes: int
    low: int | None = None
    likely: int | None = None
    high: int | None = None
    wait_sessions: int = 0
    wait_minutes: int = 0
    people: int | None = None
    text: str = ""
    from_stock: bool = True
    """False: it takes nothing from stock, so it may be done before the van is there."""
    help: int = 0
    """Minutes of a second pair of hands, at its start; one person does the rest."""


class SetChange(Frozen):
    """A change that a remedy states itself: fields of a survey thing set, a thing added, or taken away."""

    table: Table | None = None
    item: str
    set: tuple[tuple[str, Value], ...] = Field(default=(), strict=False)
    add: bool = False
    remove: bool = False


class Remedy(Frozen):
    """One line of the user's catalog of remedies. Reliefs are exact fractions of a listed fault's points."""

    remedy: str
    name: str = ""
    answers: tuple[tuple[str, Fraction], ...] = Field(default=(), strict=False)
    kind: str | None = None
    on: str | None = None
    set: tuple[tuple[str, Value], ...] = Field(default=(), strict=False)
    """Fields of the thing `on`; lengths in millimetres."""
    changes: tuple[SetChange, ...] = Field(default=(), strict=False)
    cost_minor: int = 0
    uses: tuple[tuple[str, Fraction], ...] = Field(default=(), strict=False)
    tools: tuple[str, ...] = Field(default=(), strict=False)
    pick_one: str | None = None
    needs: tuple[str, ...] = Field(default=(), strict=False)
    excludes: tuple[str, ...] = Field(default=(), strict=False)
    spends: tuple[tuple[str, Fraction], ...] = Field(default=(), strict=False)
    people: int = 1
    steps: tuple[WorkStep, ...] = Field(default=(), strict=False)
    cares: tuple[str, ...] = Field(default=(), strict=False)
    phase: int | None = None
    client: str = ""
    """What it is called to the client; empty: its name."""
    cost_low_minor: int | None = None
    cost_likely_minor: int | None = None
    cost_high_minor: int | None = None
    """The three figures behind `cost_minor`, which is their mean, half up; None: one cost is known."""


class Catalog(Frozen):
    """Everything that may be done or bought."""

    currency: str | None = None
    remedies: tuple[Remedy, ...] = Field(default=(), strict=False)
    products: tuple[Product, ...] = Field(default=(), strict=False)
    tools: tuple[Tool, ...] = Field(default=(), strict=False)
    shops: tuple[Shop, ...] = Field(default=(), strict=False)
    stay: Stay | None = None
    """The job's days, once the prices are those of a job (`catalog.stay.staying`)."""

    def product(self, product: str) -> Product:
        """The product of that id. Errors: KeyError."""
        for item in self.products:
            if item.product == product:
                return item
        raise KeyError(product)

    def of(self, what: str) -> tuple[Product, ...]:
        """All products of one kind, by id."""
        return tuple(sorted((p for p in self.products if p.what == what), key=lambda p: p.product))
