"""YAML that would grow or go deep: refused in words, with the line."""

from __future__ import annotations

import pytest

from budgetfix.intake.yaml_lines import YamlFile, parse_yaml

LAUGHS = "a0: &a0 [x,x]\n" + "".join(f"a{at}: &a{at} [{','.join([f'*a{at - 1}'] * 10)}]\n" for at in range(1, 9))
CHAIN = "a0: &a0 [x]\n" + "".join(f"a{at}: &a{at} [*a{at - 1}]\n" for at in range(1, 60))
MANY = "100,000 at most, each counted as often as it is used"


def said(text: str) -> list[str]:
    """Problems of a file, as they are told."""
    return [str(problem) for problem in parse_yaml(text.encode("utf-8", "surrogatepass"), "brief.yaml").problems]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (LAUGHS, f"brief.yaml [line 6] found 311,111 values or more, wanted {MANY}"),
        (CHAIN, "brief.yaml [line 40] found blocks within blocks, 41 deep, wanted 40 at most"),
        ("a: " + "[" * 5_000, "brief.yaml [line 1] found blocks within blocks, 41 deep, wanted 40 at most"),
        ("a: " + "{b: " * 5_000, "brief.yaml [line 1] found blocks within blocks, 41 deep, wanted 40 at most"),
        (
            "b: 1\na: !" + "x" * 600,
            "brief.yaml [line 2] found a word of more than 500 signs behind !, wanted shorter names",
        ),
        ("#" * 2_000_001, "brief.yaml [line 1] found 2,000,001 bytes, wanted 2,000,000 at most"),
    ],
    ids=["laughs", "chain", "lists", "blocks", "tag", "large"],
)
def test_what_grows_or_goes_deep_is_refused(text: str, words: str) -> None:
    """One line, and no work done on the rest."""
    assert said(text) == [words]


def test_signs_that_do_something_are_told_with_their_line() -> None:
    """In a value, in a key, in a list; the words are kept without them, so that the rest is read as well."""
    wanted = "words of 10,000 signs at most, without signs that do something"
    text = 'a: 1\nb: ["\\e[31mred"]\n"c\\a": 2\nd: ' + "x" * 10_001
    assert said(text) == [
        f"brief.yaml [line 2] found text with the sign \\x1b, wanted {wanted}",
        f"brief.yaml [line 3] found text with the sign \\x07, wanted {wanted}",
        f"brief.yaml [line 4] found 10,001 signs, wanted {wanted}",
    ]


def test_names_are_one_line_and_nothing_hidden() -> None:
    """Keys with spaces and signs of no width are what they look like; two halves of a sign are one."""
    file: YamlFile = parse_yaml(b'"so\\u200bfa  bed\\n": "a\\u202eb"\n"\\ud83d\\udc69": 1', "brief.yaml")
    assert file.data == {"sofa bed": "ab", "\U0001f469": 1}
    assert file.problems == []
