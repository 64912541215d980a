"""The data of one choice: options, money, minutes, and trees that say what every set is worth.

Nothing here knows furniture. Everything is a whole number: money in minor units, time in minutes,
quantities and limits scaled by the caller, so that no float is ever rounded into money or packs.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True)
class Step:
    """One piece of work that is never split between sessions.

    `minutes` is clock time; `people` work at once, so person-minutes are minutes x people.
    `barred` names the people who do not do this kind of work; what is `loud` stands in no quiet session. The waits
    count from the step before (on a first step: from the last step of every option in `needs`); 1 = the next session
    at the earliest.
    With `help` a second person is at it for so many minutes from its start: one person does it (`people` is 1), and
    `no_help` names those who do not help. Crews of such a step are (who does it, who helps), in this order.
    """

    minutes: int
    people: int = 1
    barred: tuple[str, ...] = ()
    wait_sessions: int = 0
    wait_minutes: int = 0
    loud: bool = False
    first_session: int = 0
    """Earliest session (from 0) for this step, where goods of its own come later than the option's."""
    help: int = 0
    no_help: tuple[str, ...] = ()

    @property
    def person_minutes(self) -> int:
        """Minutes of everybody at work on it."""
        return self.minutes * self.people + self.help

    @property
    def hands(self) -> int:
        """How many people a crew of it has."""
        return self.people + (1 if self.help else 0)

    @property
    def joint_minutes(self) -> int:
        """Minutes during which several work at once."""
        return self.help or (self.minutes if self.people > 1 else 0)

    def minutes_in(self, place: int) -> int:
        """Minutes of the person at a place of the crew."""
        return self.help if self.help and place else self.minutes


@dataclass(frozen=True, slots=True)
class Option:
    """Something that may be chosen, whole or not at all. At most one option of a `group` is chosen."""

    id: str
    group: str | None = None
    steps: tuple[Step, ...] = ()
    cost_minor: int = 0
    uses: tuple[tuple[str, int], ...] = ()
    """(product id, scaled quantity)."""
    tools: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    excludes: tuple[str, ...] = ()
    spends: tuple[tuple[str, int], ...] = ()
    """(limit id, scaled amount)."""
    first_session: int = 0
    """Earliest session (from 0) in which a step may stand, because goods arrive; len(sessions) = never."""
    last_session: int | None = None
    """Last session (from 0) in which a step may stand; None: any."""
    one_day: bool = False
    """All its steps stand in sessions that begin on one day."""
    marks: int = 0
    """What it leaves behind for good, in a unit of the caller's; where any option has some, fewest marks come before
    spend."""
    arrivals: tuple[int, ...] = ()
    """Where money comes in phases and it costs any: the first session (from 0) for its first step, by the phase in
    which it is bought; rising, and that of the first phase is `first_session`."""
    rounds: tuple[tuple[str, ...], ...] = ()
    """For each errand that fetches its goods, the options that are rounds of it, one a phase: what is bought in a phase
    needs a round of that phase or a later one, done before its first step."""


@dataclass(frozen=True, slots=True)
class Product:
    """Sold in whole packs: packs = ceil((use - on_hand) / pack), never one more. Quantities are scaled."""

    id: str
    price_minor: int
    pack: int = 1
    on_hand: int = 0
    shop: str | None = None
    charge_numerator: int = 1
    charge_denominator: int = 1
    """A line is charged at packs x price x this, half up; delivery and tax go by the plain price."""
    most: int | None = None
    """Packs that there are, beyond what is on hand; None: sold without limit."""


@dataclass(frozen=True, slots=True)
class Tool:
    """Owned, or bought once, or hired and paid for in each session with a step of an option that lists it.

    `prepaid`: sessions of hire that are paid for already. `held`: of these, the whole sessions (from 0, as `wholes`
    counts them) for which it is hired whatever is done in them, so that no other session can have that hire.
    """

    id: str
    owned: bool = False
    buy_minor: int | None = None
    hire_minor: int | None = None
    prepaid: int = 0
    held: tuple[int, ...] = ()

    @property
    def for_hire(self) -> bool:
        """Whether there is any hire of it, still to be paid or paid already."""
        return self.hire_minor is not None or self.prepaid > 0

    def hire_for(self, sessions: int) -> int | None:
        """What is still to be paid for hiring it so often; None where it is not for hire so often."""
        more = max(0, sessions - self.prepaid)
        return None if self.hire_minor is None and (more or not self.prepaid) else (self.hire_minor or 0) * more

    @property
    def least_minor(self) -> int | None:
        """The least for having it in one session; None where it cannot be had."""
        return min((price for price in (self.buy_minor, self.hire_for(1)) if price is not None), default=None)


