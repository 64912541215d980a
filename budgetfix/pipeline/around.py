"""What stands beside the best plan: the other plans, other sums of money, what was left out and why, notes.

None of it makes a plan unproven; what was not got done in the time is left out, and said.
"""

from __future__ import annotations

from budgetfix.framing.crumbs import WHOLE
from budgetfix.framing.options import ERRAND
from budgetfix.framing.purses import purses
from budgetfix.intake.job import Job
from budgetfix.optimize import impossible
from budgetfix.optimize.ceilings import Ceiling, ceilings
from budgetfix.optimize.fair import Fair
from budgetfix.optimize.problem import Answer
from budgetfix.optimize.why_not import WhyNot, why_not
from budgetfix.outcome.accepts import accepted
from budgetfix.outcome.left_out import Chosen, left_out
from budgetfix.outcome.make import Around
from budgetfix.outcome.worth import Worth
from budgetfix.pipeline.asking_back import asked_of_plan, words
from budgetfix.pipeline.candidates import Offered
from budgetfix.pipeline.fairness import fair_sums, sides, why_not_words
from budgetfix.pipeline.inspecting import room_words, title
from budgetfix.pipeline.lease_notes import lease_notes
from budgetfix.pipeline.money_notes import money_notes
from budgetfix.pipeline.plans import Chooser, free, more_plan, other_sums, recommended
from budgetfix.pipeline.stops import stops
from budgetfix.pipeline.van_notes import van_notes

BESIDE = 0.5
"""Share of the seconds that all this may take after the best plan."""
WAIT_SECONDS, WAIT_TIMES = 60.0, 4.0
"""Nobody waits longer for it than this, or this many times as long as for the best plan, whichever is more."""
GOODS = 0.3
"""Share of the seconds for how dear goods may get and what else would do; on top, so that nothing else lacks."""
SIZES = 0.1
"""Share of the seconds for sizes that would do as well; their inspections are counted, so it is seldom used up."""
SPOKEN = 0.4
"""Share of it for why not where two people are to be told; their other sums of money come after."""
SUMS = 0.7
"""Share of what is left of that for other sums of money; the rest is for why not."""


def around(
    job: Job, offer: Offered, chooser: Chooser, answer: Answer, seconds: float, taken: float, fair: Fair | None = None
) -> Around:
    """Everything beside the best plan, which was to be had in `seconds` and took `taken`.

    `fair`: how it was come by where it is the fair choice of two people.
    """
    until = chooser.clock() + min(seconds * BESIDE, max(WAIT_SECONDS, WAIT_TIMES * taken))

    def left() -> float:
        return max(0.0, until - chooser.clock())

    two = sides(chooser, fair, answer.plan, left) if fair is not None else ()
    cheaper, nothing = recommended(chooser, answer, left()), free(chooser, answer, left())
    said = why_not_words(chooser, fair, answer.plan, left() * SPOKEN) if fair is not None else {}
    others = (other_sums if fair is None else fair_sums)(chooser, answer, left() * SUMS)
    slider = stops(chooser, answer.plan, others.plans, left)
    out = dict(chooser.base.rest.sold_out)
    why = {} if fair is not None else _why_not(chooser, answer, left())
    weighed_by = chooser.clock() + _weighing(seconds)
    late: list[bool] = []

    def enough() -> bool:
        late.append(chooser.clock() > weighed_by)
        return late[-1]

    worth = Worth(chooser.base, offer.framed)
    chosen = Chosen(job.brief, job.catalog, offer.framed, answer.plan, worth, out, enough)
    rows = left_out(chosen, why, impossible(offer.framed.problem), offer.never, offer.blocked, said)
    prices = _prices(chooser, answer, min(seconds * GOODS, max(WAIT_SECONDS, WAIT_TIMES * taken)))
    return Around(
        title=title(job),
        room_words=room_words(job.survey),
        seconds_limit=seconds,
        recommended=cheaper,
        free=nothing,
        more=tuple(more_plan(chooser, answer.plan, stop.sums) for stop in slider),
        next=others.next,
        left_out=rows,
        notes=(
            *_notes(job, offer, chooser, answer, fair is not None),
            *_not_priced(job, answer, prices),
            *_not_weighed(late),
        ),
        stops=slider,
        prices=prices,
        accepts=_accepts(chooser, answer, seconds * SIZES),
        sides=two,
    )


def _why_not(chooser: Chooser, answer: Answer, seconds: float) -> dict[str, WhyNot]:
    """By candidate; nothing for a plan that is not proven or whose wishes are not about points."""
    problem = chooser.framed.problem
    if problem.must_all or not answer.proven:
        return {}
    ids = [id for id in chooser.framed.candidates if id not in answer.plan.chosen]
    return why_not(
        problem,
        answer.plan,
        ids,
        seconds=seconds,
        clock=chooser.clock,
        growth=chooser.growth,
        report=chooser.report,
    )


