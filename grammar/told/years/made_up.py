"""A battery's age told in pieces: "three years and six months", "date stamp six years back", "four winters old"."""

from __future__ import annotations

import re
from dataclasses import replace

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.numbers import value

AGE = "battery.age"
NUMBER = r"\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen"
AND_MONTHS = re.compile(
    rf"\b(?P<years>{NUMBER}) ?(?:years?|yrs?)(?: old)?,?(?: and|,|) ?(?P<months>{NUMBER}) ?(?:months?|mths?)\b",
    re.IGNORECASE,
)
STAMPED = re.compile(
    r"\b(?:date ?stamp(?:ed)?|date ?code|stamp(?:ed)?|dated|date|sticker|made|built|fitted|bought|installed)"
    rf"(?: \w+)?(?: is| was|:|,)? (?:some |about |nearly |over )?(?P<years>{NUMBER}) (?:years?|yrs?|winters|seasons) "
    r"(?:back|ago|past|gone)\b",
    re.IGNORECASE,
)
WINTERS = re.compile(
    rf"\b(?P<years>{NUMBER}) (?:winters|summers|springs|seasons|christmases)(?: (?:old|of age|on her back))\b",
    re.IGNORECASE,
)
OLDEST = 20.0  # years


def made_up(scene: Scene, stated: list[Stated]) -> list[Stated]:
    """The facts with the years and months of a battery as one, and an age that no figure alone tells."""
    ages = [item for item in stated if item.fact == AGE]
    if found := AND_MONTHS.search(scene.text):
        return _with_months(stated, ages, found)
    if ages or "battery" not in scene.facts | scene.heads:
        return stated
    found = STAMPED.search(scene.text) or WINTERS.search(scene.text)
    years = value(found["years"].lower()) if found else 0.0
    if found is None or not 0 < years <= OLDEST:
        return stated
    kept = [item for item in stated if not found.start() <= item.span[0] < found.end()]
    return [*kept, Stated(AGE, years, "year", found[0], found.span(), how="default")]


def _with_months(stated: list[Stated], ages: list[Stated], found: re.Match[str]) -> list[Stated]:
    years, months = value(found["years"].lower()), value(found["months"].lower())
    start, end = found.span()
    own = next((item for item in ages if start <= item.span[0] < end), None)
    if own is None or own.value != years or months >= 12:
        return stated
    whole = replace(own, value=years + months / 12, text=found[0], span=(start, end))
    return [*(item for item in stated if not start <= item.span[0] < end), whole]
