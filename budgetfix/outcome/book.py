"""Everything that the outputs show of one plan, worked out and checked: exports only lay it out."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING

from budgetfix.outcome.leased import LandlordNote, Undoing
from budgetfix.outcome.odds import Chances
from budgetfix.outcome.paces import Paces
from budgetfix.outcome.quote import Costing, Quote
from budgetfix.room.survey import Survey

if TYPE_CHECKING:
    from budgetfix.outcome.so_far import Remembered, SoFar


@dataclass(frozen=True, slots=True)
class MoneyLine:
    """One line of money. `kind`: product, tool, hire, remedy, labour, fixed, delivery or tax."""

    kind: str
    product: str | None
    name: str
    shop: str | None
    shop_name: str
    packs: int | None
    unit_price_minor: int | None
    line_minor: int
    label: str = ""
    accepts: str = ""
    second_choice: str = ""
    tasks: tuple[str, ...] = ()
    """Names of the chosen remedies that it is for."""
    lead_days: int = 0
    example: bool = False
    most_minor: int | None = None
    """The most to pay for the line in all before another plan is better; None where that was not worked out."""
    any_price: bool = False
    """No price alters the plan: there is no limit of money, and nothing else does as much."""
    take_along: str = ""
    return_by: date | None = None
    """The last day to give it back, where the shop's days are known."""
    no_return: bool = False
    """It cannot be given back at all."""
    mind: str = ""
    """What to mind about giving it back, in words."""
    bag: str = ""
    """The bag (A, B, ...) that the goods of one task go into; of several tasks, their letters."""
    days: int = 0
    """The days that the price is for; 0 where it is one price for good."""
    place: str = ""
    """Where it stands in one's own store."""
    of: str = ""
    """What else than goods is paid for, by id: the remedy, errand, tool or shop; the name of a fixed cost."""
    phase: int = 0
    """Where money comes by date: the number of the day (from 0, see `PlanBook.purses`) from which on it is paid."""
    buy_on: date | None = None
    """That day; None where all money is there at once, or where sessions have no dates."""
    buy_session: int = 0
    """The session (from 1) instead, where sessions have no dates; else 0."""


@dataclass(frozen=True, slots=True)
class Spell:
    """Somebody at work on a task, from minute to minute of its session; `who` is empty for one alone without a name."""

    begin: int
    end: int
    who: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Task:
    """One step of a chosen candidate (or an errand), in working order. `session` from 1; None without hours.

    A chosen candidate that takes no time stands last, as step 0 of 0.
    """

    candidate: str
    name: str
    step: int
    steps: int
    session: int | None
    text: str
    minutes: int
    low: int
    likely: int
    high: int
    people: int
    who: tuple[str, ...] = ()
    tools: tuple[str, ...] = ()
    cares: tuple[str, ...] = ()
    done_when: str = ""
    worth: int = 0
    """Points (hazard points counted in) that would come back without this remedy; 0 on all but its last step."""
    cost_minor: int = 0
    """What it costs without shared goods, plus its own packs; on its first step only."""
    leaves: str = ""
    """What it leaves in the walls (pins, strips, plugs, ...), on its first step only; empty for nothing."""
    bag: str = ""
    """The bag that holds its goods, on its first step only."""
    spells: tuple[Spell, ...] = ()
    """When it is done, minutes from the start of its session; empty where no timeline was laid out."""
    helper: str = ""
    """Who of `who` only helps, for the first `help_minutes`."""
    help_minutes: int = 0
    base_minutes: int = 0
    """Planned minutes before the household's pace; 0 where none was applied."""

    @property
    def person_minutes(self) -> int:
        """Minutes of everybody at work on it."""
        return self.minutes * self.people + self.help_minutes


@dataclass(frozen=True, slots=True)
class SessionRow:
    """One session: person-minutes there are and are used. `number` from 1."""

    number: int
    on: date | None
    start_minute: int
    minutes_available: int
    minutes_used: int
    who: tuple[tuple[str, int, int], ...] = ()
    """(person, minutes there are, minutes used)."""
    end_minute: int | None = None
    """Where the van or the photographs cut the sessions; else None."""
    gone: bool = False
    """It is over: nothing is planned in it any more."""


@dataclass(frozen=True, slots=True)
class FaultRow:
    """One fault before and after. `fault` is a listed fault's id or `rule/subject`."""

    fault: str
    rule: str | None
    subject: str
    title: str
    room: str
    before: str
    sound: str
    after: str
    points_before: int
    points_after: int
    severity_before: float
    severity_after: float
    safety: bool
    certain: bool
    listed: bool
    state: str
    """fixed, better, still there, worse or new."""
    kept: bool = False
    """What it was about was taken away, and what stands there now does not answer it: its points are kept."""


@dataclass(frozen=True, slots=True)
class ChosenRow:
    """One chosen candidate. `cost_minor` without shared goods."""

    id: str
    name: str
    answers: tuple[str, ...]
    cost_minor: int
    cares: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LeftOutRow:
    """One candidate that is not in the plan, and why not."""

    id: str
    name: str
    cost_minor: int
    minutes: int
    would_add: int | None
    why: str