@dataclass(frozen=True, slots=True)
class Shop:
    """One order a shop: delivery, free from `free_over_minor` of goods on; tax on the goods, half up."""

    id: str
    delivery_minor: int = 0
    free_over_minor: int | None = None
    tax_numerator: int = 0
    tax_denominator: int = 1


@dataclass(frozen=True, slots=True)
class Limit:
    """A ceiling on the sum of what the chosen options spend of it (holes, kilograms). Scaled."""

    id: str
    most: int


@dataclass(frozen=True, slots=True)
class Session:
    """One block of hours. Minutes count from midnight of day 0; `minutes[p]` belongs to `people[p]`.

    `quiet`: no loud step stands in it. `continues`: it goes on from the session before without a break, so that setting
    up, hire and waits in sessions count the two as one.
    """

    start_minute: int
    end_minute: int
    minutes: tuple[int, ...]
    quiet: bool = False
    continues: bool = False


@dataclass(frozen=True, slots=True)
class Instalment:
    """One phase of money that comes by and by: from `first_session` (from 0) on, `most_minor` may be spent in all.

    What was spent before counts in; None: no limit. Later phases have no earlier session, the first one has session 0.
    """

    most_minor: int | None
    first_session: int


@dataclass(frozen=True, slots=True)
class Load:
    """A ceiling on what all packs together weigh. `weights`: (product, weight of a pack), scaled."""

    id: str
    most: int
    weights: tuple[tuple[str, int], ...]


@dataclass(frozen=True, slots=True)
class Asked:
    """What is known of the part of the world that a tree watches, for chosen and refused options.

    `branch` empty: exact, and the same for every completion. Else: options, no two of which may be chosen
    together, that have a say in this value; the tree branches into each of them and into none of them.
    `allowed` False: no plan may hold this combination (it would leave something too much worse). `voices`: the points
    in the eyes of each of two people whose priorities differ; empty where nobody asks.
    """

    hazards: int
    points: int
    branch: tuple[str, ...] = ()
    allowed: bool = True
    voices: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Tree:
    """What remains (hazard points, points) after a set, for one family of findings.

    `ask(chosen, refused)` is exact where its `branch` is empty. `bound(chosen, refused)` gives hazard points, points
    and the points of each voice that no completion can get below; it is asked only where growth stopped at a cap.
    """

    name: str
    ask: Callable[[frozenset[str], frozenset[str]], Asked]
    bound: Callable[[frozenset[str], frozenset[str]], tuple[int, ...]]
    cheap: bool = False
    """True: asking is mere arithmetic, so the whole tree is grown at once."""
    members: frozenset[str] | None = None
    """Options that can change an answer; None: any may."""


@dataclass(frozen=True, slots=True)
class Problem:
    """Everything that one choice depends on.

    `sessions` None: no limit of hours (minutes still count as a wish). `budget_minor` None: no limit of money;
    the contingency is held back by the caller. `must`: of each tuple of ids at least one is chosen.
    `must_all`: the order of wishes for "do everything": last session, marks, spend, hazards, points, person-minutes,
    ids.
    `last_session`: the last session (from 0) in which a step may stand. `setup_minutes` are taken from each
    person in each session in which that person works, once for all its parts (see `setting_up`).
    """

    options: tuple[Option, ...]
    trees: tuple[Tree, ...] = ()
    products: tuple[Product, ...] = ()
    tools: tuple[Tool, ...] = ()
    shops: tuple[Shop, ...] = ()
    limits: tuple[Limit, ...] = ()
    people: tuple[str, ...] = ("1",)
    sessions: tuple[Session, ...] | None = None
    budget_minor: int | None = None
    must: tuple[tuple[str, ...], ...] = ()
    must_all: bool = False
    last_session: int | None = None
    setup_minutes: int = 0
    hazards_first: bool = True
    """False: hazard points are added to the points instead of being the first wish."""
    loads: tuple[Load, ...] = ()
    phases: tuple[Instalment, ...] = ()
    """Empty: all money is there at once. They need sessions, and are no matter without."""


