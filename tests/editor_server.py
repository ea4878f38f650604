"""The editor's app over folders of packs, for tests."""

from pathlib import Path

from starlette.types import ASGIApp

from identify.reference.editing_saving import opened
from identify.server.editor import EditorApp
from tests.conftest import Server


class EditorServer(Server):
    """What `python -m identify edit` serves, on a free port."""

    def __init__(self, folders: list[Path]) -> None:
        self.folders = folders
        super().__init__({})

    def app(self) -> ASGIApp:
        self.editor = EditorApp(opened(self.folders), self.url)
        return self.editor
