"""Published values about floors, doors, seats, beds, light and hazards, each named where it is checked."""

from __future__ import annotations

from typing import Any

import pytest

from budgetfix.inspection.look import Look
from budgetfix.inspection.registry import RULES
from budgetfix.inspection.rule import Measured, Rule, edge_mm, slope
from budgetfix.inspection.rules.room_dim import LOSS, lux
from budgetfix.room.places import lines_of
from budgetfix.room.routes import Passing, floor_of, passes
from budgetfix.room.survey import Survey, Wall
from budgetfix.room.zones import inside_door
from tests.inspection.rooms import room

BY_SLUG = {rule.slug: rule for rule in RULES}
DOORS = [
    {"name": "in", "wall": "A", "from_left": 0.0, "width": 36.0},
    {"name": "out", "wall": "C", "from_left": 0.0, "width": 36.0},
]


def inches(width: float, length: float, **things: Any) -> Survey:
    """A room in inches, without step-free wishes unless they are given under `home`."""
    home = things.pop("home", {})
    return room("in", (width, length), {"ceiling": 96.0, **things}, **home)


def severity(survey: Survey, slug: str, subject: str) -> float | None:
    """Severity of one rule on one subject; None where the rule is silent."""
    rule: Rule = BY_SLUG[slug]
    look = Look(survey, "r")
    if subject not in rule.subjects(look):
        return None
    measured: Measured | None = rule.measure(look, subject)
    if measured is None:
        return None
    if measured.severity is not None:
        return float(measured.severity)
    return float(slope(measured.value, measured.band or rule.band, rule.unit, survey.household.metric))


@pytest.mark.parametrize(
    ("width", "pinches", "sound"),
    [
        (36.0, (), True),
        (35.9, ((100.0, 30.0, 0.0),), False),
        (36.0, ((100.0, 24.0, 4.0),), True),
        (36.0, ((100.0, 24.1, 4.0),), False),
        (36.0, ((100.0, 20.0, 4.1),), False),
        (36.0, ((60.0, 24.0, 4.0), (131.0, 24.0, 4.0)), False),
        (36.0, ((60.0, 24.0, 4.0), (132.0, 24.0, 4.0)), True),
        (36.0, ((60.0, 24.0, 4.0), (132.0, 25.0, 4.0)), False),
    ],
)
def test_c1_step_free_ways(width: float, pinches: tuple[tuple[float, float, float], ...], sound: bool) -> None:
    """C1, W1: 2010 ADA Standards 403.5.1: 36 in; 32 in over at most 24 in; pinches 48 in apart (47 fails)."""
    blocks = [
        {"name": f"block {at}", "what": "cabinet", "plan": (0, start, max(depth, 0.01), run), "height": 40.0}
        for at, (start, run, depth) in enumerate(pinches)
    ]
    doors = [{**door, "width": width} for door in DOORS]
    survey = inches(width, 260.0, openings=doors, furniture=blocks, home={"step_free": True})
    found = severity(survey, "walkway-too-narrow", "in to out")
    assert (found == 0) is sound


def test_c3_the_clear_opening_of_a_door() -> None:
    """C3: 2010 ADA Standards 404.2.3, UFAS 4.13.5: 32 in clear at 90 degrees. A 32 in leaf that opens wholly has it."""
    leaf = {"name": "door", "wall": "A", "from_left": 40.0, "width": 32.0}
    free = BY_SLUG["door-cannot-open"].measure(Look(inches(120, 150, openings=[leaf]), "r"), "door")
    assert free is not None
    assert (free.value, free.note) == (90.0, "clear opening 813 mm")
    bag = {"name": "bag", "what": "bag", "plan": (70.0, 20.0, 8.0, 10.0), "height": 15.0}
    held = BY_SLUG["door-cannot-open"].measure(Look(inches(120, 150, openings=[leaf], furniture=[bag]), "r"), "door")
    assert held is not None
    assert held.value == pytest.approx(63.43, abs=0.01)
    assert held.note == "clear opening 449 mm, stopped by bag"


@pytest.mark.parametrize(
    ("edge", "depth", "excess"),
    [(27.0, 14.0, None), (27.1, 4.0, 0.0), (27.1, 4.1, 0.1), (80.0, 5.0, 1.0), (80.1, 5.0, None), (30.0, 10.0, 6.0)],
)
def test_c7_protruding_objects(edge: float, depth: float, excess: float | None) -> None:
    """C7, W2: ABA/ADA 307.2: above 27 and up to 80 in at most 4 in may stand out. W2: 10 in is 6 too deep."""
    shelf = {
        "name": "shelf", "what": "shelf", "wall": "B", "from_left": 60.0, "width": 30.0, "bottom": edge,
        "height": 2.0, "depth": depth,
    }  # fmt: skip
    found = severity(inches(38, 150, pictures=[shelf]), "juts-into-route", "shelf")
    assert found == (None if excess is None else pytest.approx(excess / 4, abs=1e-3))


