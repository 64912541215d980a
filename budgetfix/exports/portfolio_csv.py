"""The sheet `Jobs` of a portfolio as CSV, a row a job and one for all together."""

from __future__ import annotations

from budgetfix.base.money import write_money
from budgetfix.exports.plan_csv import Cell, csv_bytes, harmless
from budgetfix.outcome.portfolio import House, Portfolio

HEADS = (
    "folder", "job", "from", "until", "budget", "spent", "points before", "points after", "hazards before",
    "hazards after", "minutes used", "proven",
)  # fmt: skip


def portfolio_csv(portfolio: Portfolio) -> bytes:
    """Amounts as plain numbers of the currency; an empty budget has no limit."""
    rows = [_house(house, portfolio.currency) for house in portfolio.houses]
    return csv_bytes(HEADS, [*rows, _together(portfolio)])


def minutes_used(house: House) -> int:
    """Person-minutes of a job's plan, setting up counted in where it has sessions."""
    plan = house.book
    return plan.best.minutes if plan.sessions is None else sum(row.minutes_used for row in plan.sessions)


def _house(house: House, currency: str) -> tuple[Cell, ...]:
    plan = house.book
    return (
        harmless(house.said),
        harmless(house.name),
        None if house.first is None else house.first.isoformat(),
        None if house.until is None else house.until.isoformat(),
        None if plan.budget_minor is None else write_money(plan.budget_minor, currency),
        write_money(plan.spent_minor, currency),
        plan.points_before,
        plan.points_after,
        plan.hazards_before,
        plan.hazards_after,
        minutes_used(house),
        "yes" if plan.proven else "no",
    )


def _together(portfolio: Portfolio) -> tuple[Cell, ...]:
    plans, budget = [house.book for house in portfolio.houses], portfolio.budget_minor
    return (
        "",
        "together",
        None,
        None,
        None if budget is None else write_money(budget, portfolio.currency),
        write_money(portfolio.spent_minor, portfolio.currency),
        sum(plan.points_before for plan in plans),
        sum(plan.points_after for plan in plans),
        sum(plan.hazards_before for plan in plans),
        sum(plan.hazards_after for plan in plans),
        sum(map(minutes_used, portfolio.houses)),
        "yes" if portfolio.proven else "no",
    )
