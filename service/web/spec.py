"""The OpenAPI 3.1 document of the HTTP service, made from the dataclasses and the facts of the contract."""

from __future__ import annotations

from typing import Any

from grammar.facts import facts

NUMBER, TEXT = {"type": "number"}, {"type": "string"}
VALUE = {"type": ["number", "string", "boolean"]}
VERDICTS = ["yes", "no", "marginal", "needs-facts", "information", "stop"]


def document(house: str) -> dict[str, Any]:
    """The whole document."""
    return {
        "openapi": "3.1.0",
        "info": {"title": f"Battery desk of {house}", "version": "1"},
        "paths": {
            "/api/ask": {"post": _ask()},
            "/api/feedback": {"post": _feedback()},
            "/healthz": {"get": _get("healthz", "Whether questions can be answered and stored", {"503"})},
            "/api/spec": {"get": _get("spec", "This document", set())},
        },
        "components": {
            "schemas": {"Reply": _reply(), "Answer": _answer(), "Problem": _problem(), "Question": _question()}
        },
    }


def _object(required: dict[str, Any], optional: dict[str, Any] | None = None, closed: bool = False) -> dict[str, Any]:
    shape: dict[str, Any] = {"type": "object", "properties": required | (optional or {}), "required": list(required)}
    return shape | ({"additionalProperties": False} if closed else {})


def _list(item: dict[str, Any], **more: Any) -> dict[str, Any]:
    return {"type": "array", "items": item, **more}


def _choice(*values: str) -> dict[str, Any]:
    return {"type": "string", "enum": list(values)}


def _question() -> dict[str, Any]:
    fact = _object({"fact": _choice(*facts()), "value": VALUE}, {"unit": TEXT, "of": {"enum": [1, 2]}}, closed=True)
    return _object(
        {},
        {
            "text": {"type": "string", "maxLength": 20_000},
            "thread": {"type": ["string", "null"]},
            "facts": {"type": ["array", "null"], "items": fact},
        },
        closed=True,
    )


def _reply() -> dict[str, Any]:
    return _object(
        {
            "id": TEXT,
            "notice": {"type": ["string", "null"]},
            "thread": TEXT,
            "triage": _object(
                {
                    "urgency": _choice("stop-now", "today", "routine"),
                    "route": _choice("answered", "needs-facts", "technician", "other-desk"),
                }
            ),
            "answers": _list({"$ref": "#/components/schemas/Answer"}),
        }
    )


def _answer() -> dict[str, Any]:
    ends = {"low": NUMBER, "high": NUMBER}
    figure = _object({"name": TEXT, "label": TEXT, "value": VALUE, "unit": TEXT}, ends)
    fact = {"fact": TEXT, "value": VALUE, "unit": TEXT}
    span = {"type": ["array", "null"], "items": {"type": "integer"}}
    reply = _object(
        {"say": TEXT, "value": {"type": ["number", "string", "boolean", "null"]}, "unit": TEXT, "then": TEXT}
    )
    cite = dict.fromkeys(("id", "title", "publisher", "edition", "locator"), TEXT)
    kinds = _choice("standard", "handbook", "paper", "common-practice", "house")
    understood = fact | {"text": TEXT, "span": span, "from": _choice("message", "thread", "house")}
    return _object(
        {
            "topic": TEXT,
            "verdict": _choice(*VERDICTS),
            "headline": TEXT,
            "figures": _list(figure),
            "working": _list(_object({"say": TEXT, "cites": _list(TEXT)})),
            "cites": _list(_object(cite | {"kind": kinds})),
            "cautions": _list(_object({"id": TEXT, "say": TEXT})),
            "asks": _list(_object({"fact": TEXT, "say": TEXT, "where": TEXT, "replies": _list(reply)})),
            "understood": _list(_object(understood, ends | {"of": {"type": "integer"}})),
            "assumed": _list(_object(fact | {"why": TEXT})),
            "would_change": _list(_object(fact | {"say": TEXT, "also": _list({"type": "object"})})),
            "steps": _list(_object({"kind": _choice("do", "do-not", "who"), "say": TEXT})),
            "compare": _list(_object({"label": TEXT, "verdict": TEXT, "figures": _list(figure)})),
            "plot": {"type": ["object", "null"]},
        }
    )


def _problem() -> dict[str, Any]:
    return _object({"type": TEXT, "title": TEXT, "status": {"type": "integer"}, "detail": TEXT})


def _ask() -> dict[str, Any]:
    return {
        "operationId": "ask",
        "summary": "Answer one message",
        "requestBody": {"required": True, "content": {"application/json": {"schema": _ref("Question")}}},
        "responses": {
            "200": {"description": "The answers", "content": {"application/json": {"schema": _ref("Reply")}}},
            **{code: _refusal() for code in ("400", "413", "415")},
            "default": _refusal(),
        },
    }


def _feedback() -> dict[str, Any]:
    shape = _object({"id": TEXT, "helped": {"type": "boolean"}}, {"word": TEXT}, closed=True)
    kept = {"application/json": {"schema": _object({"status": TEXT})}}
    return {
        "operationId": "feedback",
        "summary": "Keep whether an answer helped",
        "requestBody": {"required": True, "content": {"application/json": {"schema": shape}}},
        "responses": {
            "200": {"description": "Kept", "content": kept},
            **{code: _refusal() for code in ("400", "404", "413", "415", "503")},
            "default": _refusal(),
        },
    }


def _get(name: str, summary: str, refusals: set[str]) -> dict[str, Any]:
    fine = {"description": summary, "content": {"application/json": {"schema": {"type": "object"}}}}
    return {
        "operationId": name,
        "summary": summary,
        "responses": {"200": fine, "default": _refusal()} | {code: _refusal() for code in refusals},
    }


def _ref(name: str) -> dict[str, str]:
    return {"$ref": f"#/components/schemas/{name}"}


def _refusal() -> dict[str, Any]:
    return {"description": "What to do", "content": {"application/problem+json": {"schema": _ref("Problem")}}}
