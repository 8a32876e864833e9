"""A Dovecot of the test's own on loopback: `with Dovecot() as box:` gives box.url, box.user, box.password.

`Dovecot(tls=True)` speaks TLS alone, under a certificate that it makes and signs itself: box.certificate.
"""

from __future__ import annotations

import contextlib
import os
import pwd
import shutil
import signal
import socket
import ssl
import subprocess
import tempfile
import time
from pathlib import Path

PROGRAM = "/usr/sbin/dovecot"
SETTINGS = """
protocols = imap
listen = 127.0.0.1
base_dir = {folder}/run
state_dir = {folder}/state
log_path = {folder}/dovecot.log
instance_name = {name}
{encryption}
disable_plaintext_auth = no
auth_mechanisms = plain login
mail_location = maildir:{folder}/mail/%u
first_valid_uid = 1
default_internal_user = dovecot
default_login_user = dovenull
mail_fsync = never
auth_failure_delay = 0
passdb {{
  driver = passwd-file
  args = scheme=PLAIN username_format=%u {folder}/users
}}
userdb {{
  driver = static
  args = uid={uid} gid={gid} home={folder}/mail/%u
}}
namespace inbox {{
  inbox = yes
  separator = /
  mailbox Drafts {{
    special_use = \\Drafts
    auto = subscribe
  }}
}}
service imap-login {{
  inet_listener imap {{
    address = 127.0.0.1
    port = {plain_port}
  }}
  inet_listener imaps {{
    address = 127.0.0.1
    port = {tls_port}
    ssl = yes
  }}
}}
service anvil {{
  unix_listener anvil-auth-penalty {{
    mode = 0
  }}
}}
service stats {{
  unix_listener stats-writer {{
    mode = 0666
  }}
}}
"""


TLS = """ssl = required
ssl_min_protocol = TLSv1.2
ssl_cert = <{folder}/certificate.pem
ssl_key = <{folder}/key.pem"""


def self_signed(certificate: Path, key: Path, name: str = "IP:127.0.0.1") -> None:
    """Make a certificate for a server of that name, signed by itself."""
    subprocess.run(
        [
            *("openssl", "req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1", "-nodes"),
            *("-days", "2", "-subj", "/CN=a test's own", "-addext", f"subjectAltName={name}"),
            *("-keyout", str(key), "-out", str(certificate)),
        ],
        check=True,
        capture_output=True,
    )


def free_port() -> int:
    with socket.socket() as listener:
        listener.bind(("127.0.0.1", 0))
        return int(listener.getsockname()[1])


class Dovecot:
    user, password = "desk", "loopback-only"

    def __init__(self, tls: bool = False, name: str = "IP:127.0.0.1") -> None:
        self.tls, self.name = tls, name
        self.folder = Path(tempfile.mkdtemp(prefix="imap-"))
        self.folder.chmod(0o755)  # its mail user is not ours
        self.port = free_port()
        self.starttls_port = free_port() if tls else 0
        self.url = f"imap{'s' * tls}://{self.user}@127.0.0.1:{self.port}/INBOX"
        self.certificate = self.folder / "certificate.pem"
        self.server: subprocess.Popen[bytes] | None = None

    def __enter__(self) -> Dovecot:
        mail = pwd.getpwnam("mail")
        (self.folder / "mail").mkdir()
        os.chown(self.folder / "mail", mail.pw_uid, mail.pw_gid)
        users = self.folder / "users"
        users.write_text(f"{self.user}:{{PLAIN}}{self.password}\n")
        os.chown(users, 0, pwd.getpwnam("dovecot").pw_gid)
        users.chmod(0o640)
        if self.tls:
            self_signed(self.certificate, self.folder / "key.pem", self.name)
        settings = SETTINGS.format(
            folder=self.folder,
            name=self.folder.name,
            plain_port=self.starttls_port if self.tls else self.port,
            tls_port=self.port if self.tls else 0,
            encryption=TLS.format(folder=self.folder) if self.tls else "ssl = no",
            uid=mail.pw_uid,
            gid=mail.pw_gid,
        )
        (self.folder / "dovecot.conf").write_text(settings)
        self.start()
        return self

    def start(self) -> None:
        command = [PROGRAM, "-F", "-c", str(self.folder / "dovecot.conf")]
        self.server = subprocess.Popen(command, start_new_session=True)  # a group of its own, to crash as one
        end = time.monotonic() + 15
        while time.monotonic() < end and self.server.poll() is None:
            with contextlib.suppress(OSError), socket.create_connection(("127.0.0.1", self.port), 1) as line:
                if self._greets(line):
                    return
            time.sleep(0.05)
        log = self.folder / "dovecot.log"
        raise RuntimeError(log.read_text() if log.exists() else "no greeting")

    def _greets(self, line: socket.socket) -> bool:
        if not self.tls:
            return line.recv(4) == b"* OK"
        trusting = ssl.SSLContext(ssl.PROTOCOL_TLS_CLIENT)
        trusting.check_hostname, trusting.verify_mode = False, ssl.CERT_NONE  # only whether it is up
        with trusting.wrap_socket(line) as wrapped:
            return wrapped.recv(4) == b"* OK"

    def stop(self) -> None:
        assert self.server is not None
        self.server.send_signal(signal.SIGTERM)
        try:
            self.server.wait(10)
        except subprocess.TimeoutExpired:
            self.server.kill()
            self.server.wait()

    def crash(self) -> None:
        """End the server without a word, as a power cut does, and start it again."""
        assert self.server is not None
        os.killpg(self.server.pid, signal.SIGKILL)
        self.server.wait()
        self._let_go()
        shutil.rmtree(self.folder / "run")  # its sockets may still be held by a child that has not ended
        self.start()

    def _let_go(self) -> None:
        """Wait until the last child has ended and nobody listens any more: only the master is ours to wait for."""
        end = time.monotonic() + 15
        while time.monotonic() < end:
            try:
                socket.create_connection(("127.0.0.1", self.port), 1).close()
            except ConnectionRefusedError:
                return
            except OSError:
                pass  # a line that broke off while it was made: ask again
            time.sleep(0.02)
        raise RuntimeError(f"port {self.port} is still held 15 s after the crash")

    def __exit__(self, *_: object) -> None:
        self.stop()
        shutil.rmtree(self.folder, ignore_errors=True)
