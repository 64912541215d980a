"""Every kind: its targets are rules, its figures make sense, it has a page; and every common fault has an answer."""

from __future__ import annotations

from fractions import Fraction

import pytest

from budgetfix.catalog.models import WHATS
from budgetfix.inspection.registry import RULES
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, best, factor, kind_page, planned, work_of
from budgetfix.remedies.kinds import declared, longer_rod, strap
from budgetfix.remedies.registry import KINDS
from budgetfix.room.survey import RoomFacts, Survey, Wall
from tests.inspection.rooms import renter
from tests.remedies.bench import product, site

SLUGS = {rule.slug for rule in RULES}
FREE_TOO = (
    "rod-hung-low", "hem-off-floor", "rods-out-of-line", "art-too-small", "art-off-height", "art-off-center",
    "art-out-of-level", "wall-bare", "rug-misses-seats", "rug-shorter-than-sofa", "table-out-of-reach",
    "seat-without-table", "walkway-too-narrow", "door-cannot-open", "curtain-near-heater", "seat-dim-for-reading",
    "all-against-walls", "seats-too-far-apart", "bed-side-tight", "front-blocked", "cable-across-route",
    "lead-too-short", "screen-off-eye-level", "screen-seen-sideways", "screen-too-near-or-far", "seat-turns-the-neck",
    "cables-on-show", "sconces-uneven", "sconce-off-height", "art-light-off", "heavy-over-head", "juts-into-route",
    "pendant-off-height", "table-crowded", "surface-crowded", "old-holes-show", "bed-undressed",
    "pendant-off-center",
)  # fmt: skip
BOUGHT_TOO = (
    "screen-off-eye-level", "console-too-narrow", "rod-hung-low", "rod-too-narrow", "panels-skimpy", "hem-off-floor",
    "rods-out-of-line", "window-bare", "art-too-small", "wall-bare", "floor-bare", "rug-misses-seats",
    "rug-shorter-than-sofa", "rug-slides", "table-out-of-reach", "table-off-length", "seat-without-table", "room-dim",
    "one-light-only", "seat-dim-for-reading", "lamp-colors-mixed", "tall-piece-loose", "screen-loose", "cord-in-reach",
    "cable-across-route", "curtain-near-heater", "nightstand-off-height", "bed-lopsided", "console-flank-flat",
    "bed-headless", "screen-glare", "cables-on-show", "pendant-off-center", "pendant-off-height",
    "bedroom-light-not-at-bed", "art-too-wide", "rug-catches-chairs", "rug-under-bed", "entry-no-landing",
    "old-holes-show", "personal-things", "floor-left-empty",
)  # fmt: skip
NO_ANSWER = {
    "all-straight-edges": "off unless asked for; a round table or plant counts, and other kinds bring them",
    "sofa-too-big": "a smaller sofa is no matter of a weekend: the user declares it",
    "room-purpose-unclear": "which use goes, only the owners can say: the user declares it",
}
"""Rules that no kind answers, and why."""
TABLE = {
    "lay-rug": (25, 45, 75), "rehang-picture": (10, 20, 35), "gather-pictures": (60, 100, 160),
    "lean-picture": (10, 20, 30), "bigger-picture": (20, 40, 60), "mount-board": (20, 40, 60),
    "longer-rod": (45, 75, 120), "rod-across": (70, 110, 170),
    "clamp-rod": (15, 25, 40), "new-panels": (20, 35, 60), "hem-tape": (20, 30, 45), "clip-rings": (10, 20, 30),
    "wider-console": (60, 100, 160), "new-coffee-table": (20, 35, 60), "nightstands": (20, 40, 60),
    "headboard": (30, 60, 90), "filler-basket": (5, 10, 20), "lower-screen": (90, 150, 240),
    "floor-lamp": (10, 20, 40), "brighter-lamps": (3, 5, 10), "plug-in-sconces": (45, 75, 120),
    "deeper-shade": (10, 15, 20), "electrician": (15, 30, 60), "strap": (15, 25, 45), "cord-cleat": (5, 15, 25),
    "cable-cover": (10, 20, 30), "fill-holes": (5, 8, 12), "paint-wall": (150, 240, 360), "rug-pad": (10, 15, 25),
    "float-seating": (30, 60, 120),
}  # fmt: skip
"""Usual minutes of the trade's table of remedies: judgement, shipped as defaults (common practice)."""
RENTERS = (
    "move-piece", "turn-rug", "lay-rug", "clip-rings", "longer-rod", "gather-pictures", "relevel-pictures",
    "slide-table", "new-coffee-table", "wider-console", "floor-lamp", "strap", "move-heater", "brighter-lamps",
    "declared",
)  # fmt: skip


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.kind)
def test_a_kind_is_whole(kind: Kind) -> None:
    """Targets are rules, sorts of products are known, minutes rise, phases are the trade's, holes need a drill."""
    assert set(kind.targets) <= SLUGS
    assert set(kind.whats) <= set(WHATS)
    low, likely, high = kind.minutes
    assert 0 < low <= likely <= high
    assert 1 <= kind.phase <= 13
    assert kind.people in (1, 2)
    assert kind.holes == 0 or "drill" in kind.hazards
    assert kind.bought is False or kind.whats


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.kind)
def test_a_kind_has_a_page(kind: Kind) -> None:
    """The page says what must be true to fit, what it answers and how long it usually takes."""
    page = kind_page(kind)
    assert page.startswith(f"{kind.kind} - {kind.name}\n")
    assert "Usually " in page
    assert "our judgement" in page
    assert all(target in page for target in kind.targets)


