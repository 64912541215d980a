"""Mistakes and traps in the published sources that this project must not take over.

Numbers are those of the list of errata in the project's collection of published values. Elsewhere: 1 (a sales tax added
up wrongly) in `tests/base/test_money.py::test_sales_tax_as_published`; 2 and 3 (rounded multipliers, two systems of
units) in `tests/remedies/test_lifting.py`; 15 (a quarter of the working length) in `tests/remedies/test_cares.py`.
Not used here, so nothing to check: 5 to 8 (robust bounds, pairwise weights, wallpaper).
"""

from __future__ import annotations

import math
import re
from pathlib import Path
from typing import Any

import pytest

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import edge_mm
from budgetfix.inspection.screens import DIAGONAL_OF_WIDTH, diagonal_of
from budgetfix.intake.survey_file import read_survey
from budgetfix.remedies.holes import GALLON_L, SQ_FT_MM2, litres
from budgetfix.remedies.kinds import paint_wall
from budgetfix.room.items import Hung
from tests.inspection.rooms import seen
from tests.inspection.test_published_floors import BY_SLUG, inches, severity
from tests.inspection.test_published_walls import EYE_ABOVE_SEAT_MM
from tests.inspection.wall_rooms import renter_walls
from tests.laws.source import REPO
from tests.remedies.bench import fitted
from tests.remedies.test_wall_kinds import FILLER, PAINT, WALL, holed, with_holes


@pytest.mark.parametrize(
    ("what", "high", "judged"),
    [("chest of drawers", 27.0, True), ("chest of drawers", 26.9, False), ("bookcase", 40.0, False),
     ("bookcase", 48.0, True)],
)  # fmt: skip
def test_erratum_4_the_storage_rule_in_force(what: str, high: float, judged: bool) -> None:
    """S5, 16 CFR 1261.2 via ASTM F2057-23 is in force: 27 in, 30 lb, 3.2 cubic ft. The rule of November 2022 is not.

    That one weighed a filled chest (57 lb) and counted from 1.3 cubic ft. So no weight and no volume is asked for, and
    bookcases, which neither covers, are judged from 48 in only (common practice).
    """
    piece = {"name": "it", "what": what, "plan": (0, 0, 40, 14), "height": high, "faces": "C"}
    survey = inches(120, 120, furniture=[piece], home={"children": True})
    assert bool(severity(survey, "tall-piece-loose", "it")) is judged
    page = (REPO / "budgetfix" / "inspection" / "rules" / "tall_piece_loose.py").read_text(encoding="utf-8")
    assert "F2057-23" in page
    assert not re.search(r"\b57 lb\b|\b1\.3 (ft|cubic)", page)


def test_erratum_9_no_standing_eye_of_the_misprinted_row() -> None:
    """A3, not the misprint: NUREG-0700 has standing eyes from 59.1 to 69.1 in, about 4 in under the body's height.

    The other page lists US men's eyes only 45 mm below their height (erratum 9), women's 100 mm. Our picture band lies
    where A3 has it: its aim ends just above the lowest eyes, and no edge of it reaches a height without the 100 mm.
    """
    band = BY_SLUG["art-off-height"].band
    tops = [edge for edge in (edge_mm(band.aim[1], True), edge_mm(band.high, True)) if edge is not None]
    men_mm, drop_mm = 1755.0, 100.0
    assert 59.1 * 25.4 < max(tops) < men_mm - drop_mm < 69.1 * 25.4 + 25.4
    assert len(tops) == 2


def test_erratum_10_columns_of_one_table_are_no_oracle_for_each_other() -> None:
    """A1, NUREG-0700 Table 11.4, pairs 34.0 in with 86.2 cm, but 34.0 in are 86.36 cm: equal to 0.1 in, no finer.

    A6, ANSUR II, has 860 mm for the same men: our check of the screen's band uses that, which agrees with both columns.
    """
    used = EYE_ABOVE_SEAT_MM["men P95"]
    assert used == pytest.approx(862.0, abs=2.54)
    assert used == pytest.approx(34.0 * 25.4, abs=0.1 * 25.4 + 2.54)
    assert abs(34.0 * 25.4 - 862.0) > 1.0


SETS = ((50.0, 40.0, 30.0), (55.0, 44.0, 33.0), (60.0, 48.0, 36.0))


