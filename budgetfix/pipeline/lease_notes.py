"""What a renter must know beside the plan: what the lease rules out, what waits for leave, what undoing takes."""

from __future__ import annotations

from budgetfix.brief.lease import Lease
from budgetfix.exports.lines import hours_words
from budgetfix.framing.frame import Ground
from budgetfix.framing.options import ERRAND
from budgetfix.intake.job import Job
from budgetfix.optimize.problem import Plan
from budgetfix.outcome.lease_rows import undo_minutes
from budgetfix.outcome.left_out import some
from budgetfix.pipeline.candidates import Offered
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.leases import Under

OWNED = "The brief has a lease, but the survey does not say that you rent: no note to a landlord is written."

REVERSIBLE = (
    "Reversible first: of plans that do as much, the one that leaves least in the walls, even if it costs more."
)


def lease_notes(job: Job, offer: Offered, plan: Plan, base: Ground) -> tuple[str, ...]:
    """Sentences; none without a lease. Undoing counts what is done already as well."""
    lease = job.brief.lease
    if lease is None:
        return ()
    under = Under(lease, job.catalog, job.survey)
    chosen = [offer.framed.candidates[id] for id in plan.chosen if not id.startswith(ERRAND)]
    owned = job.survey is not None and not job.survey.household.rent
    first = [*([OWNED] if owned else []), *([REVERSIBLE] if lease.reversible_first else [])]
    return (*first, *_ruled_out(under, offer), *_waiting(under, chosen), *_undoing(base, lease, chosen))


def _ruled_out(under: Under, offer: Offered) -> list[str]:
    """What the lease forbids or the landlord refused among what could be done."""
    names = [one.name for one, _ in offer.blocked if under.why_not(one)]
    return [f"Ruled out by your lease or landlord: {some(names)}. Left out says why."] if names else []


def _waiting(under: Under, chosen: list[Candidate]) -> list[str]:
    """What is planned while its leave is not there yet."""
    names = [one.name for one in chosen if under.leave(one) in ((True, None), (True, "asked"))]
    return [f"Only with the landlord's leave, which is not there yet: {some(names)}."] if names else []


def _undoing(base: Ground, lease: Lease, chosen: list[Candidate]) -> list[str]:
    """How long undoing takes, and whether filler and paint for it are paid."""
    minutes = undo_minutes(base, chosen)
    paid = ", filler and paint for it are in the money" if any(one.later for one in (*base.rest.done, *chosen)) else ""
    most = f" of {hours_words(lease.undo_minutes)}" if lease.undo_minutes is not None else ""
    return [f"Undoing it all when you move out: about {hours_words(minutes)}{most}{paid}."] if minutes else []
