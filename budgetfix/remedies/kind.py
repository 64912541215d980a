"""A kind of remedy: what it answers, what it usually takes, and one function that says what fits."""

from __future__ import annotations

import math
import sys
from collections.abc import Callable, Container, Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property

from budgetfix.base.tape import write_length
from budgetfix.base.twin import MM_PER_INCH
from budgetfix.brief.models import Brief
from budgetfix.catalog.models import Catalog
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.judging import Judge
from budgetfix.inspection.look import Look
from budgetfix.remedies.candidate import Candidate, Work
from budgetfix.remedies.candidate import Leaves as Leaves
from budgetfix.remedies.candidate import planned as planned
from budgetfix.remedies.cares import LEASE, cares_for
from budgetfix.remedies.following import Following, following, says
from budgetfix.remedies.lifting import load_cares, loads
from budgetfix.remedies.old_paint import disturbed_mm2
from budgetfix.room.overlaps import in_doorways, overlaps
from budgetfix.room.places import WallLine, wall_lines
from budgetfix.room.survey import Change, Survey, Value

MASONRY, HIGH_CEILING = Fraction(7, 5), Fraction(5, 4)
"""Judgement of the trade, shipped as defaults: drilling masonry x 1.4, rods under a ceiling over 9 ft x 1.25."""
MOST = 4
"""Candidates that a kind offers for one finding."""
NINE_FEET_MM = 108 * MM_PER_INCH


@dataclass(frozen=True)
class Site:
    """One fault to be answered: the room, the subject, what is in the catalog, what the brief allows."""

    survey: Survey
    room: str
    subject: str
    catalog: Catalog
    brief: Brief
    finding: Finding | None = None
    judge: Judge | None = None
    products: tuple[str, ...] | None = None
    """Only these products may be used (a user's remedy names them); None = all."""
    fixed: tuple[tuple[str, Value], ...] = ()
    """Fields of the subject that a user's remedy has set: the rest is sized to them."""
    judges: Mapping[str, Judge] = field(default_factory=dict)
    """All rules that are on, by slug: a kind that answers several is ranked by all of them."""

    @property
    def metric(self) -> bool:
        return self.survey.household.metric

    @cached_property
    def lines(self) -> dict[str, WallLine]:
        return wall_lines(self.survey, self.room)

    @cached_property
    def taken(self) -> frozenset[tuple[str, str]]:
        """Pairs on one spot as surveyed, pieces before doors among them."""
        return frozenset((*overlaps(self.survey, self.room), *in_doorways(self.survey, self.room)))

    def fits(self, changes: Iterable[Change]) -> bool:
        """True where the changes put nothing on a spot that is taken, and nothing before a door."""
        after = self.survey.changed(changes)
        return {*overlaps(after, self.room), *in_doorways(after, self.room)} <= self.taken

    def said(self, field: str, otherwise: float) -> float:
        """A length that the user's remedy has set, else `otherwise`."""
        value = dict(self.fixed).get(field)
        return float(value) if isinstance(value, (int, float)) else otherwise

    def severity(self, changes: Iterable[Change], lifted: frozenset[str] = frozenset()) -> Fraction:
        """The finding that is to be answered, measured again after the changes; 0 where the rule falls silent."""
        from budgetfix.inspection.inspect import judge_one

        if self.judge is None or self.finding is None:
            return Fraction(0)
        look = Look(self.survey.changed(changes), self.room, lifted)
        again = judge_one(self.judge, look, self.finding.subject, self.brief)
        return Fraction(0) if again is None else again.severity

    def left(self, changes: Iterable[Change], rules: Iterable[str], subject: str) -> Fraction:
        """What the changes leave of all these rules on the site's subject or on `subject`: weights times severities."""
        from budgetfix.inspection.inspect import judge_one

        if self.finding is None:
            return Fraction(0)
        look, total = Look(self.survey.changed(changes), self.room), Fraction(0)
        for judge in (self.judges[slug] for slug in rules if slug in self.judges):
            for name in dict.fromkeys((self.subject, subject)):
                again = judge_one(judge, look, name, self.brief)
                total += 0 if again is None else again.severity * judge.weight
        return total

    def mm(self, inches: float, metric_mm: float) -> float:
        """A figure in inches or its metric twin, as the survey's unit goes."""
        return metric_mm if self.metric else inches * MM_PER_INCH

    def tape(self, mm: float) -> float:
        """To what a tape shows: 5 mm, or 1/4 in."""
        step = 5.0 if self.metric else MM_PER_INCH / 4
        return round(mm / step) * step

    def words(self, mm: float) -> str:
        """A length for people, in the survey's unit."""
        return write_length(mm, self.survey.household.unit)