def _prices(chooser: Chooser, answer: Answer, seconds: float) -> dict[str, Ceiling]:
    """By product; nothing for a plan that is not proven."""
    if not answer.proven:
        return {}
    problem, growth = chooser.framed.problem, chooser.growth
    return ceilings(problem, answer.plan, seconds=seconds, clock=chooser.clock, growth=growth, report=chooser.report)


def _accepts(chooser: Chooser, answer: Answer, seconds: float) -> dict[str, str]:
    """By product, the sizes that would do as well, where a remedy of the user's set them."""
    until = chooser.clock() + seconds
    return accepted(chooser.base, chooser.framed, answer.plan, lambda: chooser.clock() > until)


def _not_priced(job: Job, answer: Answer, prices: dict[str, Ceiling]) -> tuple[str, ...]:
    """Says for how many goods the most to pay is left open; nothing where it has no meaning, as for one's own stock."""
    if purses(job.brief):
        return ()
    own = {product.product for product in job.catalog.products if product.stock is not None}
    goods = [id for id, _ in answer.plan.packs if id not in own]
    left = [id for id in goods if id not in prices or (prices[id].more_minor is None and not prices[id].any_price)]
    if not left:
        return ()
    return (
        f"The most to pay is left open for {len(left)} of {len(goods)} products: there was no time to work it out.",
    )


def _weighing(seconds: float) -> float:
    """Seconds for what each remedy that is left out would add: a large house leaves out a thousand."""
    return max(WAIT_SECONDS, seconds)


def _not_weighed(late: list[bool]) -> tuple[str, ...]:
    """Says of how many that were left out nobody knows what they would add. `late`: for each, whether time was up."""
    if not any(late):
        return ()
    return (f"What {sum(late)} of {len(late)} remedies left out would add was not worked out: there was no time.",)


def _notes(job: Job, offer: Offered, chooser: Chooser, answer: Answer, fair: bool) -> tuple[str, ...]:
    """What a reader must know beside the plan."""
    used = {
        product
        for id in answer.plan.chosen
        if not id.startswith(ERRAND)
        for product, _ in offer.framed.candidates[id].uses
    }
    examples = sum(1 for product in job.catalog.products if product.example and product.product in used)
    notes = list(job.notes)
    if examples:
        notes.append(
            f"{examples} of the prices {'is' if examples == 1 else 'are'} still an example; put in your shop's."
        )
    if chooser.base.brief.voices and not fair and not chooser.framed.problem.must_all:
        notes.append("There was no time to weigh two people's priorities: this is the household's plan.")
    notes += van_notes(job, answer.plan)
    notes += lease_notes(job, offer, answer.plan, chooser.base)
    notes += _no_better_layout(offer)
    notes += money_notes(job)
    notes += _asked(offer, chooser, answer)
    if any(
        work.low != work.high
        for id in answer.plan.chosen
        if id in offer.framed.candidates
        for work in offer.framed.candidates[id].work
    ):
        notes.append("Minutes are the mean of low, likely and high where all three are given.")
    if _priced_by_three(job, answer):
        notes.append("Prices are the mean of low, likely and high where all three are given.")
    return tuple(notes)


def _asked(offer: Offered, chooser: Chooser, answer: Answer) -> list[str]:
    """The figures left blank on which most of the plan hangs."""
    base, ids = chooser.base, [id for id in answer.plan.chosen if not id.startswith(ERRAND)]
    if base.survey is None:
        return []
    asked = asked_of_plan(base, offer.framed, ids)
    return [f"Measure this before you start: {words(one, base.survey)}." for one in asked]


def _no_better_layout(offer: Offered) -> list[str]:
    """Rooms in which the furniture stands in the way and no other layout of it does more than single moves."""
    given = {one.room for one in offer.framed.candidates.values() if one.kind in WHOLE}
    rooms = [room or "the room" for room in offer.crowded if room not in given]
    words = ", ".join(rooms)
    return (
        [f"{words[:1].upper()}{words[1:]}: no other layout of the furniture does more than single moves."]
        if rooms
        else []
    )


def _priced_by_three(job: Job, answer: Answer) -> bool:
    """Whether anything that is bought or done has three prices."""
    bought, chosen = {id for id, packs in answer.plan.packs if packs}, set(answer.plan.chosen)
    goods = (one.price_low_minor for one in job.catalog.products if one.product in bought)
    costs = (one.cost_low_minor for one in job.catalog.remedies if one.remedy in chosen)
    return any(low is not None for low in (*goods, *costs))
