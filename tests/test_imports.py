"""The import direction of DEVELOPERS.md, held by the contracts in pyproject.toml."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parent.parent


def test_no_import_goes_outwards():
    linter = Path(sys.executable).with_name("lint-imports")
    found = subprocess.run([linter, "--no-cache"], capture_output=True, text=True, cwd=ROOT, check=False)
    assert found.returncode == 0, found.stdout[-4000:]


def test_a_question_on_the_command_line_loads_no_web_no_database_and_no_units_library(tmp_path):
    code = (
        "import sys; from service.cli import main; "
        "main(['ask', '--no-log', 'Is 12.4 V good?']); "
        "print([name for name in ('flask', 'sqlite_utils', 'pint') if name in sys.modules])"
    )
    environment = os.environ | {"XDG_CACHE_HOME": str(tmp_path)}
    found = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, cwd=ROOT, env=environment, check=True
    )
    assert found.stdout.splitlines()[-1] == "[]"
