"""The text of an HTML message as its reader sees it: hidden parts left out, quotations marked with ">"."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from lxml import etree
from lxml import html as lxml_html

LONGEST = 2_000_000  # characters of HTML; what comes after is no question
LONGEST_STYLE = 100_000
DEEPEST = 500  # nested elements
UNSEEN = frozenset(
    (
        "head",
        "script",
        "style",
        "template",
        "noscript",
        "title",
        "meta",
        "link",
        "object",
        "embed",
        "svg",
        "math",
        "select",
        "option",
        "button",
        "audio",
        "video",
        "iframe",
        "textarea",
        "input",
    )
)
BLOCKS = frozenset(
    (
        "address",
        "article",
        "aside",
        "blockquote",
        "body",
        "center",
        "dd",
        "div",
        "dl",
        "dt",
        "fieldset",
        "figure",
        "footer",
        "form",
        "h1",
        "h2",
        "h3",
        "h4",
        "h5",
        "h6",
        "header",
        "hr",
        "li",
        "main",
        "nav",
        "ol",
        "p",
        "pre",
        "section",
        "table",
        "tbody",
        "tfoot",
        "thead",
        "tr",
        "ul",
    )
)
SPACED = frozenset(["p", "h1", "h2", "h3", "h4", "h5", "h6", "ul", "ol", "table", "blockquote", "pre", "hr"])
HIDDEN = re.compile(
    r"display:none|visibility:(?:hidden|collapse)|mso-hide:all|clip:rect\(0"
    r"|(?:font-size|max-height|opacity):0(?:\.0+)?(?:px|pt|em|rem|%)?(?:;|!|$)|(?:left|top|text-indent|margin-left):-\d{3,}"
    r"|font-size:[0-2](?:\.\d+)?(?:px|pt)(?:;|!|$)"
)
CLIPPED = re.compile(r"(?:^|;)(?:height|width):[01](?:px|pt)?(?:;|!|$)")
COLOUR = re.compile(r"(?:^|;)color:([^;!]+)")
GROUND = re.compile(r"(?:^|;)background(?:-color)?:([^;!]+)")
NAMED = {"white": "#ffffff", "black": "#000000"}
NEAR = 12  # of 255: colours so near to each other that a reader sees no letters
SIGNED = re.compile(r"(?:^|\s)(?:gmail_signature|moz-signature|signature|ms-outlook-mobile-signature)(?:\s|$)", re.I)


@dataclass(frozen=True, slots=True)
class Place:
    """Where the walk is: depth of quotation, line breaks kept or not, the ground, an item's mark, how deep."""

    depth: int = 0
    pre: bool = False
    ground: str = "white"
    item: str = "- "
    level: int = 0


def text_of(source: str) -> str:
    """The visible text of an HTML source. Broken markup gives what a browser would make of it."""
    content = source[:LONGEST].replace("\0", "").encode("utf-8", "replace")
    parser = lxml_html.HTMLParser(encoding="utf-8", recover=True, remove_comments=True, huge_tree=True)
    try:
        root = lxml_html.document_fromstring(content, parser=parser)
    except (etree.ParserError, etree.XMLSyntaxError, ValueError):  # nothing in it
        return ""
    page = Page(_hidden_names(root))
    page.walk(root, Place())
    page.end(0)
    return "\n".join(page.lines).strip("\n")


def _hidden_names(root: etree._Element) -> frozenset[str]:
    """Classes and ids (".x", "#x") that the message's own style sheets hide on every screen."""
    names = {
        name.strip()
        for style in root.iter("style")
        for heads, rules in _rules((style.text or "")[:LONGEST_STYLE])
        if _hides(_squeezed(rules), "white")
        for name in heads.split(",")
    }
    return frozenset(name for name in names if re.fullmatch(r"[.#][\w-]+", name))


def _rules(sheet: str) -> Iterator[tuple[str, str]]:
    """The rules of a style sheet outside @media and its kin: names, declarations."""
    pieces = [piece.rpartition("*/")[2] if number else piece for number, piece in enumerate(sheet.split("/*"))]
    depth = 0
    for piece in "".join(pieces).split("}"):
        names, _, rules = piece.partition("{")
        if not depth and "{" not in rules:
            yield names, rules
        depth = max(depth + piece.count("{") - 1, 0)


def _squeezed(rules: str) -> str:
    return re.sub(r"\s+", "", rules.lower())


