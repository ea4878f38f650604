"""What a browser may delete is said in time, and its questions hold nothing up."""

from tests.conftest import Server
from tests.every_browser.driven import Phone
from tests.every_browser.steps import look_round

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


def test_the_light_on_the_settings_follows_the_button(lent: Phone, app: Server):
    lent.goto(app.url)
    lent.tap("Settings")
    lent.until("document.querySelector('input[name=light]')")
    light = lent.run("return document.documentElement.dataset.light")
    lent.press("document.getElementById('light')")
    lent.until("document.documentElement.dataset.light !== arguments[0]", light)
    lent.until(
        "document.querySelector('input[name=light]:checked').value"
        " === document.documentElement.dataset.light"
    )


def test_words_are_broken_nowhere(lent: Phone, app: Server):
    look_round(lent, app)
    lent.tap("Identify")
    lent.tap("Coach")
    lent.until("document.querySelector('.choices .states button')")
    assert lent.run(
        "return [...document.querySelectorAll('#screen *')]"
        ".every((node) => getComputedStyle(node).hyphens !== 'auto')"
    )
