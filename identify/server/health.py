"""How the server is: for a watching program, for the owner's browser, and for paired devices."""

import html
import ipaddress
from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Any, NamedTuple

from starlette.requests import Request
from starlette.responses import HTMLResponse, Response
from starlette.routing import Route

from identify.keeping.standing import BACKUP_DAYS, Standing, standing
from identify.server.context import Context
from identify.server.json_http import Json, refused
from identify.server.tls import Tls

HEALTH = "/api/health"
PAGE = "/health"
SOON = timedelta(days=14)  # before a certificate that nobody here renews ends
# before an authority of one's own ends: each phone has to be given another one by hand
AUTHORITY_SOON = timedelta(days=90)

HERE_ONLY = "This is shown on the server's own machine only."


class Ends(NamedTuple):
    """What ends soon and is renewed by nobody here: a certificate from elsewhere, the authority of
    one's own; None for what does not.
    """

    certificate: datetime | None = None
    authority: datetime | None = None


NEVER = Ends()


def routes(context: Context, tls: Tls | None) -> list[Route]:
    """/api/health and /health for this machine only; /api/standing for paired devices."""

    def ends() -> Ends:
        if tls is None:
            return NEVER
        now, certificate, own = context.now(), tls.until(), tls.authority_until()
        return Ends(
            certificate if own is None and certificate - now <= SOON else None,
            own if own is not None and own - now <= AUTHORITY_SOON else None,
        )

    async def asked() -> tuple[Standing, Ends]:
        now = context.now()
        stands = await context.in_thread(standing, context.store, context.backups, now)
        return stands, await context.in_thread(ends)

    def here_only(answer: Callable[[Request], Any]) -> Callable[[Request], Any]:
        async def checked(request: Request) -> Response:
            if not _from_here(request):
                return refused(HERE_ONLY, 404)
            response: Response = await answer(request)
            return response

        return checked

    async def health(_: Request) -> Response:
        stands, end = await asked()
        well = stands["well"] and end == NEVER
        return Json({**stands, "well": well, **_days(end)}, 200 if well else 503)

    async def page(_: Request) -> Response:
        stands, end = await asked()
        rows = "".join(f"<li>{html.escape(line)}</li>" for line in in_words(stands, end))
        text = (
            '<!doctype html><html lang="en"><meta charset="utf-8"><title>The server</title>'
            f"<h1>How your server is</h1><ul>{rows}</ul></html>"
        )
        return HTMLResponse(text, headers={"Cache-Control": "no-store"})

    async def for_devices(_: Request) -> Response:
        stands, end = await asked()
        public = {key: stands[key] for key in ("backup", "overdue", "full", "away")}
        return Json({**public, **_days(end)})

    return [
        Route(HEALTH, here_only(health)),
        Route(PAGE, here_only(page)),
        Route("/api/standing", for_devices),
    ]


def in_words(stands: Standing, ends: Ends) -> list[str]:
    """The same for the owner, a sentence each."""
    made = stands["backup"][:10]
    left = f"{stands['free'] / 2**30:.1f} GB are left on its disk"
    return [
        "Changes can be saved."
        if stands["writable"]
        else "Nothing can be saved. Check the disk, and who may write in the folder.",
        f"The last backup was made and tried out on {made}."
        if made
        else "No backup has been made yet.",
        *(
            [f"No backup has been tried out for {BACKUP_DAYS} days. Look in the log for why."]
            if stands["overdue"] and made
            else []
        ),
        f"{left}: photos wait until there is more, other changes are still saved."
        if stands["full"]
        else f"{left}.",
        *([stands["away"]] if stands["away"] else []),
        *(
            [f"The certificate expires on {_day(ends.certificate)}. Renew it before then."]
            if ends.certificate
            else []
        ),
        *(
            [
                f"The authority that you made expires on {_day(ends.authority)}. Before then set "
                "the folder “certificate” in the data aside, make a new certificate, and put its "
                "authority on each phone, as at first."
            ]
            if ends.authority
            else []
        ),
        *(
            [
                f"Folders left by runs that were cut off: {stands['left_over']}. The server "
                "clears them an hour later."
            ]
            if stands["left_over"]
            else []
        ),
    ]


def _days(ends: Ends) -> dict[str, str]:
    return {"certificate": _day(ends.certificate), "authority": _day(ends.authority)}


def _day(moment: datetime | None) -> str:
    return "" if moment is None else f"{moment:%Y-%m-%d}"


def _from_here(request: Request) -> bool:
    """Whether a program on this machine asks, and no proxy for somebody else."""
    if request.client is None or "x-forwarded-for" in request.headers:
        return False
    try:
        return ipaddress.ip_address(request.client.host).is_loopback
    except ValueError:
        return False
