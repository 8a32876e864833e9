"""Reads the project's data files; a parsed copy is kept in the user's cache, as TOML is slow to parse."""

from __future__ import annotations

import contextlib
import hashlib
import marshal
import os
import sys
import tempfile
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

TABLES = Path(__file__).parent  # of everything that the grammar knows as data


def cache_dir() -> Path:
    """The folder for parsed copies. Losing it costs a few milliseconds, nothing else."""
    base = os.environ.get("XDG_CACHE_HOME") or os.path.expanduser("~/.cache")
    return Path(base) / "leadsman"


def toml(path: Path) -> dict[str, Any]:
    """The content of a TOML file. Raises tomllib.TOMLDecodeError for a broken one, which it names."""
    found: dict[str, Any] = kept(str(path), [path], lambda: _parsed(path))
    return found


def _parsed(path: Path) -> dict[str, Any]:
    import tomllib

    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except tomllib.TOMLDecodeError as error:
        raise tomllib.TOMLDecodeError(f"{path.name}: {error}") from error


def kept(name: str, sources: Sequence[Path], make: Callable[[], Any]) -> Any:
    """What `make` makes of some files, made once until one of them changes. It must be of plain types.

    Name the builder's own file among the sources where its shape may change.
    """
    stamp = (
        name,
        sys.version_info[:2],
        [(str(path), (stat := path.stat()).st_mtime_ns, stat.st_size) for path in sources],
    )
    digest = hashlib.md5(repr(stamp).encode(), usedforsecurity=False).hexdigest()
    stem = name.strip("/").replace("/", "_")[-100:]
    copy = cache_dir() / f"{stem}.{digest}.marshal"
    with contextlib.suppress(OSError, EOFError, ValueError, TypeError):
        return marshal.loads(copy.read_bytes())
    content = make()
    with contextlib.suppress(OSError, ValueError):
        copy.parent.mkdir(parents=True, exist_ok=True)
        handle, partial = tempfile.mkstemp(dir=copy.parent)
        with os.fdopen(handle, "wb") as file:
            file.write(marshal.dumps(content))
        os.replace(partial, copy)  # another process never sees half a copy
        for old in copy.parent.glob(f"{stem}.*.marshal"):
            if old != copy:
                old.unlink(missing_ok=True)
    return content
