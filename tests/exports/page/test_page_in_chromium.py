from __future__ import annotations

import re
import shutil
import subprocess
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from playwright.sync_api import Page

from budgetfix.base.money import write_money_long
from budgetfix.exports.page.page import plan_page
from budgetfix.outcome.book import FaultRow, PlanBook, Stop
from tests.exports.conftest import Opener
from tests.exports.page.breaches import breaches
from tests.exports.page.test_page import HEBREW, PLAN
from tests.exports.sample_book import (
    ACCENTS,
    BOOK,
    LONG,
    LONG_TEXT,
    NO_HOURS,
    NOTHING,
    RTL,
    TASKS,
    WITH_STOPS,
    many,
)

pytestmark = [pytest.mark.chromium, pytest.mark.xdist_group("chromium")]

TWELVE = replace(
    WITH_STOPS,
    title=HEBREW,
    tasks=tuple(
        replace(TASKS[1], candidate=f"c{at}", session=1, name=(LONG, RTL, HEBREW, ACCENTS)[at % 4]) for at in range(12)
    ),
    money=(replace(BOOK.money[0], name=LONG, line_minor=123_456_789_00), *BOOK.money[1:]),
)
"""A right-to-left title, a session of twelve tasks with long and foreign names, and a very large sum."""
HARD = {
    "stops": WITH_STOPS,
    "nothing": NOTHING,
    "twelve tasks": TWELVE,
    "hundred": many(100),
    "yen": many(12, "JPY"),
    "long text": LONG_TEXT,
    "no hours": NO_HOURS,
}


def boxes(page: Page, part: str) -> list[str]:
    """Names of the boxes in a list, as its rows stand."""
    return [str(box.get_attribute("data-tick")) for box in page.locator(f"#{part} [data-tick]").all()]


def shown(page: Page, css: str) -> list[str]:
    """What a person reads in every such element that is to be seen, runs of spaces as one."""
    return [" ".join(one.inner_text().split()) for one in page.locator(css).all() if one.is_visible()]


@pytest.mark.parametrize("book", HARD.values(), ids=HARD)
def test_it_opens_alone_and_in_peace(open_page: Opener, book: PlanBook) -> None:
    """The viewer asks for the file itself and nothing else, and neither the page nor its policy complains."""
    opened = open_page(plan_page(book, PLAN))
    assert opened.asked == [opened.page.url]
    assert opened.complaints == []


def test_a_planted_picture_from_elsewhere_is_barred(open_page: Opener) -> None:
    """The content policy is no decoration: an image and a script that are not ours are refused, and reported."""
    planted = b'<img src="data:image/gif;base64,R0lGODlhAQABAAAAACw="><script>document.title = "taken"</script></main>'
    opened = open_page(plan_page(BOOK).replace(b"</main>", planted))
    assert opened.page.title() == "Front room: the plan"
    assert len([line for line in opened.complaints if "Content Security Policy" in line]) == 2


def comes(page: Page, seen: Callable[[], bool]) -> bool:
    """Whether it is seen after a reload; a busy viewer hands on what a page keeps a moment later."""
    for _ in range(12):
        page.reload()
        if seen():
            return True
        page.wait_for_timeout(250)
    return False


def test_a_tick_is_kept(open_page: Opener) -> None:
    """What was ticked is still ticked after a reload, at every stop that has the row; unticked likewise."""
    page = open_page(plan_page(WITH_STOPS)).page
    page.locator('[data-tick="buy product:anchor@harrow"]').check()
    page.locator('[data-tick="do lower-tv#1"]').check()
    assert shown(page, ".ticked") == ["1 of 5 bought", "1 of 7 done"]
    assert comes(page, lambda: page.locator('[data-tick="buy product:anchor@harrow"]').is_checked())
    assert page.locator("#slide").evaluate("slide => slide.value") == "2"
    page.locator("#slide").press("Home")
    assert shown(page, ".ticked") == ["1 of 1 done"]
    page.locator('[data-tick="do lower-tv#1"]').uncheck()
    assert comes(page, lambda: shown(page, ".ticked") == ["1 of 5 bought", "0 of 7 done"])
    assert shown(page, ".kept") == []