def _hides(rules: str, ground: str) -> bool:
    if HIDDEN.search(rules) or (CLIPPED.search(rules) and "overflow:hidden" in rules):
        return True
    colour = COLOUR.search(rules)
    return bool(colour) and _alike(_colour(COLOUR, rules, ""), _colour(GROUND, rules, ground))


def _colour(pattern: re.Pattern[str], rules: str, otherwise: str) -> str:
    found = pattern.search(rules)
    return found[1] if found else otherwise


def _alike(colour: str, ground: str) -> bool:
    """Whether letters of a colour cannot be seen on their ground."""
    if colour in ("transparent", ground):
        return True
    one, other = _channels(colour), _channels(ground)
    return bool(one and other) and max(abs(a - b) for a, b in zip(one, other, strict=True)) <= NEAR


def _channels(colour: str) -> tuple[int, ...]:
    """Red, green and blue of a colour; none for one that is named otherwise."""
    colour = NAMED.get(colour, colour)
    if short := re.fullmatch(r"#([0-9a-f])([0-9a-f])([0-9a-f])", colour):
        return tuple(int(part * 2, 16) for part in short.groups())
    if long := re.fullmatch(r"#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})", colour):
        return tuple(int(part, 16) for part in long.groups())
    mixed = re.fullmatch(r"rgb\((\d{1,3}),(\d{1,3}),(\d{1,3})\)", colour)
    return tuple(int(part) for part in mixed.groups()) if mixed else ()


@dataclass(slots=True)
class Page:
    """The lines of a page as they are met, each under the marks of its quotation."""

    hidden: frozenset[str]
    lines: list[str] = field(default_factory=list)
    now: list[str] = field(default_factory=list)

    def walk(self, node: etree._Element, place: Place) -> None:
        """Take up a node and everything under it."""
        tag = node.tag if isinstance(node.tag, str) else "script"
        style = _squeezed(node.get("style") or "")
        if tag in UNSEEN or place.level > DEEPEST or self.unseen(node, style, place.ground):
            return
        inner = self.inside(node, tag, style, place)
        if tag in BLOCKS:
            self.end(place.depth, space=tag in SPACED)
        elif tag == "br":
            self.end(place.depth, always=True)
        if tag == "li":
            self.now.append(place.item)
        self.text(node.text, inner)
        for number, child in enumerate(node, 1):
            self.walk(child, replace(inner, item=f"{number}. ") if tag == "ol" else inner)
            self.text(child.tail, inner)
        if tag in BLOCKS:
            self.end(inner.depth, space=tag in SPACED)
        elif tag in ("td", "th"):
            self.now.append(" ")

    def unseen(self, node: etree._Element, style: str, ground: str) -> bool:
        """Whether a reader does not see this node, or sees a signature."""
        if node.get("hidden") is not None or node.get("aria-hidden") == "true" or (style and _hides(style, ground)):
            return True
        named = f"{node.get('class') or ''} {node.get('id') or ''}"
        if SIGNED.search(named):
            return True
        names = {f".{name}" for name in (node.get("class") or "").split()} | {f"#{node.get('id')}"}
        return bool(self.hidden & names)

    def inside(self, node: etree._Element, tag: str, style: str, place: Place) -> Place:
        """The place of what stands in a node."""
        ground = _colour(GROUND, style, node.get("bgcolor") or place.ground)
        depth = place.depth + (tag == "blockquote")
        return Place(depth, place.pre or tag == "pre" or "white-space:pre" in style, ground, level=place.level + 1)

    def text(self, text: str | None, place: Place) -> None:
        """Take up a piece of running text."""
        if not text:
            return
        if not place.pre:
            self.now.append(re.sub(r"[ \t\r\n\f]+", " ", text))
            return
        first, *others = text.split("\n")
        self.now.append(first)
        for line in others:
            self.end(place.depth, always=True)
            self.now.append(line)

    def end(self, depth: int, *, space: bool = False, always: bool = False) -> None:
        """End the line; `space` leaves an empty one after it, `always` also where nothing was written."""
        line = re.sub(r" {2,}", " ", "".join(self.now)).strip(" ")
        self.now.clear()
        marks = ">" * depth + " " if depth else ""
        if line or always:
            self.lines.append((marks + line).rstrip(" "))
        if space and self.lines and self.lines[-1].strip("> "):
            self.lines.append(marks.rstrip(" "))
