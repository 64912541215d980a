"""Each person's lists as they are used: on the page in a browser, and in a workbook that is calculated."""

from __future__ import annotations

import io
import re
from pathlib import Path

import pytest

from budgetfix.exports.by_person import TAKEN
from budgetfix.exports.page.page import plan_page
from budgetfix.exports.plan_book import plan_book
from tests.exports.conftest import Opener
from tests.exports.page.breaches import breaches
from tests.exports.page.test_page_in_chromium import shown
from tests.exports.plan_sheets import HEAD, beside, column_of, opened, right_of, rows, sheet
from tests.exports.test_plan_book import through_libreoffice
from tests.exports.timed_book import TIMED

NAMES = ["1", "2", "3", "4", "5", "6", "7"]


@pytest.mark.chromium
@pytest.mark.xdist_group("chromium")
@pytest.mark.parametrize("width", [375, 1200])
def test_whose_list(open_page: Opener, width: int) -> None:
    """All, Ann, Ben, together: the rows keep their numbers and ticks, empty sessions go, and paper shows all."""
    page = open_page(plan_page(TIMED)).page
    page.set_viewport_size({"width": width, "height": 900})
    numbers = "#do .row .number"
    assert shown(page, numbers) == NAMES
    seen = {}
    for name in ("Ann", "Ben", "Together", "All"):
        page.get_by_role("button", name=name, exact=True).click()
        seen[name] = shown(page, numbers)
        assert page.get_by_role("button", name=name, exact=True).get_attribute("aria-pressed") == "true"
        assert page.locator("#do .ticked").inner_text() == f"0 of {len(seen[name])} done"
    assert seen == {"Ann": ["1", "2", "4", "5", "6", "7"], "Ben": ["1", "3", "5"], "Together": ["1", "5"], "All": NAMES}
    page.get_by_role("button", name="Ben", exact=True).click()
    assert shown(page, "#do .time") == ["09:00-09:45", "09:45-10:10", "09:00-09:50"]
    assert breaches(page) == []
    page.emulate_media(media="print")
    assert shown(page, numbers) == NAMES
    assert shown(page, "[data-whose]") == []


@pytest.mark.libreoffice
def test_a_tick_and_real_minutes_with_a_helper(tmp_path: Path) -> None:
    """Ticked on Do, the rod shows as done with Ann, Ben and together; 60 real minutes and ten of help are 70."""
    book = opened(plan_book(TIMED), values=False)
    page = sheet(book, "Do")
    page.cell(HEAD + 5, column_of(page, "Done")).value = "✓"
    page.cell(HEAD + 5, column_of(page, "Real minutes")).value = 60
    data = io.BytesIO()
    book.save(data)
    saved = through_libreoffice(tmp_path, {"ticked": data.getvalue(), "fresh": plan_book(TIMED)})
    for name in ("Ann", "Ben", "Together"):
        found = {row["No."]: row["Done"] for row in rows(sheet(saved["ticked"], name))}
        assert {number for number, done in found.items() if done == "✓"} == {5}
    assert right_of(sheet(saved["ticked"], "Summary"), "Real work so far") == 70
    assert beside(sheet(saved["ticked"], "Do"), "Sun 7 Jun, 09:00", "Real minutes") == 70
    planned = sum(task.person_minutes for task in TIMED.tasks)
    assert beside(sheet(saved["fresh"], "Do"), "All of it", "Minutes") == planned == 270


def test_no_sheet_of_ours_can_be_a_persons() -> None:
    """Every name that the workbook of a plan gives a sheet in its source is taken."""
    source = Path(__file__).parents[2] / "budgetfix" / "exports"
    text = "".join(path.read_text("utf-8") for path in sorted(source.glob("plan_book*.py")))
    named = set(re.findall(r'Page\(book, styles, "([^"]+)"', text)) | set(re.findall(r'^NAME = "([^"]+)"', text, re.M))
    assert len(named) >= 6
    assert {name.casefold() for name in named} <= TAKEN
