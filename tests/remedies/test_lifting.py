"""The lifting equation against its published rows and worked examples, and what a task says of a known weight."""

from __future__ import annotations

from math import prod
from typing import Any

import pytest

from budgetfix.remedies.kinds import rehang_picture, slide_table, wider_console
from budgetfix.remedies.lifting import (
    INCHES,
    METRIC,
    POUND_KG,
    Lift,
    Load,
    index,
    load_cares,
    loads,
    multipliers,
    often,
    reach_of,
    recommended,
)
from budgetfix.room.survey import Change, Survey
from tests.inspection.rooms import renter, stager_living
from tests.remedies.bench import altered, fitted, product
from tests.remedies.test_picture_kinds import high
from tests.remedies.test_screen_and_table_kinds import screened

# Source of the rows S11 to S15, W20 and W21: NIOSH Publication 94-110 (rev. 2021).


def test_the_ideal_lift() -> None:
    """S11: held 10 in off, 30 in up, moved 10 in, straight ahead, a good hold: 51 lb. In metric 23 kg."""
    assert recommended(Lift(10.0, 30.0, 10.0), INCHES) == pytest.approx(51.0)
    assert recommended(Lift(25.0, 75.0, 25.0), METRIC) == pytest.approx(23.0)


@pytest.mark.parametrize(
    ("lift", "place", "share"),
    [
        (Lift(20.0, 30.0, 10.0), 0, 0.5),
        (Lift(10.0, 0.0, 10.0), 1, 0.775),
        (Lift(10.0, 60.0, 10.0), 1, 0.775),
        (Lift(10.0, 30.0, 36.0), 2, 0.87),
        (Lift(10.0, 30.0, 10.0, turn=90.0), 3, 0.712),
    ],
)
def test_the_multipliers(lift: Lift, place: int, share: float) -> None:
    """S11, page 7: 10/H, 1 - 0.0075 |V - 30|, 0.82 + 1.8/D, 1 - 0.0032 A, each alone below 1."""
    found = multipliers(lift, INCHES)
    assert found[place] == pytest.approx(share)
    assert [one for at, one in enumerate(found) if at not in (place, 5)] == pytest.approx([1.0] * 4)


@pytest.mark.parametrize(
    ("lift", "limit"),
    [
        (Lift(4.0, 30.0, 10.0), 51.0),
        (Lift(25.0, 30.0, 10.0), 20.4),
        (Lift(25.1, 30.0, 10.0), 0.0),
        (Lift(26.0, 30.0, 10.0), 0.0),
        (Lift(10.0, 70.0, 10.0), 35.7),
        (Lift(10.0, 70.1, 10.0), 0.0),
        (Lift(10.0, 30.0, 2.0), 51.0),
        (Lift(10.0, 30.0, 70.0), 43.131),
        (Lift(10.0, 30.0, 70.1), 0.0),
        (Lift(10.0, 30.0, 10.0, turn=135.0), 28.968),
        (Lift(10.0, 30.0, 10.0, turn=135.1), 0.0),
        (Lift(10.0, 30.0, 10.0, often=0.05), 51.0),
    ],
)
def test_the_limits(lift: Lift, limit: float) -> None:
    """S12, pages 8 to 15: H under 10 counts as 10, over 25 gives 0; V over 70; D under 10, over 70; A over 135; F."""
    assert recommended(lift, INCHES) == pytest.approx(limit, abs=1e-3)


def test_beyond_the_equation_there_is_no_index() -> None:
    """S12: held 26 in off nothing is recommended, and the index is undefined: None, no crash, no infinity."""
    assert index(5.0, Lift(26.0, 30.0, 10.0), INCHES) is None
    assert Load("sofa", 5.0, None).too_much


@pytest.mark.parametrize(
    ("depth", "hands", "reach"), [(24.0, 20.0, 20.0), (24.0, 10.0, 20.0), (24.0, 9.9, 22.0), (4.0, 40.0, 10.0)]
)
def test_how_far_off_a_load_is_held(depth: float, hands: float, reach: float) -> None:
    """S13, page 8: 8 in and half the depth; 10 in and half the depth with the hands below 10 in."""
    assert reach_of(depth, hands, INCHES) == reach


