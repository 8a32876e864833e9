"""A mailbox over TLS: a certificate that is trusted lets us in, any other is refused before a password is sent."""

from __future__ import annotations

import os
import shutil
import ssl
import time

import pytest
from imapclient import IMAPClient

from service.cli import main
from service.inbox.imap import Imap, place
from service.inbox.mailbox import SourceFault
from service.inbox.run import AUTHORITY, PASSWORD
from tests.conftest import need
from tests.dovecot import PROGRAM, Dovecot, self_signed
from tests.inbox_desk import mail, run

QUESTION = "Is 12.4 V at rest good for my AGM battery?"


@pytest.fixture(scope="module")
def server():
    if not shutil.which(PROGRAM):
        missing = pytest.fail if os.environ.get("CI") else pytest.skip
        missing(f"{PROGRAM} is not installed")
    with Dovecot(tls=True) as box:
        yield box


@pytest.fixture
def box(server, monkeypatch):
    """The server with one question in its INBOX."""
    monkeypatch.setenv(PASSWORD, server.password)
    monkeypatch.delenv(AUTHORITY, raising=False)
    context = ssl.create_default_context(cafile=str(server.certificate))
    with IMAPClient("127.0.0.1", server.port, ssl=True, ssl_context=context) as client:
        client.login(server.user, server.password)
        for folder in ("INBOX", "Drafts"):
            client.select_folder(folder)
            client.delete_messages(client.search())
            client.expunge()
        client.append("INBOX", mail(QUESTION, Message_ID="<1@x.example>"))
    return server


def test_a_trusted_certificate_lets_us_in(box):
    (line,) = run(box.url, drafts="imap", ca=box.certificate)
    assert (line["reply"], line["draft"]) == (True, "Drafts;UID=" + line["draft"].rpartition("=")[2])
    assert run(box.url, drafts="imap", ca=box.certificate) == []


def test_the_certificate_may_come_from_the_environment_or_the_command_line(box, monkeypatch, capsys):
    assert main(["inbox", box.url, "--ca", str(box.certificate)]) == 0
    assert "due" in capsys.readouterr().out
    monkeypatch.setenv(AUTHORITY, str(box.certificate))
    assert main(["inbox", box.url]) == 0


def test_an_untrusted_certificate_is_refused_at_once_and_told(box, capsys):
    start = time.monotonic()
    assert main(["inbox", box.url]) == 2
    assert time.monotonic() - start < 5  # not tried again and again
    said = capsys.readouterr().err
    assert "the certificate of 127.0.0.1 is not trusted (self-signed certificate), so no password was sent" in said
    assert "--ca or LEADSMAN_IMAP_CA" in said


def test_the_certificate_of_another_is_refused(box, tmp_path):
    self_signed(tmp_path / "other.pem", tmp_path / "key.pem")
    with pytest.raises(SourceFault, match="is not trusted"):
        run(box.url, ca=tmp_path / "other.pem")


def test_a_certificate_for_another_name_is_refused(monkeypatch):
    need(PROGRAM)
    with Dovecot(tls=True, name="DNS:mail.example") as other:
        monkeypatch.setenv(PASSWORD, other.password)
        with pytest.raises(SourceFault, match=r"is not trusted \(IP address mismatch"):
            run(other.url, ca=other.certificate)


def test_a_connection_that_begins_in_the_clear_turns_to_tls_before_the_password(box):
    clear = f"imap://{box.user}@127.0.0.1:{box.starttls_port}/INBOX"
    with pytest.raises(SourceFault, match="is not trusted"):
        run(clear)
    assert len(run(clear, ca=box.certificate)) == 1


def test_no_password_is_sent_to_whom_we_do_not_trust(box, monkeypatch):
    sent = []
    monkeypatch.setattr(IMAPClient, "login", lambda self, user, password: sent.append(password))
    with pytest.raises(SourceFault):
        run(box.url)
    assert sent == []


@pytest.mark.parametrize("content", [None, "no certificate\n"])
def test_a_file_that_holds_no_certificate_is_told(box, tmp_path, content):
    file = tmp_path / "ca.pem"
    if content:
        file.write_text(content)
    with pytest.raises(SourceFault, match=r"is no file of certificates .*--ca"):
        run(box.url, ca=file)


def test_a_server_without_tls_at_that_port_is_told(monkeypatch):
    need(PROGRAM)
    with Dovecot() as plain:
        monkeypatch.setenv(PASSWORD, plain.password)
        with pytest.raises(SourceFault, match=r"does not speak TLS as it should .* check the port"):
            run(plain.url.replace("imap://", "imaps://"))


def test_watching_tells_a_fault_once_and_goes_on(monkeypatch):
    class Ended(Exception):
        pass

    told, pauses = [], []

    def pause(seconds: float) -> None:
        pauses.append(seconds)
        if len(pauses) == 3:
            raise Ended

    def fails() -> None:
        raise SourceFault("the certificate is not trusted")

    monkeypatch.setattr(Imap, "_wait", lambda self: None)
    source = Imap(place("imaps://desk@localhost/INBOX"), "x", pause=pause, say=told.append)
    with pytest.raises(Ended):
        source.watch(fails)
    assert told == ["the certificate is not trusted"]
    assert pauses == [1, 2, 4]
