"""From the first look to a piece in the collection, kept and opened again with no server."""

from tests.conftest import Server
from tests.every_browser.driven import Phone

WEEK = "Safari deletes what a page has stored after seven days without use"
STATES = "document.querySelector('.choices .states button')"


def look_round(phone: Phone, app: Server) -> None:
    """Open the app, and take the demo collection."""
    phone.goto(app.url)
    phone.until("navigator.serviceWorker.controller !== null")
    phone.tap("Look round with the demo")
    phone.sees("100 pieces")


def answer(phone: Phone) -> None:
    """Tap the first drawing, until the next screen is there.

    A tap that comes while the step before is still being stored is not taken: people read first.
    """
    before = phone.heading()
    for _ in range(40):
        state = phone.run(f"return {STATES}")
        if phone.heading() == before and state:
            phone.press(state)
        if phone.soon("document.querySelector('h1').innerText !== arguments[0]", before):
            return
    raise AssertionError(f'the question "{before}" stays')


def identify(phone: Phone, kind: str) -> str:
    """Answer each question with its first drawing; the answer's heading."""
    phone.tap("Identify")
    phone.tap(kind)
    answers = 0
    phone.until(STATES)
    while phone.run(f"return {STATES}"):
        answer(phone)
        answers += 1
        assert answers < 25
    assert answers >= 4
    return phone.heading()


def test_a_piece_is_identified_kept_and_there_again_offline_from_cold(phone: Phone, app: Server):
    look_round(phone, app)
    assert phone.run("return innerWidth") == 360
    named = identify(phone, "Coach")
    assert named
    phone.tap("Add to the collection")
    phone.sees("It is in the collection.")
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
    phone.tap("Start again")
    phone.tap("Collection")
    phone.sees("100 pieces")
    assert phone.reported() == []