def test_another_job_has_ticks_of_its_own(open_page: Opener) -> None:
    """Two jobs in one viewer do not share ticks; the same job planned anew, with other money, does."""
    first = open_page(plan_page(BOOK)).page
    first.locator('[data-tick="do lower-tv#1"]').check()
    file = Path(first.url.removeprefix("file://"))
    for book, kept in ((replace(BOOK, title="Back room"), False), (replace(BOOK, budget_minor=99900), True)):
        file.write_bytes(plan_page(book))
        assert comes(first, lambda kept=kept: first.locator('[data-tick="do lower-tv#1"]').is_checked() is kept)  # type: ignore[misc]


def test_where_ticks_are_refused_the_page_says_so(open_page: Opener) -> None:
    """A viewer may forbid a page to keep anything; boxes still work, and nobody is deceived."""
    opened = open_page(plan_page(BOOK))
    opened.page.add_init_script("Object.defineProperty(window, 'localStorage', {get() { throw new Error('no'); }});")
    opened.page.reload()
    assert [line.split(":")[0] for line in shown(opened.page, ".kept")] == ["This viewer does not keep ticks"]
    opened.page.locator('[data-tick="do lower-tv#1"]').check()
    assert shown(opened.page, ".ticked") == ["0 of 5 bought", "1 of 7 done"]
    assert opened.complaints == []


@pytest.mark.parametrize(("key", "place"), [("Home", 0), ("ArrowLeft", 1), ("ArrowRight", 3), ("End", 3)])
def test_the_slider_leads_the_page(open_page: Opener, key: str, place: int) -> None:
    """By keyboard to a stop: its figures, its words and its lists are those of that plan, from its own records."""
    page = open_page(plan_page(WITH_STOPS, PLAN)).page
    page.locator("#slide").focus()
    page.keyboard.press(key)
    stop = WITH_STOPS.stops[place]
    spent = write_money_long(stop.sums.spent_minor, "EUR")
    assert (page.locator("#slide").get_attribute("aria-valuetext") or "").startswith(f"{spent}, ")
    assert shown(page, ".tiles p")[0] == f"{spent} to spend"
    assert shown(page, ".tiles p")[4] == f"{stop.sums.improvement:,} of 1,553 points gone"
    assert boxes(page, "do") == [f"do {task.candidate}#{task.step}" for task in stop.tasks]
    assert shown(page, "#do .number") == [str(at) for at in range(1, len(stop.tasks) + 1)]
    assert sorted(shown(page, "#buy .sum")) == sorted(write_money_long(line.line_minor, "EUR") for line in stop.money)
    assert faults_shown(page) == [(row.title, row.after, row.state) for row in by_safety(stop)]
    assert shown(page, "#buy .none") == ([] if stop.money else ["Nothing. Everything in this plan is free."])


def by_safety(stop: Stop) -> list[FaultRow]:
    """A stop's faults as the page has them: hazards first."""
    return sorted(stop.faults, key=lambda row: not row.safety)


def faults_shown(page: Page) -> list[tuple[str, str, str]]:
    """Title, what is measured after, and the state's words of every row of the table."""
    return [
        (row.locator("b").inner_text(), row.locator(".after bdi").inner_text(), row.locator(".now").inner_text()[2:])
        for row in page.locator("#faults tbody tr").all()
    ]


def test_away_from_its_stop_the_page_says_what_belongs_to_which_plan(open_page: Opener) -> None:
    """Drawings and verdict are of one plan: elsewhere a note says so, and it goes when one is back."""
    page = open_page(plan_page(WITH_STOPS, PLAN)).page
    assert shown(page, ".away") == []
    page.locator("#slide").press("Home")
    assert shown(page, ".away") == [
        "The lists below are now those of the plan of €0.00. "
        "The verdict, the hazards and the drawings stay those of the plan of €141.72.",
        "These drawings belong to the plan of €141.72. The lists below are those of the plan of €0.00.",
    ]
    assert shown(page, ".which")[0] == "In the plan of €0.00"
    assert shown(page, ".change")[0].startswith("Without: Fix the bookcase to the wall · ")
    page.get_by_role("button", name="This plan: €141.72").click()
    assert shown(page, ".away") == []
    assert shown(page, ".change") == []


