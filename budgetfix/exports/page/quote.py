"""A quote as one HTML file that can be sent to the client: prices by room, no script, nothing from inside."""

from __future__ import annotations

import re

from jinja2 import Environment, StrictUndefined

from budgetfix.exports import quote_words
from budgetfix.exports.page.page import colors, read_part, sha256_source
from budgetfix.outcome.quote import Quote


def quote_page(quote: Quote) -> bytes:
    """The page as UTF-8. Same quote, same bytes."""
    environment = Environment(autoescape=True, trim_blocks=True, lstrip_blocks=True, undefined=StrictUndefined)
    made = environment.from_string(read_part("quote.html.j2")).render(
        quote=quote,
        words=quote_words,
        groups=quote_words.groups(quote),
        style=f"{colors()}\n{read_part('quote.css')}",
    )
    styles = re.findall(r"<style>(.*?)</style>", made, re.DOTALL)
    return made.replace("@STYLES@", " ".join(map(sha256_source, styles)), 1).encode("utf-8")
