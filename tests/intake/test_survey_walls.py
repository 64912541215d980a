"""Rooms of other shapes than a rectangle, and more rooms than one."""

from __future__ import annotations

from pathlib import Path

import pytest

from budgetfix.intake.survey_file import SurveyFile, read_survey
from budgetfix.room.places import closing_gap, outline


def _read(tmp_path: Path, text: str) -> SurveyFile:
    path = tmp_path / "survey.yaml"
    path.write_text("unit: cm\n" + text, encoding="utf-8")
    return read_survey(path)


L_SHAPE = """
walls:
  - {wall: A, length: 600}
  - {wall: B, length: 500}
  - {wall: C, length: 300}
  - {wall: D, length: 200, turn: left}
  - {wall: E, length: 300}
  - {wall: F}
"""


def test_an_l_shape_closes(tmp_path: Path) -> None:
    """The last wall of an L is worked out, and its floor is 6 x 5 m less 3 x 2 m."""
    file = _read(tmp_path, L_SHAPE)
    assert [str(problem) for problem in file.problems] == []
    assert file.survey is not None
    assert file.survey.walls[-1].length == 3000.0
    assert outline(file.survey, "").area == pytest.approx(24e6)
    assert file.survey.guessed == {("", "ceiling")}


def test_a_piece_may_pass_the_end_of_a_wall_that_turns_away(tmp_path: Path) -> None:
    """In an L, a sofa may stand across the inner corner; it may not leave the room."""
    sofa = "furniture: [{name: Sofa, what: sofa, wall: D, from_left: 100, width: 180}]\n"
    assert _read(tmp_path, L_SHAPE + sofa).problems == ()
    far = sofa.replace("from_left: 100", "from_left: 199").replace("width: 180", "width: 400")
    assert ["out of the room" in str(problem) for problem in _read(tmp_path, L_SHAPE + far).problems] == [True]


def test_a_bay_in_degrees(tmp_path: Path) -> None:
    """A bay with corners of 45 degrees is measured wall by wall."""
    file = _read(
        tmp_path,
        """
walls:
  - {wall: A, length: 400}
  - {wall: B, length: 300, turn: 45}
  - {wall: C, length: 1 m, turn: 45}
  - {wall: D, length: 258.6, turn: 45}
  - {wall: E, length: 1 m, turn: 45}
  - {wall: F}
""",
    )
    assert [str(problem) for problem in file.problems] == []
    assert file.survey is not None
    assert file.survey.walls[-1].length == pytest.approx(3000, abs=1)
    assert closing_gap(file.survey.walls) < 1


def test_walls_that_cross(tmp_path: Path) -> None:
    """Walls that close and turn once around, but run through each other, are no room."""
    lengths = (400, 300, 100, 50, 50, 100, 100, 50, 50, 100, 300, 300)
    turns = ("right", "right", *["left"] * 4, *["right"] * 6)
    walls = zip("ABCDEFGHIJKL", lengths, turns, strict=True)
    lines = "".join(f"  - {{wall: {letter}, length: {length}, turn: {turn}}}\n" for letter, length, turn in walls)
    told = [str(problem) for problem in _read(tmp_path, "walls:\n" + lines).problems]
    assert told == [
        "survey.yaml [line 14] found walls that cross each other, wanted walls in the order in which you turn right"
    ]


def test_two_rooms(tmp_path: Path) -> None:
    """With several rooms each line says its room, and walls may have the same letters; curtains follow windows."""
    text = """
rooms: [{room: Hall, kind: hall}, {room: Den}]
walls:
  - {room: hall, wall: A, length: 200}
  - {room: hall, wall: B, length: 300}
  - {room: Den, wall: A, length: 400}
  - {room: Den, wall: B, length: 500}
openings:
  - {name: Win, room: den, what: window, wall: A, from_left: 10, width: 100, bottom: 90, top: 210}
curtains:
  - {window: win, rod_height: 220, rod_from_left: 0, rod_width: 130, panel_width: 110, hem: -2}
"""
    file = _read(tmp_path, text)
    assert [str(problem) for problem in file.problems] == []
    assert file.survey is not None
    assert file.survey.curtains[0].room == "Den"
    assert file.survey.curtains[0].hem == -20.0
    assert len(file.survey.walls_of("Hall")) == 4
    lost = _read(tmp_path, text + "rugs: [{name: R, wall: A, from_left: 0, width: 50, depth: 50, gap: 9}]\n")
    assert [problem.wanted for problem in lost.problems] == ["one of the rooms: Hall, Den"]


def test_what_may_share_a_spot(tmp_path: Path) -> None:
    """Chairs pushed in, baskets under a bench and what hangs share a spot of floor; a round table is no square."""
    room = "walls: [{wall: A, length: 400}, {wall: B, length: 400}]\nfurniture:\n"
    table = "  - {name: T, what: dining table, wall: A, from_left: 100, gap: 100, width: 100, depth: 100, height: 75}\n"
    chair = "  - {name: C, what: dining chair, wall: A, from_left: 120, gap: 60, width: 45, depth: 50, height: 90"
    assert _read(tmp_path, room + table + chair + ", at: T}\n").problems == ()
    assert len(_read(tmp_path, room + table + chair + "}\n").problems) == 1
    corner = "  - {name: P, what: bookcase, wall: A, from_left: 188, gap: 188, width: 30, depth: 30, height: 90}\n"
    assert len(_read(tmp_path, room + table + corner).problems) == 1
    assert _read(tmp_path, room + table.replace("height", "round: yes, height") + corner).problems == ()
