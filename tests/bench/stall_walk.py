"""What a person at a stall does with the app, tap by tap, and what each step costs them."""

import io
import re
from dataclasses import dataclass, field, replace
from typing import Any

from PIL import Image

from identify.core.portraits import sitting
from identify.core.types.pack import Pack
from identify.errors import UserError
from tests.bench.effort import Effort

MOST = 25  # questions, before a piece is given up
GLANCE = 1.5  # seconds to hold a piece beside one ring of its portrait (a guess)
START = "What have you got?"

# The words that can be read on the screen as it stands: of buttons only those that say something
# of the piece, which are the answers, what was found, and the lines of the answer that have
# something to say.
SHOWN = r"""() => {
  const tells = ".state, .hit, .line:not(.silent), .odd, .picture-choice";
  const words = [];
  const walk = document.createTreeWalker(document.getElementById("screen"), NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const parent = walk.currentNode.parentElement;
    if (!parent.checkVisibility() || parent.closest(".unseen, .stage, kbd, svg")) continue;
    if (parent.closest("button, label, summary, select") && !parent.closest(tells)) continue;
    const range = document.createRange();
    range.selectNodeContents(walk.currentNode);
    const { top, bottom, width } = range.getBoundingClientRect();
    if (width > 0 && top < innerHeight - 8 && bottom > 8)
      words.push(...(walk.currentNode.data.match(/[\p{L}\p{N}£]+/gu) ?? []));
  }
  return words.length;
}"""
STORED = """store => new Promise((done, failed) => {
  const opening = indexedDB.open('identify');
  opening.onerror = () => failed(opening.error);
  opening.onsuccess = () => {
    const asked = opening.result.transaction(store).objectStore(store).getAll();
    asked.onsuccess = () => { opening.result.close(); done(asked.result); };
  };
})"""

FORGET = """() => new Promise((done, failed) => {
  const opening = indexedDB.open('identify');
  opening.onerror = () => failed(opening.error);
  opening.onsuccess = () => {
    const writing = opening.result.transaction('kept', 'readwrite');
    for (const key of ['piece', 'former', 'piece of another window'])
      writing.objectStore('kept').delete(key);
    writing.oncomplete = () => { opening.result.close(); history.replaceState(null, ''); done(); };
  };
})"""

TOPS = """[...document.querySelectorAll("#screen h1, dialog[open] h2")]"""
MARK = f"() => {{ for (const top of {TOPS}) top.seen = true; }}"
MOVED = f"() => {TOPS}.some((top) => !top.seen)"
STILL = 100  # milliseconds: going back in the history draws a screen twice


@dataclass
class Person:
    """Somebody with a piece in the hand and the app before them."""

    page: Any
    effort: Effort
    screens: list[tuple[str, Effort]] = field(default_factory=list)
    before: Effort = field(default_factory=Effort)

    def passed(self, screen: str) -> None:
        """A screen of this sort is done with: what it took."""
        self.screens.append((screen, self.effort - self.before))
        self.before = replace(self.effort)

    def tap(self, what: Any) -> None:
        """Tap; what is not on the screen is scrolled to first. Waits until the screen moved on."""
        self.effort.scrolls += scrolls_to(what)
        self.effort.taps += 1
        self.page.evaluate(MARK)
        what.click()
        self.page.wait_for_function(MOVED)
        while self.page.evaluate(MOVED):
            self.page.evaluate(MARK)
            self.page.wait_for_timeout(STILL)

    def touch(self, field: Any) -> None:
        """Tap what need not move the screen on."""
        self.effort.scrolls += scrolls_to(field)
        self.effort.taps += 1
        field.click()

    def read(self, few: int = 0) -> None:
        """Read the screen and make up one's mind; `few` are the words that the practised read, no
        more than there are.
        """
        words = self.page.evaluate(SHOWN)
        self.effort.words += words
        self.effort.few += min(few, words)
        self.effort.decisions += 1

    def type(self, text: str) -> None:
        """Type into the field that has the keyboard."""
        self.effort.keys += len(text)
        self.page.keyboard.type(text)

    def button(self, name: str) -> Any:
        """A button of this name, wherever it stands."""
        return self.page.get_by_role("button", name=name, exact=True).first


def scrolls_to(what: Any) -> int:
    """How many flicks of the thumb bring it onto the screen."""
    away: float = what.evaluate(
        """e => { const { top, bottom } = e.getBoundingClientRect();
          const away = top < 0 ? -top : Math.max(0, bottom - innerHeight);
          return away / (0.7 * innerHeight); }"""
    )
    return int(away) + (1 if away % 1 > 0.01 else 0)