@dataclass(frozen=True)
class Kind:
    """One kind. `minutes` low, likely, high; `holes` new plug holes; `hazards` words that people may refuse.

    `fit(site)` gives candidates; their changes are data. The module's docstring is the kind's page.
    """

    kind: str
    name: str
    targets: tuple[str, ...]
    minutes: tuple[int, int, int]
    phase: int
    fit: Callable[[Site], tuple[Candidate, ...]]
    people: int = 1
    holes: int = 0
    hazards: tuple[str, ...] = ()
    tools: tuple[str, ...] = ()
    done_when: str = ""
    bought: bool = False
    whats: tuple[str, ...] = field(default=())
    """Sorts of products that it uses."""
    fills: tuple[str, ...] = ()
    """Fields that it sizes where a user's remedy leaves them open."""
    follows: bool = False
    """Other things move with the subject (a screen on its bench)."""
    whole_room: bool = False
    """Fitted once a room that has one of its faults, not once a fault."""
    fills_old_holes: bool = False
    """Its own minutes fill the holes of what it moves: no step follows for them."""
    leaves: Leaves = "nothing"
    """What it leaves in the walls when it is taken away again: what a lease asks about."""
    help: int = 0
    """Minutes of a second pair of hands at its start, where one person does the rest (1 + help)."""


def factor(kind: Kind, survey: Survey, room: str, wall: str) -> Fraction:
    """How much longer it takes here: masonry for what is drilled, high ceilings for rods."""
    times = Fraction(1)
    solid = {one.wall: one.solid for one in survey.walls_of(room)}
    if "drill" in kind.hazards and solid.get(wall):
        times *= MASONRY
    if "rod" in kind.kind and survey.facts(room).ceiling > NINE_FEET_MM:
        times *= HIGH_CEILING
    return times


def work_of(
    kind: Kind,
    text: str,
    times: Fraction = Fraction(1),
    people: int | None = None,
    minutes: tuple[int, int, int] | None = None,
) -> Work:
    """The kind's usual minutes (or these) as one step."""
    low, likely, high = (Fraction(each) * times for each in minutes or kind.minutes)
    mean, hands = planned(low, likely, high), people or kind.people
    helped = min(mean, math.ceil(kind.help * times)) if hands == 1 else 0
    return Work(text, mean, math.ceil(low), math.ceil(likely), math.ceil(high), hands, kind.phase, help=helped)


@dataclass(frozen=True)
class Offer:
    """What a kind found to fit, before it becomes a candidate."""

    name: str
    changes: tuple[Change, ...]
    text: str
    variant: str = ""
    uses: tuple[tuple[str, Fraction], ...] = ()
    people: int | None = None
    holes: int | None = None
    wall: str = ""
    accepts: str = ""
    done_when: str = ""
    hazards: tuple[str, ...] = ()
    subject: str = ""
    """What it is done to, where that is not what the finding names."""
    minutes: tuple[int, int, int] | None = None
    leaves: Leaves | None = None
    """What it leaves in the walls, where that is not what its kind usually leaves."""
    painted_mm2: float = 0.0
    """Paint that is rubbed down or painted over."""


def candidate(kind: Kind, site: Site, offer: Offer) -> Candidate:
    """An offer as a candidate of its kind; its id is the kind, the subject and the variant."""
    follow = following(site.survey, offer.changes, not kind.fills_old_holes, site.brief.profile)
    two = any(load.too_much for load in loads(site.survey, offer.changes))
    holes = (kind.holes if offer.holes is None else offer.holes) + follow.plugs
    more = ("lifting",) if two else ()
    hazards = tuple(dict.fromkeys((*kind.hazards, *offer.hazards, *more, *follow.hazards)))
    people = max(offer.people or kind.people, 2 if two else 1)
    hands = 2 if kind.help else people
    leaves = _leaves(offer.leaves or kind.leaves, hazards, follow)
    paint_mm2 = disturbed_mm2(site.survey.household, holes, follow.filled, offer.painted_mm2)
    known = {tool.tool for tool in site.catalog.tools}
    subject = _subject(site, offer)
    id = "/".join(part for part in (kind.kind, subject, offer.variant) if part)
    times = factor(kind, site.survey, site.room, offer.wall)
    return Candidate(
        id=id,
        kind=kind.kind,
        name=offer.name,
        subject=offer.subject or site.subject,
        room=site.room,
        key=f"{kind.kind}/{subject}",
        changes=offer.changes,
        uses=tuple(sorted(offer.uses)),
        tools=tuple(tool for tool in kind.tools if tool in known),
        work=(work_of(kind, says(offer.text, follow.said), times, people, offer.minutes), *follow.steps),
        spends=_spends(holes, hazards, offer),
        targets=kind.targets,
        hazards=hazards,
        cares=(
            *cares_for(hazards, site.survey.household, hands, leaves, paint_mm2),
            *load_cares(site.survey, offer.changes),
        ),
        done_when=offer.done_when or kind.done_when,
        accepts=offer.accepts,
        accepts_of=offer.uses[0][0] if offer.uses else "",
        own=True,
        leaves=leaves,
        paint_mm2=paint_mm2,
    )


