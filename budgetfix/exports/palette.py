"""The colours of our books, each with the ground it stands on; text on ground keeps 4.5:1 (WCAG 2.2, 1.4.3)."""

from __future__ import annotations

INK = "#1E2B29"
"""Ordinary text."""
QUIET = "#56625F"
"""Notes, struck lines, what is of less weight."""
TEAL = "#1F4E4A"
"""Headings, and the bars of what is left to live with."""
WHITE = "#FFFFFF"
STRAW = "#EFEBDD"
"""Tiles, and the row of this plan."""
LINE = "#D5CFBC"
"""Hair lines between rows; carries no meaning."""
YOURS = "#F3F7D3"
"""The user's cells, and nothing else."""
WARN = "#8C2F1B"
WARN_GROUND = "#F7D9C4"
BAR = "#B9CFC9"
"""Bars behind figures."""
CHANGED = "#DCE9E4"
"""Ground of what changes in a drawing, below its hatch."""
GLASS = "#EAF1F3"
"""Window panes and mirrors in a drawing."""
SCREEN = "#3B4947"
"""The dark of a screen in a drawing; words on it have a white ground of their own."""
AMBER = "#7A5200"
"""Better, yet not gone."""

PAIRS = (
    (INK, WHITE),
    (INK, STRAW),
    (INK, YOURS),
    (INK, BAR),
    (INK, CHANGED),
    (QUIET, WHITE),
    (QUIET, STRAW),
    (WHITE, TEAL),
    (TEAL, WHITE),
    (TEAL, STRAW),
    (WARN, WHITE),
    (WARN, STRAW),
    (WARN, WARN_GROUND),
    (AMBER, WHITE),
)
"""Every (text, ground) that a book uses."""


def contrast(text: str, ground: str) -> float:
    """Contrast ratio of two `#RRGGBB` colours, 1 to 21 (WCAG 2.2, relative luminance)."""
    light, dark = sorted((_luminance(text), _luminance(ground)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def _luminance(color: str) -> float:
    channels = [int(color[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
