"""Packs edited in the app: routes over folders on this machine, and the app that shows them.

identify/reference/README.md says what each route takes and gives.
"""

from collections.abc import Callable, Sequence
from pathlib import Path
from threading import Lock
from typing import Any

import msgspec
from starlette.applications import Starlette
from starlette.concurrency import run_in_threadpool
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route
from starlette.types import Receive, Scope, Send

from identify import phone
from identify.reference.editing import Edit
from identify.reference.editing_csv import EditError
from identify.reference.editing_saving import ChangedError, PackFolder
from identify.reference.loading import load_pack
from identify.reference.mistakes import PackError
from identify.reference.types import EditedPack
from identify.server import devices
from identify.server.access import Door, LastResort
from identify.server.app import create_app
from identify.server.bodies import Bodies
from identify.server.json_http import Json, refused, sent
from identify.server.limits import EDITS_BYTES


class EditsIn(msgspec.Struct):
    """Edits of the folder as it was in this version."""

    version: str
    edits: list[Edit]


def routes(folders: Sequence[PackFolder], saved: Callable[[], None] | None = None) -> list[Route]:
    """The routes under /api/editor/. `saved` is called after a folder was written."""
    by_id = {folder.id: folder for folder in folders}

    def answering(
        act: Callable[[PackFolder, EditsIn], Any], takes: bool
    ) -> Callable[[Request], Any]:
        async def answer(request: Request) -> Response:
            folder = by_id.get(request.path_params["pack"])
            if folder is None:
                return refused("There is no pack of that name to edit here.", 404)
            given = await sent(request, EditsIn) if takes else EditsIn("", [])
            try:
                return Json(await run_in_threadpool(act, folder, given))
            except ChangedError as error:
                return refused(str(error), 409, changed=True)
            except EditError as error:
                return refused(str(error), 409)
            except OSError as error:
                why = (error.strerror or "no reason given").lower()
                return refused(f"The files cannot be read or written: {why}.", 503)

        return answer

    def read(folder: PackFolder, _: EditsIn) -> Any:
        return folder.read()

    def check(folder: PackFolder, given: EditsIn) -> Any:
        return {"mistakes": folder.check(given.version, given.edits)}

    def save(folder: PackFolder, given: EditsIn) -> Any:
        mistakes = folder.save(given.version, given.edits)
        return {"mistakes": mistakes, **({} if mistakes else _done(folder))}

    def undo(folder: PackFolder, _: EditsIn) -> Any:
        folder.undo()
        return _done(folder)

    def _done(folder: PackFolder) -> dict[str, EditedPack]:
        if saved is not None:
            saved()
        return {"pack": folder.read()}

    async def listed(_: Request) -> Response:
        return Json({"packs": [{"id": each.id, "folder": each.folder.name} for each in folders]})

    at = "/api/editor/packs"
    return [
        Route(at, listed, methods=["GET"]),
        Route(f"{at}/{{pack}}", answering(read, False), methods=["GET"]),
        Route(f"{at}/{{pack}}/check", answering(check, True), methods=["POST"]),
        Route(f"{at}/{{pack}}/save", answering(save, True), methods=["POST"]),
        Route(f"{at}/{{pack}}/undo", answering(undo, False), methods=["POST"]),
    ]


class EditorApp:
    """The app with the packs of some folders, made again after each save.

    A pack with mistakes is left out until it has none; where none is left, the demo packs stand in,
    so that the app opens at all. `beside`: compiled packs that are shown and not edited. ASGI.
    """

    def __init__(
        self, folders: Sequence[PackFolder], public: str, beside: Sequence[Path] = ()
    ) -> None:
        self.folders = folders
        self.beside = beside
        self.public = public
        self.left_out: list[PackError] = []
        self.lock = Lock()
        self.renew()

    def renew(self) -> None:
        """Compile the packs, and serve the app with them from now on."""
        with self.lock:
            self._renew()

    def _renew(self) -> None:
        self.left_out = []
        packs = [*(each.folder for each in self.folders), *self.beside]
        try:
            files = phone.site(packs)
        except PackError:
            files = phone.site([path for path in packs if self._sound(path)] or phone.demo_packs())
        self.app = self._made(files)

    def _sound(self, path: Path) -> bool:
        """Whether a pack can be compiled; if not, it is noted."""
        try:
            load_pack(path)
        except PackError as error:
            self.left_out.append(error)
            return False
        return True

    def _made(self, files: dict[str, bytes]) -> Starlette:
        offers = devices.offers(sync=False, exchange=False, editor=True, name="")
        return create_app(
            files,
            [offers, *routes(self.folders, self.renew)],
            middleware=[
                Middleware(LastResort),
                Middleware(Door, hosts=devices.LOOPBACK, public=self.public),
                Middleware(Bodies, most=lambda _: EDITS_BYTES),
            ],
        )

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        await self.app(scope, receive, send)
