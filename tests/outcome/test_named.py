"""People as others call them."""

from __future__ import annotations

import pytest

from budgetfix.brief.models import Brief, Person
from budgetfix.outcome.tasks import named


@pytest.mark.parametrize(
    ("household", "asked", "said"),
    [
        (("1",), ("1",), ()),
        (("1", "2"), ("2",), ("person 2",)),
        (("1", "2"), ("1", "2"), ("person 1", "person 2")),
        (("ann", "ben"), ("ben",), ("ben",)),
        (("me",), ("me",), ("me",)),
    ],
)
def test_nobody_is_called_by_a_bare_number(
    household: tuple[str, ...], asked: tuple[str, ...], said: tuple[str, ...]
) -> None:
    """Whoever is alone needs no name, unnamed people are person 1 and person 2, names stay as they were given."""
    brief = Brief(people=tuple(Person(name=name) for name in household))
    assert named(brief, asked) == said
