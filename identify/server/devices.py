"""Paired devices and pairing over HTTP, backups, and what the server offers."""

from typing import Annotated, Any

import msgspec
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from identify.keeping import backup as backups
from identify.keeping import devices
from identify.server.access import log, name_of
from identify.server.answers import Json, sent
from identify.server.limits import caller_of
from identify.server.pairing import drawn, link
from identify.server.work import Work

LOOPBACK = ("localhost", "127.0.0.1", "::1")
Text = Annotated[str, msgspec.Meta(max_length=200)]


class PairIn(msgspec.Struct):
    """The secret of a link or a typed code, and what to call the device."""

    secret: Text = ""
    code: Text = ""
    name: Text = ""


class NameIn(msgspec.Struct):
    """What to call a device."""

    name: Annotated[str, msgspec.Meta(max_length=200, pattern=r"\S")]


class Nothing(msgspec.Struct):
    """An object, whatever is in it."""


def offers(
    *, sync: bool = False, exchange: bool = False, editor: bool = False, name: str = ""
) -> Route:
    """The route that says what this server can do besides serving the app; it needs no token."""
    found = {"sync": sync, "exchange": exchange, "editor": editor, "name": name}

    async def answer(_: Request) -> Response:
        return Json(found)

    return Route("/api/offers", answer)


def routes(work: Work) -> list[Route]:
    """Pairing, the list of devices, and backups."""

    async def pair(request: Request) -> Response:
        told = await sent(request, PairIn)
        caller = caller_of(request.scope)
        how = "link" if told.secret else "code"
        try:
            found = await work.do(
                devices.pair, work.store, work.now(), told.secret, told.code, told.name
            )
        except devices.NotPaired:
            log.warning("refused: pairing by a %s that is not right, %s", how, caller)
            raise
        log.warning("paired: %s by a %s, %s", found["device"], how, caller)
        return Json(found)

    async def all_(request: Request) -> Response:
        here = request.scope["device"]["id"]
        found = await work.do(devices.all_devices, work.store)
        return Json({"devices": [one | {"here": one["id"] == here} for one in found]})

    async def rename(request: Request) -> Response:
        told = await sent(request, NameIn)
        await work.do(devices.rename, work.store, request.path_params["id"], told.name)
        return Json({})

    async def revoke(request: Request) -> Response:
        await sent(request, Nothing)
        ident = request.path_params["id"]
        await work.do(devices.revoke, work.store, ident, work.now())
        log.warning("taken off: %s by %s", ascii(ident[:20]), request.scope["device"]["id"])
        return Json({})

    async def pairing(request: Request) -> Response:
        await sent(request, Nothing)
        found = await work.do(devices.new_pairing, work.store, work.now())
        log.warning("pairing begun by %s", request.scope["device"]["id"])
        url = link(_address(request, work.public), found["secret"])
        return Json({"url": url, "code": found["code"], "until": found["until"], "svg": drawn(url)})

    async def make_backup(request: Request) -> Response:
        await sent(request, Nothing)
        return Json(await work.do(backups.backup, work.store, work.backups, work.now()))

    async def all_backups(_: Request) -> Response:
        found: list[dict[str, Any]] = await work.do(backups.all_backups, work.backups)
        return Json({"backups": found})

    return [
        Route("/api/pair", pair, methods=["POST"]),
        Route("/api/devices", all_),
        Route("/api/devices/{id}", rename, methods=["POST"]),
        Route("/api/devices/{id}/revoke", revoke, methods=["POST"]),
        Route("/api/pairing", pairing, methods=["POST"]),
        Route("/api/backup", make_backup, methods=["POST"]),
        Route("/api/backups", all_backups),
    ]


def _address(request: Request, public: str) -> str:
    """The address for another device: the one this device uses, unless only this machine has it."""
    host = request.headers["host"].lower()
    if name_of(host) in LOOPBACK:
        return public
    scheme = public.partition(":")[0]
    return f"{scheme}://{host}/"
