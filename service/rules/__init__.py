"""Facts from facts (@rule: bank, battery, cable, charging, load, readings), and what topics judge, word or draw alike.

Importing the package declares the rules.
"""

from __future__ import annotations

from importlib import import_module
from pathlib import Path

for _file in sorted(Path(__file__).parent.glob("[a-z]*.py")):
    import_module(f"service.rules.{_file.stem}")
