from __future__ import annotations

import base64
import hashlib
import json
import re
from dataclasses import replace

import pytest

from budgetfix.exports.drawings.picture import Picture
from budgetfix.exports.page.page import plan_page
from budgetfix.exports.page.stops import FREE
from budgetfix.outcome.book import PlanBook
from tests.exports.page.page_tree import tree_of
from tests.exports.sample_book import (
    ACCENTS,
    BOOK,
    FREE_HANDS,
    LONG,
    LONG_TEXT,
    NO_HOURS,
    NO_LIMIT,
    NOTHING,
    RTL,
    TASKS,
    WITH_STOPS,
    many,
)

HEBREW = "וילון ארוך לחלון הגדול"


SVG = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 60" role="img" aria-labelledby="{0}-title">'
    '<title id="{0}-title">The room</title><defs><pattern id="{0}-hatch" width="4" height="4"></pattern></defs>'
    '<rect width="90" height="60" fill="url(#{0}-hatch)"></rect><text x="5" y="9" font-size="8">Sofa</text></svg>'
)
PLAN = (
    Picture("", "floor", "before", "Seen from above, before", SVG.format("p0"), "TV: 54 1/2 in up.", 90, 60),
    Picture("", "floor", "after", "Seen from above, after", SVG.format("p1"), "TV <lower>: 42 1/2 in up.", 90, 60,
            ((2, "Lower the TV by 12 in"),)),
)  # fmt: skip
"""A pair of drawings as the page gets them."""


@pytest.mark.parametrize(
    "book",
    [BOOK, WITH_STOPS, NOTHING, NO_HOURS, NO_LIMIT, FREE_HANDS, LONG_TEXT, many(100)],
    ids=["plan", "stops", "nothing", "no hours", "no limit", "free hands", "long text", "hundred"],
)
def test_every_plan_makes_a_page(book: PlanBook) -> None:
    """Whatever the plan, the same book gives the same bytes, with one h1, and every element is closed."""
    page = plan_page(book, PLAN)
    assert page == plan_page(book, PLAN)
    assert tree_of(page).one("h1").text() == " ".join(book.title.split())


def test_the_parts_stand_in_the_order_of_their_weight() -> None:
    """Verdict, safety, slider, drawings, to buy, to do, fault by fault, left out, small print."""
    page = tree_of(plan_page(WITH_STOPS, PLAN))
    assert [one.text() for one in page.all("h2")] == [
        "Safety first",
        "What if you spend less, or more?",
        "What changes",
        "To buy",
        "To do",
        "Fault by fault",
        "Left out, and why",
        "Small print",
    ]
    assert [one.tag for one in page.all() if one.tag in ("header", "main", "footer")] == ["header", "main", "footer"]


def test_the_verdict_is_one_sentence() -> None:
    """Money, time, faults and hazards gone, and what is proven."""
    verdict = tree_of(plan_page(BOOK)).one("p", "verdict").text()
    assert verdict == (
        "For €141.72 and 5 h 20 min of work, 2 of 6 faults go, the one hazard is gone and 1 new fault comes; "
        "proven: no other set of these 16 remedies takes away more within €150.00 and these hours."
    )


def test_the_slider_says_each_stop_in_words() -> None:
    """The input has as many places as there are plans, stands at the book's own, and speaks."""
    slide = tree_of(plan_page(WITH_STOPS)).one("input", id="slide").attributes
    assert (slide["min"], slide["max"], slide["value"]) == ("0", "3", "2")
    assert slide["aria-valuetext"] == "€141.72, 2 of 6 faults fixed, 5 h 20 min, 0 hazards left"


def test_one_plan_has_no_slider() -> None:
    """Where no other plans were worked out, the figures stand alone."""
    page = tree_of(plan_page(BOOK))
    assert page.all("input", id="slide") == []
    assert [one.text() for one in page.one(css="tiles").all("p")] == [
        "€141.72 to spend",
        "2 of 6 faults fixed",
        "0 of 1 hazards left",
        "5 h 20 min of work",
        "953 of 1,553 points gone",
    ]


def test_nothing_to_buy_is_said() -> None:
    """A plan without purchases says so in the list itself."""
    page = tree_of(plan_page(NOTHING))
    assert page.one(id="buy").one(css="none").text() == FREE == "Nothing. Everything in this plan is free."
    assert "The best plan is to do nothing" in page.one("p", "verdict").text()


def test_only_its_own_style_and_script_may_run() -> None:
    """The content policy bars everything and names the hash of each style and script (W3C, CSP level 3, 2.3.1)."""
    styled = SVG.format("p0").replace("<defs>", "<style>text{font-size:9px}</style><defs>")
    page = plan_page(WITH_STOPS, (replace(PLAN[0], svg=styled),))
    text = page.decode()
    policy = next(re.finditer(r'http-equiv="Content-Security-Policy" content="([^"]*)"', text))[1]
    assert policy.startswith("default-src 'none'; ")
    assert "unsafe" not in policy
    for tag, amount in (("style", 2), ("script", 1)):
        made = re.findall(rf"<{tag}>(.*?)</{tag}>", text, re.DOTALL)
        hashes = [base64.b64encode(hashlib.sha256(one.encode()).digest()).decode() for one in made]
        assert re.search(rf"{tag}-src ([^;]*);", policy)[1].split() == [f"'sha256-{one}'" for one in hashes]  # type: ignore[index]
        assert len(made) == amount


def test_nothing_asks_the_network() -> None:
    """No address, no source, no url but to a place in the page itself; no style or handler in an attribute."""
    text = plan_page(WITH_STOPS, PLAN).decode()
    assert re.findall(r"https?:", text) == []
    assert re.findall(r"\bsrc=|\bhref=\"[^#]|@import|\bstyle=|\son\w+=", text) == []
    assert set(re.findall(r"url\(.", text)) == {"url(#"}


