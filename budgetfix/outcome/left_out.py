"""Why each candidate that is not in the plan is not in it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from budgetfix.base.money import write_money
from budgetfix.brief.models import Brief
from budgetfix.catalog.models import Catalog
from budgetfix.catalog.stay import lacking
from budgetfix.framing.frame import Framed
from budgetfix.framing.options import ERRAND
from budgetfix.optimize.problem import Plan
from budgetfix.optimize.recount import marks_of
from budgetfix.optimize.why_not import WhyNot
from budgetfix.outcome.book import LeftOutRow
from budgetfix.outcome.tasks import alone_minor
from budgetfix.outcome.worth import Worth
from budgetfix.remedies.candidate import Candidate

NOT_LOOKED_AT = "why not was not worked out in the time"
NAMED = 2
"""How many remedies are named where others would have to go."""
REASONS = {
    "step-too-long": "a step is longer than every session",
    "too-loud": "a step is too loud for the sessions that are long enough for it",
    "too-late": "it would be done too late",
    "half-done": "it does not fit into one day, and its room is not to be left half done",
    "too-few-people": "it needs more people than there are",
    "needs-clash": "what it needs cannot be chosen with it",
    "tool-not-to-be-had": "a tool that it needs cannot be had",
    "over-budget": "it costs more than the whole budget",
    "money-too-late": "the money for it comes too late",
    "over-limit": "it goes over a limit by itself",
    "too-heavy": "it is heavier than the van may carry",
    "not-enough-there": "more of something is needed than there is",
}


def some(names: Sequence[str]) -> str:
    """The first names, and how many there are besides."""
    more = f" and {len(names) - NAMED} more" if len(names) > NAMED else ""
    return ", ".join(names[:NAMED]) + more


@dataclass(frozen=True)
class Chosen:
    """The plan that others are held against, with all that its words need."""

    brief: Brief
    catalog: Catalog
    framed: Framed
    plan: Plan
    worth: Worth
    sold_out: Mapping[str, str] = field(default_factory=dict)
    """Why no more of a product can be had, by product."""
    enough: Callable[[], bool] = lambda: False
    """The time is up: what the others would add is left open."""

    def money(self, minor: int) -> str:
        """A sum in words."""
        return write_money(minor, self.brief.currency)

    def names(self, ids: Iterable[str]) -> str:
        """Some remedies by name; errands are nobody's choice and are left out."""
        return some([self.framed.candidates[id].name for id in sorted(ids) if not id.startswith(ERRAND)])


def left_out(
    chosen: Chosen,
    why_not: Mapping[str, WhyNot],
    impossible: Mapping[str, str],
    never: tuple[Candidate, ...],
    blocked: tuple[tuple[Candidate, str], ...] = (),
    said: Mapping[str, str] | None = None,
) -> tuple[LeftOutRow, ...]:
    """All candidates that are not chosen, what would add most first; then what may never be.

    `said`: reasons in words, by candidate, that stand for those of `why_not`.
    """
    spoken = said or {}
    rows = []
    for id, candidate in chosen.framed.candidates.items():
        if id in chosen.plan.chosen:
            continue
        if id in impossible:
            row = _plain(chosen, candidate, _never(chosen, candidate, impossible[id]))
            lent = any(chosen.catalog.product(product).elsewhere for product, _ in candidate.uses)
            rows.append(replace(row, would_add=_would_add(chosen, candidate)) if lent else row)
        else:
            why = spoken.get(id) or _why(chosen, candidate, why_not.get(id, WhyNot(id)))
            rows.append(replace(_plain(chosen, candidate, why), would_add=_would_add(chosen, candidate)))
    rows += [_plain(chosen, one, "the brief says never") for one in sorted(never, key=lambda one: one.id)]
    rows += [_plain(chosen, one, why) for one, why in blocked]
    return tuple(sorted(rows, key=lambda row: (-(row.would_add or 0), row.id)))


def _never(chosen: Chosen, candidate: Candidate, why: str) -> str:
    """Why no plan can hold it; goods that are not there by name."""
    if why != "not-enough-there":
        return REASONS.get(why, why)
    names = {one.product: one.name or one.product for one in chosen.catalog.products}
    out = [f"{names[id]}: {chosen.sold_out[id]}" for id, _ in candidate.uses if id in chosen.sold_out]
    return "; ".join(out) or lacking(chosen.catalog, candidate.uses) or REASONS[why]


