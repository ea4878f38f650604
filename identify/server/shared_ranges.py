"""Ranges of one's own that the collector lets others follow, at an address of the own server.

Whoever has the address reads the range, and nothing else. The address is the id of its record,
which is random (82 bits): who was not given it does not find it. Of a range that was taken in from
a file it is made of what that says, so who has the same file could. It answers as long as the
range's switch on a paired device says so.
"""

import hashlib

from anyio import CapacityLimiter, to_thread
from starlette.requests import Request
from starlette.responses import PlainTextResponse, Response
from starlette.routing import Route

from identify.keeping.shared_ranges import SharedRanges
from identify.keeping.store import Store

AT_ONCE = 1  # the others wait, and the store stays free for the devices
FOR_ALL = {"Access-Control-Allow-Origin": "*", "Cache-Control": "no-cache"}


def routes(store: Store) -> list[Route]:
    """The one address under which every shared range is."""
    shared = SharedRanges(store)
    places = CapacityLimiter(AT_ONCE)

    async def answer(request: Request) -> Response:
        text = await to_thread.run_sync(shared.text, request.path_params["ident"], limiter=places)
        if text is None:
            sentence = "There is no range at this address, or no longer."
            return PlainTextResponse(sentence, 404, FOR_ALL)
        headers = FOR_ALL | {"ETag": f'"{hashlib.sha256(text).hexdigest()[:32]}"'}
        if request.headers.get("if-none-match", "").removeprefix("W/") == headers["ETag"]:
            return Response(status_code=304, headers=headers)
        return Response(text, media_type="application/json", headers=headers)

    return [Route("/ranges/{ident}.json", answer)]
