"""What a browser may delete is said in time, and its questions hold nothing up."""

from tests.conftest import Server
from tests.every_browser.driven import Phone
from tests.every_browser.test_smoke import look_round

NEVER = """
  const never = { persist: () => new Promise(() => {}), persisted: () => Promise.resolve(false) };
  Object.defineProperty(navigator, "storage", { value: never, configurable: true });
"""


def test_a_browser_whose_question_is_not_answered_holds_up_no_tap(phone: Phone, app: Server):
    look_round(phone, app)
    phone.run(NEVER)
    phone.tap("More")
    phone.press(
        phone.until(
            "document.querySelector('[data-goes=backup]') ?? "
            "[...document.querySelectorAll('button')].find((b) => /^Backup/.test(b.innerText))"
        )
    )
    phone.tap("Ask the browser to keep it")
    phone.tap("Collection")
    phone.sees("100 pieces")
    assert phone.heading() == "Collection"


def test_the_light_on_the_settings_follows_the_button(phone: Phone, app: Server):
    phone.goto(app.url)
    phone.tap("Settings")
    phone.until("document.querySelector('input[name=light]')")
    light = phone.run("return document.documentElement.dataset.light")
    phone.press(phone.run("return document.getElementById('light')"))
    phone.until("document.documentElement.dataset.light !== arguments[0]", light)
    phone.until(
        "document.querySelector('input[name=light]:checked').value"
        " === document.documentElement.dataset.light"
    )


def test_words_are_broken_nowhere(phone: Phone, app: Server):
    look_round(phone, app)
    phone.tap("Identify")
    phone.tap("Coach")
    phone.until("document.querySelector('.choices .states button')")
    assert phone.run(
        "return [...document.querySelectorAll('#screen *')]"
        ".every((node) => getComputedStyle(node).hyphens !== 'auto')"
    )