def test_there_and_back_is_where_one_was(open_page: Opener) -> None:
    """From end to end and back to its own stop: the page is as the server wrote it, to the letter."""
    data = plan_page(WITH_STOPS, PLAN)
    plain = open_page(data, scripts=False).page
    page = open_page(data).page
    for key in ("Home", "End", "ArrowLeft"):
        page.locator("#slide").press(key)
    for part in ("#buy .groups", "#do .groups", "#faults tbody"):
        assert letters(page, part) == letters(plain, part)


def letters(page: Page, css: str) -> str:
    """The HTML in an element without the breaks between its parts."""
    return re.sub(r">\s+", ">", re.sub(r"\s+<", "<", page.locator(css).inner_html()))


def test_without_scripts_the_plan_is_all_there(open_page: Opener) -> None:
    """Lists and figures are in the page itself; what would not work is not shown."""
    page = open_page(plan_page(WITH_STOPS), scripts=False).page
    assert len(boxes(page, "do")) == len(TASKS)
    assert not page.locator("#slide").is_visible()
    assert not page.locator("#print").is_visible()
    assert page.locator("noscript").first.is_visible()


@pytest.mark.parametrize("book", HARD.values(), ids=HARD)
def test_nothing_runs_out_of_the_page(open_page: Opener, book: PlanBook) -> None:
    """No sideways scroll, down to 320 px (WCAG 2.2, 1.4.10), and no element beyond the edge of the page."""
    page = open_page(plan_page(book, PLAN)).page
    page.evaluate("document.querySelectorAll('details').forEach(one => one.open = true)")
    for width in (320, 375, 600, 768, 1200):
        page.set_viewport_size({"width": width, "height": 900})
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        assert page.evaluate(OUTSIDE, width) == []


OUTSIDE = """edge => [...document.querySelectorAll('main *, header *, footer *')]
    .filter(one => one.checkVisibility() && !one.closest('thead, svg') &&
            (one.getBoundingClientRect().right > edge + 0.5 || one.getBoundingClientRect().left < -0.5))
    .map(one => one.outerHTML.slice(0, 90))"""
"""Elements that begin or end beyond the page's edges."""


@pytest.mark.parametrize("width", [375, 1200])
@pytest.mark.parametrize("book", [WITH_STOPS, NOTHING, TWELVE], ids=["stops", "nothing", "twelve tasks"])
def test_everybody_can_use_it(open_page: Opener, book: PlanBook, width: int) -> None:
    """axe-core finds no breach of WCAG 2.2 A and AA nor of its best practices, with the slider here and away."""
    page = open_page(plan_page(book, PLAN), width).page
    assert breaches(page) == []
    page.evaluate("document.querySelectorAll('details').forEach(one => one.open = true)")
    if page.locator("#slide").count():
        page.locator("#slide").press("Home")
        assert page.locator(".elsewhere").count() == 1
    assert breaches(page) == []


def test_axe_sees_a_planted_breach(open_page: Opener) -> None:
    """The engine is at work: an unnamed box and pale letters are reported."""
    pale = b'<p><font color="#cccccc">pale</font><input type="checkbox"></p></main>'
    page = open_page(plan_page(BOOK).replace(b"</main>", pale)).page
    assert {line.split(":")[0] for line in breaches(page)} == {"color-contrast", "label"}


