"""Shared fixtures: the app with a data folder of its own, a running service, a browser that notes its own problems."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import pytest
from hypothesis import settings

from service.web import create_app
from tests.live import live

CHROMIUM = "/usr/bin/chromium"
FLAGS = [
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync",
]  # fmt: skip
SIZES = {"phone": (390, 844), "desktop": (1280, 900)}

settings.register_profile("any machine", deadline=None)  # a busy machine is no failure
settings.load_profile("any machine")


def need(program: str) -> None:
    """Skip where a program is not installed; fail where CI should have installed it."""
    if shutil.which(program):
        return
    if os.environ.get("CI"):
        pytest.fail(f"{program} is missing: .ci/run installs it")
    pytest.skip(f"{program} is not installed")


@pytest.fixture
def app(tmp_path):
    return create_app(data=tmp_path / "data")


@pytest.fixture
def client(app):
    return app.test_client()


@pytest.fixture(scope="session")
def service(tmp_path_factory):
    """The address of the running service."""
    with live(create_app(data=tmp_path_factory.mktemp("data"))) as address:
        yield address


@pytest.fixture(scope="session")
def browser():
    need(CHROMIUM)
    from playwright.sync_api import sync_playwright

    with sync_playwright() as started:
        chromium = started.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
        yield chromium
        chromium.close()


class Visits:
    """Opens pages in fresh contexts and notes console errors, policy violations and requests to other origins."""

    def __init__(self, browser, origin: str) -> None:
        self.browser, self.origin = browser, origin
        self.also: list[str] = []  # further origins that a page may ask
        self.problems: list[str] = []
        self.contexts: list = []

    def open(self, path: str = "/", size=SIZES["desktop"], script: str = "", **options):
        width, height = size
        context = self.browser.new_context(viewport={"width": width, "height": height}, **options)
        context.set_default_timeout(10_000)
        self.contexts.append(context)
        page = context.new_page()
        if script:
            page.add_init_script(script)
        page.on("console", lambda said: self.problems.append(said.text) if said.type in ("error", "warning") else None)
        page.on("pageerror", lambda error: self.problems.append(str(error)))
        page.on("request", self._stays_here)
        page.goto(path if path.startswith("http") else self.origin + path)
        return page

    def _stays_here(self, request) -> None:
        if not request.url.startswith((self.origin, *self.also, "data:", "blob:")):
            self.problems.append(f"request to {request.url}")


@pytest.fixture
def visits(browser, service):
    """Pages of the running service; what went wrong in the browser fails the test at its end."""
    made = Visits(browser, service)
    yield made
    for context in made.contexts:
        context.close()
    assert made.problems == []


@pytest.fixture(params=SIZES.values(), ids=SIZES.keys())
def size(request):
    return request.param


@pytest.fixture
def house(tmp_path) -> Path:
    """A house file of our own to change."""
    from service.house import DEMO

    file = tmp_path / "house.toml"
    file.write_text(DEMO.read_text(encoding="utf-8"), encoding="utf-8")
    return file


@pytest.fixture
def tell(record_property):
    """Print a line in the summary of the tests, also under -q and from a worker."""
    return lambda line: record_property("tell", line)


def pytest_terminal_summary(terminalreporter):
    """The figures that tests told."""
    reports = (report for kind in ("passed", "failed") for report in terminalreporter.getreports(kind))
    told = sorted(line for report in reports for name, line in getattr(report, "user_properties", ()) if name == "tell")
    if told:
        terminalreporter.section("measured")
        for line in told:
            terminalreporter.write_line(line)
