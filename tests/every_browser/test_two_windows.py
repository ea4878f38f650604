"""Two windows of the same phone."""

import pytest
from selenium.webdriver.support.ui import WebDriverWait

from tests.conftest import Server
from tests.every_browser.driven import LONG, Phone
from tests.every_browser.steps import add_piece, answer, begin, records, write

# what stands in the notes, still being typed; not by keys, since Firefox takes what they typed for
# changed as soon as another window is raised
TYPING = """((box) => {
  if (!box) return false;
  const typing = box === document.activeElement && box.value === arguments[0];
  box.focus();
  box.value = arguments[0];
  return typing;
})(document.querySelector("textarea"))"""


@pytest.fixture
def windows(lent: Phone, app: Server) -> tuple[Phone, str, str]:
    """A phone with two windows; their handles."""
    lent.goto(app.url)
    lent.sees("What have you got?")
    one = lent.driver.current_window_handle
    lent.driver.switch_to.new_window("window")
    other = lent.driver.current_window_handle
    lent.goto(app.url)
    lent.sees("What have you got?")
    return lent, one, other


def test_what_one_writes_the_other_shows(windows: tuple[Phone, str, str]):
    phone, one, other = windows
    phone.place("Collection")
    phone.driver.switch_to.window(one)
    add_piece(phone, "P 24")
    phone.driver.switch_to.window(other)
    phone.sees("P 24")
    assert phone.reported() == []


def test_the_same_field_changed_in_both_is_asked_about(windows: tuple[Phone, str, str]):
    phone, one, other = windows
    add_piece(phone, "P 24")
    phone.driver.switch_to.window(one)
    phone.place("Collection")
    phone.press("document.querySelector('ul[aria-label=Pieces] button')")
    phone.until(TYPING, "from the one")
    phone.driver.switch_to.window(other)
    write(phone, "Notes", "from the other")
    phone.driver.switch_to.window(one)
    phone.run("document.activeElement.dispatchEvent(new Event('change'))")
    phone.sees("Changed in another window")
    assert records(phone, "piece")[0]["notes"] == "from the other"
    phone.tap("Keep mine")
    # the sheet is shut first, and then it is stored
    kept = WebDriverWait(phone.driver, LONG, 0.1)
    kept.until(lambda _: records(phone, "piece")[0]["notes"] == "from the one")


def test_each_keeps_the_piece_that_it_identifies(windows: tuple[Phone, str, str], app: Server):
    phone, one, _ = windows
    begin(phone, "Wagon")
    answer(phone)
    asked = phone.heading()
    phone.driver.switch_to.window(one)
    begin(phone, "Coach")
    answer(phone)
    phone.goto(app.url)
    phone.sees("Another window had a piece too")
    phone.tap("Take it up")
    phone.until("document.querySelector('h1').innerText === arguments[0]", asked)
