"""The box for proposals over HTTP: followers of a range put in what they saw, and read nothing.

It has words of its own, which open nothing else, and no paired device's token opens it. Pages
elsewhere may ask it, since followers have the app from another host.
"""

import time
from collections.abc import Callable
from datetime import datetime

from anyio import CapacityLimiter, to_thread
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from identify.keeping.proposals import DECLINED, STATES, TAKEN, WAITING, Box, Follower
from identify.keeping.troubles import RefusedError
from identify.server import limits
from identify.server.access import PROPOSALS, log
from identify.server.buckets import Buckets
from identify.server.json_http import CROWDED, Json, content_type, crowded, refused

AT_ONCE = 2  # pictures are decoded
FROM_ELSEWHERE = {
    "Access-Control-Allow-Origin": "*",
    "Access-Control-Allow-Methods": "GET, POST",
    "Access-Control-Allow-Headers": "Authorization, Content-Type",
    "Access-Control-Max-Age": "3600",
}
UNKNOWN = "This word is not known here, or no longer. Ask the keepers of the range for another one."
WORDS = {WAITING: "waiting", TAKEN: "taken", DECLINED: "declined"}


def routes(
    box: Box, now: Callable[[], datetime], clock: Callable[[], float] = time.monotonic
) -> list[Route]:
    """POST puts a proposal in, GET tells a follower what became of theirs."""
    puts = Buckets(limits.PROPOSING, clock)
    places = CapacityLimiter(AT_ONCE)

    def asks(request: Request) -> Follower | None:
        scheme, _, word = request.headers.get("authorization", "").partition(" ")
        known = scheme.lower() == "bearer" and 0 < len(word) <= limits.TOKEN
        return box.follower(word) if known else None

    async def answer(request: Request) -> Response:
        if request.method == "OPTIONS":
            return Response(status_code=204)
        follower = await to_thread.run_sync(asks, request)
        if follower is None:
            return refused(UNKNOWN, 401, {"WWW-Authenticate": "Bearer"})
        if request.method == "GET":
            return Json({"proposals": await to_thread.run_sync(theirs, follower)})
        return await put(request, follower)

    def theirs(follower: Follower) -> list[dict[str, object]]:
        return [
            {
                "id": proposal["id"],
                "time": proposal["time"],
                "state": WORDS[state],
                "said": proposal["said"],
            }
            for state in STATES
            for proposal in box.all(state)
            if proposal["by"] == follower["id"]
        ]

    async def put(request: Request, follower: Follower) -> Response:
        wait = puts.wait(follower["id"])
        if wait > 0:
            sentence = "That is a lot at once. Send the next one later."
            return refused(sentence, 429, {"Retry-After": str(int(wait) + 1)})
        if content_type(request) != "application/json":
            return refused("This must be sent as JSON: Content-Type: application/json.", 415)
        body = await request.body()
        if crowded(body):
            return refused(CROWDED, 413)
        made = await to_thread.run_sync(box.put_in, follower, body, now(), limiter=places)
        log.info("proposal: %s of %s", made, follower["id"])
        return Json({"id": made})

    async def from_elsewhere(request: Request) -> Response:
        try:
            response = await answer(request)
        except RefusedError as why:
            response = refused(str(why), 400)
        response.headers.update(FROM_ELSEWHERE)
        return response

    return [Route(PROPOSALS, from_elsewhere, methods=["GET", "POST", "OPTIONS"])]
