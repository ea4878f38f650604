"""Paired devices and pairing over HTTP, backups, and what the server offers."""

from typing import Annotated

import msgspec
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from identify.keeping import backup as backups
from identify.keeping import devices
from identify.keeping.types import BackupLine
from identify.server.access import log, name_of
from identify.server.buckets import caller_of
from identify.server.context import Context
from identify.server.json_http import Json, sent
from identify.server.limits import TEXT
from identify.server.pairing import drawn, link

LOOPBACK = ("localhost", "127.0.0.1", "::1")
Text = Annotated[str, msgspec.Meta(max_length=TEXT)]


class PairIn(msgspec.Struct):
    """The secret of a link or a typed code, and what to call the device."""

    secret: Text = ""
    code: Text = ""
    name: Text = ""


class NameIn(msgspec.Struct):
    """What to call a device."""

    name: Annotated[str, msgspec.Meta(max_length=TEXT, pattern=r"\S")]


class Nothing(msgspec.Struct):
    """An object, whatever is in it."""


def offers(
    *,
    sync: bool = False,
    name: str = "",
    proposals: str = "",
) -> Route:
    """The route that says what this server can do besides serving the app; it needs no token.

    proposals: the origin of a box for proposals, with a slash, "" for none.
    """
    abilities = {"sync": sync, "name": name}
    if proposals:
        abilities["proposals"] = proposals

    async def answer(_: Request) -> Response:
        return Json(abilities)

    return Route("/api/offers", answer)


def routes(context: Context) -> list[Route]:
    """Pairing, the list of devices, and backups."""

    async def pair(request: Request) -> Response:
        pairing = await sent(request, PairIn)
        caller = caller_of(request.scope)
        how = "link" if pairing.secret else "code"
        try:
            paired = await context.in_thread(
                devices.pair,
                context.store,
                context.now(),
                pairing.secret,
                pairing.code,
                pairing.name,
            )
        except devices.NotPairedError:
            log.warning("refused: pairing by a %s that is not right, %s", how, caller)
            raise
        log.warning("paired: %s by a %s, %s", paired["device"], how, caller)
        return Json(paired)

    async def all_(request: Request) -> Response:
        here = request.scope["device"]["id"]
        every = await context.in_thread(devices.all_devices, context.store)
        return Json({"devices": [device | {"here": device["id"] == here} for device in every]})

    async def rename(request: Request) -> Response:
        body = await sent(request, NameIn)
        await context.in_thread(devices.rename, context.store, request.path_params["id"], body.name)
        return Json({})

    async def revoke(request: Request) -> Response:
        await sent(request, Nothing)
        ident = request.path_params["id"]
        await context.in_thread(devices.revoke, context.store, ident, context.now())
        log.warning("unpaired: %s by %s", ascii(ident[:20]), request.scope["device"]["id"])
        return Json({})

    async def pairing(request: Request) -> Response:
        await sent(request, Nothing)
        begun = await context.in_thread(devices.new_pairing, context.store, context.now())
        log.warning("pairing begun by %s", request.scope["device"]["id"])
        url = link(_address(request, context.public), begun["secret"])
        return Json({"url": url, "code": begun["code"], "until": begun["until"], "svg": drawn(url)})

    async def make_backup(request: Request) -> Response:
        await sent(request, Nothing)
        return Json(
            await context.in_thread(backups.backup, context.store, context.backups, context.now())
        )

    async def all_backups(_: Request) -> Response:
        every: list[BackupLine] = await context.in_thread(backups.all_backups, context.backups)
        return Json({"backups": every})

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
