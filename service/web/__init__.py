"""The website and the HTTP service over one desk."""

from __future__ import annotations

from pathlib import Path

from flask import Flask, Response, request

from service.house import DEMO
from service.log import default_folder
from service.web import api, forms, pages, problems, weight
from service.web.desk import WebDesk, desk

LARGEST_BODY = 256 * 1024
POLICY = (
    "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self'; connect-src 'self'; "
    "form-action 'self'; base-uri 'none'; frame-ancestors {ancestors}"
)


def create_app(house: Path | None = None, data: Path | None = None) -> Flask:
    """The Flask application.

    Raises HouseFault or OSError for a house file that cannot be taken, LogFault for a data folder that cannot
    be written: better at the start than at the first question.
    """
    app = Flask(__name__)
    app.config["MAX_CONTENT_LENGTH"] = LARGEST_BODY
    app.config["MAX_FORM_MEMORY_SIZE"] = LARGEST_BODY
    app.extensions["desk"] = WebDesk(house or DEMO, data or default_folder())
    for blueprint in (api.blueprint, pages.blueprint, forms.blueprint):
        app.register_blueprint(blueprint)
    problems.register(app)

    @app.after_request
    def guarded(response: Response) -> Response:
        framed = " ".join(desk().house.words.get("origins", ())) if request.path == "/" else ""
        response.headers.setdefault("Content-Security-Policy", POLICY.format(ancestors=framed or "'none'"))
        response.headers.setdefault("X-Content-Type-Options", "nosniff")
        response.headers.setdefault("Referrer-Policy", "no-referrer")
        return weight.lightened(response)

    return app
