"""The compiled engine gives in each browser what Python gives: recorded sessions, step by step."""

from typing import Any

import orjson

from identify import phone as phone_files
from identify.core.belief import prepare
from identify.core.session import new_session
from tests.browser.engines import ASKED_ONLY, PAGE, TOGETHER, agree
from tests.browser.test_two_engines import ANY_YEARS, BOUND, FREE, RECORDED, prefixes
from tests.conftest import serving
from tests.every_browser.driven import Phone

SCRIPT = f"""
window.begun = ({TOGETHER.strip()})();
window.loadText = (text) => load(JSON.parse(text));
window.askText = (text) => JSON.stringify(ask(JSON.parse(text)));
"""


class Asked:
    """A page for `agree`, which asks it by `evaluate`.

    What goes there and back is text, read by the page itself: a driver on the way may read a
    number with another last bit, and an object that it makes is not one of the page's own.
    """

    def __init__(self, phone: Phone) -> None:
        self.phone = phone

    def evaluate(self, script: str, given: Any) -> Any:
        text = orjson.dumps(given).decode()
        if "load(" in script:
            return self.phone.run_later("window.loadText(arguments[0])", text)
        return orjson.loads(self.phone.run_later("window.askText(arguments[0])", text))


def test_recorded_sessions(lent: Phone, site: dict[str, bytes]):
    pack = orjson.loads(site["packs/pellmarsh.json"])
    fresh = new_session(prepare(pack))
    asked: list[list[Any]] = []
    for session in [fresh | each for each in prefixes(orjson.loads(RECORDED.read_bytes()))]:
        asked += [
            ["assess", session],
            ["judge", session, ANY_YEARS | {"first": 1956, "last": 1959}],
            ["seen_years", session],
        ]
    asked += [["find", item["number"], 8] for item in pack["items"]]
    page, script = PAGE + b"<script src=asked.js></script>", SCRIPT.encode()
    engine = phone_files.engine_module(ASKED_ONLY).encode()
    with serving({"index.html": page, "engine.js": engine, "asked.js": script}) as server:
        lent.goto(server.url)
        lent.until("window.begun !== undefined")
        lent.run_later("window.begun")
        agree(Asked(lent), pack, BOUND, FREE, asked)  # type: ignore[arg-type]
