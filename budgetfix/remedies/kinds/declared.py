"""Anything that you know better: you say what it does, budgetfix takes your word.

A remedy of your own in the catalogue, with the relief that it brings to faults you listed (`answers`), or with the
fields of the survey that it sets (`set`, `changes`). Nothing is sized; what it sets is inspected like everything
else.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Site


def _fit(_site: Site) -> tuple[Candidate, ...]:
    return ()


KIND = Kind("declared", "Whatever you say", (), (10, 20, 40), 8, _fit)
