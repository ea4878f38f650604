"""A person who writes down a range of their own by handling pieces, counted tap by tap."""

import io
from dataclasses import dataclass, field

from PIL import Image
from playwright.sync_api import Locator, Page, expect

from identify.reference.kit import kit_to_pick
from tests.bench.effort import Effort
from tests.browser.phone import question
from tests.ostwick import Change, Item

KIT = {one["id"]: one for one in kit_to_pick()["features"]}
BY_TITLE = {one.get("title", one["name"]): one for one in KIT.values()}
WORDS = r"() => (document.getElementById('screen').innerText.match(/[\p{L}\p{N}]+/gu) ?? []).length"


@dataclass
class Hand:
    """The one hand that holds the phone, and what it has cost."""

    page: Page
    effort: Effort = field(default_factory=Effort)
    read: set[str] = field(default_factory=set)  # the screens read before

    def reads(self) -> None:
        """A screen is read whole when it is first met, later only its title."""
        title = question(self.page)
        kind = title if title in BY_TITLE else self.page.evaluate("() => history.state.screen")
        words = self.page.evaluate(WORDS) if kind not in self.read else len(title.split())
        self.read.add(kind)
        self.effort.words += words
        self.effort.decisions += 1

    def taps(self, target: Locator) -> None:
        box = target.bounding_box()  # None while the screen is drawn anew
        if box and box["y"] > 640:
            self.effort.scrolls += 1
        target.click()
        self.effort.taps += 1

    def presses(self, name: str) -> None:
        self.taps(self.page.get_by_role("button", name=name).first)

    def types(self, label: str, text: str) -> None:
        """Taps a field, types into it, and ends it."""
        if text == "":
            return
        field_ = self.page.get_by_label(label, exact=True).last
        self.taps(field_)
        field_.fill(text)
        self.effort.keys += len(text)
        field_.blur()
        expect(field_).not_to_have_attribute("aria-invalid", "true")

    def chooses(self, label: str, option: str) -> None:
        field_ = self.page.get_by_label(label, exact=True)
        chosen = next(one for one in field_.locator("option").all_inner_texts() if option in one)
        field_.select_option(chosen)
        self.effort.taps += 2


def caption(feature: str, state: str) -> str:
    """What stands below the drawing of a state."""
    found = next(one for one in KIT[feature]["states"] if one["id"] == state)
    return str(found.get("caption", found["name"]))


def answers(hand: Hand, seen: dict[str, str]) -> None:
    """Answers the cards until all that is seen is put down."""
    page = hand.page
    left = dict(seen)
    while left:
        expect(page.get_by_role("button", name="That will do")).to_be_visible()
        title = question(page)
        hand.reads()
        feature = BY_TITLE[title]["id"]
        hand.effort.looking += BY_TITLE[title]["seconds"]
        if feature in left:
            named = page.get_by_text(caption(feature, left.pop(feature)), exact=True)
            hand.taps(page.locator(".states button").filter(has=named).first)
        else:
            hand.presses("Can’t see it")
        expect(page.get_by_role("heading", level=1)).not_to_have_text(title)
    hand.presses("That will do")
    expect(page.get_by_label("Number")).to_be_visible()


def differs(item: Item, other: Item) -> dict[str, str]:
    """What is seen on an item and not on another one."""
    return {f: s for f, s in item.seen.items() if other.seen.get(f) != s}


def likest(item: Item, before: list[Item]) -> Item | None:
    """The item written down that it is most like; None where there is none of its kind."""
    alike = [one for one in before if one.kind == item.kind]
    return min(alike, key=lambda one: len(differs(item, one)), default=None)


def says_what_differs(hand: Hand, seen: dict[str, str]) -> None:
    """On the screen that asks what is different: each feature, and what is seen instead."""
    page = hand.page
    title = page.get_by_role("heading", name="What is different?")
    for feature, state in seen.items():
        expect(title).to_be_visible()
        hand.reads()
        named = page.get_by_text(KIT[feature]["name"], exact=True)
        tile = page.locator(".states button").filter(has=named)
        if tile.count() == 0:  # nothing was seen of it on the one it is like
            hand.taps(page.get_by_text("Something else is different"))
            tile = page.get_by_role("button", name=KIT[feature]["name"], exact=True)
        hand.taps(tile.first)
        expect(title).to_have_count(0)
        hand.effort.looking += KIT[feature]["seconds"]
        hand.effort.decisions += 1
        picked = page.get_by_text(caption(feature, state), exact=True)
        hand.taps(page.locator(".states button").filter(has=picked).first)
        asked = KIT[feature].get("title", KIT[feature]["name"])
        expect(page.get_by_role("heading", level=1)).not_to_have_text(asked)


def writes_down(hand: Hand, item: Item, before: list[Item]) -> None:
    """From the range's own screen: one item with its variants, and back to the range."""
    page = hand.page
    hand.presses("Write down a piece")
    hand.reads()
    hand.taps(page.locator(".states button").filter(has_text=item.kind).first)
    like = likest(item, before)
    if like:
        expect(page.get_by_role("heading", name="Like one of these?")).to_be_visible()
        hand.reads()
        hand.taps(page.get_by_role("button", name=f"{like.number} {like.name}"))
        says_what_differs(hand, differs(item, like))
        hand.presses("That is all")
    expect(page.get_by_label("Number")).to_be_visible()
    hand.reads()
    if not like:
        hand.presses("Answer what you see")
        answers(hand, item.seen)
    hand.types("Number", item.number)
    hand.types("Name", item.name)
    hand.types("Made", item.made)
    hand.chooses("How do you know?", item.source)
    for other in item.variants:
        hand.presses("Another variant of it")
        says_what_differs(hand, other)
        expect(page.get_by_text(f"A variant of {item.number}")).to_be_visible()
        hand.reads()
        hand.presses("Back")
        expect(page.get_by_label("Number")).to_be_visible()
    hand.presses("Back")
    expect(page.get_by_role("button", name="Write down a piece")).to_be_visible()


def adds_change(hand: Hand, change: Change) -> None:
    """From the range's own screen: a running change, and back to the range."""
    page = hand.page
    hand.presses("Add a running change")
    hand.reads()
    hand.taps(page.locator(".states button").filter(has_text=change.kinds).first)
    expect(page.get_by_role("heading", name="What changed?")).to_be_visible()
    hand.reads()
    named = page.get_by_text(KIT[change.feature]["name"], exact=True)
    hand.taps(page.locator(".states button").filter(has=named).first)
    expect(page.get_by_text("Tap what is seen from then on.")).to_be_visible()
    picked = page.get_by_text(caption(change.feature, change.state), exact=True)
    hand.taps(page.locator(".states button").filter(has=picked).first)
    hand.types("From", change.since)
    expect(page.get_by_text("It changes nothing yet on")).to_be_visible()
    hand.presses("until then")
    expect(page.get_by_text("It changes nothing yet on")).to_have_count(0)
    hand.presses("Back")
    expect(page.get_by_role("button", name="Write down a piece")).to_be_visible()


def photo() -> dict[str, object]:
    """A photo from the camera."""
    out = io.BytesIO()
    Image.new("RGB", (640, 480), "#7a5230").save(out, "JPEG")
    return {"name": "photo.jpg", "mimeType": "image/jpeg", "buffer": out.getvalue()}