def count(text: str) -> int:
    """So many words."""
    return len(re.findall(r"[^\W_]+", text))


def heading(page: Any) -> str:
    """The question in full, or the title of the screen."""
    top = page.get_by_role("heading", level=1)
    return str(top.get_attribute("aria-label") or top.inner_text())


def asking(page: Any) -> bool:
    """Is a question on the screen?"""
    page.locator("#screen > .card, #screen > .looks-like-this, #screen > .answer").first.wait_for()
    return bool(page.locator("#screen > .card .states button").count())


def by_kind(person: Person, kind: str) -> None:
    """From the start: the kind of the piece."""
    person.read(few=5)
    person.effort.looking += 2
    person.tap(person.page.locator(".states button").filter(has=exactly(person.page, kind)))
    person.passed("start")


def by_number(person: Person, number: str) -> None:
    """From the start: the number on it, and the first that is found of it."""
    typed(person, number)
    person.tap(found(person, number))
    person.passed("start")


def typed(person: Person, number: str) -> None:
    """Read the number on the piece and type it; the keypad has no key for a space."""
    person.effort.decisions += 1
    person.effort.looking += 3
    person.touch(person.page.get_by_label("Number or name on it or its box"))
    person.type(number.replace(" ", ""))


def found(person: Person, number: str) -> Any:
    """What the keys found, once it was read."""
    title = person.page.locator("strong").filter(has_text=re.compile(rf"^{re.escape(number)} "))
    hit = person.page.locator(".hit").filter(has=title).first
    hit.wait_for()
    person.read(few=4)
    return hit


def exactly(page: Any, text: str) -> Any:
    """What says just that."""
    return page.get_by_text(text, exact=True)


def comparing(page: Any) -> bool:
    """Is a portrait held beside the piece?"""
    return bool(page.locator("#screen > .looks-like-this").count())


def choosing(page: Any) -> bool:
    """Are there portraits to choose from?"""
    return bool(page.locator("#screen > .which").count())


def chosen(person: Person, pack: Pack, shows: dict[str, str]) -> None:
    """Look at all in which the pictures differ, and tap the one that shows it so, or none. Looking
    over a picture without a caption takes as long as a word: the eye moves on every 0.23 s (Card,
    Moran and Newell 1983).
    """
    features = {feature["name"]: place for place, feature in enumerate(pack["features"])}
    looks = sitting(pack)["looks"]
    pictures = person.page.locator(".picture-choice")
    fitting = None
    for picture in pictures.all():
        fits = True
        for text in picture.locator(".shows").all_text_contents():
            name, shown = text.split(": ", 1)
            states = pack["features"][features[name]]["states"]
            ids = [state["id"] for state in states]
            captions = [state.get("caption") or state["name"] for state in states]
            seen = ids.index(shows[pack["features"][features[name]]["id"]])
            look = looks[features[name]]
            alike = [one for one in captions if f"{shown}, ".startswith((f"{one}, ", f"{one} or "))]
            first = max(alike, key=len)  # of the states that look like it
            fits = fits and look[seen] == look[captions.index(first)]
        if fits and fitting is None:
            fitting = picture
    person.effort.looking += GLANCE * pictures.first.locator(".shows").count()
    person.effort.words += (
        pictures.count() - pictures.filter(has=person.page.locator(".caption")).count()
    )
    person.effort.questions += 1
    person.read(few=3)
    person.tap(fitting or person.button("None of these"))
    person.passed("which?" if fitting else "none of them")


def compared(person: Person, pack: Pack, shows: dict[str, str]) -> None:
    """Look at each ring of the portrait and mark what does not fit; where what was seen is to be
    looked at again, what fits after all.
    """
    features = {feature["name"]: feature for feature in pack["features"]}
    again = heading(person.page) == "Look again"
    marked = []
    said = person.page.locator(".ringed-list .unseen").all_inner_texts()
    for ring, text in enumerate(said):
        feature = features[text.split(": ", 1)[0]]
        state = next(s for s in feature["states"] if s["id"] == shows[feature["id"]])
        fits = text.split(": ", 1)[1] == (state.get("caption") or state["name"])
        if fits == again:
            marked.append(ring)
        person.effort.looking += GLANCE
    person.effort.questions += 1
    person.read(few=2 + sum(count(text.split(": ", 1)[1]) for text in said))
    for ring in marked:
        person.touch(person.page.locator("button.ring").nth(ring))
    person.tap(person.page.locator(".looks-like-this .main"))
    person.passed("look again" if again else "like this?")


