"""What a browser may delete is said in time, and its questions hold nothing up."""

from tests.conftest import Server
from tests.every_browser.driven import Phone
from tests.every_browser.steps import look_round, open_more
from tests.every_browser.test_smoke import WEEK

NEVER = """
  const never = { persist: () => new Promise(() => {}), persisted: () => Promise.resolve(false) };
  Object.defineProperty(navigator, "storage", { value: never, configurable: true });
"""


def test_a_browser_whose_question_is_not_answered_holds_up_no_tap(lent: Phone, app: Server):
    look_round(lent, app)
    lent.run(NEVER)
    lent.tap("More")
    lent.press(
        "document.querySelector('[data-goes=backup]') ?? "
        "[...document.querySelectorAll('button')].find((b) => /^Backup/.test(b.innerText))"
    )
    lent.tap("Ask the browser to keep it")
    lent.tap("Collection")
    lent.sees("100 pieces")
    assert lent.heading() == "Collection"


def test_the_backup_screen_tells_of_the_seven_days(lent: Phone, app: Server):
    """Only in Safari may it all be gone after a week."""
    lent.goto(app.url)
    open_more(lent, "Backup")
    lent.sees("In a private window everything is gone")
    told = lent.run("return document.body.innerText.includes(arguments[0])", WEEK)
    assert told is (lent.name == "webkit")
