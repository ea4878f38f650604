"""From the first look to a piece in the collection, kept and opened again with no server."""

from tests.conftest import Server
from tests.every_browser.driven import Phone
from tests.every_browser.steps import STATES, answer, identify, look_round

WEEK = "Safari deletes what a page has stored after seven days without use"


def test_a_piece_is_identified_kept_and_there_again_offline_from_cold(phone: Phone, app: Server):
    look_round(phone, app)
    assert phone.run("return innerWidth") == 360
    named = identify(phone, "Coach")
    assert named
    phone.tap("Add to collection")
    phone.sees("It is in your collection.")
    told = phone.run("return document.body.innerText.includes(arguments[0])", WEEK)
    assert told is (phone.name == "webkit")  # only there may it all be gone after a week
    assert phone.reported() == []
    app.stop()
    phone.end()
    phone.open()
    phone.goto(app.url)
    phone.tap("Collection")
    phone.sees("101 pieces")
    assert phone.reported() == []


def test_a_killed_browser_has_lost_nothing(phone: Phone, app: Server):
    look_round(phone, app)
    phone.tap("Identify")
    phone.tap("Coach")
    phone.until(STATES)
    answer(phone)
    asked = phone.heading()
    phone.kill()
    phone.open()
    phone.goto(app.url)
    phone.until("document.querySelector('h1')?.innerText === arguments[0]", asked)
    phone.tap("More", ".reach button")
    phone.tap("Next piece", "dialog button")
    phone.tap("Collection")
    phone.sees("100 pieces")
    assert phone.reported() == []