def test_kinds_have_names_of_their_own() -> None:
    """No two kinds share a name, and the registry is sorted by it."""
    names = [kind.kind for kind in KINDS]
    assert len(set(names)) == len(names)
    assert set(RENTERS) <= set(names)


@pytest.mark.parametrize("rule", FREE_TOO)
def test_a_fault_has_a_free_answer(rule: str) -> None:
    """Half of the good remedies cost nothing: at least one kind that buys nothing answers it."""
    assert [kind.kind for kind in KINDS if rule in kind.targets and not kind.bought]


@pytest.mark.parametrize("rule", BOUGHT_TOO)
def test_a_fault_has_a_bought_answer(rule: str) -> None:
    """At least one kind that picks a product answers it."""
    assert [kind.kind for kind in KINDS if rule in kind.targets and kind.bought]


def test_every_rule_has_an_answer_or_a_reason() -> None:
    """What no kind answers is named with the reason; what is named there is answered by nothing."""
    answered = {target for kind in KINDS for target in kind.targets}
    assert SLUGS - answered == set(NO_ANSWER)


@pytest.mark.parametrize("name", sorted(TABLE))
def test_minutes_are_the_tables(name: str) -> None:
    """Low, likely and high as the trade's table has them."""
    assert [kind.minutes for kind in KINDS if kind.kind == name] == [TABLE[name]]


def test_planned_minutes_are_the_mean_rounded_up() -> None:
    """5, 10 and 20 minutes make 12 (11 2/3)."""
    assert planned(Fraction(5), Fraction(10), Fraction(20)) == 12
    assert planned(Fraction(1), Fraction(1), Fraction(1)) == 1


@pytest.mark.parametrize(
    ("solid", "ceiling", "rod", "straps"),
    [(None, 2500.0, 80, 29), (True, 2500.0, 112, 40), (False, 2800.0, 100, 29), (True, 2800.0, 140, 40)],
)
def test_masonry_and_high_ceilings_take_longer(solid: bool | None, ceiling: float, rod: int, straps: int) -> None:
    """Masonry x 1.4 for what is drilled, a ceiling above 9 ft x 1.25 for rods: judgement, shipped as defaults."""
    survey = Survey(
        rooms=(RoomFacts(room="r", ceiling=ceiling),), walls=(Wall(room="r", wall="A", length=4000.0, solid=solid),)
    )
    for kind, minutes in ((longer_rod.KIND, rod), (strap.KIND, straps)):
        assert work_of(kind, "drill", factor(kind, survey, "r", "A")).minutes == minutes


def test_of_offers_that_do_the_same_the_cheapest_stays() -> None:
    """Two shops' straps fix one bookcase: the dearer one is not offered."""
    dear, cheap = product("dear", "strap", price_minor=900), product("cheap", "strap", price_minor=500)
    found: tuple[Candidate, ...] = strap.KIND.fit(site(renter(), "tall-piece-loose", "bookcase", dear, cheap))
    assert [one.id for one in found] == ["strap/bookcase/cheap"]
    here = site(renter(), "tall-piece-loose", "bookcase", dear, cheap)
    offers = [Offer("none", (), "nothing", name, ((name, Fraction(1)),)) for name in ("dear", "cheap")]
    assert [one.uses for one in best(strap.KIND, here, offers)] == [(("cheap", Fraction(1)),)]


def test_declared_is_never_offered() -> None:
    """What the user declares is the user's: the tool adds nothing of its own."""
    assert declared.KIND.fit(site(renter(), "tall-piece-loose", "bookcase")) == ()
