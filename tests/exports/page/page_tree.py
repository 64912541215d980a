"""The page as a tree of elements that tests can ask: the standard library's parser, nothing that a viewer would fix."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser

VOID = {"meta", "input", "br", "img", "link"}


@dataclass
class Element:
    """An element: its tag, attributes, and what stands in it."""

    tag: str
    attributes: dict[str, str]
    inside: list[Element | str] = field(default_factory=list)

    def text(self) -> str:
        """All text below, runs of spaces as one."""
        parts = [one if isinstance(one, str) else one.text() for one in self.inside if not _mute(one)]
        return " ".join("".join(parts).split())

    def all(self, tag: str = "", css: str = "", id: str = "") -> list[Element]:
        """Elements below with that tag, class name and id, where given; templates are not looked into."""
        found = [one for one in self._shown() if not tag or one.tag == tag]
        found = [one for one in found if not css or css in one.attributes.get("class", "").split()]
        return [one for one in found if not id or one.attributes.get("id") == id]

    def one(self, tag: str = "", css: str = "", id: str = "") -> Element:
        """The only such element."""
        (found,) = self.all(tag, css, id)
        return found

    def _shown(self) -> Iterator[Element]:
        yield self
        for one in self.inside:
            if isinstance(one, Element) and one.tag != "template":
                yield from one._shown()


def _mute(one: Element | str) -> bool:
    return isinstance(one, Element) and one.tag in {"script", "style", "template"}


class _Parser(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.open = [Element("", {})]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        made = Element(tag, {name: value or "" for name, value in attrs})
        self.open[-1].inside.append(made)
        if tag not in VOID:
            self.open.append(made)

    def handle_endtag(self, tag: str) -> None:
        if tag in VOID:
            return
        assert self.open[-1].tag == tag, f"</{tag}> closes <{self.open[-1].tag}>"
        self.open.pop()

    def handle_data(self, data: str) -> None:
        self.open[-1].inside.append(data)


def tree_of(page: bytes) -> Element:
    """The tree of a page. Errors: AssertionError where an element is not closed."""
    parser = _Parser()
    parser.feed(page.decode("utf-8"))
    parser.close()
    assert [one.tag for one in parser.open] == [""], "an element is not closed"
    return parser.open[0]
