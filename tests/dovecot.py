"""A Dovecot of the test's own on loopback: `with Dovecot() as box:` gives box.url, box.user, box.password."""

from __future__ import annotations

import contextlib
import os
import pwd
import shutil
import signal
import socket
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
ssl = no
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
    port = {port}
  }}
  inet_listener imaps {{
    port = 0
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


def free_port() -> int:
    with socket.socket() as listener:
        listener.bind(("127.0.0.1", 0))
        return int(listener.getsockname()[1])


class Dovecot:
    user, password = "desk", "loopback-only"

    def __init__(self) -> None:
        self.folder = Path(tempfile.mkdtemp(prefix="imap-"))
        self.folder.chmod(0o755)  # its mail user is not ours
        self.port = free_port()
        self.url = f"imap://{self.user}@127.0.0.1:{self.port}/INBOX"
        self.server: subprocess.Popen[bytes] | None = None

    def __enter__(self) -> Dovecot:
        mail = pwd.getpwnam("mail")
        (self.folder / "mail").mkdir()
        os.chown(self.folder / "mail", mail.pw_uid, mail.pw_gid)
        users = self.folder / "users"
        users.write_text(f"{self.user}:{{PLAIN}}{self.password}\n")
        os.chown(users, 0, pwd.getpwnam("dovecot").pw_gid)
        users.chmod(0o640)
        settings = SETTINGS.format(
            folder=self.folder, name=self.folder.name, port=self.port, uid=mail.pw_uid, gid=mail.pw_gid
        )
        (self.folder / "dovecot.conf").write_text(settings)
        self.start()
        return self

    def start(self) -> None:
        self.server = subprocess.Popen([PROGRAM, "-F", "-c", str(self.folder / "dovecot.conf")])
        end = time.monotonic() + 15
        while time.monotonic() < end and self.server.poll() is None:
            with contextlib.suppress(OSError), socket.create_connection(("127.0.0.1", self.port), 1) as line:
                if line.recv(4) == b"* OK":
                    return
            time.sleep(0.05)
        log = self.folder / "dovecot.log"
        raise RuntimeError(log.read_text() if log.exists() else "no greeting")

    def stop(self) -> None:
        assert self.server is not None
        self.server.send_signal(signal.SIGTERM)
        try:
            self.server.wait(10)
        except subprocess.TimeoutExpired:
            self.server.kill()
            self.server.wait()

    def __exit__(self, *_: object) -> None:
        self.stop()
        shutil.rmtree(self.folder, ignore_errors=True)
