"""Answers in JSON, and what came in a request."""

from collections.abc import Mapping
from typing import Any, TypeVar

import msgspec
import orjson
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response

from identify.server.limits import ASKED, MOST_GROUPS, MOST_VALUES

T = TypeVar("T")
CROWDED = "This holds too many values to be read at once. Send it in parts."
NO_JSON = "It is not JSON in UTF-8, or nested too deep"


class Json(Response):
    """A value as JSON."""

    media_type = "application/json"

    def render(self, content: Any) -> bytes:
        return orjson.dumps(content)


def refused(
    sentence: str, status: int, headers: Mapping[str, str] | None = None, **more: Any
) -> Json:
    """Why something was not done: {error: sentence}, and what else a program needs of it."""
    return Json({"error": sentence, **more}, status, headers)


async def sent(request: Request, kind: type[T]) -> T:
    """The JSON of a request as this kind. Raises HTTPException in a sentence."""
    if content_type(request) != "application/json":
        raise HTTPException(415, "This must be sent as JSON: Content-Type: application/json.")
    body = await request.body()
    if crowded(body):
        raise HTTPException(413, CROWDED)
    try:
        return msgspec.json.decode(body, type=kind)
    except (msgspec.MsgspecError, UnicodeDecodeError, RecursionError) as error:
        why = str(error) if isinstance(error, msgspec.MsgspecError) else NO_JSON
        raise HTTPException(400, f"The request cannot be read: {why}.") from None


def content_type(request: Request) -> str:
    """The media type that a request says its body is of, in lower case; "" for none."""
    return str(request.headers.get("content-type", "")).partition(";")[0].strip().lower()


def crowded(body: bytes) -> bool:
    """Whether JSON or a table, read, would fill many times the memory that it takes as text."""
    groups = sum(body.count(mark) for mark in (b"{", b"["))
    parted = sum(body.count(mark) for mark in (b",", b";", b"|", b"\t", b"\n", b"\r"))
    return groups > MOST_GROUPS or parted > MOST_VALUES


def asked(request: Request, name: str, most: int = ASKED) -> str:
    """What stands under a name behind the question mark; "" for nothing. Raises HTTPException."""
    values = request.query_params.getlist(name)
    if len(values) > 1 or (values and len(values[0]) > most):
        raise HTTPException(400, f'"{name}" must be given once, with at most {most} characters.')
    return values[0] if values else ""


def asked_number(request: Request, name: str, usual: int) -> int:
    """The same as a whole number from 0, `usual` where it is left out. Raises HTTPException."""
    text = asked(request, name, 15)  # short of what a double or SQLite could not hold
    if text == "":
        return usual
    if not (text.isascii() and text.isdecimal()):
        raise HTTPException(400, f'"{name}" must be a whole number from 0.')
    return int(text)
