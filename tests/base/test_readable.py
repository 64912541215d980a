"""Names of folders on every system: text that can be written, and the same wherever the bytes are the same."""

from __future__ import annotations

import os
import subprocess
import sys

import pytest

from budgetfix.base.readable import readable

ELSEWHERE = "import os, sys; from budgetfix.base.readable import readable; print(ascii(readable(os.fsdecode({!r}))))"


@pytest.mark.parametrize("name", ["job", "Zoës Küche", "Zoe\u0308s Ku\u0308che", "客厅", "🛋 sofa", "غرفة"])
def test_text_stays_as_it_is(name: str) -> None:
    """Letters of all languages, composed or not."""
    assert readable(name) == name


def test_bytes_that_are_no_text_stand_as_one_sign() -> None:
    """A folder from an old machine, whose é is one byte of Latin-1."""
    name = os.fsdecode(b"caf\xe9 of old")
    assert readable(name) == "caf\ufffd of old"
    assert readable(name).encode("utf-8")


@pytest.mark.parametrize("letters", ["C", "POSIX"])
def test_a_name_is_the_same_where_python_reads_names_as_ascii(letters: str) -> None:
    """Without UTF-8 of the system the bytes still say `Zoë`."""
    surroundings = os.environ | {"LC_ALL": letters, "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}
    words = [sys.executable, "-c", ELSEWHERE.format("Zoë".encode())]
    done = subprocess.run(words, env=surroundings, capture_output=True, text=True, check=True, timeout=60)
    assert done.stdout == "'Zo\\xeb'\n"
