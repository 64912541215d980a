"""Pictures that are seen as one: by name, or by hanging close."""

from __future__ import annotations

import math
from typing import Any

from budgetfix.room.groups import PictureGroup, apart, picture_groups
from budgetfix.room.items import Hung


def frame(name: str, left: float, bottom: float = 1400.0, **more: Any) -> Hung:
    """A frame of 300 x 400 on wall B."""
    fields = {"name": name, "wall": "B", "from_left": left, "bottom": bottom, "width": 300.0, "height": 400.0}
    return Hung.model_validate({**fields, **more})


def groups(*frames: Hung, metric: bool = True) -> dict[str, list[str]]:
    """The groups by name, each with its frames from the left."""
    return {one.name: [each.name for each in one.frames] for one in picture_groups(frames, metric)}


def test_frames_4_in_apart_are_one_group_named_after_the_first() -> None:
    """At 100 mm they are one, at 101 two; an inch survey takes 4 in exactly, 101.6 mm."""
    assert groups(frame("b", 1400.0), frame("a", 1000.0)) == {"a": ["a", "b"]}
    assert groups(frame("a", 1000.0), frame("b", 1401.0)) == {"a": ["a"], "b": ["b"]}
    assert groups(frame("a", 1000.0), frame("b", 1401.0), metric=False) == {"a": ["a", "b"]}


def test_a_frame_between_joins_two_groups() -> None:
    """Left and right are apart; the one that hangs below and between joins them."""
    left, right, between = frame("left", 1000.0), frame("right", 1500.0), frame("between", 1250.0, 950.0)
    assert groups(left, right) == {"left": ["left"], "right": ["right"]}
    assert groups(left, right, between) == {"left": ["left", "between", "right"]}


def test_two_rows_far_apart_stay_two_groups_whatever_the_order() -> None:
    """Frames of an upper and a lower row alternate from the left and are not mixed up."""
    upper = [frame(f"u{at}", 1000.0 + 350 * at) for at in range(3)]
    lower = [frame(f"l{at}", 1100.0 + 350 * at, 400.0) for at in range(3)]
    assert groups(*upper, *lower) == {"u0": ["u0", "u1", "u2"], "l0": ["l0", "l1", "l2"]}


def test_a_name_holds_frames_together_that_hang_far_apart() -> None:
    """A named group is one at any distance; on two walls the name stands for two."""
    assert groups(frame("a", 1000.0, group="g"), frame("b", 2400.0, group="g")) == {"g": ["a", "b"]}
    assert groups(frame("a", 1000.0, group="g"), frame("b", 2400.0, group="g", wall="C")) == {
        "g, wall B": ["a"],
        "g, wall C": ["b"],
    }


def test_screens_and_shelves_are_no_pictures() -> None:
    """A screen between two frames joins nothing, nor does a clock; a mirror does."""
    assert groups(frame("a", 1000.0), frame("tv", 1350.0, what="screen")) == {"a": ["a"]}
    assert groups(frame("a", 1000.0), frame("clock", 1350.0, what="clock")) == {"a": ["a"]}
    assert groups(frame("a", 1000.0), frame("glass", 1350.0, what="mirror")) == {"a": ["a", "glass"]}


def test_the_outline_of_a_group() -> None:
    """Edges, width, middle, and what it hangs over."""
    group = PictureGroup("g", True, (frame("a", 1000.0), frame("b", 1400.0, 1500.0, over="sofa")))
    assert (group.left, group.right, group.low, group.high) == (1000.0, 1700.0, 1400.0, 1900.0)
    assert (group.width, group.middle, group.over, group.wall) == (700.0, 1350.0, "sofa", "B")


def test_gaps_between_two_frames() -> None:
    """The wider of across and up; overlapping frames are below nothing, other walls endless."""
    assert apart(frame("a", 1000.0), frame("b", 1350.0)) == 50.0
    assert apart(frame("a", 1000.0), frame("b", 1000.0, 900.0)) == 100.0
    assert apart(frame("a", 1000.0), frame("b", 1200.0)) == -100.0
    assert apart(frame("a", 1000.0), frame("b", 1350.0, wall="C")) == math.inf
