"""A page whose every word wants to be a script, opened by a browser: nothing runs and nothing is asked for."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Browser, Dialog

from tests.trials.hostile_run import ran
from tests.trials.hostile_texts import PLAIN, WORDS, files

SCRIPTS = tuple(word for word in WORDS if "<" in word or "alert" in word or "onload" in word)


def test_no_word_of_a_users_runs_in_a_browser(browser: Browser, tmp_path: Path) -> None:
    """No dialog, no request but the page's own, no word on the console, two scripts: the list of plans and ours."""
    words = tuple(f"{SCRIPTS[at % len(SCRIPTS)].replace(';', ',')} {at}" for at in range(len(PLAIN)))
    job = tmp_path / "job"
    job.mkdir()
    for name, data in files(words).items():
        (job / name).write_bytes(data)
    assert ran("plan", job, files(words)).breaks == []
    page = browser.new_page()
    said: list[str] = []

    def dismissed(dialog: Dialog) -> None:
        said.append(dialog.message)
        dialog.dismiss()

    page.on("dialog", dismissed)
    page.on("request", lambda request: said.append(request.url))
    page.on("console", lambda message: said.append(message.text))
    page.goto((job / "plan.html").as_uri())
    page.wait_for_timeout(300)
    assert said == [(job / "plan.html").as_uri()]
    assert page.evaluate("document.scripts.length") == 2
    assert page.evaluate("document.querySelectorAll('img, iframe, object, embed, link').length") == 0
    assert page.evaluate("[...document.querySelectorAll('*')].flatMap(e => e.getAttributeNames())"
                         ".filter(n => n.startsWith('on')).length") == 0  # fmt: skip
    assert all(" ".join(word.split()) in page.evaluate("document.body.textContent") for word in words[7:9])
