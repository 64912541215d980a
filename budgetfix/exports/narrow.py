"""Text laid out for 79 columns, laid out anew for a narrower terminal."""

from __future__ import annotations

import re

from budgetfix.exports.lettering import columns_of
from budgetfix.exports.lines import WIDTH, wrapped

LEAST = 24
"""Nothing is laid out for less: a terminal that small breaks the lines itself."""
BAR = re.compile("█{2,}")
BAR_BESIDE = 27
"""Columns beside a bar."""
BAR_FULL = 40
HEAD = re.compile(r" {0,5}\S{1,6} {2,}")
"""A short first cell: a number, NOTE, MORE; what follows it hangs under the second."""
GAP = re.compile(r"(?<=\S) {2,}")


def narrow(text: str, width: int) -> str:
    """The text in at most that many columns: sentences are broken anew, tables lose their straight columns."""
    if width >= WIDTH:
        return text
    room = max(width, LEAST)
    return "\n".join(piece for line in _joined(text.split("\n")) for piece in _broken(line, room))


def _joined(lines: list[str]) -> list[str]:
    """Sentences that were broken into lines, whole again."""
    whole: list[str] = []
    last = ""
    for line in lines:
        if whole and _goes_on(whole[-1], last, line):
            whole[-1] += f" {line.strip()}"
        else:
            whole.append(line)
        last = line
    return whole


def _goes_on(first: str, last: str, line: str) -> bool:
    """True where a line was broken off the one before it: there was no room for its first word, and it hangs below."""
    if not line.strip() or not last.strip() or GAP.search(line) or GAP.search(_body(first)):
        return False
    full = columns_of(f"{last} {line.split()[0]}") > WIDTH
    deeper = _indent(line) > _indent(first) or (_indent(line) == _indent(first) and not first.endswith((".", ":")))
    return full and deeper


def _indent(line: str) -> int:
    return len(line) - len(line.lstrip(" "))


def _body(line: str) -> str:
    """What follows a short first cell."""
    head = HEAD.match(line)
    return line[head.end() :] if head else line.lstrip(" ")


def _broken(line: str, width: int) -> list[str]:
    if columns_of(line) <= width and not BAR.search(line):
        return [line]
    shorter = BAR.sub(lambda found: "█" * max(1, len(found[0]) * (width - BAR_BESIDE) // BAR_FULL), line)
    head = HEAD.match(shorter)
    third = width // 3
    begin = shorter[: head.end()] if head else " " * min(_indent(shorter), third)
    rest = GAP.sub("  ", shorter[head.end() :] if head else shorter.lstrip(" "))
    return wrapped(begin + rest, min(len(begin) + (0 if head else 2), third), width)
