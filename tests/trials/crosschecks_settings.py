"""Surroundings in which a plan must be the same: hash seeds, time zones, languages, screens, ways to start Python."""

from __future__ import annotations

import shutil
import subprocess
import sys
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from random import Random

ZONES = (
    "Pacific/Kiritimati",
    "Pacific/Pago_Pago",
    "America/St_Johns",
    "America/New_York",
    "Asia/Kolkata",
    "Asia/Kathmandu",
    "Australia/Lord_Howe",
    "Europe/Dublin",
    "Africa/Casablanca",
    "UTC",
    "XYZ-13:59",
    "CET-1CEST,M3.5.0,M10.5.0/3",
    "Nowhere/At_All",
)
"""From +14 to -11 h, half and quarter hours, half an hour of summer time, rules of one's own, and no such place."""
LOCALES = (
    "C",
    "C.UTF-8",
    "de_DE.UTF-8",
    "tr_TR.UTF-8",
    "ar_SA.UTF-8",
    "ja_JP.UTF-8",
    "fr_FR.ISO-8859-1",
    "sv_SE.UTF-8",
)
"""Decimal commas, dotless i, other digits and directions, an old code page."""
LANGUAGES = ("", "tr", "de_AT:de", "ar", "ja", "C", "xx_YY", "nonsense")
SHELL = "/bin/sh"
ENCODINGS = ("ascii", "cp1252", "utf-8", "utf-16", "latin-1:replace", "cp437:backslashreplace")


@dataclass(frozen=True)
class Setting:
    """One way to run the command.

    `screen`: whether what it prints must be the same to the byte as well. `shut`: streams that are shut, as a shell
    says it.
    """

    said: str
    env: Mapping[str, str | None] = field(default_factory=dict)
    flags: tuple[str, ...] = ()
    umask: int = -1
    screen: bool = True
    shut: str = ""


def hash_seed(dice: Random) -> Setting:
    """Another order of Python's sets, or one that Python draws itself."""
    seed = dice.choice(("random", str(dice.randrange(1, 2**32)), "1"))
    return Setting(f"PYTHONHASHSEED={seed}", {"PYTHONHASHSEED": seed})


def zone(dice: Random) -> Setting:
    """Another place on earth."""
    name = dice.choice(ZONES)
    return Setting(f"TZ={name}", {"TZ": name})


def locale_of(made: Mapping[str, Path | None]) -> Callable[[Random], Setting]:
    """Another language of the system. `made`: locales that are there, each with its folder, if not the system's.

    Python writes what it prints in the encoding of the locale, so only its files are held to the byte.
    """

    def drawn(dice: Random) -> Setting:
        name, language = dice.choice(sorted(made)), dice.choice(LANGUAGES)
        more: dict[str, str | None] = {"LC_ALL": name, "LANG": name, "LANGUAGE": language}
        if dice.random() < 0.3:
            more |= {"LC_ALL": None, "LC_CTYPE": "C.UTF-8", "LC_NUMERIC": name, "LC_TIME": name, "LC_MONETARY": name}
        folder = made[name]
        if folder is not None:
            more["LOCPATH"] = str(folder)
        said = " ".join(f"{key}={value}" for key, value in more.items() if value and key != "LOCPATH")
        return Setting(said, more, screen=False)

    return drawn


def locales(folder: Path, *, few: bool) -> dict[str, Path | None]:
    """The locales that can be had: Python's own two, and what `localedef` makes in a folder where it is there.

    `few`: only one is made, which takes a second.
    """
    made: dict[str, Path | None] = dict.fromkeys(LOCALES[:2])
    if shutil.which("localedef") is None:
        return made
    folder.mkdir(parents=True)
    for name in LOCALES[3:4] if few else LOCALES[2:]:
        language, letters = name.split(".")
        words = ["localedef", "-i", language, "-f", letters, str(folder / name)]
        if subprocess.run(words, capture_output=True, timeout=120).returncode in (0, 1) and (folder / name).is_dir():
            made[name] = folder
    return made


def screen(dice: Random) -> Setting:
    """Another encoding of what is printed, another width, another terminal: the files must not care."""
    more: dict[str, str | None] = {}
    said = dice.choice(("encoding", "width", "terminal", "utf8 mode"))
    if said == "encoding":
        more["PYTHONIOENCODING"] = dice.choice(ENCODINGS)
    elif said == "width":
        more["COLUMNS"] = dice.choice(("1", "20", "40", "79", "132", "100000", "0", "-5", "wide", ""))
    elif said == "terminal":
        more |= {"TERM": dice.choice(("dumb", "xterm-256color", "", "no-such")), "COLUMNS": dice.choice(("80", None))}
        more |= {dice.choice(("NO_COLOR", "FORCE_COLOR", "CLICOLOR_FORCE", "TTY_COMPATIBLE")): "1"}
    else:
        more |= {"PYTHONUTF8": dice.choice(("0", "1")), "LC_ALL": dice.choice(("C", "POSIX", "C.UTF-8"))}
        more |= {"PYTHONCOERCECLOCALE": dice.choice(("0", "1"))}
    return Setting(" ".join(f"{key}={value}" for key, value in more.items()), more, screen=False)


def running(dice: Random) -> Setting:
    """Another way to start Python, and things that are missing around it."""
    flags = dice.choice(((), ("-O",), ("-OO",), ("-X", "dev", "-W", "error"), ("-B", "-s"), ("-X", "utf8")))
    more: dict[str, str | None] = {}
    for name, values in (
        ("HOME", (None, "/nonexistent", "")),
        ("TMPDIR", ("/nonexistent", None)),
        ("USER", (None,)),
        ("PATH", (None, "")),
        ("OMP_NUM_THREADS", ("1", "7")),
        ("SOURCE_DATE_EPOCH", ("0", "1700000000", "never")),
        ("PYTHONDONTWRITEBYTECODE", ("1",)),
        ("PYTHONMALLOC", ("malloc", "debug")),
    ):
        if dice.random() < 0.3:
            more[name] = dice.choice(values)
    umask = dice.choice((-1, 0o000, 0o077, 0o027))
    shut = dice.choice(("", "", "", "<&-", ">&-", "<&- >&-")) if Path(SHELL).exists() else ""
    said = [*flags, *(f"{key}={value}" for key, value in more.items()), f"umask {umask:03o}" if umask >= 0 else ""]
    return Setting(" ".join(part for part in (*said, shut) if part), more, flags, umask, ">" not in shut, shut)


def command(setting: Setting) -> tuple[str, ...]:
    """How the command is started."""
    words = (sys.executable, *setting.flags, "-m", "budgetfix")
    return (SHELL, "-c", f'exec "$@" {setting.shut}', "sh", *words) if setting.shut else words
