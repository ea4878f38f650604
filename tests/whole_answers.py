"""For ASGI middleware in tests: an answer as a whole, to change it before it is sent."""

from starlette.types import ASGIApp, Message, Receive, Scope, Send


async def whole_answer(app: ASGIApp, scope: Scope, receive: Receive) -> tuple[Message, bytes]:
    """How the app's answer starts, and its body, which is not compressed."""
    parts: list[Message] = []

    async def kept_back(message: Message) -> None:
        parts.append(message)

    plain = [(n, v) for n, v in scope["headers"] if n != b"accept-encoding"]
    await app({**scope, "headers": plain}, receive, kept_back)
    start, *bodies = parts
    return start, b"".join(part["body"] for part in bodies)


async def send_whole(send: Send, start: Message, body: bytes) -> None:
    """Sends it with this body, and the length of that."""
    others = [(n, v) for n, v in start["headers"] if n.lower() != b"content-length"]
    length = (b"content-length", str(len(body)).encode())
    await send({**start, "headers": [*others, length]})
    await send({"type": "http.response.body", "body": body})
