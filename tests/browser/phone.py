"""A phone in the hand: a small touch screen in a real Chromium, and what a thumb does with it."""

import random
import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import BrowserContext, Error, Page, Playwright, expect

from identify.core.types.pack import Pack
from identify.lab.pieces import Piece, piece
from tests.conftest import ARGS, light_browser_path

PHONE: dict[str, Any] = {
    "viewport": {"width": 360, "height": 740},
    "device_scale_factor": 2,
    "is_mobile": True,
    "has_touch": True,
}
DESK: dict[str, Any] = {"viewport": {"width": 1280, "height": 800}}
NO_STORAGE = """Object.defineProperty(window, "indexedDB", {
  value: { open() { throw new DOMException("no", "SecurityError"); } } });"""
STRICT = {
    "runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    "rules": {
        "target-size": {"enabled": True},
        "color-contrast-enhanced": {"enabled": True},
    },
    "resultTypes": ["violations"],  # what passed is not gathered
}
# of those, what can be otherwise where only the colours are
COLOURS = {
    "runOnly": {
        "type": "rule",
        "values": ["color-contrast", "color-contrast-enhanced", "link-in-text-block"],
    },
    "resultTypes": ["violations"],
}
AXE: str = Axe().axe_script
LIGHTS = ("day", "dark", "sun")


CHANGED = """before => { const top = document.querySelector("#screen h1");
  return (top.ariaLabel ?? top.innerText) !== before; }"""


def unfold(page: Page) -> None:
    """On the answer: all that is folded away."""
    page.get_by_text("Everything else", exact=True).click()


def line(page: Page, name: str) -> Any:
    """On the answer: one of its four lines."""
    return page.get_by_role("button", name=re.compile(f"^{name}"))


def expect_answers(page: Page, count: int) -> None:
    """At a question: so many answers were given."""
    page.locator(".reach").get_by_role("button", name="More", exact=True).click()
    sheet = page.get_by_role("dialog")
    name = "1 answer so far" if count == 1 else f"{count} answers so far"
    expect(sheet.get_by_role("button", name=name)).to_be_visible()
    sheet.get_by_role("button", name="Close", exact=True).click()


def watched(page: Page) -> Page:
    """The page, failing the test at the next step after anything is reported on its console."""
    page.reported = []
    page.on("pageerror", lambda error: page.reported.append(str(error)))
    page.on(
        "console",
        lambda m: page.reported.append(m.text) if m.type == "error" else None,
    )
    return page


@contextmanager
def kept_phone(playwright: Playwright, folder: Path, **more: Any) -> Iterator[BrowserContext]:
    """A browser of its own whose storage is a folder, so that it can be ended and opened again."""
    context = playwright.chromium.launch_persistent_context(
        folder, executable_path=light_browser_path(), args=ARGS, **PHONE, **more
    )
    try:
        yield context
    finally:
        context.close()


def start(page: Page, url: str, kind: str = "") -> None:
    """Open the app and begin with a kind, or with everything."""
    page.goto(url)
    begin(page, kind)


def begin(page: Page, kind: str = "") -> None:
    """On the start screen: begin with a kind, or with everything."""
    name = kind or "Not sure: ask me"
    page.get_by_role("button", name=name, exact=True).click()
    page.locator("#screen > .card").wait_for()
    in_words(page)
    expect(page.get_by_role("group", name="Tap what you see")).to_be_visible()


def choose_range(page: Page, label: str) -> None:
    """On the start screen: look in another range, and wait until the screen is drawn for it.

    Until then the app leaves out a tap, as it does while any step is being stored.
    """
    box = page.get_by_label("Range", exact=True)
    before = box.element_handle()
    box.select_option(label=label)
    page.wait_for_function("box => !box.isConnected", arg=before)


def press(page: Page, *keys: str) -> None:
    for key in keys:
        page.keyboard.press(key)


