"""The first steps: each of the four is walked to its end by doing what its line says."""

import re

import pytest
from playwright.sync_api import Page, expect

from identify.phone import WEB
from tests.browser.phone import (
    DESK,
    PHONE,
    begin,
    choices,
    expect_answers,
    expect_read,
    more_of_question,
    see,
    violations,
    watched,
)
from tests.browser.phone_storage import add_piece, kept

USES = {
    "Identify a piece at a stall": "P 20 Main-line electric, flat ends",
    "Check whether you have it already": "better than",
    "Confirm the date a seller claims": "can’t be a 1951 one",
    "Note a bargain for later": "table 9",
}
KEPT = """async () => {
  const database = await new Promise(done => {
    const request = indexedDB.open("identify");
    request.onsuccess = () => done(request.result);
  });
  const store = database.transaction("kept").objectStore("kept");
  const all = what => new Promise(done => (store[what]().onsuccess = e => done(e.target.result)));
  const found = await Promise.all([all("getAllKeys"), all("getAll")]);
  database.close();
  return found;
}"""


POINTED = """() => {
  const marked = document.querySelector(".guide-mark");
  if (!marked) return "nothing is marked";
  const { top, bottom, left, right } = marked.getBoundingClientRect();
  if (top < 0 || bottom > innerHeight) return `${marked.textContent}: from ${top} to ${bottom}`;
  for (const y of [top + 2, bottom - 2]) {
    const over = document.elementFromPoint((left + right) / 2, y);
    if (!marked.contains(over)) return `${marked.textContent}: under ${over?.outerHTML}`;
  }
  const answers = [...document.querySelectorAll("main .state")];
  const guide = document.getElementById("guide").getBoundingClientRect();
  const seen = answers.filter(one => {
    const box = one.getBoundingClientRect();
    return box.top >= Math.max(0, guide.bottom) && box.bottom <= innerHeight;
  });
  if (!document.querySelector("dialog") && answers.length > 0 && seen.length === 0)
    return "no answer is in view";
  return guide.height > 150 || (guide.height > 100 && !document.querySelector("#guide .main"))
    ? `the card takes ${guide.height}` : "";
}"""


def line(page: Page) -> str:
    """What the guide says now: in the sheet, where one is open."""
    sheet = page.locator("dialog .guide-said")
    page.wait_for_function(
        "() => !document.querySelector('dialog.sheet')"
        " || document.querySelector('dialog .guide-said')"
    )
    return (sheet if sheet.count() else page.locator(".guide-text")).inner_text()


def follow(page: Page, said: str) -> None:
    """Do what the line says, with nothing else to go by."""
    main = page.locator("main, dialog")
    named = re.search("“(.+?)”", said)
    if seen := re.search(r": (.+)\. Tap that\.", said):
        name = page.get_by_text(re.compile(f"^{re.escape(seen[1])}$", re.IGNORECASE))
        page.locator(".states button").filter(has=name).first.click()
    elif sort := re.search(r"what kind of piece it is: (.+)\.", said):
        page.get_by_role("button", name=sort[1], exact=True).click()
    elif "Type P24" in said:
        page.get_by_role("searchbox").fill("P24")
        page.get_by_role("list", name="Found").get_by_role("button").first.click()
    elif "Tap “Price”" in said:
        main.get_by_role("button", name=re.compile("^Price")).click()
    elif "choose: as new" in said:
        page.get_by_label("Condition", exact=True).select_option("as new")
    elif "Tap “1950s”" in said or "Now tap “1951”" in said:
        main.get_by_role("button", name=named[1], exact=True).click()
    elif "Now tap “Seller’s date”" in said:
        main.get_by_role("button", name=re.compile("^Seller’s date")).click()
    elif typed := re.search(r"“(.+?)”:? (?:type )?(\d+)", said):
        page.get_by_label(typed[1], exact=True).fill(typed[2])
        page.get_by_label(typed[1], exact=True).blur()
    elif "Notebook in the bar" in said:
        page.get_by_role("navigation").get_by_role("button", name="Notebook").click()
    else:
        assert named, said
        main.get_by_role("button", name=named[1], exact=True).click()


def pointed(page: Page, said: list[str]) -> None:
    """What the line names is marked and in view, and so is an answer to the question."""
    page.wait_for_function("() => document.querySelector('.guide-mark')")
    page.wait_for_function("() => document.getAnimations().length === 0")
    expect_read(page, lambda: (page.evaluate(POINTED), said), ("", said))  # it may yet scroll


def walk(page: Page, use: str) -> list[str]:
    """From the choice of a use to its end: all that was said on the way, and pointed at."""
    page.get_by_role("main").get_by_role("button", name=use).click()
    page.get_by_role("button", name="Begin", exact=True).click()
    said = [line(page)]
    pointed(page, said)
    while "That’s all." not in said[-1]:
        assert len(said) < 16, said
        said.append(onward(page, said[-1]))
        pointed(page, said)
    return said


DRAWN = "() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))"
# two questions in a row may have one title, and other rings on the portrait
ASKED = """() => [...document.querySelectorAll("main h1, main .ringed-list")]
  .map((one) => one.textContent).join()"""


def onward(page: Page, said: str) -> str:
    """Do what the line says, and wait for the next one: it may say the same of another question."""
    asked = page.evaluate(ASKED)
    follow(page, said)
    page.wait_for_function(
        f"""([before, asked]) => {{
          const sheet = document.querySelector("dialog .guide-said");
          const line = sheet ?? document.querySelector(".guide-text");
          const open = document.querySelector("dialog.sheet");
          const now = ({ASKED})();
          return (!open || sheet) && (line.textContent !== before || now !== asked);
        }}""",
        arg=[said, asked],
    )
    page.evaluate(DRAWN)  # the line follows a frame after the screen
    return line(page)