def _plain(chosen: Chosen, one: Candidate, why: str) -> LeftOutRow:
    minutes = sum(work.person_minutes for work in one.work)
    return LeftOutRow(one.id, one.name, alone_minor(one, chosen.catalog, chosen.brief), minutes, None, why)


def _would_add(chosen: Chosen, candidate: Candidate) -> int | None:
    """Points and hazard points that it would take away in the place of what cannot stand beside it, if all fitted.

    None where the guard forbids that, and where the time is up.
    """
    if chosen.enough():
        return None
    rivals = _rivals(chosen, candidate.id)
    then = [*(id for id in chosen.plan.chosen if id not in rivals), candidate.id]
    if chosen.worth.worsens(then):
        return None
    return chosen.worth.gain(chosen.plan.chosen, then)


def _rivals(chosen: Chosen, id: str) -> frozenset[str]:
    options = {option.id: option for option in chosen.framed.problem.options}
    own = options[id]
    return frozenset(
        other
        for other in chosen.plan.chosen
        if other in chosen.framed.candidates
        and (
            other in own.excludes or id in options[other].excludes or (own.group and options[other].group == own.group)
        )
    )


def _why(chosen: Chosen, candidate: Candidate, why: WhyNot) -> str:
    if chosen.framed.problem.must_all:
        rivals = chosen.names(_rivals(chosen, candidate.id))
        return f"instead of it: {rivals}" if rivals else "adds nothing to what must be done"
    if why.nothing:
        return _no_room(chosen, candidate, why)
    if why.held is None:
        unsafe = ", or leave more hazards" if chosen.brief.hazards_first and chosen.worth.hazards else ""
        return f"would cost at least {why.worse:,} points elsewhere{unsafe}" if why.worse else NOT_LOOKED_AT
    hazards, points = why.held.hazards - chosen.plan.hazards, why.held.points - chosen.plan.points
    if not chosen.brief.hazards_first:
        hazards, points = 0, hazards + points
    if (hazards, points) == (0, 0):
        return _as_much(chosen, why.held)
    return _less(chosen, why, why.held, hazards, points)


def _no_room(chosen: Chosen, candidate: Candidate, why: WhyNot) -> str:
    """No plan within the money, the hours and the limits holds it."""
    if why.enough is not None:
        return f"{_missing(chosen, why.enough)} more is needed"
    if why.dear is not None:
        return f"{_missing(chosen, why.dear)} more is needed, for less than is done now"
    if why.open:
        return "no plan with it fits; what it would take was not worked out in the time"
    if not why.barred and chosen.framed.problem.phases:
        return "no plan with it fits the money as it comes, the hours and the limits"
    if not why.barred:
        return "no plan with it fits the hours and the limits"
    worse = chosen.worth.worsens([candidate.id, *(need for need in candidate.needs)])
    return f"would leave worse: {', '.join(worse)}" if worse else "cannot stand beside what it needs"


def _missing(chosen: Chosen, enough: Plan) -> str:
    return chosen.money(enough.spent_minor - (chosen.framed.problem.budget_minor or 0))


def _as_much(chosen: Chosen, held: Plan) -> str:
    """The best plan that holds it does as much as the one in hand."""
    instead = chosen.names(set(chosen.plan.chosen) - set(held.chosen))
    dearer = held.spent_minor - chosen.plan.spent_minor
    problem = chosen.framed.problem
    if marks_of(problem, held.chosen) > marks_of(problem, chosen.plan.chosen):
        return f"as much is done with less left in the walls{f' by {instead}' if instead else ' without it'}"
    if not instead:
        return "adds nothing beside what is chosen" + (f", for {chosen.money(dearer)} more" if dearer else "")
    if dearer:
        return f"as much is done for {chosen.money(dearer)} less by {instead}"
    return f"no better than {instead}: as many points for as much money"


def _less(chosen: Chosen, why: WhyNot, held: Plan, hazards: int, points: int) -> str:
    """The best plan that holds it does less."""
    parts = [f"would leave {hazards:,} more hazard points"] if hazards > 0 else []
    parts += [f"would cost {points:,} points elsewhere"] if points > 0 else []
    gone = chosen.names(set(chosen.plan.chosen) - set(held.chosen))
    words = " and ".join(parts) + (f" ({gone} would go)" if gone else "")
    if why.enough is not None:
        return f"{words}; with {_missing(chosen, why.enough)} more it would not"
    return words
