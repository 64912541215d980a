"""A new job folder: a blank survey, a starter catalogue, a brief with the usual values."""

from __future__ import annotations

from budgetfix.base.money import CURRENCIES
from budgetfix.exports.catalog_book import catalog_book
from budgetfix.exports.survey_book import survey_book
from budgetfix.intake.catalog_yaml import read_catalog_bytes
from budgetfix.pipeline.demo_data import starter_catalog

STARTERS = ("survey.xlsx", "catalog.xlsx", "brief.yaml")

BRIEF = """\
# What you may spend and when. Lines with # are notes; delete what you do not need.
currency: {currency}
budget: 300.00              # or null for no limit
hours: [4, 3]               # one number a session; or, with dates:
# hours:
#   - {{date: 2026-06-06, start: '09:00', people: {{ann: 3, ben: 1.5}}}}
people: 1
load: 0.85                  # nobody works 240 of 240 minutes
setup_minutes: 15           # setting up and clearing, each session
contingency: 10%            # held back first
# limits: {{holes: 6}}        # new holes that you may drill
# must: [rug-pad/rug]       # candidates that have to be in the plan
# never: [longer-rod]       # kinds, candidates or products that must not be
# priorities: {{rug size: 2}} # what matters more to you (0 to 3)
# errands:
#   - {{errand: shops, name: One round of shops, shops: [diy, home], hours: 1.5}}
"""


def starter_files(unit: str, currency: str) -> dict[str, bytes]:
    """The files of a new job. Errors: ValueError for an unknown currency."""
    if currency not in CURRENCIES:
        raise ValueError(f"{currency} is no currency code here; write one such as EUR, USD, GBP or JPY.")
    catalog = read_catalog_bytes(starter_catalog(), "catalog.yaml", currency)
    return {
        "survey.xlsx": survey_book(None, {}, (), unit=unit),
        "catalog.xlsx": catalog_book(catalog, unit=unit, currency=currency),
        "brief.yaml": BRIEF.format(currency=currency).encode(),
    }