def test_how_far_off_in_centimetres() -> None:
    """The manual's metric twin of S13, from memory: 20 cm and half the depth, 25 cm below 25 cm."""
    assert (reach_of(60.0, 50.0, METRIC), reach_of(60.0, 20.0, METRIC)) == (50.0, 55.0)


@pytest.mark.parametrize(
    ("rate", "share"),
    [(0.0, 1.0), (0.2, 1.0), (0.5, 0.97), (1, 0.94), (2, 0.91), (2.5, 0.895), (3, 0.88), (4, 0.84), (5, 0.80),
     (6, 0.75), (7, 0.70)],
)  # fmt: skip
def test_how_often(rate: float, share: float) -> None:
    """S14, table 5 on page 15, up to an hour: the rows, and 2.5 a minute halfway between 2 and 3."""
    assert often(rate) == pytest.approx(share)


def test_faster_than_the_rows_nothing_is_recommended() -> None:
    """S14 ends at seven a minute: nobody hangs pictures faster, and no figure is made up."""
    assert often(7.1) == 0.0


@pytest.mark.parametrize(
    ("at", "words"),
    [
        (1.0, ""),
        (1.01, "too much for one to lift here; get help."),
        (3.0, "too much for one to lift here; get help."),
        (3.01, "not without two people and a dolly, or movers."),
        (None, "too much for one to lift here; get help."),
    ],
)
def test_how_an_index_reads(at: float | None, words: str) -> None:
    """S15, page 20: 1.0 is not flagged, 1.01 asks for help, above 3.0 it is hard for many."""
    said = Load("screen", 20.0, at).says(metric=True)
    assert said == (f"screen, 20 kg: {words}" if words else "")
    assert Load("screen", 20.0, at).says(metric=False).startswith("screen, 44 lb" if words else "")


ROUNDED = (1.0, 0.94, 0.87, 1.0, 0.88, 0.95)


def test_the_worksheet_of_example_four() -> None:
    """W20, page 46: V 22, D 37, 3 a minute, fair, H 10. Printed 34.9 lb from rounded multipliers; in full 34.8."""
    lift = Lift(10.0, 22.0, 37.0, often=3.0)
    assert tuple(round(one, 2) for one in multipliers(lift, INCHES)) == ROUNDED
    assert round(51.0 * prod(ROUNDED), 1) == 34.9
    assert round(recommended(lift, INCHES), 1) == 34.8


def test_its_far_end() -> None:
    """W20: at V 59, where the hold counts 1.0 and H is 20 (inferred): 15.3 in full, 15.2 printed; the lower governs."""
    far = recommended(Lift(20.0, 59.0, 37.0, often=3.0), INCHES)
    assert round(far, 1) == 15.3
    assert far < recommended(Lift(10.0, 22.0, 37.0, often=3.0), INCHES)


def test_the_punch_press_stock() -> None:
    """W21, pages 33 to 37 (task values from memory): 44 lb, H 23, V 15 to 64, D 49. Full precision 16.0 and 14.2 lb."""
    near, far = Lift(23.0, 15.0, 49.0), Lift(23.0, 64.0, 49.0)
    assert round(recommended(near, INCHES), 1) == 16.0
    assert round(recommended(far, INCHES), 1) == 14.2
    assert round(index(44.0, near, INCHES) or 0, 1) == 2.7
    assert round(51.0 * 0.44 * 0.89 * 0.86 * 0.95, 1) == 16.3, "the printed worksheet, rounded"
    assert round(44.0 / (51.0 * 0.44 * 0.75 * 0.86), 1) == 3.0
    assert round(index(44.0, far, INCHES) or 0, 2) == 3.11, "in full it is above 3, the printed 3.0 is not"


