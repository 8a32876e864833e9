"""The website and the HTTP service over one desk."""

from __future__ import annotations

from pathlib import Path

from flask import Flask, Response

from service.house import DEMO
from service.log import default_folder
from service.web import api, pages, problems
from service.web.desk import WebDesk

LARGEST_BODY = 256 * 1024
POLICY = "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors {ancestors}"


def create_app(house: Path | None = None, data: Path | None = None) -> Flask:
    """The Flask application.

    Raises HouseFault or OSError for a house file that cannot be taken, LogFault for a data folder that cannot
    be written: better at the start than at the first question.
    """
    app = Flask(__name__)
    app.config["MAX_CONTENT_LENGTH"] = LARGEST_BODY
    app.config["MAX_FORM_MEMORY_SIZE"] = LARGEST_BODY
    desk = WebDesk(house or DEMO, data or default_folder())
    app.extensions["desk"] = desk
    app.register_blueprint(api.blueprint)
    app.register_blueprint(pages.blueprint)
    problems.register(app)

    @app.after_request
    def guarded(response: Response) -> Response:
        ancestors = " ".join(desk.house.words.get("origins", ())) or "'none'"
        response.headers.setdefault("Content-Security-Policy", POLICY.format(ancestors=ancestors))
        response.headers.setdefault("X-Content-Type-Options", "nosniff")
        response.headers.setdefault("Referrer-Policy", "no-referrer")
        return response

    return app
