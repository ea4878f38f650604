"""What a person does in the app, in any browser."""

from contextlib import suppress
from pathlib import Path
from typing import Any

import orjson
from selenium.common.exceptions import StaleElementReferenceException
from selenium.webdriver.remote.webelement import WebElement

from tests.browser.phone_storage import ALL, picture
from tests.conftest import Server
from tests.every_browser.driven import LONG, SHORT, Phone

STATES = "document.querySelector('.choices .states button')"
# what goes on: the first drawing of a question, or that a portrait fits
GOES_ON = "document.querySelector('.choices .states button, .card.looks-like-this .unsure button')"
# the line of an answer that opens the seller's date
SELLER = (
    "[...document.querySelectorAll('.line')]"
    ".find((one) => one.innerText.trim().startsWith('Seller’s date'))"
)
ASKED = "document.querySelector('h1').innerText === arguments[0]"
# keeps what the app hands out as a download, as text
CATCH = """
  window.files = [];
  if (!window.caught) {
    window.caught = true;
    const old = URL.createObjectURL;
    URL.createObjectURL = (blob) => {
      if (blob.type === "application/json") {
        window.files.push("");
        const place = window.files.length - 1;
        blob.text().then((text) => { window.files[place] = text; });
      }
      return old.call(URL, blob);
    };
  }
"""
# what stands in a field is written over, which is one change
OVERWRITE = """
  const [box] = arguments;
  box.scrollIntoView({ block: "center" });
  box.focus();
  box.value = "";
"""


def look_round(phone: Phone, app: Server) -> None:
    """Open the app, and take the demo collection."""
    phone.goto(app.url)
    phone.until("navigator.serviceWorker.controller !== null")
    phone.tap("Try the demo")
    phone.sees("100 pieces")


def answer(phone: Phone) -> None:
    """Tap the first drawing, or that a portrait fits, until the next screen is there.

    A tap that comes while the step before is still being stored is not taken: people read first.
    """
    before = phone.heading()
    for _ in range(LONG // SHORT):
        with suppress(AssertionError):  # it may be gone by now
            phone.press(f"{ASKED} ? {GOES_ON} : null", before, within=SHORT)
        if phone.soon(f"!({ASKED})", before):
            return
    raise AssertionError(f'the question "{before}" stays')


def begin(phone: Phone, kind: str = "Coach") -> None:
    """On to the first question about a piece of this kind."""
    phone.place("Identify")
    phone.tap(kind)
    phone.until(STATES)


def identify(phone: Phone, kind: str) -> str:
    """Answer each question with its first drawing, each portrait as it is; the answer's heading."""
    begin(phone, kind)
    answers = 0
    while phone.run(f"return {GOES_ON}"):
        answer(phone)
        answers += 1
        assert answers < 25
    assert answers >= 3
    return phone.heading()


def by_number(phone: Phone, number: str) -> None:
    """The answer on a piece of which nothing is seen but its number."""
    phone.place("Identify")
    labelled(phone, "Number or name").send_keys(number)
    phone.press(
        "[...document.querySelectorAll('ul[aria-label=Found] button')]"
        ".find((one) => one.innerText.includes(arguments[0]))",
        number,
    )
    phone.until(f"{STATES} || document.querySelector('.line, .which')")
    while not phone.run("return document.querySelector('.line')"):
        before = phone.heading()
        several = phone.run("return document.querySelector('.which') !== null")
        phone.tap("Ask in words" if several else "Can’t see it")
        phone.until(f"!({ASKED})", before)


def labelled(phone: Phone, label: str) -> WebElement:
    """The field with this label."""
    node: WebElement = phone.until(
        """[...document.querySelectorAll("label")].filter((one) => one.checkVisibility()
          && one.innerText.trim().startsWith(arguments[0]))
          .map((one) => one.htmlFor ? document.getElementById(one.htmlFor)
            : one.querySelector("input, select, textarea")).find(Boolean)""",
        label,
    )
    return node


def typed(phone: Phone, label: str, text: str) -> WebElement:
    """Type into a field, over what stands there; the field, still being typed in."""
    box = labelled(phone, label)
    phone.run(OVERWRITE, box)
    box.send_keys(text)
    return box


def write(phone: Phone, label: str, text: str) -> None:
    """Type into a field and leave it; wait until it is saved."""
    try:
        box = typed(phone, label, text)
    except StaleElementReferenceException:  # the screen was just being drawn anew
        box = typed(phone, label, text)
    phone.run("arguments[0].blur()", box)
    phone.until(
        "arguments[0].closest('.field').querySelector('.saved').textContent === 'Saved'", box
    )


def add_piece(phone: Phone, number: str) -> None:
    """Add a piece by its number, to the collection."""
    phone.place("Collection")
    phone.tap("Add a piece")
    labelled(phone, "Number or name").send_keys(number)
    phone.press("document.querySelector('ul[aria-label=Found] button')")
    phone.until("document.querySelector('h1').innerText.includes(arguments[0])", number)


def open_more(phone: Phone, name: str) -> None:
    """Go to a screen that stands under More."""
    phone.place("More")
    phone.press(
        "[...document.querySelectorAll('main .hit')]"
        ".find((one) => one.innerText.trim().startsWith(arguments[0]))",
        name,
    )
    phone.until("document.querySelector('h1').innerText === arguments[0]", name)


def catch_files(phone: Phone) -> None:
    """From now on what goes to the downloads can be read as `window.files`."""
    phone.run(CATCH)


def choose(phone: Phone, label: str, option: str) -> None:
    """Choose in a list, and wait until it is saved."""
    box = labelled(phone, label)
    phone.run(
        "arguments[0].value = arguments[1]; arguments[0].dispatchEvent(new Event('change'))",
        box,
        option,
    )
    phone.until(
        "arguments[0].closest('.field').querySelector('.saved').textContent === 'Saved'", box
    )


def put_file(phone: Phone, label: str, path: Path) -> None:
    """Choose a file with a button for files."""
    labelled(phone, label).send_keys(str(path))


def stored(phone: Phone) -> dict[str, list[dict[str, Any]]]:
    """Every record, journal entry and photo (its pictures as bytes), past the app."""
    found: dict[str, list[dict[str, Any]]] = orjson.loads(
        phone.run_later(f"({ALL.strip()})().then(JSON.stringify)")
    )
    for photo in found["photos"]:
        for size in ("full", "small"):
            photo[size] = picture(photo[size])
    return found


def records(phone: Phone, sort: str) -> list[dict[str, Any]]:
    """The records of one type that are not in the bin."""
    found = stored(phone)["records"]
    return [one for one in found if one["type"] == sort and one["trashed"] == ""]


def backup_file(phone: Phone) -> str:
    """Make a backup file; what is in it."""
    open_more(phone, "Backup")
    catch_files(phone)
    phone.tap("Make a backup file")
    phone.sees("Check it is there")
    return str(phone.until("window.files[0]"))