def test_c14_a_corridor_past_a_radiator() -> None:
    """C14: Approved Document M (2013) 7.5b: 740 mm beside a radiator fails; 760 mm over 1.9 m passes."""
    rule = Passing(900.0, 750.0, 2000.0)
    walls = tuple(Wall(wall=name, length=size) for name, size in zip("ABCD", (900.0, 9000.0) * 2, strict=True))
    lines = {line.letter: line for line in lines_of(walls)}
    ends = (inside_door(lines["A"], 0.0, 900.0), inside_door(lines["C"], 0.0, 900.0))

    def past(depth: float, run: float) -> bool:
        ring = ((0.0, 3000.0), (depth, 3000.0), (depth, 3000.0 + run), (0.0, 3000.0 + run))
        return passes(floor_of(tuple(line.start for line in lines.values()), (ring,)), *ends, rule)

    assert not past(160.0, 1900.0)
    assert past(140.0, 1900.0)
    assert not past(140.0, 2100.0)


def _facing(apart: float) -> Survey:
    sofa = {"name": "sofa", "what": "sofa", "plan": (60, 0, 84, 36), "height": 33.0, "faces": "C"}
    other = {"name": "other", "what": "loveseat", "plan": (60, 36 + apart, 60, 36), "height": 33.0, "faces": "A"}
    return inches(200, 260, furniture=[sofa, other])


def test_c15_facing_seats() -> None:
    """C15: HUD 1973: 60 in between facing seats is our aim, 59 in is below it; 11 ft is outside its 10 ft circle."""
    rule = BY_SLUG["seats-too-far-apart"]
    assert edge_mm(rule.band.aim[0], False) == pytest.approx(60 * 25.4)
    assert severity(_facing(59), "seats-too-far-apart", "other") == 0
    assert severity(_facing(132), "seats-too-far-apart", "other") == pytest.approx(36 / 48)


@pytest.mark.parametrize(("wide", "sound"), [(24.0, True), (23.9, False)])
def test_c15_between_furniture(wide: float, sound: bool) -> None:
    """C15: HUD 1973: 24 in where people pass between furniture; so much leads to the seats."""
    blocks = [
        {"name": "sofa", "what": "sofa", "plan": (20, 180, 80, 36), "height": 33.0, "faces": "A"},
        {"name": "one", "what": "cabinet", "plan": (0, 90, 50, 20), "height": 40.0},
        {"name": "two", "what": "cabinet", "plan": (50 + wide, 90, 70 - wide, 20), "height": 40.0},
    ]
    survey = inches(
        120, 240, openings=[{"name": "in", "wall": "A", "from_left": 40.0, "width": 36.0}], furniture=blocks
    )
    assert (severity(survey, "walkway-too-narrow", "in to seats") == 0) is sound


@pytest.mark.parametrize(("free", "sound"), [(30.0, True), (29.8, False)])
def test_c15_room_to_use_a_desk(free: float, sound: bool) -> None:
    """C15: HUD 1973: 30 in to use a desk."""
    desk = {"name": "desk", "what": "desk", "plan": (30, 0, 48, 24), "height": 29.0, "faces": "C"}
    chest = {"name": "box", "what": "toy box", "plan": (30, 24 + free, 48, 20), "height": 20.0}
    found = severity(inches(120, 150, furniture=[desk, chest]), "front-blocked", "desk")
    assert (found == 0) is sound


def test_c16_before_a_dresser() -> None:
    """C16: HUD 1973: 36 in before a dresser is our aim; 34 in is below it and let pass, 29 in is not."""
    rule = BY_SLUG["front-blocked"]
    assert edge_mm(rule.band.aim[0], False) == pytest.approx(36 * 25.4)
    dresser = {"name": "dresser", "what": "dresser", "plan": (30, 0, 48, 18), "height": 32.0, "faces": "C"}

    def before(free: float) -> float | None:
        bed = {"name": "bed", "what": "bed", "plan": (20, 18 + free, 60, 80), "height": 24.0, "faces": "A"}
        return severity(inches(120, 18 + free + 80, furniture=[dresser, bed]), "front-blocked", "dresser")

    assert before(34) == 0
    assert before(29) == pytest.approx(1 / 15)


