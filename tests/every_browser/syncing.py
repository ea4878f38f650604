"""Phones in any browser, and the collector's own server."""

from tests.browser.own_server import OwnServer
from tests.every_browser.driven import Phone
from tests.every_browser.steps import labelled, open_more

BOX = "document.querySelector('[role=group][aria-label=Sync]')"


def pair(phone: Phone, server: OwnServer, name: str, link: str = "") -> None:
    """Open a pairing link, and pair."""
    open_pairing(phone, server, name, link)
    phone.sees("This device is paired")
    settled(phone)


def open_pairing(phone: Phone, server: OwnServer, name: str, link: str = "") -> None:
    """Open a pairing link, and try to pair."""
    phone.driver.get("about:blank")
    phone.goto(link or server.link())
    box = labelled(phone, "What to call this device")
    box.clear()
    box.send_keys(name)
    phone.tap("Pair")


def settled(phone: Phone) -> None:
    """Wait on the screen of devices until nothing is being done."""
    phone.until(f"{BOX}?.ariaBusy === 'false' || {BOX}?.getAttribute('aria-busy') === 'false'")


def sync(phone: Phone) -> str:
    """Sync by the button; what is said of it afterwards."""
    if phone.heading() != "Devices and sync":
        open_more(phone, "Devices and sync")
    settled(phone)
    phone.run(f"{BOX}.setAttribute('aria-busy', 'asked')")  # drawn anew once it is under way
    phone.tap("Sync now")
    settled(phone)
    return str(phone.run(f"return {BOX}.innerText"))


def open_piece(phone: Phone, number: str) -> None:
    phone.place("Collection")
    phone.press(
        "[...document.querySelectorAll('ul[aria-label=Pieces] button')]"
        ".find((one) => one.innerText.includes(arguments[0]))",
        number,
    )
    labelled(phone, "Notes")