@dataclass(frozen=True, slots=True)
class MorePlan:
    """The best plan for another sum of money: `improvement` against this plan's, and what changes."""

    spent_minor: int
    improvement: int
    hazards_after: int
    minutes: int
    with_: tuple[str, ...]
    without: tuple[str, ...]
    this_one: bool = False


@dataclass(frozen=True, slots=True)
class NextStep:
    """What a little more would buy. `point`: the least money for one point more, in the same hours.

    `no_point`: no money buys one. `hour`: the best plan for the same money with an hour more in session
    `hour_session`. `complete`: the plans for other sums of money are all there are.
    """

    point: MorePlan | None = None
    no_point: bool = False
    hour: MorePlan | None = None
    hour_session: int = 0
    complete: bool = False


@dataclass(frozen=True, slots=True)
class Sums:
    """One of the three plans in figures; `chosen` are ids."""

    spent_minor: int
    improvement: int
    hazards_after: int
    minutes: int
    chosen: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Stop:
    """The best plan for one sum of money with lists of its own, by rising spend; `this_one` is the book's plan."""

    sums: Sums
    hazard_points_after: int
    money: tuple[MoneyLine, ...]
    tasks: tuple[Task, ...]
    sessions: tuple[SessionRow, ...] | None
    faults: tuple[FaultRow, ...]
    this_one: bool = False


@dataclass(frozen=True, slots=True)
class Mark:
    """A thing that the plan changes, adds or takes away, and the tasks (from 1, as listed) that do it."""

    item: str
    tasks: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Drawn:
    """What drawings show: the rooms as surveyed, as the plan leaves them, and what changed."""

    before: Survey
    after: Survey
    marks: tuple[Mark, ...]


@dataclass(frozen=True, slots=True)
class Side:
    """What the fair plan is for one of two people. Gains: points taken away as this person weighs them.

    `alone`: if only this person were asked, in the same money and hours. `half`: alone with half the money; None where
    that was not worked out. `gives_up`: remedies that the plan for this person alone holds and the fair plan does not.
    """

    person: str
    gets: int
    alone: int
    half: int | None
    gives_up: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class MoneyDay:
    """A day (or, where there are no dates, a session from 1) on which money comes, and how it stands from then on.

    `there_minor`: all that has come until then, less what is held back of it. `spent_minor`: what the plan spends up to
    the next such day, all before counted in.
    """

    on: date | None
    session: int
    comes_minor: int
    there_minor: int
    spent_minor: int

    @property
    def left_minor(self) -> int:
        return self.there_minor - self.spent_minor


@dataclass(frozen=True, slots=True)
class PlanBook:
    """One plan, whole. Money in minor units of `currency`; hazards are counts, `hazard_points` their points."""

    title: str
    room_words: str
    """For example "3.6 m by 4.5 m"; empty for a job of listed faults."""
    currency: str
    unit: str
    ordered: date | None
    budget_minor: int | None
    held_back_minor: int
    spent_minor: int
    hazards_before: int
    hazards_after: int
    hazard_points_before: int
    hazard_points_after: int
    points_before: int
    points_after: int
    proven: bool
    bound: int
    inspections: int
    placings: int
    candidates: int
    seconds_limit: float
    people: tuple[str, ...]
    money: tuple[MoneyLine, ...]
    tasks: tuple[Task, ...]
    sessions: tuple[SessionRow, ...] | None
    faults: tuple[FaultRow, ...]
    chosen: tuple[ChosenRow, ...]
    left_out: tuple[LeftOutRow, ...]
    more: tuple[MorePlan, ...]
    next: NextStep
    best: Sums
    recommended: Sums | None
    free: Sums | None
    everything: bool = False
    """The brief asks for everything: sooner and cheaper come before points, and that is what is proven."""
    notes: tuple[str, ...] = ()
    """Lines a reader must know: example prices, what was not got done in time, which survey was read."""
    cautions: tuple[str, ...] = ()
    stops: tuple[Stop, ...] = ()
    drawn: Drawn | None = None
    """None for a job of listed faults."""
    sides: tuple[Side, ...] = ()
    """The two people between whom the plan is the fair choice; empty where the household speaks as one."""
    undoing: Undoing | None = None
    """None without a lease."""
    landlord: LandlordNote | None = None
    """None where the home is not rented, there is no lease, or nothing needs leave."""
    quote: Quote | None = None
    """For a client: only where work is paid or goods have a mark-up."""
    costing: Costing | None = None
    offers: tuple[tuple[str, Stop], ...] = ()
    """Plans worked out for the quote, by the name of the option."""
    remembered: Remembered | None = None
    """What the workbook has to know to be read back; None where it is not to be."""
    so_far: SoFar | None = None
    """What was paid and done before: carried on above what is left, in every sum."""
    chances: Chances | None = None
    """What can be told of the chances that all of it fits."""
    paces: Paces | None = None
    """How quick the household is, where the brief or done steps tell; else None."""
    whole_budget_minor: int | None = None
    """The budget from which `so_far` was paid; None: what is left (`budget_minor`), and what was paid."""
    purses: tuple[MoneyDay, ...] = ()
    """Where money comes by date, earliest first; empty where all is there at once."""

    @property
    def improvement(self) -> int:
        return self.points_before - self.points_after