def question(page: Page) -> str:
    """The question in full, or the title of the answer, on the screen."""
    top = page.get_by_role("heading", level=1)
    return top.get_attribute("aria-label") or top.inner_text()


def expect_question(page: Page, text: str) -> None:
    """Waits until this question, or this title, is on the screen."""
    expect(page.get_by_role("heading", level=1, name=text, exact=True)).to_be_visible()


def expect_other_question(page: Page, text: str) -> None:
    """Waits until another question than this one, or another title, is on the screen."""
    page.wait_for_function(CHANGED, arg=text)


def expect_read(page: Page, read: Callable[[], Any], wanted: Any) -> None:
    """Waits until what is read of the page, or past it, is what is wanted; looks for 30 s.

    For what `expect` has no word for: what is stored, measured, or asked of the page by a script.
    """
    for _ in range(300):
        if read() == wanted:
            return
        page.wait_for_timeout(100)
    assert read() == wanted


def more_of_question(page: Page, name: str) -> None:
    """What stands behind More at a question: tap one of it."""
    page.locator(".reach").get_by_role("button", name="More", exact=True).click()
    page.get_by_role("dialog").get_by_role("button", name=re.compile(f"^{name}")).click()


def in_words(page: Page) -> None:
    """Where a portrait is held beside the piece, or there are some to choose from: be asked in
    words.
    """
    words = page.locator("#screen > .looks-like-this").get_by_role("button", name="Ask in words")
    if words.count():
        words.click()
        page.locator("#screen > .card .states button").first.wait_for()


def choices(page: Page) -> list[str]:
    """What can be tapped as seen."""
    return page.locator(".states button .name").all_inner_texts()


def asking(page: Page) -> bool:
    return page.locator(".states button").count() > 0


def tap(page: Page, name: str) -> None:
    """Tap one button, and wait until the screen has moved on; from pictures on to words."""
    moved_by(page, name)
    in_words(page)


def undo(page: Page) -> None:
    """Take the last step back, to whatever stood there."""
    moved_by(page, "Undo")


def moved_by(page: Page, name: str) -> None:
    """Tap one button, and wait until the screen has moved on.

    With a mouse: of two quick touches in one place the app takes the second for a slip.
    """
    before = page.locator("main").inner_text()
    page.get_by_role("main").get_by_role("button", name=name, exact=True).click()
    page.wait_for_function("t => document.querySelector('main').innerText !== t", arg=before)


def see(page: Page, state: str) -> None:
    """Answer the question by tapping a state's name; the next may be the same, to look again."""
    before = page.locator("main").inner_text()
    page.locator(".states button").filter(has=page.get_by_text(state, exact=True)).first.click()
    page.wait_for_function("t => document.querySelector('main').innerText !== t", arg=before)
    in_words(page)


def whole_piece(pack: Pack, kind: str, seed: int) -> Piece:
    """A piece of this kind that the seed draws, with no part replaced."""
    place = next(n for n, one in enumerate(pack["kinds"]) if one["id"] == kind)
    rng = random.Random(seed)
    while True:
        found = piece(rng, pack)
        if pack["rows"]["kind"][found.row] == place and not found.replaced:
            return found


def see_all(page: Page, pack: Pack, found: Piece) -> None:
    """Answer every question by what this piece shows, until nothing more is asked."""
    features = {feature["question"]: feature for feature in pack["features"]}
    while asking(page):
        feature = features[question(page)]
        shown = found.states[feature["id"]]
        see(page, next(one["name"] for one in feature["states"] if one["id"] == shown))


PUT = """piece => new Promise((resolve, reject) => {
  const opening = indexedDB.open('identify');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const writing = opening.result.transaction('kept', 'readwrite');
    writing.objectStore('kept').put(piece, 'piece');
    writing.onabort = () => reject(writing.error);
    writing.oncomplete = () => { opening.result.close(); resolve(); };
  };
})"""