def answered(person: Person, pack: Pack, shows: dict[str, str], boxed: bool) -> None:
    """Answer what is asked by what the piece shows, until the app says what it is."""
    asked = {feature["question"]: feature for feature in pack["features"]}
    while asking(person.page) or comparing(person.page):
        if person.effort.questions == MOST:
            raise UserError(f"The app asks on after {MOST} questions.")
        if choosing(person.page):
            chosen(person, pack, shows)
            continue
        if comparing(person.page):
            compared(person, pack, shows)
            continue
        feature = asked[heading(person.page)]
        part = pack["parts"][feature["part"]]["id"] if feature["part"] >= 0 else ""
        seen = next(s["name"] for s in feature["states"] if s["id"] == shows[feature["id"]])
        choice = answer(person.page, seen, "" if boxed or part != "box" else "No box")
        person.effort.questions += 1
        person.effort.looking += feature["seconds"]
        person.read(few=count(feature["question"]) + count(seen))
        if not choice.evaluate("e => e.matches('.state') && !e.closest('.rarer')"):
            person.effort.words += small_answers(person.page)
        proof = person.page.locator(".proof").count()
        person.tap(choice)
        person.passed("check" if proof else "question")


def small_answers(page: Any) -> int:
    """The words of the answers that are small: whoever does not find theirs above goes through all
    of them, as if their names stood there.
    """
    return sum(count(name) for name in page.locator(".rarer .name").all_text_contents())


def answer(page: Any, seen: str, missing: str) -> Any:
    """The button of what is seen; where it is not offered, of what comes nearest to saying so."""
    if missing and (gone := page.get_by_role("button", name=missing, exact=True)).count():
        return gone
    choice = page.locator("#screen .states button").filter(has=exactly(page, seen))
    if choice.count():
        return choice.first
    return page.get_by_role("button", name="Something else", exact=True)


def noted(person: Person) -> dict[str, Any]:
    """Read the answer and keep it for later; the note that was made."""
    before = len(notes(person.page))
    person.read(few=8)
    person.touch(person.page.get_by_role("button", name="Save for later").last)
    person.passed("answer")
    for _ in range(100):
        if len(found := notes(person.page)) > before:
            return dict(max(found, key=lambda note: note["made"]))
        person.page.wait_for_timeout(50)
    raise UserError("No note was made.")


def notes(page: Any) -> list[dict[str, Any]]:
    """The notes that are kept."""
    return [record for record in page.evaluate(STORED, "records") if record["type"] == "note"]


def owned(person: Person, number: str) -> None:
    """Is it owned? What is found says so."""
    typed(person, number)
    found(person, number)


def dated(person: Person, number: str) -> None:
    """Does the seller's year hold?"""
    by_number(person, number)
    person.read(few=6)
    if asking(person.page) or choosing(person.page):
        person.tap(person.button("More"))
        person.tap(person.button("Check the seller’s date"))
    else:
        person.tap(person.page.get_by_role("button", name=re.compile("^Seller’s date")))
    person.effort.decisions += 1
    person.tap(person.button("1950s"))
    person.tap(person.button("1957"))
    person.effort.words += 12
    person.effort.decisions += 1


def bargain(person: Person, _: str) -> None:
    """A photo, the price and the table, for later."""
    person.effort.decisions += 1
    person.effort.taps += 2  # the camera, and its shutter
    person.page.get_by_label("Photo for later").set_input_files(
        files=[{"name": "p.jpg", "mimeType": "image/jpeg", "buffer": picture()}]
    )
    price = person.page.get_by_label("Price asked")
    price.wait_for()
    person.page.wait_for_function("() => document.activeElement.matches('#screen input')")
    person.effort.decisions += 1
    person.type("12.50")
    next_field(person, "14")


def bargain_with_offer(person: Person, number: str) -> None:
    """The same, and what was offered."""
    bargain(person, number)
    next_field(person, "10")


def next_field(person: Person, text: str) -> None:
    """On to the next field by a key of the keypad."""
    person.effort.decisions += 1
    person.effort.keys += 1
    person.page.locator(".keypad .key-Next").click()
    person.type(text)


def picture() -> bytes:
    """A photo, as a camera gives it."""
    out = io.BytesIO()
    Image.new("RGB", (1200, 900), "#8899aa").save(out, "JPEG")
    return out.getvalue()


TASKS = (
    ("is it owned?", owned),
    ("the seller's date, by number", dated),
    ("a bargain with photo, price, table", bargain),
    ("the same with an offer", bargain_with_offer),
)


def next_of_the_box(person: Person) -> None:
    """From a note to the next piece of the same box."""
    person.tap(person.button("Next from the same box"))


def noted_in_box(person: Person) -> None:
    """Read the answer, keep it and go on with the next piece, in one tap."""
    person.read(few=8)
    person.tap(person.button("Save, next in box"))
    person.passed("answer")
