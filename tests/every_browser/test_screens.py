"""The sizes of small phones, on their side, with large text, with the keyboard up."""

import time
from collections.abc import Iterator
from typing import Any

import pytest
from selenium.webdriver.common.keys import Keys

from tests.conftest import Server
from tests.every_browser.driven import Phone
from tests.every_browser.openers import HEIGHT, WIDTH
from tests.every_browser.steps import (
    GOES_ON,
    SELLER,
    add_piece,
    answer,
    begin,
    identify,
    labelled,
    look_round,
)

SIZES = ((320, 568), (375, 667), (568, 320), (844, 390), (932, 430))
# what would have to be scrolled sideways; the parts of a drawing cannot be
TOO_WIDE = """
  return [document.scrollingElement, ...document.querySelectorAll("dialog[open], main *")]
    .filter((e) => !e.ownerSVGElement && e.scrollWidth > e.clientWidth + 1
      && getComputedStyle(e).display !== "inline"
      && !["hidden", "clip"].includes(getComputedStyle(e).overflowX) && e.clientWidth > 0)
    .map((e) => `${e.tagName} ${e.className}: ${e.scrollWidth} in ${e.clientWidth}`)"""
# buttons of the bars that a finger does not reach, though they are scrolled to, and what it meets
UNREACHED = """
  return [...document.querySelectorAll(arguments[0])]
    .filter((button) => button.checkVisibility()).map(unreached).filter((told) => told !== "");
  function unreached(button) {
    button.scrollIntoView({ block: "nearest" });
    const { left, top, width, height } = button.getBoundingClientRect();
    const met = document.elementFromPoint(left + width / 2, top + height / 2);
    const name = button.getAttribute("aria-label") ?? button.textContent;
    return button.contains(met) ? "" : `${name} at ${left} ${top}, ${width} x ${height}: `
      + `${met?.tagName} ${met?.className}`;
  }"""
# of a long list, more is drawn as it is scrolled
TO_THE_END = """
  const height = document.documentElement.scrollHeight;
  window.scrollTo(0, height);
  return height"""
# the bar at the bottom is there without scrolling, but on a screen too low for it
STAYS = """
  window.scrollTo(0, 0);
  const { bottom } = document.getElementById("places").getBoundingClientRect();
  return bottom <= innerHeight + 1 ? "" : `the bar ends at ${bottom} of ${innerHeight}`"""