def take_up(page: Page, session: dict[str, Any], claim: str = "", asked: str = "") -> None:
    """Open the app again as it would be after these answers, and this claim of the seller's, at
    the question chosen if there is one.
    """
    page.get_by_role("heading", level=1).wait_for()
    step = {"session": session, "asked": asked, "further": False, "claim": claim}
    page.evaluate(PUT, {"format": 1, "pack": session["pack"], "steps": [step]})
    page.reload()
    page.get_by_role("heading", level=1).wait_for()


def kill(page: Page) -> None:
    """End the tab's process at once, as a phone does when the camera needs its memory."""
    with page.expect_event("crash"), suppress(Error):
        page.goto("chrome://crash")
    page.close()


def violations(page: Page, rules: dict[str, Any] = STRICT) -> list[str]:
    """What axe finds on this screen, with the rules that it leaves out by default.

    Bars that stay in place while the rest scrolls under them lie still for it: what they happen to
    cover can be scrolled to. Lettering on a pictured piece is left out, as part of a picture
    (WCAG 2.2, 1.4.3): it stands on what is drawn beneath it, which axe does not see.
    """
    page.evaluate(
        "() => document.querySelectorAll('.finish, #notices')"
        ".forEach(bar => { bar.style.position = 'static'; })"
    )
    if not page.evaluate("() => 'axe' in window"):
        page.evaluate(AXE)
    found = page.evaluate("rules => axe.run({exclude: [['svg.portrait text']]}, rules)", rules)
    return [
        f"{v['id']}: {v['help']} ({node['html'][:120]})"
        for v in found["violations"]
        for node in v["nodes"]
    ]


def in_each_light(page: Page) -> list[str]:
    """What axe finds in the sun, in the dark and by day; light changes nothing but the colours."""
    found = []
    for light in reversed(LIGHTS):
        page.evaluate("light => { document.documentElement.dataset.light = light; }", light)
        rules = STRICT if light == "day" else COLOURS
        found += [f"{light}: {one}" for one in violations(page, rules)]
    return found


def too_small(page: Page) -> list[str]:
    """What there is to tap that is under 48 px."""
    found: list[str] = page.evaluate(
        """() => [...document.querySelectorAll("button, input, label, summary, a")]
          .filter(e => e.checkVisibility() && !e.matches("label input, label[for]"))
          .map(e => [e.innerText || e.ariaLabel || e.type, e.getBoundingClientRect()])
          .filter(([, box]) => box.width > 0 && (box.height < 47.5 || box.width < 47.5))
          .map(([name, box]) => `${name}: ${box.width} x ${box.height}`)"""
    )
    return found


def broken_words(page: Page) -> list[str]:
    """Words that a line ends within."""
    found: list[str] = page.evaluate(
        r"""() => {
          const found = [];
          const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
          while (walk.nextNode()) {
            const { currentNode: text } = walk;
            const parent = text.parentElement;
            if (!parent.checkVisibility() || parent.closest(".unseen, select")) continue;
            for (const word of text.data.matchAll(/[\p{L}\p{N}]+/gu)) {
              const range = document.createRange();
              range.setStart(text, word.index);
              range.setEnd(text, word.index + word[0].length);
              const lines = [...range.getClientRects()].filter(({ width }) => width > 0);
              if (new Set(lines.map(({ top }) => Math.round(top))).size > 1) found.push(word[0]);
            }
          }
          return found;
        }"""
    )
    return found


def too_wide(page: Page) -> list[str]:
    """What would have to be scrolled sideways."""
    found: list[str] = page.evaluate(
        """() => [document.scrollingElement, ...document.querySelectorAll("dialog[open], main *")]
          .filter(e => !(e instanceof SVGElement))
          .filter(e => e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).display !== "inline"
            && !["hidden", "clip"].includes(getComputedStyle(e).overflowX) && e.clientWidth > 0)
          .map(e => `${e.tagName} ${e.className}: ${e.scrollWidth} in ${e.clientWidth}`)"""
    )
    return found