def test_texts_stay_texts() -> None:
    """Signs that mean something in HTML, in scripts and in JSON are shown as they were typed."""
    odd = "</script><b>&amp; \u2028 </template>"
    book = replace(
        WITH_STOPS,
        title=odd,
        tasks=(replace(TASKS[0], name=odd, text=odd), *TASKS[1:]),
        stops=tuple(replace(stop, sessions=None) for stop in WITH_STOPS.stops),
        money=tuple(replace(line, shop_name=odd) for line in BOOK.money),
    )
    page = tree_of(plan_page(book))
    assert page.one("h1").text() == " ".join(odd.split())
    assert " ".join(odd.split()) in page.one(id="do").text()
    data = page.one("script", id="plans").inside[0]
    assert isinstance(data, str)
    assert "<" not in data
    assert "\u2028" not in data
    assert json.loads(data)["stops"][2]["buy"][0][0] == odd


@pytest.mark.parametrize("name", [LONG, RTL, HEBREW, ACCENTS], ids=["sixty letters", "Arabic", "Hebrew", "accents"])
def test_names_stand_in_their_own_direction(name: str) -> None:
    """A name of any script is isolated, so that figures beside it stay where they are (UAX 9; HTML, bdi)."""
    book = replace(BOOK, money=(replace(BOOK.money[0], name=name),), tasks=(replace(TASKS[1], name=name),))
    page = tree_of(plan_page(book))
    for part in ("buy", "do"):
        assert [one.text() for one in page.one(id=part).one(css="name").all("bdi")] == [name]


@pytest.mark.parametrize(
    ("currency", "sums"),
    [("EUR", ["€39.00", "€141.72"]), ("USD", ["$39.00", "$141.72"]), ("JPY", ["¥3,900", "¥14,172"])],
)
def test_money_is_written_as_its_currency_is(currency: str, sums: list[str]) -> None:
    """The sign and the digits after the point are those of the Unicode CLDR."""
    page = tree_of(plan_page(replace(BOOK, currency=currency)))
    assert page.one(id="buy").all(css="sum")[0].text() == sums[0]
    assert page.one("p", "verdict").all("b")[0].text() == sums[1]


def test_a_hundred_products_and_twelve_tasks_are_all_there() -> None:
    """No row is lost or doubled: a box for each line that can be ticked, and for each step."""
    book = many(100)
    page = tree_of(plan_page(book))
    assert len(page.one(id="buy").all("input")) == 100
    assert len(page.one(id="do").all("input")) == 100
    twelve = tuple(replace(TASKS[1], candidate=f"c{at}", session=1) for at in range(12))
    page = tree_of(plan_page(replace(BOOK, tasks=twelve)))
    assert [one.text() for one in page.one(id="do").all(css="number")] == [str(at) for at in range(1, 13)]
    assert len(page.one(id="do").all("section", "group")) == 1


def test_hazards_come_first_with_the_step_that_cures_them() -> None:
    """What is gone says by which step; what is left says what would be sound."""
    gone = tree_of(plan_page(BOOK)).one(id="safety").one("ul", "hazards").text()
    assert gone == ("✓ Gone Tall piece stands loose (bookcase): loose. Step 3 cures it: Fix the bookcase to the wall.")
    left = replace(BOOK, faults=(replace(BOOK.faults[0], after="loose", state="still there"), *BOOK.faults[1:]))
    words = tree_of(plan_page(left)).one(id="safety").one("ul", "hazards").text()
    assert words == "! Still there Tall piece stands loose (bookcase): loose; sound is fixed to the wall."
    assert (
        "Local codes, your lease and licensed trades come before" in tree_of(plan_page(NOTHING)).one(id="safety").text()
    )


def test_a_fault_says_why_it_is_one() -> None:
    """The reason is the first paragraph of the rule's manual page, and its why; a listed fault has none."""
    rows = {row.one("b").text(): row for row in tree_of(plan_page(BOOK)).one("tbody").all("tr")}
    assert rows["rod too narrow"].one("details").one("p").text() == (
        "A rod so short that the open curtains cover glass. "
        "Why: cloth belongs on the wall, not before the light, and the window looks as wide as the rod."
    )
    assert rows["the door sticks"].all("details") == []


def test_before_and_after_stand_side_by_side() -> None:
    """Pictures of one view are a pair under one heading, with the steps in circles and the same in words."""
    (pair,) = tree_of(plan_page(BOOK, PLAN)).one(id="changes").all(css="pair")
    assert pair.one("h3").text() == "Seen from above"
    assert [one.text() for one in pair.all("figcaption")] == ["Before", "After"]
    assert [one.text() for one in pair.one("ul", "numbers").all("li")] == ["2 Lower the TV by 12 in"]
    assert [one.text() for one in pair.one("details").all("p")] == ["TV: 54 1/2 in up.", "TV <lower>: 42 1/2 in up."]


def test_seventy_plans_of_sixty_rows_stay_small() -> None:
    """Rows are written once: seventy stops over a hundred products take less than a quarter of a megabyte."""
    book = many(100)
    stops = tuple(
        replace(
            WITH_STOPS.stops[0],
            sums=replace(WITH_STOPS.stops[0].sums, spent_minor=at, improvement=at),
            money=book.money[at % 40 : at % 40 + 60],
            tasks=book.tasks[at % 40 : at % 40 + 60],
        )
        for at in range(70)
    )
    assert len(plan_page(replace(book, stops=stops))) < 250_000