def test_boxes_and_buttons_are_large_enough(open_page: Opener) -> None:
    """Boxes of 24 px in rows of 44, buttons 44 high (WCAG 2.2, 2.5.8 asks 24), and a ring of 3 px on what has focus."""
    page = open_page(plan_page(WITH_STOPS), 375).page
    size = "found => found.map(one => one.getBoundingClientRect()).map(one => Math.min(one.width, one.height))"
    assert min(page.locator("input[type=checkbox]").evaluate_all(size)) >= 24
    assert min(page.locator("label.tick, button, #slide").evaluate_all(size)) >= 44
    ringed: list[str] = []
    while ringed[-1:] != ["print"]:
        page.keyboard.press("Tab")
        assert page.evaluate("getComputedStyle(document.activeElement).outlineWidth") == "3px"
        ringed.append(page.evaluate("document.activeElement.id || document.activeElement.tagName"))
    assert ringed[:6] == ["A", "A", "A", "A", "SUMMARY", "slide"]


@pytest.mark.poppler
@pytest.mark.parametrize(("paper", "points"), [("A4", "595.92 x 842.88"), ("Letter", "612 x 792")])
def test_it_prints(open_page: Opener, tmp_path: Path, paper: str, points: str) -> None:
    """Two sheets: verdict and drawing, then the lists; what cannot be used on paper is left out."""
    page = open_page(plan_page(WITH_STOPS, PLAN)).page
    page.pdf(path=tmp_path / "plan.pdf", format=paper, print_background=False)
    told = printed(tmp_path / "plan.pdf", "pdfinfo")
    assert re.search(r"Pages:\s+2\b", told)
    assert points in told
    text = printed(tmp_path / "plan.pdf", "pdftotext", "-")
    for wanted in ("For €141.72", "Seen from above", "Extending rod", "Put brighter bulbs in both lamps", "proven"):
        assert wanted in text
    for absent in ("Slide to spend", "Print this page", "Fault by fault", "Left out, and why"):
        assert absent not in text


@pytest.mark.poppler
def test_another_plan_prints_as_what_it_is(open_page: Opener, tmp_path: Path) -> None:
    """Printed away from the book's own stop, the sheets say which plan the lists are of, and which the drawings."""
    page = open_page(plan_page(WITH_STOPS, PLAN)).page
    page.locator("#slide").press("Home")
    page.pdf(path=tmp_path / "plan.pdf", format="A4")
    text = " ".join(printed(tmp_path / "plan.pdf", "pdftotext", "-").split())
    assert "These drawings belong to the plan of €141.72. The lists below are those of the plan of €0.00." in text
    assert "In the plan of €0.00" in text
    assert "Extending rod" not in text


def printed(file: Path, command: str, *more: str) -> str:
    """What a poppler command says of a PDF."""
    return subprocess.run(
        [shutil.which(command) or command, file, *more], capture_output=True, text=True, check=True
    ).stdout


@pytest.mark.poppler
def test_a_hundred_rows_print_whole(open_page: Opener, tmp_path: Path) -> None:
    """No row is cut in two between sheets, and none is lost: every name is on paper with its sum beside it."""
    book = many(100)
    page = open_page(plan_page(book)).page
    page.pdf(path=tmp_path / "plan.pdf", format="A4")
    text = printed(tmp_path / "plan.pdf", "pdftotext", "-layout", "-")
    for line in book.money:
        assert write_money_long(line.line_minor, "EUR") in text
    assert [str(at) for at in range(1, 101) if not re.search(rf"(?m)(^|\s){at}\s", text)] == []


def test_other_ways_of_seeing_are_respected(open_page: Opener) -> None:
    """Forced colours keep the slider visible in the system's look; where motion is unwanted nothing moves."""
    page = open_page(plan_page(WITH_STOPS)).page
    bar = page.locator(".bars rect").first
    assert bar.evaluate("one => getComputedStyle(one).transitionDuration") != "0s"
    page.emulate_media(forced_colors="active", reduced_motion="reduce")
    assert bar.evaluate("one => getComputedStyle(one).transitionDuration") == "0s"
    assert page.locator("#slide").evaluate("one => getComputedStyle(one).appearance") == "auto"
