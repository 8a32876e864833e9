"""A motor whose button is held: a thruster at this desk, by whatever name, which must cool after its run."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

PRESSED = regex(
    r"""\b(?:hold|holds|holding|held|keep|keeps|keeping|press\w*|push\w*|lean\w*|thumb|finger)\b
        (?:\s(?!(?:of|off)\b)[\w'’]+){0,4}?\s(?:button|joystick|lever|stick|toggle|knob|pedal|rocker)\b
      | \b(?:button|joystick|lever)\s(?:can|may|be|is|being|stays?)\b[^.?!;]{0,20}\b(?:held|pressed|pushed|down)\b
      | \bin\sone\s(?:go|burst|push|shove)\b|\bbursts?\b|\b(?:bow|stern)\s(?:motor|unit|drive|bank|prop)\b
      | \bthrust(?:s|ed|ing|ers?)?\b""",
    re.IGNORECASE | re.VERBOSE,
)


def is_told(text: str) -> bool:
    """Whether a text tells of such a motor.

    >>> is_told("how long can he hold the button"), is_told("how long does the fridge hold")
    (True, False)
    """
    return bool(PRESSED.search(text))
