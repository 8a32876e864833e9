"""Drafts are real messages: to the right person, in the right thread, readable, and never made twice."""

from __future__ import annotations

import io
import os
import re
import time
from dataclasses import replace

import pytest

from service.cli import main
from service.house import load
from service.inbox.drafts import DraftFault, Writer, check, mark
from service.inbox.mailbox import Files
from service.inbox.run import Wanted, inbox
from service.inbox.sorting import Sorter
from service.render.as_mail import as_mail
from tests.inbox_desk import MAILS, desk, folder_of, mail, plain_of, read_back, run, sorted_one


def drafted(folder, content):
    return read_back(sorted_one(folder, content, drafts=str(folder / "drafts"))["draft"])


def test_a_draft_goes_on_with_the_thread(tmp_path):
    draft = drafted(
        tmp_path,
        mail(
            "Is 12.4 V good for an AGM?",
            subject="Fwd: Re: RE: Reading",
            Message_ID="<m3@post.example>",
            References="<m1@post.example> <m2@post.example>",
            In_Reply_To="<m2@post.example>",
        ),
    )
    assert draft["In-Reply-To"] == "<m3@post.example>"
    assert draft["References"].split() == ["<m1@post.example>", "<m2@post.example>", "<m3@post.example>"]
    assert draft["Subject"] == "Re: Reading"
    assert draft["To"].addresses[0].addr_spec == "ann@post.example"
    assert draft["From"].addresses[0].addr_spec == "desk@otterholm.example"
    assert [part.get_content_type() for part in draft.iter_parts()] == ["text/plain", "text/html"]


def test_reply_to_is_honoured_unless_it_is_our_own(tmp_path):
    text = "Is 12.4 V good for an AGM?"
    other = drafted(tmp_path, mail(text, Reply_To="Home <home@post.example>", Message_ID="<1@x.example>"))
    ours = drafted(tmp_path, mail(text, Reply_To="desk@otterholm.example", Message_ID="<2@x.example>"))
    assert [draft["To"].addresses[0].addr_spec for draft in (other, ours)] == ["home@post.example", "ann@post.example"]


def test_the_first_own_address_writes(tmp_path):
    line = sorted_one(
        tmp_path, mail("Is 12.4 V good for an AGM?"), drafts=str(tmp_path / "d"), own=("Second@otterholm.example",)
    )
    assert read_back(line["draft"])["From"].addresses[0].addr_spec == "second@otterholm.example"


def test_twelve_questions_stand_under_twelve_headings(tmp_path):
    draft = drafted(tmp_path, (MAILS / "twelve-questions.eml").read_bytes())
    lines = plain_of(draft).splitlines()
    assert [line for line in lines if line[:1].isdigit() and ". " in line[:4]][:12] == [
        line for line in (MAILS / "twelve-questions.eml").read_text().splitlines() if line[:1].isdigit()
    ]
    html = draft.get_body(("html",))
    assert html is not None
    assert html.get_content().count("<h3") == 12


def test_no_sentence_stands_twice_in_a_draft_of_many_questions(tmp_path):
    text = plain_of(drafted(tmp_path, (MAILS / "twelve-questions.eml").read_bytes()))
    own = " ".join(text.partition("\nOn ")[0].split())
    said = [part for part in re.split(r"(?<=[.:]) ", own) if part.endswith(".") and len(part.split()) > 5]
    assert len(said) > 20
    assert [part for part in said if said.count(part) > 1] == []


def test_whom_to_ring_is_told_and_is_no_source(tmp_path):
    text = plain_of(drafted(tmp_path, (MAILS / "order.eml").read_bytes()))
    assert "You reach us by a reply to this message, Monday to Friday," in " ".join(text.split())
    assert "Sources" not in text


def test_a_hazard_opens_with_the_action_and_a_hand_over_is_written_too(tmp_path):
    hazard = plain_of(drafted(tmp_path, (MAILS / "hazard.eml").read_bytes()))
    order = plain_of(drafted(tmp_path, (MAILS / "order.eml").read_bytes()))
    assert hazard.startswith("Hello,\n\nEverybody off")
    assert "thank you for writing" not in hazard
    assert "orders desk" in order


@pytest.mark.parametrize(
    ("name", "told"), [("thanks", "You are welcome: ask"), ("no-words", "What can we do for you?")]
)
def test_a_polite_word_where_nothing_is_asked(tmp_path, name, told):
    assert told in plain_of(drafted(tmp_path, (MAILS / f"{name}.eml").read_bytes()))


