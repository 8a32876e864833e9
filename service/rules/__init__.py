"""Facts from facts, a file a subject. Importing the package declares them all."""
from __future__ import annotations

import pkgutil
from importlib import import_module

for _info in sorted(pkgutil.iter_modules(__path__), key=lambda item: item.name):
    import_module(f"service.rules.{_info.name}")
