"""The compiled engine gives in each browser what Python gives: recorded sessions, step by step."""

from pathlib import Path
from typing import Any

import orjson

from identify import phone as phone_files
from identify.core.belief import prepare
from identify.core.session import new_session
from tests.browser.engines import ASKED_ONLY, PAGE, TOGETHER, agree
from tests.browser.test_two_engines import ANY_YEARS, BOUND, FREE, RECORDED, prefixes
from tests.conftest import serving
from tests.every_browser.driven import Phone


class Asked:
    """A page for `agree`, which asks it by `evaluate`."""

    def __init__(self, phone: Phone) -> None:
        self.phone = phone

    def evaluate(self, script: str, given: Any = None) -> Any:
        """As texts: a driver on the way may read a number with another last bit."""
        text = orjson.dumps(given).decode()
        call = f"Promise.resolve(({script})(JSON.parse(arguments[0]))).then(x => JSON.stringify(x))"
        answer = self.phone.run_later(call, text)
        return None if answer is None else orjson.loads(answer)


def test_recorded_sessions(phone: Phone, site: dict[str, bytes], tmp_path: Path):
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
    engine = phone_files.engine_module(ASKED_ONLY).encode()
    with serving({"index.html": PAGE, "engine.js": engine}) as server:
        phone.goto(server.url)
        page = Asked(phone)
        page.evaluate(TOGETHER)
        agree(page, pack, BOUND, FREE, asked)  # type: ignore[arg-type]