def left(page: Page) -> None:
    """Leave the first steps, and wait until the page of one's own things is there again."""
    page.get_by_role("button", name="Leave the first steps").click()
    expect(page).not_to_have_url(re.compile("first-steps="))
    expect(page.locator("#guide")).to_have_count(0)
    page.get_by_role("heading", level=1).wait_for()


@pytest.mark.parametrize("use", USES)
def test_each_use_leads_over_the_real_screens_to_its_end_and_leaves_nothing(page, server, use):
    page.goto(server.url)
    add_piece(page, "P 24")
    page.get_by_role("navigation").get_by_role("button", name="Identify").click()
    begin(page, "Wagon")
    see(page, choices(page)[0])
    page.reload()  # as it is found again after a start
    expect_answers(page, 1)
    page.wait_for_load_state("networkidle")
    before = kept(page), page.evaluate(KEPT)
    page.get_by_role("button", name="Other screens").click()
    page.get_by_role("dialog").get_by_role("button", name="More").click()
    page.get_by_role("main").get_by_role("button", name="First steps").click()
    said = walk(page, use)
    assert len(said) >= 4
    expect(page.locator("main, dialog").filter(has_text=USES[use])).not_to_have_count(0)
    for scheme in ("light", "dark"):
        page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
        assert violations(page) == []
    if page.get_by_role("dialog").count():
        page.get_by_role("dialog").get_by_role("button", name="Close").click()
    page.set_viewport_size({"width": 320, "height": 640})
    page.evaluate("document.documentElement.style.fontSize = '200%'")
    assert page.evaluate("() => document.scrollingElement.scrollWidth - innerWidth") <= 0
    ways = page.locator("#guide").get_by_role("button").all_inner_texts()
    assert ways == ["Remind me", "Try another", "Leave"], (
        "one word for going, and it stands there once"
    )
    left(page)
    expect_answers(page, 1)
    assert (kept(page), page.evaluate(KEPT)) == before
    names = page.evaluate("indexedDB.databases().then(all => all.map(one => one.name))")
    assert names == ["identify"]


def test_they_are_offered_at_the_first_start_and_work_with_the_server_stopped(browser, own_server):
    context = browser.new_context(**PHONE)
    page = watched(context.new_page())
    page.goto(own_server.url)
    page.wait_for_function("() => navigator.serviceWorker.controller !== null")
    own_server.stop()
    page.get_by_role("button", name="First steps").click()
    walk(page, "Check whether you have it already")
    page.get_by_role("button", name="Try another").click()
    page.get_by_role("dialog").get_by_role("button", name="Identify a piece").click()
    page.get_by_role("button", name="Begin", exact=True).click()
    onward(page, onward(page, line(page)))
    page.reload()  # as after a call, or the camera: where it was
    page.get_by_role("button", name="Begin", exact=True).click()
    expect_answers(page, 1)
    left(page)
    expect(page.get_by_role("button", name="First steps")).to_be_visible()
    page.evaluate(
        "() => { setTimeout(() => history.back(), 300); }"
    )  # go_back fails where the page comes back from memory
    expect(page.get_by_role("button", name="Try the demo")).to_be_visible()
    expect(page.locator("#guide")).to_have_count(0)
    own_server.start()
    context.close()


@pytest.mark.parametrize("use", USES)
def test_on_a_desk_each_use_points_at_what_it_names(browser, server, use):
    page = watched(browser.new_context(**DESK).new_page())
    page.goto(server.url)
    page.get_by_role("button", name="First steps").click()
    assert len(walk(page, use)) >= 4
    page.context.close()


def test_what_is_tapped_otherwise_does_not_lose_the_way(page, server):
    page.goto(server.url)
    page.get_by_role("button", name="First steps").click()
    page.get_by_role("button", name="Identify a piece").click()
    page.get_by_role("button", name="Begin", exact=True).click()
    said = onward(page, line(page))
    wrong = next(name for name in choices(page) if name.lower() not in said)
    see(page, wrong)
    more_of_question(page, "What it could be")
    expect(page.locator("dialog .guide-said")).to_contain_text("tap Close")
    page.get_by_role("dialog").get_by_role("button", name="Close").click()
    page.get_by_role("button", name="Other screens").click()
    page.get_by_role("dialog").get_by_role("button", name="Wants").click()
    expect(page.locator(".guide-text")).to_contain_text("tap Identify")
    page.get_by_role("navigation").get_by_role("button", name="Identify").click()
    expect(page.locator(".guide-text")).to_contain_text("On your engine")
    # a screen reader hears the line when it changes
    assert page.locator("#guide").aria_snapshot().count("- status:") == 1


def test_what_the_pieces_show_is_in_the_reference(pellmarsh):
    """Every state that a line could name is one that the question offers."""
    states = {f["id"]: {s["id"] for s in f["states"]} for f in pellmarsh["pack"]["features"]}
    script = (WEB / "first-steps" / "four-uses.js").read_text("utf-8")
    uses = re.findall(r"seen: \{(.*?)\}", script, re.DOTALL)
    seen = [pair for use in uses for pair in re.findall(r'(\w+): "(\w+)"', use)]
    assert len(uses) == len(USES)
    assert len(seen) > 30
    assert [pair for pair in seen if pair[1] not in states[pair[0]]] == []
