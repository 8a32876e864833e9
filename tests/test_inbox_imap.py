"""The inbox on a real IMAP server: read unseen, marked with our own keywords, drafts once and never sent."""

from __future__ import annotations

import io
import json
import os
import shutil
import threading
import time
from datetime import UTC, datetime
from pathlib import Path

import pytest
from imapclient import IMAPClient
from imapclient.exceptions import IMAPClientError

from service.cli import main
from service.house import DEMO, load
from service.house.kept import Kept
from service.inbox.drafts import DraftFault, Writer
from service.inbox.imap import ASIDE, SEEN, Imap, place
from service.inbox.mailbox import SourceFault
from service.inbox.run import PASSWORD, Run, Wanted, inbox, password, under
from service.inbox.sorting import Sorter
from service.leadsman import Leadsman
from service.turns.thread import Signer
from tests.dovecot import PROGRAM, Dovecot
from tests.inbox_desk import desk, mail, plain_of, read_back, run

QUESTION = "Is 12.4 V at rest good for my AGM battery?"


@pytest.fixture(scope="module")
def server():
    if not shutil.which(PROGRAM):
        missing = pytest.fail if os.environ.get("CI") else pytest.skip
        missing(f"{PROGRAM} is not installed")
    with Dovecot() as box:
        yield box


@pytest.fixture
def box(server, monkeypatch):
    """The server with an empty INBOX and Drafts."""
    monkeypatch.setenv(PASSWORD, server.password)
    with login(server) as client:
        for folder in ("INBOX", "Drafts"):
            client.select_folder(folder)
            client.delete_messages(client.search())
            client.expunge()
    return server


def login(server) -> IMAPClient:
    client = IMAPClient("127.0.0.1", server.port, ssl=False)
    client.login(server.user, server.password)
    return client


def put(server, *mails: bytes, folder: str = "INBOX") -> None:
    with login(server) as client:
        for content in mails:
            client.append(folder, content)


def flags(server, folder: str = "INBOX") -> list[set[str]]:
    with login(server) as client:
        client.select_folder(folder, readonly=True)
        found = client.fetch(client.search(), ["FLAGS"])
        return [{flag.decode() for flag in found[uid][b"FLAGS"]} - {"\\Recent"} for uid in sorted(found)]


def drafts(server):
    with login(server) as client:
        client.select_folder("Drafts", readonly=True)
        found = client.fetch(client.search(), ["BODY.PEEK[]"])
        return [read_back(found[uid][b"BODY[]"]) for uid in sorted(found)]


def test_without_drafts_nothing_is_written(box):
    put(box, mail(QUESTION, Message_ID="<1@x.example>"))
    (line,) = run(box.url)
    assert next(iter(line)) == "uid"
    assert (line["reply"], line["draft"]) == (True, None)
    assert flags(box) == [set()]
    assert drafts(box) == []
    assert len(run(box.url)) == 1


def test_a_draft_lies_in_drafts_and_the_mail_stays_unread(box):
    put(box, mail(QUESTION, subject="Reading", Message_ID="<1@x.example>"), mail("x", Auto_Submitted="auto-replied"))
    lines = run(box.url, drafts="imap")
    (draft,) = drafts(box)
    assert [line["draft"] for line in lines] == [f"Drafts;UID={draft_uid(box)}", None]
    assert draft["In-Reply-To"] == "<1@x.example>"
    assert "12.4 V" in plain_of(draft)
    assert flags(box) == [{SEEN}, {SEEN}]
    assert flags(box, "Drafts") == [{"\\Draft"}]


def draft_uid(box) -> int:
    with login(box) as client:
        client.select_folder("Drafts", readonly=True)
        (uid,) = client.search()
        return int(uid)


def test_a_second_run_does_nothing_twice(box):
    put(box, mail(QUESTION, Message_ID="<1@x.example>"), mail("What is CCA?"))
    assert len(run(box.url, drafts="imap")) == 2
    assert run(box.url, drafts="imap") == []
    put(box, mail(QUESTION, Message_ID="<1@x.example>"))
    (late,) = run(box.url, drafts="imap")
    assert (late["reply"], "duplicate" in late["why"]) == (False, True)
    assert len(drafts(box)) == 2


def test_a_draft_is_not_doubled_where_the_mark_was_lost(box):
    put(box, mail(QUESTION, Message_ID="<1@x.example>"), mail("What is CCA?"))
    first = run(box.url, drafts="imap")
    with login(box) as client:
        client.select_folder("INBOX")
        client.remove_flags(client.search(), [SEEN])
    assert [line["draft"] for line in run(box.url, drafts="imap")] == [line["draft"] for line in first]
    assert len(drafts(box)) == 2


