"""What looked wrong in one browser and right in another."""

from tests.conftest import Server
from tests.every_browser.driven import Phone
from tests.every_browser.steps import begin, look_round


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


def test_a_sheet_opened_by_a_tap_has_no_ring(lent: Phone, app: Server):
    """The focus is on its heading, only to say where reading begins."""
    lent.goto(app.url)
    begin(lent)
    lent.tap("More", ".reach button")
    lent.until("document.activeElement.id === 'sheet-title'")
    assert lent.run("return getComputedStyle(document.activeElement).outlineStyle") == "none"


def test_nothing_is_loaded_ahead_in_vain(lent: Phone, app: Server):
    """What the page asks for ahead is what it then uses, and is not fetched a second time."""
    lent.goto(app.url)
    lent.until("document.querySelector('h1')")
    ahead = lent.run(
        "return [...document.querySelectorAll('link[rel$=preload]')].map((one) => one.href)"
    )
    assert ahead
    counted = "arguments[0].map((url) => performance.getEntriesByName(url, 'resource').length)"
    lent.until(f"{counted}.every((count) => count > 0)", ahead)  # the letters come last
    lent.until("document.fonts.status === 'loaded'")
    assert set(lent.run(f"return {counted}", ahead)) == {1}
