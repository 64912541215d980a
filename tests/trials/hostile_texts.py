"""Words that want to do something, and a small job in which every word of a person's is one of them."""

from __future__ import annotations

import json
import random

MARK = "zqx"
"""In every hostile word, so that it is found again wherever it went."""
WORDS = (
    '=HYPERLINK("http://zqx.invalid","zqx")',
    "=zqx|' /C calc'!A0",
    "+zqx",
    "-1+zqx",
    "@SUM(zqx)",
    "\t=zqx",
    "\r=zqx",
    "<script>alert('zqx')</script>",
    "</script><script>alert('zqx')</script>",
    '" onload="alert(1)" zqx="',
    "javascript:alert('zqx')",
    "<img src=x onerror=alert('zqx')>",
    "<!-- zqx",
    "]]>zqx",
    "&lt;zqx&gt; &#0; &zqx;",
    "<svg/onload=alert('zqx')>",
    "</style><style>*{display:none}/*zqx",
    "{{7*7}} zqx",
    "{% raw %}zqx",
    "${zqx}",
    "[red]zqx[/red]",
    "[link=http://zqx.invalid]zqx[/link]",
    ":smile: zqx",
    "%s %d %n zqx",
    "{0} {zqx}",
    "\\n\\zqx",
    'a","b";zqx',
    "zqx;zqx",
    "zqx'\"`",
    "zqx\nBEGIN:VEVENT\nSUMMARY:zqx\nEND:VEVENT",
    "zqx\r\nATTACH:http://zqx.invalid",
    "../../zqx",
    "/etc/zqx",
    "..\\..\\zqx",
    "CON",
    "con.zqx",
    ".zqx",
    "-rf zqx",
    "~/zqx",
    "$(zqx)",
    "`zqx`",
    "zqx\\",
    "[]:*?/\\zqx",
    "'zqx'",
    "zqx" * 90,
    "\U0001f469\u200d\U0001f373 zqx",
    "\u05d0\u05d1 zqx",
    "zqx\u0301" * 40,
    "_x001B_zqx",
    "#REF! zqx",
    "#N/A",
    "TRUE",
    "History",
    "zqx\u00a0\u3000zqx",
    "null zqx",
    "NaN zqx",
)
"""Words that are read: every output must hold them as words."""
AWAY = ("\u202ezqx", "z\u200bqx\u200f", "zqx\ufeff", "\u2066zqx\u2069", "zq\u00adx")
"""Words that are read without their hidden signs."""
NEVER = ("\x1b[31mzqx", "\x1b]0;zqx\x07", "\x1b]8;;http://zqx.invalid\x1b\\zqx", "zqx\x08\x08", "zqx\x00", "\x9b2Jzqx",
         "\ud800zqx", "zqx\x7f", "zqx\ufffe")  # fmt: skip
"""Words that are refused."""
PLAIN = tuple(f"words {at}" for at in range(20))
"""A word for each place of the job."""


def drawn(chance: random.Random, never: bool = False) -> tuple[str, ...]:
    """A word for each place, no two alike once spaces and hidden signs are gone; one that is refused, if wanted."""
    found = []
    for at in range(len(PLAIN)):
        word = chance.choice(WORDS + AWAY)
        found.append(f"{word}{'' if word[-1:].isascii() else ' '}{at}"[-300:] if len(word) > 250 else f"{word} {at}")
    if never:
        found[chance.randrange(len(found))] = chance.choice(NEVER)
    return tuple(word.replace(";", ",") if at in (0, 1, 2, 3, 4, 5, 6) else word for at, word in enumerate(found))


def files(words: tuple[str, ...]) -> dict[str, bytes]:
    """A job of two listed faults, two remedies, two people; ids, names, shops, tools and places are the words."""
    f1, f2, m1, m2, paint, saw, mill, fill, sort, wall = words[:10]
    a_saw, shop, ann, ben, stain, where, mess, fixed, maker, agree = words[10:]
    catalog = {
        "currency": "EUR",
        "shops": [{"shop": mill, "name": shop, "delivery": 5}],
        "tools": [{"tool": saw, "name": a_saw, "buy": 15}],
        "products": [{"product": paint, "name": wall, "shop": mill, "price": 22, "pack": 2}],
        "remedies": [
            {"remedy": m1, "name": fill, "answers": {f1: 1}, "uses": {paint: 1}, "hours": 1},
            {"remedy": m2, "name": sort, "answers": {f2: 1}, "tools": [saw], "people": 2, "hours": 1},
        ],
    }
    brief = {
        "currency": "EUR", "budget": 100, "ordered": "2026-06-01", "catalog": "catalog.yaml",
        "hours": [{"date": f"2026-06-0{day}", "people": {ann: 3, ben: 3}} for day in (6, 7)],
        "people": {ann: {"not": ["ladder"]}, ben: {}},
        "fixed": [{"name": fixed, "cost": 3}], "quote": {"by": maker, "for": agree},
    }  # fmt: skip
    faults = [["fault", "points", "what", "where"], [f1, "300", stain, where], [f2, "200", mess, agree]]
    return {
        "catalog.yaml": json.dumps(catalog).encode(),
        "brief.yaml": json.dumps(brief).encode(),
        "faults.csv": _csv(faults),
    }


def _csv(rows: list[list[str]]) -> bytes:
    quoted = (",".join('"' + cell.replace('"', '""') + '"' for cell in row) for row in rows)
    return "\r\n".join(quoted).encode("utf-8", "surrogatepass")