@pytest.mark.parametrize("cut", ["search", "fetch", "append", "add_flags"])
def test_a_cut_connection_loses_and_doubles_nothing(box, monkeypatch, cut):
    put(box, *(mail(f"Is 12.{n} V at rest good for an AGM?", Message_ID=f"<{n}@x.example>") for n in range(3)))
    real, cuts = getattr(IMAPClient, cut), []

    def cutting(self, *arguments, **options):
        result = real(self, *arguments, **options)
        if not cuts:
            cuts.append(cut)
            self.shutdown()  # the server has done it, the answer never came
            raise OSError("cut")
        return result

    monkeypatch.setattr(IMAPClient, cut, cutting)
    lines = run(box.url, drafts="imap")
    assert cuts
    assert len(lines) == len({line["draft"] for line in lines}) == 3
    assert len(drafts(box)) == 3
    assert flags(box) == [{SEEN}] * 3


@pytest.mark.parametrize("what", ["fetch", "append", "add_flags"])
def test_a_server_that_dies_in_the_middle_loses_and_doubles_nothing(box, monkeypatch, what):
    put(box, *(mail(f"Is 12.{n} V at rest good for an AGM?", Message_ID=f"<{n}@x.example>") for n in range(6)))
    real, calls = getattr(IMAPClient, what), []

    def dying(self, *arguments, **options):
        calls.append(what)
        if len(calls) in (2, 4):
            box.crash()
        return real(self, *arguments, **options)

    monkeypatch.setattr(IMAPClient, what, dying)
    lines = run(box.url, drafts="imap")
    assert len(calls) == 8
    assert len(lines) == len({line["draft"] for line in lines}) == 6
    assert len(drafts(box)) == 6
    assert flags(box) == [{SEEN}] * 6
    assert run(box.url, drafts="imap") == []


def test_broken_mail_is_set_aside_and_the_rest_goes_on(box):
    put(box, b"\x89PNG\r\n\x00 no mail", mail(QUESTION))
    lines = run(box.url, drafts="imap")
    assert [line["reply"] for line in lines] == [False, True]
    assert flags(box) == [{ASIDE}, {SEEN}]
    assert run(box.url, drafts="imap") == []


def test_a_mail_whose_draft_the_server_refuses_is_left_and_drafted_later(box, monkeypatch):
    put(box, mail(QUESTION, Message_ID="<1@x.example>"), mail("What is CCA?", sender="bob@post.example"))
    source = Imap(place(box.url), box.password, marks=True)
    writer = Writer(load(), "desk@x.example", lambda: datetime.now(UTC))
    run_ = Run(Sorter(desk(), (), source.find, source.answered), source, writer, source)
    with monkeypatch.context() as full:
        full.setattr(IMAPClient, "append", lambda *_, **__: (_ for _ in ()).throw(IMAPClientError("over quota")))
        assert [(found.left, found.due, found.draft) for found in run_.sorted()] == [(True, True, None)] * 2
    assert flags(box) == [set(), set()]
    assert [(found.left, found.why) for found in run_.sorted()] == [(False, "")] * 2
    assert len(drafts(box)) == 2
    assert flags(box) == [{SEEN}, {SEEN}]
    assert list(run_.sorted()) == []
    source.close()


def test_a_mail_whose_draft_cannot_be_written_is_set_aside(box, monkeypatch):
    def fails(self, found):
        raise DraftFault("a test")

    monkeypatch.setattr(Writer, "write", fails)
    put(box, mail(QUESTION))
    assert [line["route"] for line in run(box.url, drafts="imap")] == ["technician"]
    assert flags(box) == [{ASIDE}]


def test_a_thread_goes_on_over_runs(box):
    put(box, mail(QUESTION, Message_ID="<1@x.example>"))
    run(box.url, drafts="imap")
    put(box, mail("And at 12.7 V?", subject="Re: x", References="<1@x.example> <d@x.example>"))
    (line,) = run(box.url, drafts="imap")
    assert {"battery.chemistry", "reading.voltage"} <= {item["fact"] for item in line["answers"][0]["understood"]}


def test_drafts_may_go_into_a_folder(box, tmp_path):
    put(box, mail(QUESTION, Message_ID="<1@x.example>"))
    (line,) = run(box.url, drafts=str(tmp_path))
    assert Path(line["draft"]).parent == tmp_path
    assert drafts(box) == []


def test_many_mails_at_once(box):
    put(box, *(mail(f"Is 12.{n:02} V at rest good?", sender=f"{n}@x.example") for n in range(60)))
    assert len(run(box.url, drafts="imap")) == 60
    assert len(drafts(box)) == 60