def test_printed_tables_are_not_copied() -> None:
    """Erratum 2: table 1 prints .46 at H 22, .44 at H 23 and (metric) .86 at D 130; the formula gives .45, .43, .85."""
    assert [round(multipliers(Lift(at, 30.0, 10.0), INCHES)[0], 2) for at in (22.0, 23.0)] == [0.45, 0.43]
    assert round(multipliers(Lift(25.0, 75.0, 130.0), METRIC)[2], 2) == 0.85


def test_the_two_systems_are_kept_apart() -> None:
    """Erratum 3: 51 lb is 23.13 kg against 23, 10 in is 25.4 cm against 25: one lift, two limits."""
    assert pytest.approx(23.1332, abs=1e-4) == 51.0 * POUND_KG
    pounds = recommended(Lift(10.0, 30.0, 10.0), INCHES) * POUND_KG
    kilograms = recommended(Lift(25.4, 76.2, 25.4), METRIC)
    assert pounds - kilograms > 0.3


def heavier(weight: float | None) -> Survey:
    """The renter's picture, hung too high, of this weight."""
    return altered(high(), "picture", weight=weight)


@pytest.mark.parametrize(("weight", "people"), [(None, 1), (2.4, 1), (12.0, 1), (20.0, 2), (60.0, 2)])
def test_a_heavy_picture_takes_two(weight: float | None, people: int) -> None:
    """Nothing is claimed without a weight; 2.4 and 12 kg are for one; 20 kg are too much: two people."""
    (one,) = fitted(rehang_picture.KIND, heavier(weight), "art-off-height", "picture")
    assert one.work[0].people == people
    assert ("lifting" in one.hazards) is (people == 2)
    assert any(care.startswith("picture, ") for care in one.cares) is (people == 2)
    assert any("and a dolly" in care for care in one.cares) is (weight == 60.0)
    assert [step.people for step in one.work[1:]] == [1], "the old hole is filled by one"


def test_a_screen_on_a_wider_bench() -> None:
    """A screen of 40 kg goes up with its bench: the list says what it weighs."""
    survey = altered(screened(), "screen", weight=40.0)
    bench = product("b", "console", width=1600.0, depth=420.0, height=520.0)
    (one,) = fitted(wider_console.KIND, survey, "console-too-narrow", "screen", bench)
    assert any(care.startswith("screen, 40 kg") for care in one.cares)


def test_a_piece_of_known_weight_is_taken_away() -> None:
    """A cabinet of 20 kg is not for one, 45 kg ask for a dolly, 3 kg for nobody; a survey in inches speaks pounds."""
    survey = altered(stager_living(), "cabinet", weight=20.0)
    gone = (Change("furniture", "cabinet", remove=True),)
    assert load_cares(survey, gone) == ("cabinet, 44 lb: too much for one to lift here; get help.",)
    assert "99 lb: not without" in load_cares(altered(survey, "cabinet", weight=45.0), gone)[0]
    assert load_cares(altered(survey, "cabinet", weight=3.0), gone) == ()
    assert load_cares(stager_living(), gone) == ()


@pytest.mark.parametrize(("weight", "flagged"), [(None, False), (20.0, False), (23.0, False), (23.5, True)])
def test_a_slide_is_no_lift(weight: float | None, flagged: bool) -> None:
    """The equation is silent on pushing: help is asked for only above what the best lift allows (23 kg, S11)."""
    survey = altered(renter(), "table", weight=weight)
    (one, *_) = fitted(slide_table.KIND, survey, "table-out-of-reach", "table")
    assert any(care.startswith("table, 23.5 kg") for care in one.cares) is flagged
    assert one.work[0].people == (2 if flagged else 1)


@pytest.mark.parametrize(
    ("change", "lifted"),
    [({"from_left": 100.0}, True), ({"wall": "D"}, True), ({"fixed": True}, False), ({"things": 2}, False)],
)
def test_only_what_goes_elsewhere_is_lifted(change: dict[str, Any], lifted: bool) -> None:
    """A strap on a bookcase of 50 kg lifts nothing."""
    survey = altered(renter(), "bookcase", weight=50.0)
    found = loads(survey, (Change("furniture", "bookcase", tuple(change.items())),))
    assert bool(found) is lifted
