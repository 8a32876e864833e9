"""The version of the rules: a digest of everything that decides an answer but the house, whose file has its own."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from functools import cache
from pathlib import Path

SUFFIXES = {".py", ".toml", ".lark", ".txt"}
SURFACES = {"web", "inbox", "render"}
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
    """The digest of grammar and service, but for the surfaces and the house files."""
    return digest(list(deciding(ROOT)))


def deciding(root: Path) -> Iterator[Path]:
    """The files below a folder that decide an answer, in order, wherever the folder stands."""
    for package in ("grammar", "service"):
        for path in sorted((root / package).rglob("*")):
            part = path.relative_to(root / package).parts[0]
            a_house = part == "house" and path.suffix == ".toml"
            if path.suffix in SUFFIXES and part not in SURFACES and not a_house:
                yield path
