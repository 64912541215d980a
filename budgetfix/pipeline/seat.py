"""One of several jobs that share a stock: planned with every piece, then answered again with fewer of them.

Whatever was fitted for it at any time stays on its list, so that all answers are over one list, and fewer pieces can
never do more. Where two people have priorities of their own, pieces are shared out by the household's points, and the
fair plan is then made with the pieces that the household's would hold.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace

from budgetfix.catalog.models import Catalog
from budgetfix.catalog.stay import lent, most_packs
from budgetfix.intake.job import Job
from budgetfix.optimize import Growth, solve
from budgetfix.optimize.asking import STARTS
from budgetfix.optimize.fair import Fair
from budgetfix.optimize.in_order import in_order
from budgetfix.optimize.problem import Answer, NoPlan, Plan, Problem
from budgetfix.optimize.recount import marks_of
from budgetfix.optimize.sharing import Answered, Left
from budgetfix.optimize.stock import Packs, within
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.check import checked
from budgetfix.pipeline.candidates import fitted_again, offered
from budgetfix.pipeline.planning import ASKS, Walked, Wish, booked, fairly, walked
from budgetfix.pipeline.plans import Chooser
from budgetfix.pipeline.telling import telling
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.fit import candidates

Elsewhere = tuple[tuple[str, str], ...]
"""(product, where the others stand and until when)."""
ORDER_SECONDS = 5.0
"""For putting the steps of the final plan into their one order."""


@dataclass(frozen=True)
class Place:
    """What is wanted of a book: one of the job's answers, by the ceilings that it was found under, beside the others.

    `ceilings`: the most that the others leave to it; `elsewhere`: where those packs stand; `notes` are told beside the
    job's own; `shared`: it has others beside it.
    """

    answer: Packs = ()
    ceilings: Packs = ()
    elsewhere: Elsewhere = ()
    notes: tuple[str, ...] = ()
    shared: bool = False


@dataclass
class Seat:
    """A job, its walk with every piece, and its answers so far by ceilings.

    `extra`: fitted since that walk; `earlier`: the walk and the answers before it was last fitted anew; `fair`: fair
    plans by the ceilings of the household's.
    """

    job: Job
    whole: Walked
    answers: dict[Packs, Answer] = field(default_factory=dict)
    extra: tuple[Candidate, ...] = ()
    earlier: tuple[Walked, dict[Packs, Answer]] | None = None
    fair: dict[Packs, tuple[Answer, Fair | None]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        if self.whole.fair is None:
            self.answers.setdefault((), self.whole.answer)


def sit(job: Job, wish: Wish) -> Seat | NoPlan:
    """Plan a job with every piece. Errors: FilesRefused for a must that means nothing."""
    found = walked(job, wish)
    return found if isinstance(found, NoPlan) else Seat(job, found)


def answered(seat: Seat, ceilings: Packs, wish: Wish) -> Answered | None:
    """The best plan with no more packs than the ceilings say; None: no plan keeps every wish."""
    if ceilings not in seat.answers:
        found = _solved(seat, ceilings, wish)
        if isinstance(found, NoPlan):
            return None if found.proven else Answered(None, (0, 0, 0, 0, 0), (), ceilings)
        seat.answers[ceilings] = found
    answer = seat.answers[ceilings]
    problem = seat.whole.offer.framed.problem
    left = left_by(problem, answer.plan)
    floor = left if answer.proven else _floor(problem, answer)
    return Answered(left, floor, held(seat.job.catalog, answer.plan), ceilings)


def _solved(seat: Seat, ceilings: Packs, wish: Wish) -> Answer | NoPlan:
    """One solve, started from the best answers so far that keep the ceilings."""
    chooser = _with(seat, lent(seat.job.catalog, dict(ceilings), {}), wish).chooser
    problem, catalog = chooser.framed.problem, seat.job.catalog
    plans = [one.plan for one in seat.answers.values() if within(held(catalog, one.plan), ceilings)]
    known = sorted(plans, key=lambda plan: (left_by(problem, plan), plan.chosen))[:STARTS]
    return solve(
        problem,
        seconds=wish.seconds,
        clock=wish.clock,
        report=chooser.report,
        growth=chooser.growth,
        depth="set",
        known=known,
    )


def left_by(problem: Problem, plan: Plan) -> Left:
    """(last session, hazard points, points, marks, spend) as far as they are this job's wishes, first wish first.

    The last session counts only where everything is asked for; hazard points are points where they do not come first.
    """
    marks = marks_of(problem, plan.chosen)
    if problem.must_all:
        last = max((one.session + 1 for one in plan.placed if one.session is not None), default=0)
        return (last, 0, 0, marks, plan.spent_minor)
    if not problem.hazards_first:
        return (0, 0, plan.hazards + plan.points, marks, plan.spent_minor)
    return (0, plan.hazards, plan.points, marks, plan.spent_minor)


def _floor(problem: Problem, answer: Answer) -> Left:
    """What no plan gets below, where the clock ended the proof."""
    if problem.must_all:
        return (0, 0, 0, 0, 0)
    if not problem.hazards_first:
        return (0, 0, answer.least_hazards + answer.least_points, 0, 0)
    return (0, answer.least_hazards, answer.least_points, 0, 0)


def held(catalog: Catalog, plan: Plan) -> Packs:
    """The packs that a plan takes from the stock, by piece."""
    stock = {one.product for one in catalog.products if one.stock is not None}
    return tuple(sorted((id, packs) for id, packs in plan.packs if id in stock))


def _with(seat: Seat, catalog: Catalog, wish: Wish) -> Walked:
    """The same walk with the pieces of another catalog; what sets are worth is known already."""
    whole = seat.whole
    base = replace(whole.seen.base, catalog=catalog)
    most = {one.product: most_packs(one, catalog.stay) for one in catalog.products}
    problem = whole.offer.framed.problem
    products = tuple(replace(one, most=most[one.id]) for one in problem.products)
    framed = replace(whole.offer.framed, problem=replace(problem, products=products))
    report = telling(wish.report, base.brief, whole.seen.points)
    chooser = replace(whole.chooser, base=base, framed=framed, report=report)
    return replace(
        whole, seen=replace(whole.seen, base=base), offer=replace(whole.offer, framed=framed), chooser=chooser
    )


def fitted_more(seat: Seat, ceilings: Packs, wish: Wish) -> bool:
    """Fit anew with fewer pieces, and to the room as its plan leaves it; True where that brought something new.

    Then nothing of what was answered before holds, and the job is planned with every piece once more.
    """
    fewer = _with(seat, lent(seat.job.catalog, dict(ceilings), {}), wish)
    base, offer, answer = fewer.seen.base, fewer.offer, seat.answers[ceilings]
    if base.survey is None:
        return False
    faults = tuple(finding for finding in fewer.seen.findings if finding.fault)
    room = checked(base, offer.framed, answer.plan)
    known = (*offer.fitted, *offer.framed.candidates.values(), *seat.extra)
    refit = _new(candidates(base.survey, base.catalog, base.brief, faults), known)
    moves = _new(fitted_again(base, room.room, room.findings, offer.framed) if room.room is not None else (), known)
    if not refit and not moves:
        return False
    seat.extra = (*seat.extra, *refit, *moves)
    seat.earlier = (seat.whole, seat.answers)
    _plan_anew(seat, refit, moves, wish)
    return True


def as_before(seat: Seat) -> None:
    """The walk and the answers from before it was last fitted anew."""
    if seat.earlier is not None:
        seat.whole, seat.answers = seat.earlier


def _new(found: Iterable[Candidate], known: tuple[Candidate, ...]) -> tuple[Candidate, ...]:
    """Those that do something that none does yet, under ids that are free."""
    same = {(one.changes, one.uses) for one in known}
    ids = {one.id for one in known}
    fresh = []
    for one in found:
        if (one.changes, one.uses) not in same:
            id = one.id
            while id in ids:
                id += "~other"
            ids.add(id)
            same.add((one.changes, one.uses))
            fresh.append(replace(one, id=id))
    return tuple(fresh)


def _plan_anew(seat: Seat, refit: tuple[Candidate, ...], moves: tuple[Candidate, ...], wish: Wish) -> None:
    whole, base = seat.whole, seat.whole.seen.base
    fitted = (*whole.offer.fitted, *refit)
    ids = {one.id for one in fitted}
    again = tuple(one for id, one in whole.offer.framed.candidates.items() if id not in ids)
    offer = offered(base, (*again, *moves), replace(whole.offer, fitted=fitted))
    growth = Growth(offer.framed.problem, asks=ASKS)
    chooser = Chooser(base, offer.framed, wish.clock, whole.chooser.report, growth)
    answer = chooser.best(wish.seconds)
    if isinstance(answer, Answer):
        seat.whole = replace(whole, offer=offer, chooser=chooser, answer=answer)
        seat.answers = {(): answer}


def book(seat: Seat, place: Place, wish: Wish) -> PlanBook:
    """The book of one of the job's answers, with no more pieces than the others leave to it."""
    if seat.whole.fair is not None and place.shared:
        place = _as_held(seat, place)
    catalog = lent(seat.job.catalog, dict(place.ceilings), dict(place.elsewhere))
    mine = _with(seat, catalog, wish)
    found, fair = seat.whole.answer, seat.whole.fair
    if fair is not None and place.shared:
        found, fair = _fair(seat, place.answer, mine, wish)
    elif place.answer:
        found = seat.answers[place.answer]
        problem, growth = mine.chooser.framed.problem, mine.chooser.growth
        ordered = in_order(problem, found.plan, seconds=ORDER_SECONDS, clock=wish.clock, growth=growth)
        found = replace(found, plan=ordered)
    job = replace(seat.job, catalog=catalog, notes=(*seat.job.notes, *place.notes))
    return booked(job, replace(mine, answer=found, fair=fair), wish)


