"""The question page without a browser: forms that work without script, escaping, addresses, weight."""

from __future__ import annotations

import gzip
import re
from html.parser import HTMLParser

import pytest

from service.cli import main
from service.render.plot import picture
from service.web import create_app
from service.web.examples import EXAMPLES

QUESTION = "Will my 520 CCA AGM start battery run the Pike?"
NASTY = '<script>alert("x")</script> <img src=x onerror=alert(1)> 12.4 V {{ 7 * 7 }} \' " & AGM'
STATIC = ("sheet.css", "sheet.js", "early.js", "icon.svg")


class Page(HTMLParser):
    """What a page holds: its forms with their fields, its links, the ids, tags with inline style or script."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.forms: list[dict[str, str]] = []
        self.links: list[str] = []
        self.ids: list[str] = []
        self.inline: list[str] = []
        self.buttons: list[dict[str, str]] = []
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        found = {name: value or "" for name, value in attrs}
        if tag == "form":
            self.forms.append({"action": found["action"], "method": found["method"]})
        elif tag in ("input", "textarea", "select") and "name" in found and self.forms:
            self.forms[-1][found["name"]] = found.get("value", "")
        elif tag == "button":
            self.buttons.append(found)
        elif tag == "a":
            self.links.append(found.get("href", ""))
        if "id" in found:
            self.ids.append(found["id"])
        if "style" in found or tag == "style" or (tag == "script" and "src" not in found):
            self.inline.append(tag)
        self.inline += [name for name in found if name.startswith("on")]

    def form(self, field: str) -> dict[str, str]:
        """The first form with this field."""
        return next(form for form in self.forms if field in form)


def read(response) -> Page:
    assert response.status_code < 500
    return Page(response.get_data(as_text=True))


def post(client, text="", page=None, **fields):
    """A form as a browser without script sends it: with the hidden fields of the last page."""
    kept = {name: page.forms[-1].get(name, "") for name in ("thread", "entries")} if page else {}
    return client.post("/", data={"text": text, **kept, **fields})


def body(client, path, **options) -> bytes:
    """What stands at an address; its file is closed again."""
    with client.get(path, **options) as response:
        return response.data


def words(response) -> str:
    """The text of a page with its spaces evened out."""
    text = re.sub(r"<[^>]+>", " ", response.get_data(as_text=True))
    return re.sub(r"[\s\u00a0]+", " ", text)


def test_the_page_at_rest_offers_a_field_and_examples_that_are_answered(client):
    page = read(client.get("/"))
    assert page.form("text")["method"] == "post"
    offered = [button["value"] for button in page.buttons if button.get("name") == "text"]
    assert offered == [question for group in EXAMPLES.values() for question in group]


def test_an_example_is_shown_unbroken_and_sent_as_it_is_written(client):
    text = client.get("/").get_data(as_text=True)
    assert 'value="What fuse for a Sturgeon on 70 mm² cable?">What fuse for a Sturgeon on 70\u00a0mm² cable?<' in text


def test_the_page_is_in_english_whatever_an_older_house_file_says(house, tmp_path):
    text = house.read_text(encoding="utf-8").replace("[house]", '[house]\nlanguage = "nonsense x"')
    house.write_text(text, encoding="utf-8")
    client = create_app(house=house, data=tmp_path / "data").test_client()
    assert '<html lang="en"' in client.get("/").get_data(as_text=True)


@pytest.mark.parametrize("question", [question for group in EXAMPLES.values() for question in group])
def test_every_example_gets_an_answer_with_figures_or_a_comparison(client, question):
    answers = client.post("/api/ask", json={"text": question}).json["answers"]
    assert answers
    assert all(item["figures"] or item["compare"] for item in answers)


def test_the_first_page_weighs_under_60_kb_in_all(client):
    parts = [body(client, "/"), *(body(client, f"/static/{name}") for name in STATIC)]
    assert sum(map(len, parts)) < 60_000


def test_the_widget_weighs_under_25_kb_compressed_with_the_page_in_its_frame(client):
    parts = [body(client, "/?frame=docked"), *(body(client, f"/static/{name}") for name in (*STATIC, "widget.js"))]
    assert sum(len(gzip.compress(part)) for part in parts) < 25_000


def test_texts_travel_compressed_where_the_browser_takes_it(client):
    with client.get("/static/sheet.css?v=1", headers={"Accept-Encoding": "gzip"}) as packed:
        assert packed.headers["Content-Encoding"] == "gzip"
        assert gzip.decompress(packed.data) == body(client, "/static/sheet.css")
        assert "immutable" in packed.headers["Cache-Control"]
    assert "Content-Encoding" not in client.get("/").headers


def test_a_form_without_script_gives_the_sheet_back(client):
    response = post(client, QUESTION)
    assert "Won’t do" in words(response)
    assert "8.1 V" in words(response)
    page = read(response)
    second = post(client, "same but 700 CCA", page)
    assert {"Won’t do.", "Fine"} <= set(re.findall(r"Won’t do\.|Fine", words(second)))
    assert read(second).form("text")["entries"].count(",") == 1


def test_a_corrected_fact_is_answered_again_and_stands_in_the_log_as_a_question(client, app):
    page = read(post(client, QUESTION))
    response = post(client, page=page, **{"fact:battery.cca": "720"})
    assert "Same, with 720 A" in words(response)
    assert "Fine" in words(response)
    assert next(app.extensions["desk"].log().rows(1))["text"].replace("\u00a0", " ") == "Same, with 720 A"


@pytest.mark.parametrize(
    ("typed", "unit", "shown"),
    [("20", "foot", "20 ft"), ("6,1", "meter", "6.1 m"), (" 7 ", "", "7 m")],
)
def test_a_length_may_be_corrected_in_either_unit(client, typed, unit, shown):
    page = read(post(client, "What cable for a Pike, 5 m each way?"))
    response = post(client, page=page, **{"fact:cable.length": typed, "unit:cable.length": unit})
    assert f"Same, with {shown}" in words(response)
    assert response.status_code == 200


def test_a_fact_asked_back_may_be_tapped(client):
    response = post(client, "Can a 200 Ah lithium run the Pike?")
    page = read(response)
    tap = next(button for button in page.buttons if button.get("name") == "fact:battery.max_current")
    answered = post(client, page=page, reply="1", **{tap["name"]: tap["value"]})
    assert "Fine" in words(answered)
    assert "Continuous limit: 390 A" in words(answered)


def test_a_number_that_is_none_is_explained_and_the_sheet_stays(client):
    page = read(post(client, QUESTION))
    response = post(client, page=page, **{"fact:battery.cca": "plenty"})
    assert response.status_code == 400
    assert "write a number" in words(response)
    assert "Won’t do" in words(response)


@pytest.mark.parametrize("text", ["", "   ", "x" * 20_001])
def test_nothing_written_or_too_much(client, text):
    response = post(client, text)
    assert response.status_code == 400
    assert 'aria-invalid="true"' in response.get_data(as_text=True)
    assert ("Nothing is written here yet" in words(response)) == (not text.strip())


def test_our_script_gets_the_new_entry_and_the_one_before_folded(client):
    page = read(post(client, QUESTION))
    response = client.post(
        "/",
        headers={"Sheet": "entry"},
        data={"text": "same but 700 CCA", **{n: page.forms[-1][n] for n in ("thread", "entries")}},
    )
    text = response.get_data(as_text=True)
    assert text.count('<section class="folded"') == text.count('<section class="newest"') == 1
    assert "<html" not in text
    refused = client.post("/", headers={"Sheet": "entry"}, data={"text": ""})
    assert (refused.status_code, refused.mimetype) == (400, "application/problem+json")


def test_old_entries_go_behind_one_line(client):
    page = None
    for number in range(11):
        page = read(post(client, f"Is 12.{number + 10} V good for an AGM?", page))
    response = post(client, "thanks", page)
    assert "Earlier on this sheet ( 4 )" in words(response)


def test_what_customers_write_is_never_markup(client):
    response = post(client, NASTY)
    id = re.search(r"/a/([\w-]+)", response.get_data(as_text=True)).group(1)
    page = read(response)
    client.post("/feedback", data={"id": id, "helped": "no", "word": NASTY})
    pages = [client.get(path) for path in (f"/a/{id}", f"/?ask={NASTY}", f"/?frame=1&label={NASTY}")]
    for shown in (response, *pages, post(client, page=page, **{"fact:terminal.size": NASTY[:60]})):
        text = shown.get_data(as_text=True)
        assert "<script>alert" not in text
        assert "<img" not in text
        assert "49" not in re.sub(r"\d{2}:49", "", words(shown)).split()
        assert read(shown).inline == []
    assert client.get(f"/a/{id}.txt").mimetype == "text/plain"


def test_what_the_house_writes_is_never_markup(house, tmp_path):
    text = house.read_text(encoding="utf-8")
    text = text.replace('name = "Otterholm Thrusters"', "name = '<script>alert(1)</script>'")
    text = text.replace('telephone = "+00 0000 000 000"', "telephone = '\"><img src=x onerror=alert(1)>'")
    house.write_text(text, encoding="utf-8")
    client = create_app(house=house, data=tmp_path / "data").test_client()
    for shown in (client.get("/"), post(client, "smoke from the battery"), client.get("/sources")):
        assert "<script>alert" not in shown.get_data(as_text=True)
        assert "<img" not in shown.get_data(as_text=True)
        assert read(shown).inline == []


def test_one_answer_has_an_address_for_reading_and_one_for_text(client):
    id = client.post("/api/ask", json={"text": QUESTION}).json["id"]
    shown = client.get(f"/a/{id}")
    assert QUESTION in words(shown)
    assert "fact:battery.cca" not in shown.get_data(as_text=True)
    text = client.get(f"/a/{id}.txt").get_data(as_text=True)
    assert text.startswith(QUESTION)
    assert "Sources:" in text
    assert client.get("/a/nobody").status_code == 404


def test_an_unknown_address_is_a_page_for_people_and_problem_details_for_programs(client):
    for_people = client.get("/a/nobody", headers={"Accept": "text/html"})
    assert (for_people.status_code, for_people.mimetype) == (404, "text/html")
    assert "Go to the question page" in words(for_people)
    assert client.get("/a/nobody").mimetype == "application/problem+json"
    assert client.delete("/", headers={"Accept": "text/html"}).headers["Allow"]


def test_every_source_of_an_answer_leads_to_the_list(client):
    listed = set(read(client.get("/sources")).ids)
    page = read(post(client, "What cable for a Pike, 5 m each way?"))
    cited = [link.partition("#")[2] for link in page.links if link.startswith("/sources#")]
    assert cited
    assert set(cited) <= listed


def test_ids_are_unique_with_several_answers_and_entries(client):
    page = read(post(client, "What cable and what fuse for a Pike, 5 m each way, 70 mm2?"))
    page = read(post(client, "and 8 m?", page))
    assert sorted(page.ids) == sorted(set(page.ids))


def test_units_are_a_display_only(client):
    shown = post(client, "What cable for a Pike, 5 m each way?")
    assert '<span class="metric">5\u00a0m</span><span class="us">16.4\u00a0ft</span>' in shown.get_data(as_text=True)
    assert 'data-units="metric"' in client.get("/").get_data(as_text=True)
    us = client.get("/?units=us&light=sun").get_data(as_text=True)
    assert 'data-units="us"' in us
    assert 'data-light="sun"' in us
    assert 'action="/?units=us&amp;light=sun"' in us


def test_feedback_without_script_thanks_and_asks_for_a_word(client, app):
    page = read(post(client, QUESTION))
    kept = {name: page.forms[-1][name] for name in ("thread", "entries")}
    id = kept["entries"]
    thanked = client.post("/feedback", data={"id": id, "helped": "no", **kept})
    assert "Thank you" in words(thanked)
    assert 'class="word" method="post" action="/feedback">' in thanked.get_data(as_text=True)
    client.post("/feedback", data={"id": id, "helped": "no", "word": "my cable", **kept})
    assert [row["word"] for row in app.extensions["desk"].log().db["feedback"].rows] == ["my cable"]
    assert client.post("/feedback", data={"id": id, "helped": "perhaps"}).status_code == 400


def test_a_conversation_may_be_handed_to_a_person(client, app, capsys):
    page = read(post(client, QUESTION))
    page = read(post(client, "same but 700 CCA", page))
    kept = {name: page.forms[-1][name] for name in ("thread", "entries")}
    response = client.post("/queue", data={"reply_to": "skipper@boat.example", **kept})
    assert "A person has it now" in words(response)
    waiting = next(app.extensions["desk"].log().queued())
    assert waiting["entries"] == kept["entries"]
    assert waiting["reply_to"] == "skipper@boat.example"
    assert '"value": 700' in waiting["facts"]
    assert main(["log", "queue", "--data", str(app.extensions["desk"].folder)]) == 0
    assert "skipper@boat.example" in capsys.readouterr().out
    for wrong in ("", "skipper", "a@b\r\nBcc: c@d", "@", "a b@c"):
        assert client.post("/queue", data={"reply_to": wrong, **kept}).status_code == 400
    assert client.post("/queue", data={"reply_to": "a@b.example", "entries": "nobody"}).status_code == 400


def test_only_listed_websites_may_frame_the_page(house, tmp_path):
    client = create_app(house=house, data=tmp_path / "data").test_client()
    assert "frame-ancestors 'none'" in client.get("/").headers["Content-Security-Policy"]
    text = house.read_text(encoding="utf-8").replace("origins = []", 'origins = ["https://shop.example"]')
    house.write_text(text, encoding="utf-8")
    assert "frame-ancestors https://shop.example" in client.get("/?frame=1").headers["Content-Security-Policy"]
    assert "frame-ancestors 'none'" in client.get("/sources").headers["Content-Security-Policy"]


def test_no_page_sets_a_cookie_or_allows_inline_code(client):
    id = client.post("/api/ask", json={"text": QUESTION}).json["id"]
    for path in ("/", f"/a/{id}", f"/a/{id}.txt", "/sources", "/healthz", "/static/sheet.js", "/nowhere"):
        with client.get(path) as response:
            policy = response.headers["Content-Security-Policy"]
        assert "Set-Cookie" not in response.headers
        assert "unsafe" not in policy
        assert "default-src 'none'" in policy


def test_the_page_stands_while_the_log_is_gone(client, app):
    page = read(post(client, QUESTION))
    path = app.extensions["desk"].log().path
    app.extensions["desk"].log().db.execute("drop table log")
    assert "Fine" in words(post(client, "same but 700 CCA", page))
    shown = client.get("/a/x", headers={"Accept": "text/html"})
    assert shown.status_code in (404, 503)
    assert path.exists()


def test_a_picture_escapes_what_it_is_given():
    plot = {
        "kind": "line", "title": "<b>", "x": {"label": "<i>", "unit": "A"}, "y": {"label": "y", "unit": "V"},
        "series": [{"label": '"><script>', "points": [[0, 12.6], [100, 9.0]]}],
        "limits": [{"label": "<u>", "value": 9.5}],
        "mark": {"label": "'<s>", "x": 50, "y": 10.8},
    }  # fmt: skip
    drawn = str(picture(plot, "run-check", "k"))
    assert not re.search(r"<(script|b|i|u|s)\b", drawn)
    assert 'role="img"' in drawn
    assert "<title" in drawn
    assert "style=" not in drawn
    assert picture(None, "run-check", "k") == ""
