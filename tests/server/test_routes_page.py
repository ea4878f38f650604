"""Every address that is answered stands in a README.md of its area, and no other one does."""

import re
from pathlib import Path

from starlette.routing import Route

from identify.keeping.proposals import Box
from identify.server import proposals

AREAS = Path(__file__).resolve().parent.parent.parent / "identify"
WRITTEN = re.compile(r"\b(GET|POST|PUT) +(/api/[\w/{}<>-]+)")
ANYTHING = "/api/{path:path}"  # what no other route answers


def plain(method: str, path: str) -> tuple[str, str]:
    """A method and a path with a star for each of its parameters."""
    return method, re.sub(r"[{<]\w+[}>]", "*", path)


def test_the_pages_name_every_address_and_no_other(own):
    boxed = proposals.routes(Box(own.data / "box"), own.times.now)
    every = [*own.app.routes, *boxed]
    routes = [route for route in every if isinstance(route, Route)]
    answered = {
        plain(method, route.path)
        for route in routes
        if route.path.startswith("/api/") and route.path != ANYTHING
        for method in (route.methods or set()) - {"HEAD", "OPTIONS"}
    }
    written = {
        plain(*found)
        for page in AREAS.rglob("README.md")
        for found in WRITTEN.findall(page.read_text("utf-8"))
    }
    assert written == answered