def _leaves(usual: Leaves, hazards: Container[str], follow: Following) -> Leaves:
    """What the candidate leaves in the walls: a strap that is fixed again leaves plugs, a picture that moves a pin."""
    if follow.plugs and usual != "asks leave":
        return "plugs"
    return "pins" if usual == "nothing" and "pins" in hazards else usual


def _spends(holes: int, hazards: tuple[str, ...], offer: Offer) -> tuple[tuple[str, Fraction], ...]:
    """New plug holes, and one pin for each frame that hangs at a new place."""
    pins = sum(change.table == "pictures" for change in offer.changes) if "pins" in hazards else 0
    return tuple((name, Fraction(amount)) for name, amount in (("holes", holes), ("pins", pins)) if amount)


def _subject(site: Site, offer: Offer) -> str:
    """The subject as it stands in an id: names of things are unique, others get their room beside them."""
    subject = offer.subject or site.subject
    if subject in site.survey.named or len(site.survey.rooms) < 2:
        return subject
    return site.room if subject == "room" else f"{site.room} {subject}"


def best(kind: Kind, site: Site, offers: Iterable[Offer], most: int = MOST) -> tuple[Candidate, ...]:
    """The offers that leave least of what the kind answers, the cheaper first, at most `most`; as candidates.

    An offer goes if another one for the same thing leaves no more, costs no more, takes no more people or holes and
    comes no later.
    """
    judged = [(_burdens(kind, site, offer), offer) for offer in offers]
    judged.sort(key=lambda one: (one[0], one[1].subject, one[1].variant))
    kept: list[tuple[tuple[Fraction, ...], Offer]] = []
    for burdens, offer in judged:
        rivals = [other for other, rival in kept if rival.subject == offer.subject]
        if not any(all(mine <= its for mine, its in zip(other, burdens, strict=True)) for other in rivals):
            kept.append((burdens, offer))
    return tuple(candidate(kind, site, offer) for _, offer in kept[:most])


def _burdens(kind: Kind, site: Site, offer: Offer) -> tuple[Fraction, ...]:
    """What an offer leaves of all that the kind answers, and of the finding; money, people, holes, days to wait."""
    sold = [site.catalog.product(product) for product, _ in offer.uses]
    return (
        site.left(offer.changes, kind.targets, offer.subject or site.subject),
        site.severity(offer.changes),
        Fraction(goods_minor(site, offer.uses)),
        Fraction(offer.people or kind.people),
        Fraction(kind.holes if offer.holes is None else offer.holes),
        Fraction(max((product.lead_days for product in sold), default=0)),
    )


def goods_minor(site: Site, uses: Iterable[tuple[str, Fraction]]) -> int:
    """The goods in whole packs, as if bought alone."""
    sold = [(site.catalog.product(product), units) for product, units in uses]
    return sum(product.price_minor * math.ceil(units / product.pack) for product, units in sold)


def set_on(table: str, item: str, **fields: Value) -> Change:
    """A change that sets fields of one thing."""
    return Change(table, item, tuple(sorted(fields.items())))  # type: ignore[arg-type]  # callers name real tables


def kind_page(kind: Kind) -> str:
    """The page of a kind for `budgetfix rules KIND`."""
    text = (sys.modules[kind.fit.__module__].__doc__ or "").strip()
    low, likely, high = kind.minutes
    return "\n".join(
        (
            f"{kind.kind} - {kind.name}",
            "",
            text,
            "",
            f"Answers: {', '.join(kind.targets) or 'what the user says'}.",
            f"Usually {low} / {likely} / {high} minutes (low / likely / high; our judgement, yours replaces it), "
            f"{kind.people} {'person' if kind.people == 1 else 'people'}"
            f"{f' and a helper for the first {kind.help}' if kind.help else ''}, phase {kind.phase}.",
            f"Leaves in the wall: {kind.leaves}."
            + (f" For renters: {LEASE[kind.leaves]}" if LEASE[kind.leaves] else ""),
            f"New plug holes: {kind.holes}. Mind: {', '.join(kind.hazards) or 'nothing special'}.",
            f"Uses: {', '.join(kind.whats) or 'nothing bought'}.",
        )
    )
