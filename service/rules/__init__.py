"""Facts from facts: each function with @rule gives one from others.

Importing the package declares the rules.
"""

from __future__ import annotations

from importlib import import_module
from pathlib import Path

for _file in sorted(Path(__file__).parent.glob("[a-z]*.py")):
    import_module(f"service.rules.{_file.stem}")
