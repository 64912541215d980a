"""Workbooks opened and saved by LibreOffice, as a user does."""

from __future__ import annotations

import shutil
import subprocess
from collections.abc import Mapping
from pathlib import Path


def converted(folder: Path, books: Mapping[str, bytes], kind: str = "xlsx", was: str = "xlsx") -> dict[str, bytes]:
    """Books of one kind saved as another, in one run, by name."""
    given, saved = folder / f"given-{was}-{kind}", folder / f"saved-{was}-{kind}"
    given.mkdir()
    for name, data in books.items():
        (given / f"{name}.{was}").write_bytes(data)
    command = [shutil.which("soffice") or "libreoffice", f"-env:UserInstallation={(folder / 'profile').as_uri()}"]
    command += ["--headless", "--convert-to", kind, "--outdir", str(saved)]
    command += [str(given / f"{name}.{was}") for name in books]
    subprocess.run(command, check=True, capture_output=True, timeout=300)
    return {name: (saved / f"{name}.{kind}").read_bytes() for name in books}