def test_a_draft_ends_with_the_sign_off_and_the_words_it_answers(tmp_path):
    told = plain_of(drafted(tmp_path, mail("Is 12.4 V good for an AGM?", Date="Tue, 11 Nov 2025 09:12:00 +0000")))
    assert told.endswith(
        "Kind regards, the battery desk, Otterholm Thrusters\n\n"
        "On Tue, 11 Nov 2025 09:12:00 +0000 Ann Low wrote:\n> Is 12.4 V good for an AGM?\n"
    )


def test_a_bare_reply_to_a_draft_is_understood(tmp_path):
    draft = drafted(tmp_path, mail("Will my flooded battery run the Pike?", Message_ID="<q1@post.example>"))
    quoted = "\n".join(f"> {line}".rstrip() for line in plain_of(draft).splitlines())
    text = f"650 CCA\n\nOn Wed, 12 Nov 2025 the battery desk wrote:\n{quoted}"
    reply = mail(text, subject="Re: x", References="<d@x.example>")
    (answer,) = sorted_one(tmp_path, reply)["answers"]
    assert (answer["topic"], answer["verdict"]) == ("run-check", "yes")


def test_html_of_a_customer_is_shown_not_run(tmp_path):
    draft = drafted(tmp_path, mail("Is 12.4 V good for <script>alert(1)</script> an AGM?", subject="<b>x"))
    html = draft.get_body(("html",))
    assert html is not None
    assert "<script>" not in html.get_content()


@pytest.mark.parametrize(
    "hostile",
    [
        {"subject": "=?utf-8?q?x=0D=0ABcc:_all@post.example?="},
        {"subject": "x", "sender": "=?utf-8?q?a=0D=0ABcc=3A_all=40post.example?= <ann@post.example>"},
        {"subject": "x", "Reply_To": '"a\\"\\r\\nBcc: all@post.example" <ann@post.example>'},
        {"subject": "x", "sender": "=?utf-8?q?=22all=40post.example=22=2C?= <ann@post.example>"},
        {"subject": "x", "Message_ID": "<a@b>\r\n\tBcc: all@post.example"},
        {"subject": "x", "References": "<a@b> =?utf-8?q?=0D=0ABcc:_all@post.example?="},
        {"subject": "x" * 5000},
        {"subject": "x", "Reply_To": "a..b@post.example, .a@post.example, a.@post.example"},
        {"subject": "=?utf-8?b?8J+Yhfcn?= =?x-none?q?y?= \udcff"},
    ],
)
def test_no_header_comes_in_through_another(tmp_path, hostile):
    content = mail("Is 12.4 V good for an AGM?", **hostile)
    draft = drafted(tmp_path, content)
    assert [item.addr_spec for item in draft["To"].addresses] == ["ann@post.example"]
    assert not {"bcc", "cc"} & {name.lower() for name in draft}
    assert "\n" not in draft["Subject"]


def test_a_draft_that_does_not_read_back_is_refused():
    sound = b"From: a@x.example\r\nTo: b@x.example\r\nSubject: s\r\nMessage-ID: <m@x>\r\n"
    sound += b"Date: Tue, 11 Nov 2025 09:12:00 +0000\r\n"
    check(sound + b"\r\ntext\r\n", {"b@x.example"})
    added = (sound + b"Bcc: c@x.example\r\n", sound + b"To: c@x.example\r\n")
    for spoilt in (*added, sound.replace(b"b@x", b"c@x"), b"x"):
        with pytest.raises(DraftFault):
            check(spoilt + b"\r\ntext\r\n", {"b@x.example"})


def test_a_second_run_leaves_the_drafts_as_they_are(tmp_path):
    mails = [mail(f"Is 12.{n} V good for an AGM?", Message_ID=f"<{n}@x.example>") for n in range(4)]
    with folder_of(tmp_path, *mails) as folder:
        first = run(folder, drafts=str(tmp_path / "drafts"))
        edited = tmp_path / "drafts" / first[0]["draft"].rpartition("/")[2]
        edited.write_text("worked on")
        second = run(folder, drafts=str(tmp_path / "drafts"))
    assert [line["draft"] for line in first] == [line["draft"] for line in second]
    assert edited.read_text() == "worked on"
    assert len(list((tmp_path / "drafts").iterdir())) == 4


def test_a_name_of_a_file_leads_nowhere_else(tmp_path):
    found = Sorter(desk()).sort(next(iter(Files(MAILS / "order.eml").items())))
    strange = replace(found, item=replace(found.item, key="../../etc/pass wd\n:2,S"))
    from service.inbox.drafts import Folder

    path = Folder(tmp_path / "drafts").put(strange, b"x")
    assert path.startswith(f"{tmp_path}/drafts/pass-wd.")
    assert mark(found) == mark(strange)


