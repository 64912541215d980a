"""Signs that do something instead of being read: taken out, refused, or shown for what they are.

Categories are those of the Unicode Character Database; which signs turn text about is in UAX #9, 2.1 to 2.4.
"""

from __future__ import annotations

import re
import unicodedata

TURNING = "\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069"
"""Signs that turn the direction of text: they can make a name look like another."""
UNSEEN = "\u00ad\u180e\u200b\u2060-\u2064\u206a-\u206f\ufeff\ufff9-\ufffb\U000e0000-\U000e00ff\U000e01f0-\U000e0fff"
"""Signs of no width that join nothing. Joiners and signs that choose a form stay: scripts and pictures need them."""
_AWAY = re.compile(f"[{TURNING}{UNSEEN}]")
_NEVER = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufffe\uffff]")
"""Controls of a terminal, halves of signs, and what is no sign at all; tabs and ends of lines are spaces."""
_SHOWN = {"Cc", "Cf", "Cs", "Zl", "Zp"}
JOINERS = "\u200c\u200d"
SHORT = 400
"""As much of a user's words as a message quotes."""


def tidied(text: str) -> str:
    """The text without signs that nobody sees and signs that turn it about."""
    return text if text.isascii() else _AWAY.sub("", text)


def forbidden(text: str) -> str:
    """The first sign that no text may hold, written out; empty for none."""
    found = _NEVER.search(text)
    return shown(found[0]) if found is not None else ""


def whole(text: str) -> str:
    """The text with halves of a sign that stand side by side put together: JSON writes signs outside of the first
    65,536 as two (RFC 8259, 7).
    """
    return text.encode("utf-16-le", "surrogatepass").decode("utf-16-le", "surrogatepass")


def without(text: str) -> str:
    """The text without the signs that no text may hold."""
    return _NEVER.sub("", text)


def shown(text: str) -> str:
    """The text with every sign that does something written out, ends of lines as well."""
    return text if text.isprintable() else "".join(map(_shown, text))


def shortened(text: str, most: int = SHORT) -> str:
    """The text as a message quotes it: no more than so many signs, the last of them kept."""
    return shown(text if len(text) <= most else f"{text[: most - 2]}…{text[-1:]}")


def _shown(sign: str) -> str:
    if unicodedata.category(sign) not in _SHOWN or sign in JOINERS:
        return sign
    return sign.encode("unicode_escape").decode()
