"""Fixed columns of text for the terminal: cut, padded, and ASCII where nothing else is to be had."""

from __future__ import annotations

from budgetfix.exports.lettering import columns_of

WIDTH = 79
_ASCII = {"█": "#", "…": ">", "·": "-", "–": "-", "−": "-", "✓": "x", "×": "x"}
"""Twins of the same width, so that columns stay straight."""


def cut(text: str, width: int) -> str:
    """Text of at most that many columns, an ellipsis where something was cut; line breaks become spaces."""
    line = text if text.isprintable() else " ".join(text.split())
    if columns_of(line) <= width:
        return line
    kept = ""
    for letter in line:
        if columns_of(kept + letter) > width - 1:
            break
        kept += letter
    return kept + "…"


def left(text: str, width: int) -> str:
    """Cut and filled on the right."""
    line = cut(text, width)
    return line + " " * (width - columns_of(line))


def right(text: str, width: int) -> str:
    """Cut and filled on the left."""
    line = cut(text, width)
    return " " * (width - columns_of(line)) + line


def bar(part: int, whole: int, width: int = 40) -> str:
    """A bar; something above nothing always shows."""
    if whole <= 0 or part <= 0:
        return ""
    return "█" * max(1, min(width, round(width * part / whole)))


def plain(text: str, unicode: bool) -> str:
    """The text, in ASCII where the output takes no more; as wide as before."""
    if unicode:
        return text
    return "".join(letter if letter.isascii() else _ASCII.get(letter, "?" * columns_of(letter)) for letter in text)


def hours_words(minutes: int) -> str:
    """135 is `2 h 15 min`."""
    hours, rest = divmod(minutes, 60)
    return f"{hours} h {rest} min" if hours and rest else f"{hours} h" if hours else f"{rest} min"


def wrapped(text: str, indent: int = 0, width: int = WIDTH) -> list[str]:
    """Lines of at most the width, broken between words; later lines are indented. Spaces in a row stay."""
    plain_text = text if text.isprintable() else " ".join(text.split())
    lines = [" " * (len(plain_text) - len(plain_text.lstrip(" ")))]
    room = width - max(indent, len(lines[0]))
    for word in plain_text.lstrip(" ").split(" "):
        for part in _fitting(word, room):
            if not lines[-1].strip():
                lines[-1] += part
            elif columns_of(f"{lines[-1]} {part}") > width:
                lines.append(" " * indent + part)
            else:
                lines[-1] += f" {part}"
    return [line.rstrip() for line in lines]


def _fitting(word: str, width: int) -> list[str]:
    """A word in parts that fit on a line."""
    parts = [""]
    for letter in word:
        if columns_of(parts[-1] + letter) > width:
            parts.append("")
        parts[-1] += letter
    return parts
