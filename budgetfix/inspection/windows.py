"""What the window rules look at: the rod and the cloth at one window."""

from __future__ import annotations

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.room.items import Curtain, Opening
from budgetfix.room.stretches import Stretch, along_wall, stack_of, wall_strip

AGAINST, REACH = Twin(6), Twin(12)


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


def wall_beside(look: Look, window: Opening, curtain: Curtain, frame: Stretch) -> tuple[float, float]:
    """Wall left and right of a frame that a rod can have.

    It ends at the corner, the next door, halfway to the next window that has a rod of its own, and at what sticks
    out of the wall there: a shelf or a screen, or a piece against the wall that is taller than the sill.
    """
    line = look.lines[window.wall]
    dressed = {name for one in look.curtains() if one.name != curtain.name for name in (one.window, one.also_window)}
    ends = [line.length - frame[1]]
    starts = [frame[0]]
    for one in look.openings(wall=window.wall):
        share = 2.0 if one.name in dressed else 1.0
        if one.from_left + one.width <= frame[0] + 0.05:
            starts.append((frame[0] - one.from_left - one.width) / share)
        elif one.from_left >= frame[1] - 0.05:
            ends.append((one.from_left - frame[1]) / share)
    for start, end in _sticking_out(look, window, curtain, frame):
        if end <= frame[0] + 0.05:
            starts.append(frame[0] - end)
        elif start >= frame[1] - 0.05:
            ends.append(start - frame[1])
    return max(0.0, min(starts)), max(0.0, min(ends))


def _sticking_out(look: Look, window: Opening, curtain: Curtain, frame: Stretch) -> list[Stretch]:
    """What a rod or its cloth cannot pass, as far out as the cloth would ever ask for."""
    line, reach = look.lines[window.wall], 2 * max(stack_of(curtain), look.mm(REACH))
    shelves = look.hung(whats=("shelf", "screen"), wall=window.wall)
    found = [(one.from_left, one.from_left + one.width) for one in shelves if one.bottom < curtain.rod_height]
    beside = (max(0.0, frame[0] - reach), min(line.length, frame[1] + reach))
    for piece in look.pieces(box=wall_strip(line, beside, look.mm(AGAINST))):
        if piece.wall in look.lines and piece.height > window.bottom + 0.1:
            start, end, _ = along_wall(piece, look.lines, window.wall)
            found.append((start, end))
    return found