@dataclass(frozen=True, slots=True)
class Extra:
    """Ceilings and forced choices on top of a problem: for the cheaper plans, the curve, and "why not"."""

    hazards_at_most: int | None = None
    points_at_most: int | None = None
    """Points that may remain, hazard points not counted."""
    marks_at_most: int | None = None
    both_at_most: int | None = None
    """Hazard points and points together that may remain."""
    spend_at_most: int | None = None
    chosen: tuple[str, ...] = ()
    refused: tuple[str, ...] = ()
    packs_at_most: tuple[tuple[str, int], ...] = ()
    """(product id, packs of it that may be bought); what is on hand may be used as well."""
    spend_first: bool = False
    """True: spend is the first wish, before hazards and points."""
    voices: tuple[int, ...] = ()
    """Whose points are wished for instead of everybody's, in this order."""
    voices_at_most: tuple[int | None, ...] = ()
    """Points that may remain in the eyes of each voice; None: no matter how many."""


Depth = Literal["worth", "figures", "set", "all"]
"""How much is asked for: hazards and points; spend as well; the unique set; the unique order of its steps as well."""


@dataclass(frozen=True, slots=True)
class Placed:
    """Step `step` (from 0) of option `option` stands in session `session` (from 0; None without sessions)."""

    option: str
    step: int
    session: int | None
    people: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Plan:
    """One answer that fits every limit. `packs`, `bought`, `hired` hold only what is more than nothing."""

    chosen: tuple[str, ...]
    placed: tuple[Placed, ...]
    hazards: int
    points: int
    spent_minor: int
    person_minutes: int
    packs: tuple[tuple[str, int], ...] = ()
    bought: tuple[str, ...] = ()
    hired: tuple[tuple[str, int], ...] = ()
    """(tool, sessions paid for)."""
    voices: tuple[int, ...] = ()
    """Points that remain in the eyes of each voice."""
    buys: tuple[tuple[str, int], ...] = ()
    """(option, phase of money in which it is bought), by option; empty where money does not come in phases."""


@dataclass(frozen=True, slots=True)
class Rounds:
    """How often a family had to be looked at again, and how often a chosen set had to be placed."""

    inspections: int = 0
    placings: int = 0

    def __add__(self, other: Rounds) -> Rounds:
        """Those of two searches together."""
        return Rounds(self.inspections + other.inspections, self.placings + other.placings)


Phase = Literal[
    "hazards",
    "points",
    "both",
    "marks",
    "spend",
    "minutes",
    "last",
    "ids",
    "order",
    "curve",
    "why_not",
    "ceilings",
    "clash",
    "first voice",
    "second voice",
    "fair",
]


@dataclass(frozen=True, slots=True)
class Round:
    """How far a search is, once a round. For wishes: what the best plan in hand has of it, and its proven floor.

    "curve": `best` plans for other sums of money, `floor` gaps between them. "why_not", "ceilings": `best` of `floor`
    answered.
    """

    phase: Phase
    best: int | None
    floor: int | None
    number: int = 0


Report = Callable[[Round], None]


@dataclass(frozen=True, slots=True)
class Answer:
    """The best plan found. `proven`: its hazards, points and spend are proven best.

    `least_hazards`, `least_points`: proven floors on what remains (equal to the plan's own when proven).
    """

    plan: Plan
    proven: bool
    least_hazards: int
    least_points: int
    rounds: Rounds


@dataclass(frozen=True, slots=True)
class NoPlan:
    """No set keeps every wish. `relax`: names of wishes, each of which alone, given up, would let a plan exist.

    `clash`: the fewest wishes that cannot stand together; empty where the clock left that open. `least_minor`: the
    budget with which all other wishes can be kept, where giving up the budget would do. `hopeless`: options of
    clashing musts that could never be chosen, with the words of `impossible`. `proven` False: the clock ended before
    any plan was found or ruled out. `open`: the clock left clash or relax unanswered.
    Names are "must:<ids joined by commas>", "must:all", "budget", "phases", "limit:<id>", "most:<product>",
    "load:<id>", "sessions", "last_session".
    """

    relax: tuple[str, ...] = ()
    clash: tuple[str, ...] = ()
    least_minor: int | None = None
    hopeless: tuple[tuple[str, str], ...] = ()
    proven: bool = True
    open: bool = False
