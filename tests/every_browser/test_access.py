"""What axe finds, with the rules that it leaves out by default, on the screens that matter most."""

from pathlib import Path
from typing import Any

import axe_playwright_python

from tests.browser.phone import COLOURS, STRICT
from tests.conftest import Server
from tests.every_browser.driven import Phone
from tests.every_browser.steps import add_piece, begin, identify, look_round, open_more

AXE = Path(axe_playwright_python.__file__).with_name("axe.min.js").read_text()
# bars that stay in place lie still for axe: what they happen to cover can be scrolled to
STILL = """
  for (const bar of document.querySelectorAll(".unsure, .finish, #notices"))
    bar.style.position = arguments[0];
"""
FOUND = """axe.run(document, arguments[0])
  .then(({ violations }) => violations.flatMap(({ id, nodes }) => nodes
    .map(({ html }) => `${id}: ${html.slice(0, 120)}`)))"""


LIGHT = "document.documentElement.dataset.light = arguments[0]"


def violations(phone: Phone, rules: dict[str, Any] = STRICT) -> list[str]:
    phone.run(STILL, "static")
    phone.run("if (!window.axe) { " + AXE + "; window.axe = axe; }")
    found = list(phone.run_later(FOUND, rules))
    phone.run(STILL, "")  # below a list that grows as it is scrolled, a tap would miss the bar
    return found


def test_axe_finds_nothing(lent: Phone, app: Server):
    """By day, and of the colours in the dark, which changes nothing else."""
    look_round(lent, app)
    for name, go in {
        "the collection": lambda: lent.place("Collection"),
        "a piece": lambda: add_piece(lent, "P 24"),
        "the notebook": lambda: lent.place("Notebook"),
        "wants": lambda: lent.place("Wants"),
        "backup": lambda: open_more(lent, "Backup"),
        "settings": lambda: lent.tap("Settings"),
        "the start": lambda: lent.place("Identify"),
        "a question": lambda: begin(lent),
    }.items():
        go()
        assert violations(lent) == [], name
        lent.run(LIGHT, "dark")
        assert violations(lent, COLOURS) == [], f"{name} in the dark"
        lent.run(LIGHT, "day")
    lent.tap("Switch to dark")
    assert violations(lent) == []


def test_axe_finds_nothing_on_an_answer(lent: Phone, app: Server):
    look_round(lent, app)
    identify(lent, "Wagon")
    assert violations(lent) == []
