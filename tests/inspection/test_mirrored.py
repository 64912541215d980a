"""Left and right, and which wall is called A, are nobody's fault: turned and mirrored rooms have the same findings.

Every rule is tried: in the three invented jobs with their furniture slid about, and in the start of every case file.
Only `certain` is compared in turned rooms alone, because a tape gives more beyond 2 m and is laid from the left.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from budgetfix.brief.models import Brief
from budgetfix.inspection.inspect import judge_one
from budgetfix.inspection.judging import Judge
from budgetfix.inspection.look import Look
from budgetfix.inspection.registry import RULES
from budgetfix.room.survey import Survey, Wall
from tests.inspection.rooms import couple_bedroom, couple_living, stager_bedroom
from tests.inspection.test_cases import FILES, changed, read, survey_of
from tests.inspection.test_lifting import jumbled
from tests.inspection.turned import mirrored, rebuilt, rotated
from tests.inspection.wall_rooms import couple_walls, renter_walls, stager_walls

ALL = tuple(Judge(rule, rule.band, rule.weight) for rule in sorted(RULES, key=lambda rule: rule.slug))
ROOMS = (renter_walls, stager_walls, stager_bedroom, couple_walls, couple_living, couple_bedroom)
MOVES = st.lists(st.tuples(st.integers(-4, 4), st.integers(-2, 4)), min_size=14, max_size=14)
Figures = dict[str, list[tuple[float, ...]]]


def figures(survey: Survey, *, certain: bool) -> Figures:
    """(value, severity, certain) of each finding by rule, in order of size: the names of walls and ways may differ."""
    found: Figures = defaultdict(list)
    for judge in ALL:
        for subject in sorted(judge.rule.subjects(Look(survey, "r"))):
            one = judge_one(judge, Look(survey, "r"), subject, Brief())
            if one is not None:
                sure = float(one.certain) if certain else 1.0
                found[judge.rule.slug].append((round(one.value, 2), float(one.severity), sure))
    return {rule: sorted(several) for rule, several in found.items()}


def alike(one: Figures, other: Figures) -> None:
    """The same findings, to a hundredth of a millimetre."""
    assert sorted(one) == sorted(other)
    for rule, several in one.items():
        assert len(several) == len(other[rule]), rule
        for mine, theirs in zip(several, other[rule], strict=True):
            assert mine == pytest.approx(theirs, abs=0.011, rel=1e-4), rule


def same(survey: Survey) -> None:
    """Nothing differs in the turned room, nor in the mirrored one, nor in the mirrored one turned twice."""
    plain = figures(survey, certain=False)
    alike(figures(rotated(survey), certain=True), figures(survey, certain=True))
    alike(figures(mirrored(survey), certain=False), plain)
    alike(figures(rotated(rotated(mirrored(survey))), certain=False), plain)


@pytest.mark.parametrize("built", ROOMS, ids=lambda built: built.__name__)
@settings(max_examples=4, deadline=None, derandomize=True, phases=(Phase.explicit, Phase.generate))
@given(MOVES)
def test_turned_and_mirrored_rooms_have_the_same_findings(
    built: Callable[[], Survey], moves: list[tuple[int, int]]
) -> None:
    """However the furniture stands, it is judged alike from every wall and in the mirror."""
    same(jumbled(built(), moves))


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_every_rule_is_neither_left_nor_right_handed(path: object) -> None:
    """The room of each rule's case file, at its start: all rules find the same in it turned and mirrored."""
    data = read(path)  # type: ignore[arg-type]
    survey = survey_of(changed(data["room"], data.get("start", {})))
    if all(curtain.panels > 1 for curtain in survey.curtains):
        same(survey)


def test_an_l_shaped_room_has_a_mirror_image() -> None:
    """Six walls, one corner turning left, a sofa in the long arm: turned and mirrored alike."""
    turns = (("A", 4000.0, 90.0), ("B", 5000.0, 90.0), ("C", 2000.0, 90.0), ("D", 2000.0, -90.0), ("E", 2000.0, 90.0),
             ("F", 3000.0, 90.0))  # fmt: skip
    walls = tuple(Wall(room="r", wall=name, length=length, turn=turn) for name, length, turn in turns)
    bare = couple_living()
    kept = tuple(one for one in bare.furniture if one.name in ("sofa", "table", "console", "bookcase"))
    survey = rebuilt(bare, walls=walls, furniture=kept, openings=bare.openings[:1], curtains=())
    assert len(figures(survey, certain=True)) > 10
    same(survey)


def test_a_mirror_image_is_another_room() -> None:
    """The check could fail: the mirrored survey is not the survey, and mirrored twice it is the survey again."""
    survey = renter_walls()
    assert mirrored(survey) != survey
    assert rotated(survey) != survey
    again = mirrored(mirrored(survey))
    assert {one.name: round(one.from_left, 6) for one in again.furniture} == {
        one.name: round(one.from_left, 6) for one in survey.furniture
    }
