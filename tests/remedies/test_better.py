"""Whether changes are worth an offer, and what stays though its size changes."""

from __future__ import annotations

from dataclasses import replace

from budgetfix.remedies.better import better, stays
from budgetfix.remedies.kind import set_on
from budgetfix.remedies.kinds import mount_board
from tests.inspection.rooms import renter
from tests.remedies.bench import altered, product, site
from tests.remedies.test_across_and_frame_kinds import small


def test_better_is_less_of_the_finding() -> None:
    """Nine things on the desk: seven are better, nine are not, and six are better than seven."""
    here = site(altered(renter(), "desk", things=9), "surface-crowded", "desk")
    few, fewer = ((set_on("furniture", "desk", things=count),) for count in (7, 6))
    assert better(here, few)
    assert not better(here, ())
    assert better(here, fewer, few)
    assert not better(here, few, fewer)


def test_a_users_remedy_is_always_worth_it() -> None:
    """It answers no finding: there is nothing to compare."""
    here = site(altered(renter(), "desk", things=9), "surface-crowded", "desk")
    assert better(replace(here, finding=None), ())


def test_what_stays_needs_no_new_home() -> None:
    """The sentence about the old thing goes, all else stays, and the steps after it are not touched."""
    frame = product("frame", "frame", width=1000.0, height=1300.0)
    (one,) = mount_board.KIND.fit(site(small(), "art-too-small", "picture", frame))
    text = one.work[0].text
    asked = replace(one, work=(replace(one.work[0], text=f"{text}; say where the old picture will go"), *one.work[1:]))
    assert stays(asked) == one
    assert stays(one) == one
