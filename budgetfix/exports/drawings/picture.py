"""One finished drawing, and the words that stand for it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

When = Literal["before", "after"]


@dataclass(frozen=True, slots=True)
class Picture:
    """`svg` is `width` by `height` units; `words` tell it to those who cannot see it.

    `view`: "floor" or "wall C"; pictures of one room and view come in pairs, before and after, at one scale.
    `notes`: (number, task) of the numbers in circles.
    """

    room: str
    view: str
    when: When
    title: str
    svg: str
    words: str
    width: float
    height: float
    notes: tuple[tuple[int, str], ...] = ()