@pytest.mark.parametrize(("left", "right", "sound"), [(22.0, 30.0, True), (21.8, 30.0, False), (30.0, 23.8, False)])
def test_c16_beside_a_bed(left: float, right: float, sound: bool) -> None:
    """C16: HUD 1973: 22 in on the circulation side, 24 in in the major path (here the side of the door, right)."""
    bed = {"name": "bed", "what": "bed", "plan": (right, 70, 60, 80), "height": 24.0, "faces": "A", "sleepers": 2}
    wide = left + 60 + right
    door = {"name": "door", "wall": "A", "from_left": wide - 32.0, "width": 30.0}
    survey = inches(wide, 150, openings=[door], furniture=[bed])
    assert (severity(survey, "bed-side-tight", "bed") == 0) is sound


@pytest.mark.parametrize(("gap", "sound"), [(11.0, False), (12.0, True), (18.0, True), (19.0, False)])
def test_c20_sofa_to_table(gap: float, sound: bool) -> None:
    """C20: teaching table of clearances: coffee table to chair 1 to 1 1/2 ft; 11 in is under, 19 in over."""
    sofa = {"name": "sofa", "what": "sofa", "plan": (40, 0, 84, 36), "height": 33.0, "faces": "C"}
    table = {"name": "table", "what": "coffee table", "plan": (60, 36 + gap, 44, 22), "height": 17.0}
    found = severity(inches(160, 150, furniture=[sofa, table]), "table-out-of-reach", "table")
    assert (found == 0) is sound


@pytest.mark.parametrize(("high", "silent"), [(26.9, True), (27.0, False)])
def test_s5_clothing_storage(high: float, silent: bool) -> None:
    """S5: 16 CFR 1261.2 via ASTM F2057-23: 27 in is in scope, 26.9 in is out."""
    chest = {"name": "chest", "what": "chest of drawers", "plan": (0, 0, 40, 20), "height": high, "faces": "C"}
    found = severity(inches(120, 120, furniture=[chest], home={"children": True}), "tall-piece-loose", "chest")
    assert found == (None if silent else 1)


@pytest.mark.parametrize(("cord", "expected"), [(8.0, 0.0), (8.1, 1.0)])
def test_s6_window_cords(cord: float, expected: float) -> None:
    """S6: ANSI/WCMA A100.1-2018 4.3.1: 8.0 in passes, 8.1 in within reach is a hazard."""
    window = {"name": "win", "what": "window", "wall": "A", "from_left": 30.0, "width": 40.0, "cord": cord}
    assert severity(inches(120, 120, openings=[window], home={"toddlers": True}), "cord-in-reach", "win") == expected


@pytest.mark.parametrize(
    ("kind", "apart", "sound"),
    [
        ("baseboard heater", 10.0, False),
        ("baseboard heater", 12.0, True),
        ("portable heater", 35.0, False),
        ("portable heater", 36.0, True),
    ],
)
def test_s8_heater_to_curtain(kind: str, apart: float, sound: bool) -> None:
    """S8: fire-service guidance: baseboard heater at least 12 in, portable heater 3 ft from cloth."""
    window = {"name": "win", "what": "window", "wall": "A", "from_left": 20.0, "width": 30.0, "bottom": 30.0}
    cloth = {
        "name": "curtain", "window": "win", "rod_height": 84.0, "rod_from_left": 10.0, "rod_width": 50.0,
        "panel_width": 40.0, "hem": 0.5, "stack": 8.0,
    }  # fmt: skip
    heater = {"name": "heater", "what": kind, "plan": (160 - 60 - apart - 30, 0, 30, 4), "height": 12.0, "faces": "C"}
    survey = inches(160, 120, openings=[window], curtains=[cloth], furniture=[heater])
    assert (severity(survey, "curtain-near-heater", "curtain") == 0) is sound


def test_l6_w6_the_lumen_method() -> None:
    """L6, W6: CIBSE lumen method as taught: 54 lamps of 18,000 lm over 60 x 24 m give 202.5 lx (UF 0.4, MF 0.75)."""
    assert lux(54 * 18_000, 60 * 24, 0.4, 0.75) == pytest.approx(202.5)
    assert pytest.approx(53.33, abs=0.01) == 200 * 60 * 24 / (18_000 * 0.4 * 0.75)


def test_l7_the_loss_factor() -> None:
    """L7: 0.9 x 0.9 x 0.95 = 0.7695, which is the 0.77 that the note uses."""
    assert abs(LOSS - 0.9 * 0.9 * 0.95) < 0.001


def test_l1_general_light_at_home() -> None:
    """L1: IES Lighting Handbook table 10-7: 5 foot-candles = 53.8 lx; our aim of 150 to 200 lm/m2 holds it."""
    aim = BY_SLUG["room-dim"].band.aim
    low, high = (lux(edge_mm(edge, True) or 0.0, 1.0) for edge in aim)
    assert low <= 5 * 10.7639 <= high
