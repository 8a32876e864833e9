"""Facts from facts, a file a subject. Importing the package declares them all."""

from __future__ import annotations

from importlib import import_module
from pathlib import Path

for _file in sorted(Path(__file__).parent.glob("[a-z]*.py")):
    import_module(f"service.rules.{_file.stem}")