def test_a_place_for_drafts_that_is_no_folder_is_told_before_the_first_mail(tmp_path, capsys):
    (tmp_path / "file").write_text("")
    (tmp_path / "one.eml").write_bytes(mail("Is 12.4 V good for an AGM?"))
    assert main(["inbox", str(tmp_path), "--drafts", str(tmp_path / "file")]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert "name another folder by --drafts" in told.err


@pytest.mark.parametrize("json", [True, False], ids=["json", "table"])
def test_a_draft_that_cannot_be_kept_is_told_and_made_in_the_next_run(tmp_path, monkeypatch, json):
    wanted = Wanted(str(tmp_path / "one.eml"), json=json, drafts=str(tmp_path / "drafts"))
    (tmp_path / "one.eml").write_bytes(mail("Is 12.4 V good for an AGM?"))
    out, err = io.StringIO(), io.StringIO()
    with monkeypatch.context() as full:
        full.setattr(os, "link", lambda *_: (_ for _ in ()).throw(OSError(28, "No space left on device")))
        inbox(wanted, desk(), out, err)
    assert "one.eml: drafts cannot be kept" in err.getvalue()
    assert "tried again in the next run" in err.getvalue()
    assert ('"reply": true' if json else "due") in out.getvalue()
    assert list((tmp_path / "drafts").iterdir()) == []
    inbox(wanted, desk(), io.StringIO(), io.StringIO())
    assert len(list((tmp_path / "drafts").iterdir())) == 1


def test_a_draft_that_cannot_be_written_goes_to_a_person_and_is_told(tmp_path, monkeypatch):
    def fails(self, found):
        raise DraftFault("the draft cannot be written: a test")

    monkeypatch.setattr(Writer, "write", fails)
    (tmp_path / "one.eml").write_bytes(mail("Smoke from my battery!"))
    out, err = io.StringIO(), io.StringIO()
    inbox(Wanted(str(tmp_path), json=True, drafts=str(tmp_path / "drafts")), desk(), out, err)
    assert '"urgency": "stop-now", "route": "technician", "reply": false' in out.getvalue()
    assert "one.eml: the draft cannot be written: a test; set aside for a person" in err.getvalue()


def test_half_a_character_in_a_mail_is_answered_like_any_other(tmp_path):
    content = mail("Is 12.4 V +2AA- good for an AGM?").replace(b"utf-8", b"utf-7")
    assert "12.4 V \ufffd good" in plain_of(drafted(tmp_path, content))


def test_a_mail_of_25_megabytes_and_500_attachments_does_no_harm(tmp_path):
    part = '--b\nContent-Type: image/png; name="{}.png"\nContent-Transfer-Encoding: base64\n\n{}\n'
    line = "QUFB" * 19 + "\n"
    parts = "".join(part.format(number, line * 650) for number in range(500))
    head = "From: a@post.example\nTo: desk@otterholm.example\nSubject: Reading\nMIME-Version: 1.0\n"
    content = f'{head}Content-Type: multipart/mixed; boundary="b"\n\n{parts}--b\nContent-Type: text/plain\n\n'
    content += "Is 12.7 V at rest good for a flooded battery?\n--b--\n"
    assert len(content) > 25_000_000
    start = time.process_time()
    found = sorted_one(tmp_path, content.encode(), drafts=str(tmp_path / "drafts"))
    assert time.process_time() - start < 20
    assert found["answers"][0]["topic"] == "rest-voltage"
    assert "attached files" not in plain_of(read_back(found["draft"]))  # nothing is open that they could tell


@pytest.mark.parametrize(
    ("text", "told"), [("Is the reading good? See the photo.", True), ("Is 12.7 V good for a flooded battery?", False)]
)
def test_files_are_spoken_of_where_something_is_open(tmp_path, text, told):
    head = "From: a@post.example\nSubject: Photo\nMIME-Version: 1.0\nContent-Type: multipart/mixed; boundary=b\n\n"
    parts = f"--b\nContent-Type: text/plain\n\n{text}\n--b\nContent-Type: image/png; name=a.png\n\nx\n--b--\n"
    said = " ".join(plain_of(drafted(tmp_path, (head + parts).encode())).split())
    assert ("We have not opened the attached files" in said) is told


def test_without_a_reply_or_headings_the_mail_still_reads():
    plain, html = as_mail(None, {})
    assert plain.startswith("Hello,\n")
    assert html.startswith("<div")


def test_the_writer_wants_an_address():
    found = Sorter(desk()).sort(next(iter(Files(MAILS / "order.eml").items())))
    import datetime

    with pytest.raises(DraftFault):
        Writer(load(), "no address", lambda: datetime.datetime.now(datetime.UTC)).write(found)
