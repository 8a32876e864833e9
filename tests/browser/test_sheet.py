"""The sheet in a browser: asking, correcting, replying, following up, sharing, printing, feedback, keys, trouble."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import expect

from tests.conftest import SIZES

pytestmark = pytest.mark.browser
QUESTION = "Will my 520 CCA AGM start battery run the Pike?"
NEWEST = "#log > .newest"


def ask(page, text=QUESTION):
    page.locator("#q").fill(text)
    page.get_by_role("button", name="Ask", exact=True).click()
    settled(page, text)


def settled(page, text):
    """The answer to this question is there and its heading has the focus."""
    page.locator(NEWEST).filter(has=page.locator(".asked", has_text=text)).locator("h2:focus").wait_for()


def heading(page) -> str:
    """Word and headline of the newest answer."""
    return re.sub(r"\s+", " ", page.locator(f"{NEWEST} h2").first.inner_text())


def test_a_question_is_answered_on_the_first_screen(visits, size):
    page = visits.open(size=size)
    ask(page)
    assert heading(page).startswith("Won’t do")
    top = page.locator(f"{NEWEST} .asked").bounding_box()
    figure = page.locator(f"{NEWEST} .telling").first.bounding_box()
    assert top["y"] >= 0
    assert figure["y"] + figure["height"] <= size[1]
    assert page.locator("#q").input_value() == ""
    assert page.evaluate("document.documentElement.scrollWidth") <= size[0]


def test_an_example_asks(visits, size):
    page = visits.open(size=size)
    page.get_by_role("button", name="12.4 V at rest on an AGM").click()
    settled(page, "12.4 V at rest on an AGM")
    assert heading(page).startswith("Only just")
    assert page.locator(".groups").is_hidden()


def test_capacity_and_kind_are_corrected_in_place_and_the_answer_follows(visits, size):
    page = visits.open(size=size)
    ask(page, "How long will a 100 Ah AGM run the Pike?")
    before = heading(page)
    page.locator(f"{NEWEST} .chip summary", has_text="100").click()
    field = page.locator(f"{NEWEST} .chip[open] input[type=text]")
    assert field.evaluate("field => field === document.activeElement && field.selectionEnd === field.value.length")
    field.fill("120")
    page.get_by_role("button", name="Answer again").click()
    settled(page, "Same, with 120")
    longer = heading(page)
    assert longer != before
    page.locator(f"{NEWEST} .chip summary", has_text="AGM").click()
    page.locator(f"{NEWEST} .chip[open] select").select_option("gel")
    page.get_by_role("button", name="Answer again").click()
    settled(page, "Same, with gel")
    assert page.locator("#log > .folded").count() == 2
    assert page.locator(f"{NEWEST} .chip", has_text="gel").count() == 1


def test_a_question_asked_back_is_answered_by_a_tap_and_by_a_figure(visits, size):
    page = visits.open(size=size)
    ask(page, "Can a 200 Ah lithium run the Pike?")
    assert "short" in heading(page)
    assert page.locator(f"{NEWEST} .tick").first.bounding_box()["height"] >= 56
    page.locator(f"{NEWEST} .tick", has_text="390 or more").first.click()
    settled(page, "Continuous limit: 390")
    assert heading(page).startswith("Fine")
    page.get_by_role("link", name="Start a clean sheet").click()
    ask(page, "Can a 200 Ah lithium run the Pike?")
    page.locator(f"{NEWEST} .own input[type=text]").first.fill("100")
    page.locator(f"{NEWEST} .own").get_by_role("button", name="Enter").first.click()
    settled(page, "Continuous limit: 100")
    assert heading(page).startswith("Won’t do")


def test_what_would_change_it_is_tried(visits, size):
    page = visits.open(size=size)
    ask(page)
    page.get_by_role("button", name="Try 650").click()
    settled(page, "Same, with 650")
    assert heading(page).startswith("Fine")


def test_a_follow_up_keeps_the_facts_and_folds_what_was_before(visits, size):
    page = visits.open(size=size)
    ask(page)
    ask(page, "and with two in parallel?")
    assert heading(page).startswith("Fine")
    folded = page.locator("#log > .folded")
    assert "Won’t do" in folded.inner_text()
    folded.locator("summary").first.click()
    assert folded.locator(".figures").is_visible()
    assert folded.locator("form").count() == 0


def test_the_sheet_of_a_tab_is_there_again_after_a_reload_until_a_clean_one(visits):
    page = visits.open()
    ask(page)
    page.reload()
    page.locator(f"{NEWEST} h2").wait_for()
    ask(page, "same but 700 CCA")
    assert heading(page).startswith("Fine")
    page.get_by_role("link", name="Start a clean sheet").click()
    assert page.locator("#log").inner_text().strip() == ""
    assert page.locator(".groups").is_visible()


def test_an_answer_is_shared_by_its_link_and_as_text(visits, browser):
    page = visits.open(permissions=["clipboard-read", "clipboard-write"])
    ask(page)
    page.get_by_role("link", name="Copy as text").click()
    page.get_by_text("Copied", exact=True).wait_for()
    copied = page.evaluate("navigator.clipboard.readText()")
    assert copied.startswith(QUESTION)
    assert "8.1 V" in copied
    shared = page.get_by_role("link", name="Link to this answer").get_attribute("href")
    other = visits.open(shared)
    assert "8.1" in other.locator("h2").inner_text()
    assert other.locator("form[method=post]").count() == 0


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize(
    "text",
    [
        QUESTION,
        "Can a 200 Ah lithium run the Pike?",
        "AGM or lithium for the Pike?",
        "What cable for a Pike, 5 m each way?",
        "smoke from the battery",
    ],
)
def test_an_answer_prints_on_one_page(visits, text, paper):
    page = visits.open()
    ask(page, text)
    page = visits.open(page.get_by_role("link", name="Link to this answer").get_attribute("href"))
    pdf = page.pdf(format=paper)
    assert len(re.findall(rb"/Type\s*/Page\b", pdf)) == 1
    page.emulate_media(media="print")
    assert page.locator(".when-printed").last.is_visible()
    assert not page.get_by_role("button", name="Bright sun").is_visible()


def test_feedback_is_taken_with_a_word(visits, size):
    page = visits.open(size=size)
    ask(page)
    page.get_by_role("button", name="It did not").click()
    word = page.get_by_label("What was missing or wrong?")
    page.locator("input[name=word]:focus").wait_for()
    word.fill("my cable is 4 m")
    page.get_by_role("button", name="Send", exact=True).click()
    page.get_by_text("Thank you, that is noted.").wait_for()
    ask(page, "same but 700 CCA")
    page.get_by_role("button", name="It did", exact=True).click()
    page.get_by_text("Thank you, that is noted.").wait_for()


def test_a_conversation_is_handed_to_a_person(visits, size):
    page = visits.open(size=size)
    ask(page)
    page.get_by_text("Ask a person").click()
    page.get_by_label("Your email").fill("skipper@boat.example")
    page.get_by_role("button", name="Hand it over").click()
    page.get_by_text("A person has it now").wait_for()


def test_units_and_bright_sun_stay_in_this_browser(visits, size):
    page = visits.open(size=size)
    ask(page, "What cable for a Pike, 5 m each way?")
    assert page.locator(f"{NEWEST} .chip", has_text="5 m").is_visible()
    page.get_by_role("button", name="ft, AWG").click()
    assert page.locator(f"{NEWEST} .chip", has_text="16.4 ft").is_visible()
    page.get_by_role("button", name="Bright sun").click()
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(255, 255, 255)"
    assert page.get_by_role("button", name="Bright sun").get_attribute("aria-pressed") == "true"
    page.reload()
    assert page.locator("html").get_attribute("data-light") == "sun"
    assert page.locator("html").get_attribute("data-units") == "us"
    page.get_by_role("button", name="Bright sun").click()
    page.reload()
    assert page.locator("html").get_attribute("data-light") is None


def test_without_script_everything_is_a_form(visits, size):
    page = visits.open(size=size, java_script_enabled=False)
    page.locator("#q").fill(QUESTION)
    page.get_by_role("button", name="Ask", exact=True).click()
    assert heading(page).startswith("Won’t do")
    page.get_by_role("button", name="Try 650").click()
    assert heading(page).startswith("Fine")
    page.locator(f"{NEWEST} .chip summary", has_text="AGM").click()
    page.locator(f"{NEWEST} .chip[open] select").select_option("flooded")
    page.get_by_role("button", name="Answer again").click()
    expect(page.locator("#log > .folded")).to_have_count(2)  # it waits for the page that the form brings
    page.get_by_role("button", name="ft, AWG").click()
    expect(page.locator("html")).to_have_attribute("data-units", "us")
    expect(page.locator("#log > .folded")).to_have_count(2)
    page.get_by_role("button", name="It did not").click()
    page.get_by_label("What was missing or wrong?").wait_for()  # the next page may still be loading
    page.get_by_role("link", name="Start a clean sheet").click()
    page.locator(".groups").wait_for()


def test_by_keyboard_alone(visits):
    page = visits.open()
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.className") == "skip"
    page.keyboard.press("Enter")
    page.locator("#q:focus").wait_for()
    page.keyboard.type("Will my 520 CCA AGM start battery")
    page.keyboard.press("Shift+Enter")
    page.keyboard.type("run the Pike?")
    page.keyboard.press("Enter")
    settled(page, "run the Pike?")
    assert heading(page).startswith("Won’t do")
    for _ in range(12):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.matches('.chip summary')"):
            break
    page.keyboard.press("Enter")
    page.locator(".chip[open] :is(select, input[type=text]):focus").wait_for()
    page.keyboard.press("Escape")
    assert page.evaluate("document.activeElement.matches('.chip:not([open]) > summary')")
    rings = page.evaluate("getComputedStyle(document.activeElement).outlineStyle")
    assert rings == "solid"


def test_an_answer_is_announced_once_by_moving_to_its_heading(visits):
    page = visits.open()
    assert page.locator("[role=status]").inner_text() == ""
    ask(page)
    assert page.evaluate("document.activeElement.textContent").strip().startswith("Won’t do")
    assert page.locator("[role=status]").inner_text() == ""
    assert page.locator("[role=log]").get_attribute("aria-live") == "off"
    assert page.locator("[role=alert]").inner_text() == ""


def test_nothing_written_is_said_at_the_field(visits, size):
    page = visits.open(size=size)
    page.get_by_role("button", name="Ask", exact=True).click()
    assert "Nothing is written here yet" in page.locator("#q-trouble").inner_text()
    assert page.locator("#q").evaluate("field => field === document.activeElement")
    assert page.locator("#q").get_attribute("aria-invalid") == "true"
    page.locator("#q").fill("x" * 20_412)
    page.get_by_role("button", name="Ask", exact=True).click()
    assert "20,412" in page.locator("#q-trouble").inner_text()
    ask(page)
    assert page.locator("#q").get_attribute("aria-invalid") is None


@pytest.mark.parametrize("width", [360, 1280])
@pytest.mark.parametrize("text", [QUESTION, "thanks"], ids=["band", "no band"])
def test_the_ring_of_the_focus_goes_round_all_of_the_heading(visits, width, text):
    page = visits.open(size=(width, 900))
    ask(page, text)
    inside = page.locator(f"{NEWEST} h2").evaluate(
        "h2 => { const all = h2.getBoundingClientRect(), edge = 6;"
        " return all.left >= edge && all.right <= innerWidth - edge && [...h2.querySelectorAll('.band, .head')]"
        ".map(part => part.getBoundingClientRect()).every(part => part.left >= all.left && part.right <= all.right) }"
    )
    assert inside


def test_no_line_of_an_example_ends_between_a_number_and_its_unit(visits):
    page = visits.open(size=(360, 900))
    lines = page.get_by_role("button", name="70 mm²").evaluate(
        "button => { const text = button.firstChild, range = document.createRange(), at = text.data.indexOf('70');"
        " range.setStart(text, at); range.setEnd(text, at + 6); return range.getClientRects().length }"
    )
    assert lines == 1


def test_no_connection_keeps_the_question(visits, size):
    page = visits.open(size=size)
    page.context.set_offline(True)
    page.locator("#q").fill(QUESTION)
    page.get_by_role("button", name="Ask", exact=True).click()
    box = page.get_by_role("alert")
    box.get_by_text("No connection.").wait_for()
    assert page.locator("#q").input_value() == QUESTION
    assert page.locator("#log").inner_text().strip() == ""
    page.context.set_offline(False)
    box.get_by_role("button", name="Send it again").click()
    settled(page, QUESTION)
    assert heading(page).startswith("Won’t do")
    visits.problems = [said for said in visits.problems if "ERR_INTERNET_DISCONNECTED" not in said]


def test_a_fault_of_ours_keeps_the_question_and_names_the_telephone(visits):
    page = visits.open()
    page.route("**/", lambda route: route.fulfill(status=503, body="{}"))
    page.locator("#q").fill(QUESTION)
    page.get_by_role("button", name="Ask", exact=True).click()
    page.get_by_text("That did not go through.").wait_for()
    assert page.get_by_role("alert").get_by_role("link").get_attribute("href").startswith("tel:")
    assert page.locator("#q").input_value() == QUESTION
    page.unroute("**/")
    page.get_by_role("button", name="Send it again").click()
    page.locator(f"{NEWEST} h2").wait_for()
    visits.problems = [said for said in visits.problems if "503" not in said]


def test_a_slow_answer_is_waited_for_in_words(visits):
    page = visits.open()

    def late(route):
        if route.request.method == "POST":
            page.wait_for_timeout(900)
        route.continue_()

    page.route("**/", late)
    page.locator("#q").fill(QUESTION)
    page.get_by_role("button", name="Ask", exact=True).click()
    assert page.locator("#log").get_by_text(QUESTION).count() == 1
    page.locator(".wait").get_by_text("Working it out").wait_for()
    page.locator(f"{NEWEST} h2").wait_for()
    assert page.get_by_text("Working it out").count() == 0


def test_a_long_thread_folds_behind_one_line(visits):
    page = visits.open()
    for number in range(11):
        ask(page, f"Is 12.{10 + number} V at rest good for an AGM?")
    assert page.locator("#log > .folded").count() == 7
    assert "(3)" in page.locator(".earlier > summary").inner_text()


def test_nothing_moves_while_the_page_loads(visits, size):
    page = visits.open("/healthz", size=size)
    page.add_init_script(
        "window.moved = 0; new PerformanceObserver(list => { for (const entry of list.getEntries())"
        " if (!entry.hadRecentInput) window.moved += entry.value; }).observe({type: 'layout-shift', buffered: true})"
    )
    page.goto(visits.origin + "/")
    page.wait_for_timeout(300)
    ask(page)
    page.wait_for_timeout(300)
    assert page.evaluate("window.moved") < 0.02


def test_what_is_written_never_runs(visits):
    page = visits.open()
    ask(page, '<img src=x onerror="document.title=1"> 12.4 V AGM <script>document.title=2</script>')
    assert "Battery questions" in page.title()
    assert page.locator("#log img, #log script").count() == 0


def test_no_cookie(visits):
    page = visits.open(size=SIZES["phone"])
    ask(page)
    assert page.context.cookies() == []
