"""The question page."""

from __future__ import annotations

from flask import Blueprint

blueprint = Blueprint("pages", __name__)