SETTLED = 5  # seconds
# the most that a row of the time line may say of its years
LONGEST = """
  for (const one of document.querySelectorAll(".timeline .when"))
    one.textContent = "(1960 or earlier) ";
"""
# below the end of the page is room for the bar, and no more
KEYBOARD_GONE = (
    "getComputedStyle(document.body).paddingBottom"
    " === document.getElementById('places').offsetHeight + 'px'"
)
LOW_BARS = "#places button, .unsure button"
LARGE = "document.documentElement.style.fontSize = arguments[0] ? '36px' : ''"
# a field whose middle is not in what is seen, or lies under a bar
HIDDEN = """
  const field = document.activeElement;
  const { left, top, width, height } = field.getBoundingClientRect();
  const view = window.visualViewport;
  const middle = top + Math.min(height, 40) / 2;
  if (middle < view.offsetTop || middle > view.offsetTop + view.height) return "out of sight";
  const met = document.elementFromPoint(left + width / 2, middle);
  return (field.closest(".field, label") ?? field).contains(met) ? "" : met.outerHTML;
"""
# the app has keys of its own for this field, and the device’s stay away
OWN_KEYS = """
  return document.querySelector(".keypad") !== null && arguments[0].inputMode === "none"
"""
# a line more in the head
NO_SIGNAL = """
  Object.defineProperty(navigator, "onLine", { value: false, configurable: true });
  dispatchEvent(new Event("offline"));
"""
TOUCHED = "return matchMedia('(pointer: coarse)').matches"
KEYBOARD = """
  const view = window.visualViewport;
  const high = arguments[0];
  Object.defineProperty(view, "height", { get: () => innerHeight - high, configurable: true });
  view.dispatchEvent(new Event("resize"));
"""
# what is seen is moved down over the page
MOVED = """
  const view = window.visualViewport;
  const by = arguments[0];
  Object.defineProperty(view, "offsetTop", { get: () => by, configurable: true });
  view.dispatchEvent(new Event("scroll"));
"""
# a sheet that does not lie right above the keyboard, or begins above what is seen
OFF = """
  const { top, bottom } = document.querySelector("dialog[open]").getBoundingClientRect();
  const view = window.visualViewport;
  const end = view.offsetTop + view.height;
  return Math.abs(bottom - end) <= 1 && top >= view.offsetTop - 1
    ? "" : `${top} to ${bottom}, seen ${view.offsetTop} to ${end}`;
"""
# what can be tapped, though scrolled to, that reaches under a notch or the home indicator
UNDER = """
  const [left, right, bottom] = arguments;
  return [...document.querySelectorAll("button, input, select, textarea, summary, a, .file")]
    .filter((one) => one.checkVisibility({ visibilityProperty: true })
      && !one.matches(".unseen") && (!document.querySelector("dialog[open]")
      || one.closest("dialog")))
    .map((one) => {
      one.scrollIntoView({ block: "nearest" });
      return [one, one.getBoundingClientRect()];
    })
    .filter(([, box]) => box.left < left || box.right > innerWidth - right
      || box.bottom > innerHeight - bottom)
    .map(([one, box]) => `${one.ariaLabel ?? one.innerText}: ${box.left} to ${box.right}, `
      + `ends at ${box.bottom}`);
"""


def to_the_end(phone: Phone) -> None:
    heights = [0]
    while len(set(heights[-4:])) > 1 or len(heights) < 4:
        heights.append(phone.run(TO_THE_END))


def amiss(phone: Phone, script: str, *given: Any) -> list[str] | str:
    """What is still wrong once the screen has settled: WebKit resizes in steps."""
    until = time.monotonic() + SETTLED
    while (found := phone.run(script, *given)) and time.monotonic() < until:
        time.sleep(0.05)
    return found  # type: ignore[no-any-return]


def check(phone: Phone, what: str) -> None:
    for width, height in SIZES:
        phone.resize(width, height)
        for large in (False, True):
            phone.run(LARGE, large)
            where = f"{what} at {width} x {height}{', large text' if large else ''}"
            assert amiss(phone, TOO_WIDE) == [], where
            assert large or height < 468 or amiss(phone, STAYS) == "", where
            assert amiss(phone, UNREACHED, "header button") == [], where
            to_the_end(phone)
            assert amiss(phone, UNREACHED, LOW_BARS) == [], where
    phone.run(LARGE, False)
    phone.resize(WIDTH, HEIGHT)


def test_bars_are_in_reach_and_nothing_is_wider_than_the_screen(lent: Phone, app: Server):
    look_round(lent, app)
    check(lent, "the collection")
    begin(lent)
    check(lent, "a question")
    lent.run(NO_SIGNAL)
    lent.sees("No signal: everything still works")
    check(lent, "a question without a signal")
    lent.tap("More", ".reach button")
    lent.tap("Next piece", "dialog button")
    lent.sees("What have you got?")
    lent.place("Collection")
    add_piece(lent, "P 24")
    check(lent, "a piece")
    for name in ("More", "Notebook", "Wants"):
        lent.place(name)
        check(lent, name)
    lent.tap("Settings")
    check(lent, "settings")


def test_an_answer_and_its_time_line_fit(lent: Phone, app: Server):
    look_round(lent, app)
    identify(lent, "Wagon")
    lent.tap("Everything else", "summary")
    lent.until("document.querySelector('.timeline')")
    lent.run(LONGEST)
    check(lent, "an answer")
    lent.press(SELLER)
    lent.tap("Say it another way", "summary")
    lent.until("document.querySelector('#claim-text')").send_keys("1955", Keys.ENTER)
    lent.sees("The seller says: 1955")
    for width, height in SIZES:
        lent.resize(width, height)
        lent.run(LARGE, True)
        assert amiss(lent, TOO_WIDE) == [], f"the seller's date at {width} x {height}"


