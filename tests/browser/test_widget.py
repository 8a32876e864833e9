"""The widget on a page of another origin: allowed, refused, docked, by keyboard, under the host's own strict policy."""

from __future__ import annotations

from urllib.parse import quote

import pytest
from flask import Flask, request

from service.web import create_app
from tests.browser.test_access import violations
from tests.browser.test_sheet import QUESTION
from tests.conftest import SIZES, Visits
from tests.live import live

pytestmark = pytest.mark.browser
POLICY = "default-src 'none'; script-src {home}; frame-src {home}; img-src 'self'; base-uri 'none'"

SEEN = """const attach = Element.prototype.attachShadow;
Element.prototype.attachShadow = function () { return attach.call(this, { mode: "open" }); };"""  # to look in


@pytest.fixture
def shop(browser, house, tmp_path):
    """Opens a page of the shop, another origin, with the widget's script tag as given."""
    host = Flask("shop")
    host.get("/favicon.ico", endpoint="icon")(lambda: ("", 204))
    data = tmp_path / "data"
    with live(host) as shop_origin:
        text = house.read_text(encoding="utf-8").replace("origins = []", f'origins = ["{shop_origin}"]')
        house.write_text(text, encoding="utf-8")
        with live(create_app(house=house, data=data)) as home:

            @host.get("/")
            def page():
                tag = f'<script src="{home}/static/widget.js" {request.args.get("tag", "")}></script>'
                html = (
                    "<!doctype html><html lang=en><title>Shop</title><meta name=viewport content='width=device-width'>"
                    f"<main><h1>Pike</h1><p>A bow thruster.</p>{tag}<p><a href='/'>After it</a></p></main>"
                )
                return html, 200, {"Content-Security-Policy": POLICY.format(home=home)}

            visits = Visits(browser, shop_origin)
            visits.home = home
            visits.also.append(home)
            yield visits
            for context in visits.contexts:
                context.close()
            assert visits.problems == []


def open_shop(shop, tag="", size=SIZES["desktop"], script=SEEN):
    return shop.open(f"/?tag={quote(tag)}", size=size, script=script)


def frame_of(page, shop):
    """Our frame on a host page, once it is there."""
    for _ in range(50):
        found = next((frame for frame in page.frames if frame.url.startswith(shop.home)), None)
        if found:
            return found
        page.wait_for_timeout(50)
    raise AssertionError("no frame of ours")


def test_it_answers_in_the_text_of_a_shop_page(shop, size):
    tag = 'data-house="Otterholm Thrusters" data-units="us" data-ask="Is your battery enough for a Pike?"'
    page = open_shop(shop, tag, size)
    sheet = frame_of(page, shop)
    sheet.get_by_label("Is your battery enough for a Pike?").fill("What cable for a Pike, 5 m each way?")
    sheet.get_by_role("button", name="Ask", exact=True).click()
    sheet.locator("#log > .newest h2:focus").wait_for()
    assert sheet.get_by_text("16.4 ft", exact=True).first.is_visible()
    assert page.locator("leadsman-sheet").bounding_box()["height"] > 1200
    assert sheet.evaluate("document.documentElement.scrollHeight <= innerHeight + 1")
    assert page.evaluate("document.documentElement.scrollWidth") <= size[0]
    assert violations(sheet) == []
    assert violations(page) == []


def test_a_website_that_is_not_listed_gets_a_plain_link(shop, house):
    house.write_text(house.read_text(encoding="utf-8").replace(shop.origin, "https://other.example"), encoding="utf-8")
    page = open_shop(shop)
    page.wait_for_timeout(3600)
    assert not [frame for frame in page.frames if frame.url.startswith(shop.home)]
    link = page.get_by_role("link", name="Battery questions")
    assert page.locator("iframe").count() == 0
    assert link.get_attribute("href") == shop.home + "/"
    assert link.is_visible()
    assert violations(page) == []
    shop.problems = [said for said in shop.problems if "frame-ancestors" not in said and "ERR_BLOCKED" not in said]


