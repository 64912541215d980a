"""What is said where no plan keeps every wish: which ones clash, what could be given up, and how much would do."""

from __future__ import annotations

from typing import TYPE_CHECKING

from budgetfix.base.money import write_money
from budgetfix.brief.lease import UNDO_LIMIT

if TYPE_CHECKING:
    from budgetfix.brief.models import Brief
    from budgetfix.intake.job import Job
    from budgetfix.optimize.problem import NoPlan


def no_plan(found: NoPlan, job: Job) -> list[str]:
    """Lines as wide as the screen's; later lines of one sentence stand further in."""
    from budgetfix.exports.lines import wrapped

    return [line for text in _sentences(found, job) for line in wrapped(text, 4)]


def _sentences(found: NoPlan, job: Job) -> list[str]:
    from budgetfix.outcome.left_out import REASONS

    if not found.proven:
        return ["No plan was found in the time, nor that there is none: give it more with --seconds."]
    if not found.clash:
        return ["No plan fits. Which wishes clash was not worked out in the time: --seconds gives more."]
    wishes = _Words(job)
    lines = ["No plan keeps these together:", *(f"  {wishes.of(name)}" for name in found.clash)]
    lines += [
        f"{wishes.name(id)} could never be done: {wishes.why(id, REASONS.get(why, why))}." for id, why in found.hopeless
    ]
    if found.open:
        lines.append("Which of them to give up was not worked out in the time.")
    elif found.relax:
        lines += [
            "Any one of these, given up, would let a plan exist:",
            *(f"  {wishes.of(name)}" for name in found.relax),
        ]
    else:
        lines.append("Giving up one of them is not enough: other wishes clash as well.")
    if found.least_minor is not None:
        lines.append(wishes.budget(found.least_minor))
    return lines


def money_by_date(brief: Brief) -> str:
    """What there is by when: `150.00 by 1 June, 300.00 by 1 July`."""
    from budgetfix.brief.incomes import running_minor
    from budgetfix.exports.money_days import from_words

    sums = zip(brief.incomes, running_minor(brief.incomes), strict=True)
    return ", ".join(
        f"{write_money(minor, brief.currency)} by {from_words(one.on, one.session or 0)}" for one, minor in sums
    )


class _Words:
    """Wishes of one job in the words of its files."""

    def __init__(self, job: Job) -> None:
        self._job = job
        self._names = {one.remedy: one.name or one.remedy for one in job.catalog.remedies}
        self._groups = {one.remedy: one.pick_one for one in job.catalog.remedies}

    def name(self, id: str) -> str:
        """A remedy by its name, with its id where that is another."""
        name = self._names.get(id, id)
        return name if name == id else f"{name} ({id})"

    def of(self, wish: str) -> str:
        """One wish."""
        kind, _, what = wish.partition(":")
        brief = self._job.brief
        if kind == "must":
            return self._must(what)
        if kind == "limit":
            return self._limit(what)
        if kind == "budget" and brief.budget_minor is not None:
            held = brief.held_back_minor()
            kept = f", {write_money(held, brief.currency)} of it held back" if held else ""
            return f"the budget of {write_money(brief.budget_minor, brief.currency)} {brief.currency}{kept}"
        if kind == "phases":
            return f"money by date: {money_by_date(brief)}"
        if kind == "load":
            return f"what the van may carry on the way {what}"
        if kind == "most":
            return self._stock(what)
        return {"sessions": "the list of hours", "last_session": "finish_by"}.get(kind, wish)

    def why(self, id: str, reason: str) -> str:
        """Why a remedy could never be done; goods that are not there by name."""
        from budgetfix.catalog.stay import lacking

        found = next((one for one in self._job.catalog.remedies if one.remedy == id), None)
        return reason if found is None else lacking(self._job.catalog, found.uses) or reason

    def _stock(self, id: str) -> str:
        from budgetfix.catalog.stay import away

        product = self._job.catalog.product(id)
        gone = away(product, self._job.catalog.stay)
        return f"the stock of {product.name or id} ({gone or f'{product.stock} there'})"

    def _limit(self, what: str) -> str:
        """A limit by the words of the brief: some are said by its lease."""
        lease = self._job.brief.lease
        said = (
            {}
            if lease is None
            else {
                "holes": (lease.plugs, "the lease's limit on plugs"),
                "pins": (lease.pins, "the lease's limit on pins"),
                UNDO_LIMIT: (lease.undo_minutes, "the undo_hours of the lease"),
            }
        )
        most, words = said.get(what, (None, ""))
        return f"the limit on {what}" if most is None else words

    def _must(self, what: str) -> str:
        if what == "all":
            return "must: all"
        ids = what.split(",")
        groups = {self._groups.get(id) for id in ids}
        if len(ids) > 1 and len(groups) == 1 and None not in groups:
            return f"must: {groups.pop()} (one of {', '.join(ids)})"
        return f"must: {' or '.join(self.name(id) for id in ids)}"

    def budget(self, least_minor: int) -> str:
        """The budget with which everything else can be kept; what is held back and fixed costs come on top."""
        brief = self._job.brief
        wanted, old = brief.budget_for(least_minor), brief.budget_minor or 0
        more = f"{write_money(wanted - old, brief.currency)} more"
        return f"A budget of {write_money(wanted, brief.currency)} {brief.currency} ({more}) would keep all the rest."
