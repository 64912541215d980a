"""What the household wants and allows: money, hours, people, wishes. And the faults it typed in itself."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date
from fractions import Fraction
from typing import Literal

from pydantic import BaseModel, ConfigDict, Field

from budgetfix.base.numbers import half_up
from budgetfix.brief.incomes import Income
from budgetfix.brief.lease import Lease
from budgetfix.brief.quote import QuoteWords
from budgetfix.brief.stay import Stay
from budgetfix.brief.van import Photographs, Vans
from budgetfix.brief.whole_days import WholeDays

Profile = Literal["living", "listing", "handing-back"]


class Frozen(BaseModel):
    """Records do not change, and refuse what they do not know."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True, arbitrary_types_allowed=True)


class Person(Frozen):
    """Someone who works. `refuses`: words matched against a remedy's tools and hazards (ladder, drill, lifting).

    `priorities`: what matters more to this person than to the household; None: no say of one's own.
    """

    name: str
    refuses: tuple[str, ...] = Field(default=(), strict=False)
    priorities: tuple[tuple[str, Fraction], ...] | None = Field(default=None, strict=False)

    def priority(self, *names: str) -> Fraction:
        """Product of this person's priorities that name any of these."""
        return product_of(self.priorities or (), names)


def product_of(priorities: tuple[tuple[str, Fraction], ...], names: Iterable[str]) -> Fraction:
    """Product of the priorities that name any of these."""
    found, product = dict(priorities), Fraction(1)
    for name in names:
        product *= found.get(name, Fraction(1))
    return product


class Hours(Frozen):
    """One session of the list of hours: whole minutes a person, in the order of the brief's people.

    Minutes are after `load`. `day` counts from 0; `start_minute` is the minute of that day.
    """

    minutes: tuple[int, ...] = Field(strict=False)
    day: int
    start_minute: int = 0
    length_minutes: int
    on: date | None = None
    quiet: bool = False
    continues: bool = False
    """It goes on from the session before: the two are parts of one, cut by the van's window."""
    before_load: tuple[int, ...] = Field(default=(), strict=False)
    """The minutes before `load`; empty where they are the same."""

    @property
    def typed_minutes(self) -> tuple[int, ...]:
        """Minutes a person as typed, before `load`."""
        return self.before_load or self.minutes


class Errand(Frozen):
    """A round of shops, or a collection: a task before the first use of the goods of `shops`."""

    errand: str
    name: str
    shops: tuple[str, ...] = Field(strict=False)
    minutes: int
    people: int = 1


class FixedCost(Frozen):
    """Money that is spent whatever is chosen: a van, a fee. Work that is no remedy: `minutes` of each of `people`.

    `client`: what the quote calls it, where that is not its name.
    """

    name: str
    cost_minor: int
    people: int = 0
    minutes: int = 0
    client: str = ""


class BandChange(Frozen):
    """A band that the brief changes, in millimetres or in the rule's own unit; `switch` turns a rule on or off."""

    rule: str
    sound: tuple[float | None, float | None] | None = Field(default=None, strict=False)
    glaring: tuple[float | None, float | None] | None = Field(default=None, strict=False)
    switch: bool | None = None


class Brief(Frozen):
    """The brief. Money in minor units, time in whole minutes; None = no limit.

    `hours` None: no limit of hours; () = no time. `must` holds remedy ids or pick-one names, or is ("all",).
    """

    currency: str = "USD"
    budget_minor: int | None = None
    contingency_minor: int = 0
    contingency_share: Fraction = Fraction(0)
    hours: tuple[Hours, ...] | None = Field(default=None, strict=False)
    people: tuple[Person, ...] = Field(default=(Person(name="1"),), strict=False)
    limits: tuple[tuple[str, Fraction], ...] = Field(default=(), strict=False)
    must: tuple[str, ...] = Field(default=(), strict=False)
    must_all: bool = False
    never: tuple[str, ...] = Field(default=(), strict=False)
    priorities: tuple[tuple[str, Fraction], ...] = Field(default=(), strict=False)
    bands: tuple[BandChange, ...] = Field(default=(), strict=False)
    profile: Profile = "living"
    load: Fraction = Fraction(1)
    setup_minutes: int = 0
    errands: tuple[Errand, ...] = Field(default=(), strict=False)
    finish_by: int | None = None
    """Last session, counted from 1."""
    ordered: date | None = None
    may_worsen: tuple[str, ...] = Field(default=(), strict=False)
    hazards_first: bool = True
    catalog: str | None = None
    labour_minor_hour: int | None = None
    """What an hour of one person costs; None: nobody is paid."""
    fixed: tuple[FixedCost, ...] = Field(default=(), strict=False)
    stay: Stay | None = None
    vans: Vans | None = None
    photographs: Photographs | None = None
    lease: Lease | None = None
    quote: QuoteWords = QuoteWords()
    whole_days: WholeDays | None = None
    learn: bool = True
    """Whether real minutes of done steps change the minutes of those still to be done."""
    pace: tuple[tuple[str, Fraction], ...] = Field(default=(), strict=False)
    """How many times the usual minutes things take in this household: by kind, or "all"."""
    incomes: tuple[Income, ...] = Field(default=(), strict=False)
    """Where the money comes by and by, earliest first; their sum is the budget. Empty: all is there at once."""
    paid_work: tuple[str, ...] = Field(default=(), strict=False)
    """Ids of remedies and errands whose pay is paid already, of what is left of a job."""
    ordered_typed: bool = False
    """Whether the brief says itself when goods are ordered; else it is the day on which it is read."""

    def labour_minor(self, person_minutes: int) -> int:
        """The pay of so many person-minutes, half up to the minor unit."""
        return half_up(Fraction((self.labour_minor_hour or 0) * person_minutes, 60))

    def pay_minor(self, id: str, person_minutes: int) -> int:
        """The pay of a remedy's or an errand's person-minutes: nothing where it is paid already."""
        return 0 if id in self.paid_work else self.labour_minor(person_minutes)

    @property
    def fixed_minor(self) -> int:
        """All fixed costs together."""
        return sum(one.cost_minor for one in self.fixed)

    def held_back_minor(self) -> int:
        """The contingency in minor units, halves up; 0 without a budget."""
        return 0 if self.budget_minor is None else self.held_back_of(self.budget_minor)

    def held_back_of(self, budget_minor: int) -> int:
        """What would be held back of a budget, in minor units, halves up."""
        return self.contingency_minor + half_up(self.contingency_share * budget_minor)

    def budget_for(self, spend_minor: int) -> int:
        """The smallest budget that leaves so much for remedies, after what is held back and fixed costs; minor units.

        With all of it held back no budget does: then the sum itself is given.
        """
        kept = 1 - self.contingency_share
        wanted = spend_minor + self.fixed_minor + self.contingency_minor
        if kept <= 0:
            return wanted
        budget = int(wanted / kept)
        while budget - self.held_back_of(budget) - self.fixed_minor < spend_minor:
            budget += 1
        return budget

    def priority(self, *names: str) -> Fraction:
        """Product of the priorities that name any of these (rule, family, thing or listed fault)."""
        return product_of(self.priorities, names)

    @property
    def voices(self) -> tuple[Person, ...]:
        """The two people who have priorities of their own; empty where the household speaks as one."""
        return tuple(person for person in self.people if person.priorities is not None)


class ListedFault(Frozen):
    """A fault that the user typed in: points count as typed, times the priority that names it."""

    fault: str
    points: int
    what: str = ""
    where: str = ""
    safety: bool = False
    left: Fraction = Fraction(1)
    """The share of it that is left by what is done already, as the product of (1 - relief)."""
