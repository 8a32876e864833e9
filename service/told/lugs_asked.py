"""What is asked of lugs and posts: which ones to order, which post is plus, how the posts are covered."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

COVER = regex(  # "how do I cover the posts"
    r"\b(?:how|what|which|must|should|need|do)\b[^.?!;]{0,30}\bcover(?:ed|s|ing)?\b[^.?!;]{0,16}\b(?:posts?|terminals?|poles?)\b"
    r"|\b(?:posts?|terminals?|poles?)\b[^.?!;]{0,16}\bbe covered\b",
    re.IGNORECASE,
)
SPLICED = regex(
    r"\b(?:butt )?splic(?:e|es|ed|ing)\b|\bbutt connectors?\b"
    r"|\b(?:join|lengthen|extend)(?:ing)? (?:two |the |my |both |these )?(?:\w+ )?(?:cables?|leads?|wires?)\b(?! to)",
    re.IGNORECASE,
)
ONE_LENGTH = (
    "Better one length of cable: each joint can loosen and heat; where one must be, crimp and seal it, dry and within "
    "reach."
)
BUYS = regex(r"\b(?:i|we|you|to|should|please|just) order\b", re.IGNORECASE)
IN_TURN = regex(r"\b(?:off|first|last|undo|remove|disconnect\w*|unbolt)\b", re.IGNORECASE)
WHICH_IS_PLUS = regex(r"\b(?:which|is)\b[^.?!;]{0,24}\b(?:plus|positive|pos|red)\b", re.IGNORECASE)
WHICH_LUG = regex(
    r"\b(?:which|what)\b[^.?!;]{0,24}\b(?:lugs?|studs?|size|rings?|holes?)\b|\blugs?,? which\b", re.IGNORECASE
)

LUGS_FOR = regex(  # "what lugs do I buy", "which ring terminals"; not "which do I order, ..."
    r"\b(?:which|what)\b[^.?!;,]{0,24}\b(?:lugs?|rings?|ring terminals?|cable ends?|eyes?|eyelets?)\b"
    r"|\blugs?,? (?:which|what)\b",
    re.IGNORECASE,
)
NAMED = r"(?:lugs?|rings?|eyes?|eyelets?|holes?)"
SIZE_OF_LUG = (  # what stands right before and right behind the size of a lug that is there: "my lugs are M8"
    regex(
        rf"\b{NAMED}:? (?:(?:with|are|is|of|have|has|come in|measure|(?:meant|made|sold) for)(?: an?| only)* )?$",
        re.IGNORECASE,
    ),
    regex(rf"(?:[- ]size)? (?:ring |cable |copper |tinned |hole |crimp )*(?:{NAMED}|ones?)\b", re.IGNORECASE),
)
FEW = 40  # characters before a size that tell whose it is


def for_studs(text: str, *sizes: tuple[int, int] | None) -> bool:
    """Whether lugs are asked for and each of these sizes, told by its place in the text, is a stud's.

    >>> for_studs("M8 on the battery, M10 on the motor: which lugs?", (0, 2), (19, 22))
    True
    >>> for_studs("My lugs are M8, the stud is M10: which lugs?", (12, 14), (28, 31))
    False
    """
    before, behind = SIZE_OF_LUG
    return LUGS_FOR.search(text) is not None and not any(
        span is None or before.search(text[max(0, span[0] - FEW) : span[0]]) or behind.match(text, span[1])
        for span in sizes
    )


def bought(text: str) -> bool:
    """Whether "order" is of a purchase: "which lugs do I order", not "in which order do they come off"."""
    return BUYS.search(text) is not None and IN_TURN.search(text) is None


def which(text: str) -> bool:
    """Whether a lug is asked for: "lugs, which ones"."""
    return WHICH_LUG.search(text) is not None


def which_is_plus(text: str) -> bool:
    """Whether it is asked which post is plus.

    >>> which_is_plus("the posts differ, is one the plus?"), which_is_plus("which lug for M8")
    (True, False)
    """
    return WHICH_IS_PLUS.search(text) is not None


def cover(text: str) -> bool:
    """Whether it is asked how the posts are covered.

    >>> cover("how do I cover the posts"), cover("under cover, posts clean")
    (True, False)
    """
    return COVER.search(text) is not None


def spliced(text: str) -> bool:
    """Whether a cable is to be lengthened by a joint.

    >>> spliced("can I join two cables with a butt splice"), spliced("join the cables to the battery")
    (True, False)
    """
    return SPLICED.search(text) is not None