@pytest.mark.parametrize(("diagonal", "wide", "tall"), SETS)
def test_erratum_11_a_4_to_3_set_has_no_16_to_9_factors(diagonal: float, wide: float, tall: float) -> None:
    """T11: OpenStax, Intermediate Algebra 2e: its "widescreen" sets are 40 x 30, 44 x 33 and 48 x 36: 4:3.

    Its two sides give the diagonal; through the width alone (T1, 16:9) 40 in would make 45.9.
    """
    old = Hung(name="tv", what="screen", wall="A", width=wide * 25.4, height=tall * 25.4)
    assert diagonal_of(old) == pytest.approx(diagonal * 25.4)
    assert wide * DIAGONAL_OF_WIDTH < diagonal - 4
    new = Hung(name="tv", what="screen", wall="A", width=wide * 25.4, height=wide * 25.4 * 9 / 16)
    assert diagonal_of(new) == pytest.approx(wide * 25.4 * DIAGONAL_OF_WIDTH)


def test_erratum_11_the_rule_judges_an_old_set_by_its_own_diagonal() -> None:
    """The renter's screen swapped for a set of 4:3 with the same width: nearer by its larger diagonal."""
    rule, survey = BY_SLUG["screen-too-near-or-far"], renter_walls()
    tv = survey.named["tv"][1]
    assert isinstance(tv, Hung)
    old = seen(survey, "tv", height=tv.width * 3 / 4)
    wide, square = (rule.measure(Look(one, "r"), "tv") for one in (survey, old))
    assert wide is not None
    assert square is not None
    assert square.value == pytest.approx(wide.value * DIAGONAL_OF_WIDTH / 1.25)


def test_erratum_11_typed_sides_are_kept_beside_a_diagonal(tmp_path: Path) -> None:
    """T11: a set of 50 in typed with 40 x 30 stays so; typed alone, its diagonal is read as 16:9 (T1)."""
    text = (REPO / "tests" / "intake" / "rooms" / "front-room.yaml").read_text(encoding="utf-8")
    assert text.count("diagonal: 55") == 1
    path = tmp_path / "survey.yaml"
    path.write_text(text.replace("diagonal: 55", "diagonal: 50, width: 40, height: 30"), encoding="utf-8")
    found = read_survey(path)
    assert found.survey is not None
    assert [str(problem) for problem in found.problems] == []
    (tv,) = [one for one in found.survey.pictures if one.what == "screen"]
    assert (tv.width, tv.height) == pytest.approx((40 * 25.4, 30 * 25.4))
    assert diagonal_of(tv) == pytest.approx(50 * 25.4)


def _alarm(from_left: float, below: float) -> Any:
    alarm = {"name": "alarm", "what": "alarm", "wall": "A", "from_left": from_left, "width": 5.0, "height": 5.0,
             "bottom": 96.0 - below - 5.0}  # fmt: skip
    chair = {"name": "chair", "what": "armchair", "plan": (100.0, 0.0, 30.0, 30.0), "height": 33.0}
    return inches(160, 120, pictures=[alarm], furniture=[chair])


@pytest.mark.parametrize("near", [0.0, 1.0, 3.9, 4.1])
def test_erratum_12_no_dead_corner_for_alarms(near: float) -> None:
    """S10, erratum 12: the 4 in dead corner left NFPA 72 in 2010 and lives on in old instruction sheets; not here.

    An alarm that near to the ceiling or to the next wall is no fault; only cloth and tall pieces are.
    """
    for survey in (_alarm(60.0, near), _alarm(near, 6.0)):
        assert not severity(survey, "alarm-crowded", "alarm")


def test_erratum_13_a_sample_of_soldiers_is_an_assumption() -> None:
    """A5, A6, erratum 13: ANSUR II measured an army, younger and fitter than the public; whoever cites it says so.

    The screen's page names the survey, and our band leaves room: its lower edge is under every eye of that sample.
    """
    page = (REPO / "budgetfix" / "inspection" / "rules" / "screen_off_eye_level.py").read_text(encoding="utf-8")
    assert "ANSUR II" in " ".join(page.split())
    low = edge_mm(BY_SLUG["screen-off-eye-level"].band.low, True)
    assert low is not None
    assert low + 250 < 430 + min(EYE_ABOVE_SEAT_MM.values())


@pytest.mark.parametrize("coverage", [200.0, 350.0, 450.0])
def test_erratum_14_paint_says_the_coverage_it_took(coverage: float) -> None:
    """P1 to P7, erratum 14: sources span 200 to 450 sq ft a gallon; the task names the 350 of P7 that it took.

    Openings are taken solid (P3); at 200 the same wall would ask for more than half as much again.
    """
    (one,) = fitted(paint_wall.KIND, with_holes(holed("pins", 9)), "old-holes-show", "room", FILLER, PAINT, WALL)
    assert "350 sq ft a gallon" in one.work[0].text
    area = 4500.0 * 2500.0
    mine, theirs = litres(area, 2) / GALLON_L, 2 * area / SQ_FT_MM2 / coverage
    assert theirs / mine == pytest.approx(350 / coverage)
    assert math.isclose(mine, theirs) is (coverage == 350.0)
