"""A WSGI app on waitress in a thread of the test process, on a port that the system picks.

waitress has no stop call of its own: closing the server from another thread races with its select or leaves
kept-alive connections running. So the loop is driven here, and ended by its own thread.
"""

from __future__ import annotations

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from waitress import create_server, wasyncore


@contextmanager
def live(app: Any, **options: Any) -> Iterator[str]:
    """The address of the running app."""
    sockets: dict[int, Any] = {}
    server = create_server(app, host="127.0.0.1", port=0, map=sockets, **options)
    stop = threading.Event()

    def loop() -> None:
        while not stop.is_set():
            wasyncore.loop(timeout=0.5, map=sockets, count=1)
        server.task_dispatcher.shutdown()
        wasyncore.close_all(sockets)

    thread = threading.Thread(target=loop, daemon=True)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.effective_port}"
    finally:
        stop.set()
        server.pull_trigger()  # wakes the loop at once
        thread.join(10)