def test_watching_takes_new_mail_and_comes_back_after_a_cut(box):
    class Ended(Exception):
        pass

    source = Imap(place(box.url), box.password, marks=True)
    runs: list[int] = []
    sorter = Sorter(desk(), (), source.find, source.answered)
    waiting = threading.Event()

    def take() -> None:
        runs.append(len(list(Run(sorter, source, None, None).sorted())))  # type: ignore[arg-type]
        if len(runs) == 2:
            raise Ended

    def watch() -> None:
        list(source.items())
        waiting.set()
        with pytest.raises(Ended):
            source.watch(take)

    thread = threading.Thread(target=watch, daemon=True)
    thread.start()
    assert waiting.wait(10)
    time.sleep(0.3)
    put(box, mail(QUESTION))
    _until(lambda: runs == [1])
    box.stop()
    box.start()
    put(box, mail("What is CCA?"))
    thread.join(40)
    source.close()
    assert not thread.is_alive()
    assert runs == [1, 1]


def test_a_changed_house_is_in_force_at_the_next_mail(box, tmp_path):
    file = tmp_path / "house.toml"
    sound = DEMO.read_text(encoding="utf-8")
    file.write_text(sound, encoding="utf-8")
    kept, source, err = Kept(file), Imap(place(box.url), box.password, marks=True), io.StringIO()
    sorter = Sorter(Leadsman(kept.now(), Signer("s")), (), source.find, source.answered)
    run_ = Run(sorter, source, Writer(kept.now(), "desk@x.example", lambda: datetime.now(UTC)), source)

    def verdicts() -> list[str]:
        return [found.reply.answers[0].verdict for found in under(kept, run_, err).sorted()]

    put(box, mail("Will my 700 CCA AGM run the Pike?", Message_ID="<1@x.example>"))
    assert verdicts() == ["yes"]
    file.write_text(sound.replace("cca = 650", "cca = 800 # more").replace("Kind regards", "Yours"), encoding="utf-8")
    put(box, mail("Will my 710 CCA AGM run the Pike?", Message_ID="<2@x.example>"))
    assert verdicts() == ["no"]
    assert "Yours, the battery desk" in plain_of(drafts(box)[1])
    file.write_text("[house]\n", encoding="utf-8")
    put(box, mail("Will my 720 CCA AGM run the Pike?", Message_ID="<3@x.example>"))
    assert verdicts() == ["no"]
    assert "the last sound one stays" in err.getvalue()
    source.close()


def _until(holds) -> None:
    end = time.monotonic() + 20
    while not holds() and time.monotonic() < end:
        time.sleep(0.05)
    assert holds()


def test_a_wrong_password_is_told(box, monkeypatch, capsys):
    monkeypatch.setenv(PASSWORD, "wrong")
    assert main(["inbox", box.url]) == 2
    assert "check the user and the password" in capsys.readouterr().err


def test_a_folder_that_is_not_there_is_told(box, capsys):
    assert main(["inbox", box.url.replace("INBOX", "Nowhere")]) == 2
    assert "cannot be opened" in capsys.readouterr().err


def test_json_lines_come_one_by_one(box):
    put(box, mail(QUESTION), mail("What is CCA?"))
    out = io.StringIO()
    inbox(Wanted(box.url, json=True), desk(), out, io.StringIO())
    topics = [json.loads(line)["answers"][0]["topic"] for line in out.getvalue().splitlines()]
    assert topics == ["rest-voltage", "meaning"]


def test_a_password_file_must_be_its_owners_alone(tmp_path, monkeypatch):
    monkeypatch.delenv(PASSWORD, raising=False)
    file = tmp_path / "password"
    file.write_text("kept secret\n")
    file.chmod(0o644)
    with pytest.raises(SourceFault, match="chmod 600"):
        password(file, "desk")
    file.chmod(0o600)
    assert password(file, "desk") == "kept secret"
    with pytest.raises(SourceFault, match="no password"):
        password(None, "desk")


@pytest.mark.parametrize(
    ("url", "parts"),
    [
        ("imaps://a%40post.example@mail.example/INBOX/In", ("mail.example", 993, "a@post.example", "INBOX/In", True)),
        ("imap://desk@localhost:1143", ("localhost", 1143, "desk", "INBOX", False)),
    ],
)
def test_where_a_mailbox_is(url, parts):
    found = place(url)
    assert (found.host, found.port, found.user, found.folder, found.tls) == parts


def test_an_unencrypted_server_elsewhere_gets_no_password(box, monkeypatch):
    monkeypatch.setattr("service.inbox.imap.LOOPBACK", ())
    with pytest.raises(SourceFault, match="offers no encryption"):
        run(box.url)
