"""Reads the project's data files; a parsed copy is kept in the user's cache, as TOML is slow to parse."""
from __future__ import annotations

import contextlib
import marshal
import os
import sys
import tempfile
from pathlib import Path
from typing import Any


def cache_dir() -> Path:
    """The folder for parsed copies. Losing it costs a few milliseconds, nothing else."""
    base = os.environ.get("XDG_CACHE_HOME") or os.path.expanduser("~/.cache")
    return Path(base) / "leadsman"


def toml(path: Path) -> dict[str, Any]:
    """The content of a TOML file. Raises tomllib.TOMLDecodeError for a broken one."""
    stat = path.stat()
    stamp = (str(path), stat.st_mtime_ns, stat.st_size, sys.version_info[:2])
    name = str(path).strip("/").replace("/", "_")
    copy = cache_dir() / f"{name[-120:]}.{stat.st_mtime_ns:x}.marshal"
    with contextlib.suppress(OSError, EOFError, ValueError, TypeError):
        kept, content = marshal.loads(copy.read_bytes())
        if kept == stamp:
            return dict(content)
    import tomllib

    content = tomllib.loads(path.read_text(encoding="utf-8"))
    with contextlib.suppress(OSError, ValueError):
        copy.parent.mkdir(parents=True, exist_ok=True)
        handle, partial = tempfile.mkstemp(dir=copy.parent)
        with os.fdopen(handle, "wb") as file:
            file.write(marshal.dumps((stamp, content)))
        os.replace(partial, copy)  # another process never sees half a copy
        for old in copy.parent.glob(f"{name[-120:]}.*.marshal"):
            if old != copy:
                old.unlink(missing_ok=True)
    return content
