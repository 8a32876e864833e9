"""How heavy an answer is on the line: texts travel compressed, unchanging files are kept by the browser."""

from __future__ import annotations

import gzip

from flask import Response, request

TEXTS = ("text/", "application/json", "application/problem+json", "image/svg+xml")
LEAST = 1024  # bytes: below it the wrapping costs more than it saves
A_YEAR = "public, max-age=31536000, immutable"


def lightened(response: Response) -> Response:
    """The response compressed where the browser takes it; a static file asked for by its version is kept for good."""
    if request.endpoint == "static" and "v" in request.args and response.status_code == 200:
        response.headers["Cache-Control"] = A_YEAR
    if response.status_code == 204 or not str(response.mimetype).startswith(TEXTS):
        return response
    response.vary.add("Accept-Encoding")
    if request.method == "HEAD" or not request.accept_encodings["gzip"] or response.status_code in (206, 304):
        return response
    response.direct_passthrough = False
    body = response.get_data()
    if len(body) >= LEAST:
        response.set_data(gzip.compress(body, 6, mtime=0))
        response.headers["Content-Encoding"] = "gzip"
        response.headers.pop("Accept-Ranges", None)
    return response
