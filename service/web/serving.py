"""`leadsman serve`: the website on an address and a port of this machine."""

from __future__ import annotations

import errno
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from waitress.server import create_server

from service.commands.start import Trouble, house_of, unreadable
from service.log import LogFault
from service.web import create_app


def serve(house: Path | None, data: Path | None, host: str, port: int) -> None:
    """Answer until interrupted; port 0: one that is free. Raises Trouble where that cannot begin."""
    house_of(house)  # what is wrong with it is told as by every command
    try:
        app = create_app(house=house, data=data)
    except LogFault as error:
        raise Trouble(str(error)) from error
    except OSError as error:
        raise unreadable(Path(str(error.filename)), error, "check the folder, or name another by --data") from error
    try:
        server = create_server(app, host=host, port=port, threads=4, ident="leadsman")
    except OSError as error:
        elsewhere = error.errno == errno.EADDRNOTAVAIL
        do = "choose a --host that is an address of this machine" if elsewhere else "choose another --port"
        raise Trouble(f"cannot listen on {host}:{port} ({error.strerror or error}): {do}") from error
    except ValueError as error:
        raise Trouble(f"cannot listen on {host}:{port} ({error}): check --host and --port") from error
    told = " and ".join(dict.fromkeys(addresses(server, host)))
    print(f"The battery desk answers at {told} (Ctrl+C ends it)", flush=True)
    server.run()


def addresses(server: Any, host: str) -> Iterator[str]:
    """Where a server is to be found. A name such as localhost may stand for two addresses."""
    several = getattr(server, "effective_listen", None)
    for name, port in several or [(host, server.effective_port)]:
        yield f"http://{f'[{name}]' if ':' in name else name}:{port}/"