def test_docked_it_takes_its_own_room_and_stands_beside_the_page(shop):
    page = open_shop(shop, 'data-place="docked"')
    tab = page.get_by_role("button", name="Battery questions")
    assert tab.bounding_box()["height"] == 52
    assert page.evaluate("document.body.style.paddingBottom") == "52px"
    assert tab.get_attribute("aria-expanded") == "false"
    tab.click()
    assert tab.get_attribute("aria-expanded") == "true"
    box = page.get_by_role("region", name="Battery questions").bounding_box()
    assert (box["x"], box["width"]) == (1280 - 416, 416)
    sheet = frame_of(page, shop)
    sheet.locator("#q:focus").wait_for()
    sheet.locator("#q").fill(QUESTION)
    sheet.locator("#q").press("Enter")
    sheet.locator("#log > .newest h2:focus").wait_for()
    assert page.evaluate("document.body.style.paddingRight") == "416px"
    assert violations(sheet) == []
    sheet.get_by_role("button", name="Put away").click()
    page.get_by_role("region", name="Battery questions").wait_for(state="hidden")
    assert tab.get_attribute("aria-expanded") == "false"
    assert page.get_by_role("region", name="Battery questions").count() == 0


def test_docked_on_a_phone_it_is_a_dialog_that_escape_closes(shop):
    page = open_shop(shop, 'data-place="docked"', SIZES["phone"])
    tab = page.get_by_role("button", name="Battery questions")
    tab.focus()
    page.keyboard.press("Enter")
    sheet = frame_of(page, shop)
    sheet.locator("#q:focus").wait_for()
    assert page.get_by_role("dialog", name="Battery questions").is_visible()
    assert page.locator("h1").evaluate("heading => Boolean(heading.closest('[inert]')) || heading.inert")
    page.keyboard.press("Escape")
    page.get_by_role("dialog").wait_for(state="hidden")
    assert not page.locator("h1").evaluate("heading => Boolean(heading.closest('[inert]')) || heading.inert")
    assert page.evaluate("document.activeElement.localName") == "leadsman-sheet"
    assert page.evaluate("document.documentElement.scrollWidth") <= 390


def test_the_accent_colours_the_line_and_nothing_else(shop):
    page = open_shop(shop, 'data-accent="#b45309"')
    sheet = frame_of(page, shop)
    sheet.locator("#q").wait_for()
    assert sheet.evaluate("document.documentElement.style.getPropertyValue('--accent')") == "#b45309"
    assert sheet.evaluate("document.documentElement.classList.contains('weak-accent')") is False
    page = open_shop(shop, 'data-accent="#ffee99"')
    sheet = frame_of(page, shop)
    sheet.locator("#q").wait_for()
    assert sheet.evaluate("document.documentElement.classList.contains('weak-accent')") is True
    page = open_shop(shop, 'data-accent="red;background:url(x)"')
    sheet = frame_of(page, shop)
    sheet.locator("#q").wait_for()
    assert sheet.evaluate("document.documentElement.style.getPropertyValue('--accent')") == ""


def test_words_of_others_do_not_move_it(shop):
    page = open_shop(shop)
    frame_of(page, shop).locator("#q").wait_for()
    before = page.locator("leadsman-sheet").bounding_box()["height"]
    page.evaluate("postMessage({sheet: 'guess', what: 'height', height: 9000}, '*')")
    page.wait_for_timeout(100)
    assert page.locator("leadsman-sheet").bounding_box()["height"] == before


def test_the_host_reads_nothing_of_it(shop):
    page = open_shop(shop, script="")
    frame_of(page, shop).locator("#q").wait_for()
    assert page.evaluate("document.querySelector('leadsman-sheet').shadowRoot") is None
    assert page.evaluate("document.querySelector('iframe')") is None
