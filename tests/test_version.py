"""The version of the rules changes with what decides an answer, and with nothing else."""

from __future__ import annotations

import shutil

import pytest

from service.version import ROOT, deciding, digest


@pytest.mark.parametrize("folder", ["house", "web", "inbox", "render"])
def test_the_folder_that_it_is_installed_in_changes_nothing(tmp_path, folder):
    there = tmp_path / folder
    for package in ("grammar", "service"):
        shutil.copytree(ROOT / package, there / package, ignore=shutil.ignore_patterns("__pycache__", "web", "render"))
    assert digest(list(deciding(there))) == digest(list(deciding(ROOT)))


def test_the_loader_of_houses_decides_but_no_house_and_no_surface():
    names = {path.relative_to(ROOT).as_posix() for path in deciding(ROOT)}
    assert {"service/house/__init__.py", "service/leadsman.py", "grammar/units.toml"} <= names
    assert "service/house/otterholm.toml" not in names
    assert not [name for name in names if name.startswith(("service/web/", "service/inbox/", "service/render/"))]
