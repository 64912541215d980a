"""Pictures of what people take away, for the README: the page, the workbook, the form and a quote, as people see them.

Made with Chromium, LibreOffice and poppler. What each picture was made from is written down beside them, and the gate
refuses pictures of files that have changed since.
"""

from __future__ import annotations

import hashlib
import json
import shutil
import subprocess
import tempfile
from pathlib import Path

REPO = Path(__file__).resolve().parent.parent
PICTURES = REPO / "reports" / "pictures"
SOURCES = PICTURES / "sources.json"
REPORT = REPO / "reports" / "renter"
MADE_FROM = {
    "page.png": REPORT / "plan.html",
    "phone.png": REPORT / "plan.html",
    "buy.png": REPORT / "plan.xlsx",
    "do.png": REPORT / "plan.xlsx",
    "quote.png": REPO / "reports" / "stager" / "quote.html",
    "survey.png": REPO / "catalog_demo" / "renter" / "survey.xlsx",
}
"""Every picture, and the file that it shows."""
SHOTS = (("page.png", 1200, 1780), ("phone.png", 375, 1780), ("quote.png", 1000, 1560))
"""(picture, width, height) of the pages, from the top, in pixels."""
SHEETS = {"buy.png": "What to buy", "do.png": "What to do, in this order", "survey.png": "4 Furniture"}
"""Words at the top of the printed page that a picture shows."""


def digest(path: Path) -> str:
    """SHA-256 of a file."""
    return hashlib.sha256(path.read_bytes()).hexdigest()


def sources() -> dict[str, str]:
    """The digest of what each picture would be made from now."""
    return {name: digest(path) for name, path in MADE_FROM.items()}


def missing() -> list[str]:
    """Programs that pictures need and that are not here."""
    return [program for program in ("chromium", "soffice", "pdftoppm", "pdftotext") if shutil.which(program) is None]


def make() -> None:
    """All pictures anew, and what they were made from."""
    PICTURES.mkdir(parents=True, exist_ok=True)
    shots()
    for book in sorted({path for name, path in MADE_FROM.items() if name in SHEETS}):
        sheets(book)
    SOURCES.write_text(json.dumps(sources(), indent=1) + "\n", encoding="utf-8")


def shots() -> None:
    """The top of the page on a desk, and on a phone."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox"])
        for name, wide, high in SHOTS:
            view = browser.new_page(viewport={"width": wide, "height": high})
            view.goto(MADE_FROM[name].as_uri())
            view.screenshot(path=PICTURES / name)
        browser.close()


def sheets(book: Path) -> None:
    """The printed pages of one workbook that show what the README shows."""
    with tempfile.TemporaryDirectory() as there:
        desk = Path(there)
        office = ["soffice", f"-env:UserInstallation={(desk / 'profile').as_uri()}", "--headless"]
        to_paper = [*office, "--convert-to", "pdf", "--outdir", there, str(book)]
        subprocess.run(to_paper, check=True, capture_output=True, timeout=180)
        pdf = desk / f"{book.stem}.pdf"
        pages = subprocess.run(["pdftotext", "-layout", str(pdf), "-"], check=True, capture_output=True, text=True)
        texts = pages.stdout.split("\f")
        for name, words in SHEETS.items():
            if MADE_FROM[name] == book:
                at = next(number for number, text in enumerate(texts, start=1) if words in " ".join(text.split()))
                whole = ["pdftoppm", "-r", "90", "-f", str(at), "-l", str(at), "-png", "-singlefile"]
                subprocess.run([*whole, str(pdf), str(PICTURES / name.removesuffix(".png"))], check=True)


if __name__ == "__main__":
    make()
    print(f"Wrote {', '.join(sorted(MADE_FROM))} to reports/pictures")
