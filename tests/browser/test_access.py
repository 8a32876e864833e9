"""Every state of the page by axe (WCAG 2.2 A and AA), light and dark, phone and desktop; zoom, contrast, motion."""

from __future__ import annotations

import pytest

from tests.browser.test_sheet import QUESTION, ask
from tests.conftest import SIZES

pytestmark = pytest.mark.browser
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
STATES = {
    "no": [QUESTION],
    "asked-back": ["Can a 200 Ah lithium run the Pike?"],
    "comparison": ["AGM or lithium for the Pike?"],
    "four-kinds": ["Which kind of battery is best for a bow thruster?"],
    "only-just": ["12.4 V at rest on an AGM. Is that good?"],
    "range": ["13.1 V on a lithium: how full is it?"],
    "cable": ["What cable for a Pike, 5 m each way?"],
    "stop": ["battery on charge is hot and swollen and smells of rotten eggs"],
    "for-a-person": ["it does the thing again with the yellow wire since the yard had it"],
    "other-desk": ["where is my order from last week?"],
    "thanks": ["thanks!"],
    "several": ["What cable and what fuse for a Pike, 5 m each way, 70 mm2?"],
    "thread": [QUESTION, "same but 700 CCA", "and what cable, 5 m each way?"],
}


def violations(where) -> list[str]:
    """What axe finds on a page or frame, one line each."""
    from axe_playwright_python.sync_playwright import Axe

    options = {"runOnly": {"type": "tag", "values": RULES}, "iframes": False}  # a frame is looked at by itself
    found = Axe().run(where, options=options).response["violations"]
    return [f"{item['id']}: {node['html'][:160]}" for item in found for node in item["nodes"]]


def unfolded(page) -> None:
    """Open every tag, fold and part."""
    page.evaluate("for (const part of document.querySelectorAll('details')) part.open = true")


def shown(visits, state, size, **options):
    page = visits.open(size=size, **options)
    for text in STATES[state]:
        ask(page, text)
    return page


@pytest.mark.parametrize("light", ["light", "dark"])
@pytest.mark.parametrize("state", STATES)
def test_each_state_of_an_answer(visits, state, light, size):
    page = shown(visits, state, size, color_scheme=light)
    assert violations(page) == []
    unfolded(page)
    assert violations(page) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= size[0]


@pytest.mark.parametrize("light", ["light", "dark"])
@pytest.mark.parametrize("path", ["/", "/sources", "/nowhere", "/?light=sun&units=us", "/?frame=docked"])
def test_each_page(visits, path, light, size):
    page = visits.open(path, size=size, color_scheme=light)
    assert violations(page) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= size[0]
    visits.problems = [said for said in visits.problems if "404" not in said]


@pytest.mark.parametrize("light", ["light", "dark"])
def test_a_shared_answer_and_trouble(visits, light, size):
    page = visits.open(size=size, color_scheme=light)
    page.get_by_role("button", name="Ask", exact=True).click()
    assert violations(page) == []
    page.context.set_offline(True)
    page.locator("#q").fill(QUESTION)
    page.get_by_role("button", name="Ask", exact=True).click()
    page.get_by_text("No connection.").wait_for()
    assert violations(page) == []
    page.context.set_offline(False)
    ask(page)
    page = visits.open(page.get_by_role("link", name="Link to this answer").get_attribute("href"), size=size)
    assert violations(page) == []
    visits.problems = [said for said in visits.problems if "ERR_INTERNET_DISCONNECTED" not in said]


@pytest.mark.parametrize("state", STATES)
@pytest.mark.parametrize(("size", "scale"), [((320, 640), 1), ((640, 450), 2)], ids=["320px", "200-percent"])
def test_small_and_zoomed_need_no_sideways_scrolling(visits, state, size, scale):
    page = shown(visits, state, size, device_scale_factor=scale)
    unfolded(page)
    assert page.evaluate("document.documentElement.scrollWidth") <= size[0]
    assert violations(page) == []


@pytest.mark.parametrize("options", [{"contrast": "more"}, {"contrast": "more", "color_scheme": "dark"},
                                     {"forced_colors": "active"}, {"forced_colors": "active", "color_scheme": "dark"}],
                         ids=["more", "more-dark", "forced", "forced-dark"])  # fmt: skip
def test_more_contrast_and_forced_colours(visits, options):
    page = shown(visits, "no", SIZES["phone"], **options)
    assert violations(page) == []
    assert page.locator("#log > .newest .band .mark").is_visible()


def test_bright_sun(visits, size):
    page = shown(visits, "no", size)
    page.get_by_role("button", name="Bright sun").click()
    assert violations(page) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= size[0]


def test_motion_is_stopped_where_less_is_asked_for(visits):
    page = visits.open(reduced_motion="reduce")
    page.route("**/", lambda route: None if route.request.method == "POST" else route.continue_())
    page.locator("#q").fill(QUESTION)
    page.get_by_role("button", name="Ask", exact=True).click()
    page.locator(".wait .mark").wait_for()
    assert page.locator(".wait .mark").evaluate("mark => getComputedStyle(mark).animationName") == "none"


def test_what_is_pressed_is_large_enough_for_a_wet_thumb(visits):
    for state in ("no", "asked-back"):
        page = shown(visits, state, SIZES["phone"])
        unfolded(page)
        small = page.evaluate(
            "[...document.querySelectorAll('button, summary, select, input[type=text], .after a, .go')]"
            ".filter(it => it.getClientRects().length && it.getBoundingClientRect().height < 43.5)"
            ".map(it => it.outerHTML.slice(0, 90))"
        )
        assert small == []
