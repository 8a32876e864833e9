"""The version of the rules: a digest of everything that decides an answer."""

from __future__ import annotations

import hashlib
from functools import cache
from pathlib import Path

SUFFIXES = {".py", ".toml", ".lark", ".txt"}
ROOT = Path(__file__).parent.parent


def digest(paths: list[Path]) -> str:
    """Twelve hex digits over the contents of files."""
    total = hashlib.sha256()
    for path in paths:
        total.update(path.name.encode())
        total.update(path.read_bytes())
    return total.hexdigest()[:12]


@cache
def rules() -> str:
    """The digest of grammar and service, the houses and the surfaces left out."""
    files = [
        path
        for package in ("grammar", "service")
        for path in sorted((ROOT / package).rglob("*"))
        if path.suffix in SUFFIXES and not {"house", "web", "inbox", "render"} & set(path.parts)
    ]
    return digest(files)
