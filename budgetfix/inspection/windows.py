"""What the window rules look at: the rod and the cloth at one window."""

from __future__ import annotations

from budgetfix.inspection.look import Look
from budgetfix.room.items import Curtain, Opening
from budgetfix.room.stretches import Stretch

NO_LOOKS = "handing-back"


def dressed(look: Look) -> tuple[str, ...]:
    """Names of the windows that have a rod (a rod across two is judged at its left one)."""
    windows = {window.name for window in look.openings(whats=("window",)) if window.wall in look.lines}
    return tuple(sorted({curtain.window for curtain in look.curtains()} & windows))


def at_window(look: Look, name: str) -> tuple[Opening, Curtain] | None:
    """The window and its curtain; None where one of them is not there."""
    window = look.opening(name)
    curtain = next((one for one in look.curtains() if one.window == name), None)
    return (window, curtain) if window is not None and curtain is not None and window.wall in look.lines else None


def glass(look: Look, window: Opening, curtain: Curtain) -> Stretch:
    """The stretch of frame that the rod serves: one window, or two and the wall between."""
    other = look.opening(curtain.also_window) if curtain.also_window else None
    frames = [window] + ([other] if other is not None and other.wall == window.wall else [])
    return (min(one.from_left for one in frames), max(one.from_left + one.width for one in frames))


def wall_beside(look: Look, window: Opening, frame: Stretch) -> tuple[float, float]:
    """Bare wall left and right of a frame, to the corner or the next door or window."""
    line = look.lines[window.wall]
    others = [one for one in look.openings(wall=window.wall) if one.from_left + one.width <= frame[0] + 0.05]
    after = [one for one in look.openings(wall=window.wall) if one.from_left >= frame[1] - 0.05]
    left = frame[0] - max((one.from_left + one.width for one in others), default=0.0)
    right = min((one.from_left for one in after), default=line.length) - frame[1]
    return max(0.0, left), max(0.0, right)