def test_what_is_typed_in_stays_above_the_keyboard(lent: Phone, app: Server):
    look_round(lent, app)
    add_piece(lent, "P 24")
    for width, height, keyboard in ((320, 568, 300), (375, 667, 320), (568, 320, 160)):
        lent.resize(width, height)
        for label in ("Price paid", "Notes"):
            field = labelled(lent, label)
            lent.run("arguments[0].focus()", field)
            own = lent.run(OWN_KEYS, field)
            assert own == (label == "Price paid" and lent.run(TOUCHED))
            lent.run(KEYBOARD, 0 if own else keyboard)
            assert amiss(lent, HIDDEN) == "", f"{label} at {width} x {height}"
            lent.run(KEYBOARD, 0)
            lent.run("arguments[0].blur()", field)
            assert amiss(lent, UNREACHED, LOW_BARS) == []
            lent.until(KEYBOARD_GONE)


def test_a_sheet_stays_right_above_the_keyboard(lent: Phone, app: Server):
    """An iPhone moves what is seen over the page, and a sheet with it."""
    lent.goto(app.url)
    lent.tap("Read a mark")
    field = lent.until("document.querySelector('dialog[open] input')")
    lent.until("document.getAnimations().length === 0")
    for width, height, keyboard in ((320, 568, 300), (375, 667, 320), (568, 320, 160)):
        lent.resize(width, height)
        lent.run("arguments[0].focus()", field)
        for high, by in ((keyboard, 0), (keyboard, 90), (keyboard, keyboard), (0, 0)):
            lent.run(KEYBOARD, high)
            lent.run(MOVED, by)
            assert amiss(lent, OFF) == "", f"{width} x {height}, {high} covered, moved by {by}"
            assert amiss(lent, HIDDEN) == "", f"{width} x {height}, {high} covered, moved by {by}"


@pytest.fixture
def notched(app: Server, lent: Phone) -> Iterator[Phone]:
    """A screen with a notch and a home indicator: only Chromium's driver can say that."""
    lent.goto(app.url)
    lent.sees("What have you got?")
    yield lent
    lent.driver.execute_cdp_cmd("Emulation.setSafeAreaInsetsOverride", {"insets": {}})


@pytest.mark.parametrize("lent", ["chromium"], indirect=True)
@pytest.mark.parametrize(
    ("width", "height", "side", "bottom"),
    [(390, 844, 0, 34), (844, 390, 47, 21), (932, 430, 59, 21)],
)
def test_nothing_to_tap_lies_under_a_notch_or_the_home_indicator(
    notched: Phone, width: int, height: int, side: int, bottom: int
):
    phone = notched
    insets = {"left": side, "right": side, "bottom": bottom, "bottomMax": bottom, "top": 0}
    phone.driver.execute_cdp_cmd("Emulation.setSafeAreaInsetsOverride", {"insets": insets})
    phone.resize(width, height)

    def clear(what: str) -> None:
        assert amiss(phone, UNDER, side, side, bottom) == [], what

    clear("the start")
    phone.run("document.getElementById('search').focus()")
    phone.until("document.querySelector('.keypad')")
    clear("the keypad")
    phone.run("document.activeElement.blur()")
    begin(phone, "Wagon")
    clear("a question")
    phone.tap("More", ".reach button")
    phone.until("document.querySelector('dialog[open]')")
    phone.run(LARGE, True)  # a sheet as wide as the screen
    clear("a sheet")
    phone.run(LARGE, False)
    phone.tap("Close")
    phone.until("!document.querySelector('dialog')")
    while phone.run(f"return {GOES_ON}"):
        answer(phone)
    clear("an answer")
    add_piece(phone, "P 24")
    clear("a piece")