def fair_held(seat: Seat, under: Packs, wish: Wish) -> Packs | None:
    """The packs that the fair plan holds, made of what the household's holds; None where there is none."""
    if seat.whole.fair is None:
        return None
    place = _as_held(seat, Place(under))
    mine = _with(seat, lent(seat.job.catalog, dict(place.ceilings), {}), wish)
    return held(seat.job.catalog, _fair(seat, under, mine, wish)[0].plan)


def _fair(seat: Seat, under: Packs, mine: Walked, wish: Wish) -> tuple[Answer, Fair | None]:
    """Found once: the book shows what the pieces were handed on by."""
    if under not in seat.fair:
        seat.fair[under] = fairly(mine.chooser, seat.answers[under], wish.seconds)
    return seat.fair[under]


def _as_held(seat: Seat, place: Place) -> Place:
    """No more pieces than the household's plan holds: what the fair plan is made of."""
    mine, where = dict(held(seat.job.catalog, seat.answers[place.answer].plan)), dict(place.elsewhere)
    stock = sorted(one.product for one in seat.job.catalog.products if one.stock is not None)
    told = tuple((piece, where.get(piece, "is kept for the other houses")) for piece in stock)
    return replace(place, ceilings=tuple((piece, mine.get(piece, 0)) for piece in stock), elsewhere=told)
