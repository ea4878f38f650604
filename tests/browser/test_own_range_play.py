"""A collector who has never written a range brings in ten items, offline, by handling pieces."""

import random
from typing import Any

import pytest
from playwright.sync_api import expect

from tests.browser.handling import Hand, adds_change, photo, writes_down
from tests.browser.phone import PHONE, watched
from tests.browser.phone_storage import more, records
from tests.conftest import serving
from tests.ostwick import CHANGES, ITEMS, Piece, pieces

MOST = 20 * 60  # seconds
DRAWN, RIGHT, DRAWS = 20, 18, 10  # so many pieces, ten times; the first time counts
IDENTIFIED = """
async ([found, sources]) => {
  const core = await import(new URL("engine.js", location.href).href);
  const database = await new Promise((resolve) => {
    const request = indexedDB.open("identify");
    request.onsuccess = () => resolve(request.result);
  });
  const read = (key) => new Promise((resolve) => {
    const request = database.transaction("kept").objectStore("kept").get(key);
    request.onsuccess = () => resolve(request.result);
  });
  let pack = { sources: [] };
  while (pack.sources.length !== sources) {  // made of all that was written down
    const own = ((await read("ranges")) ?? []).find(({ written }) => written);
    if (own) pack = JSON.parse(await read(`range ${own.id}`));
    await new Promise((resolve) => { setTimeout(resolve, 100); });
  }
  database.close();
  const engine = core.prepare(pack);
  const named = ([says, there]) => {
    let session = core.new_session(engine);
    for (;;) {
      const { stop, question, variants } = core.assess(engine, session);
      if (stop !== "" || !question) {
        const { item } = pack.variants[variants[0].variant];
        const alike = pack.variants.map((_, v) => v).filter((v) => pack.variants[v].item === item);
        const { number } = pack.items[item];
        const variant = alike.indexOf(variants[0].variant);
        return { number, variant, stop, asked: session.answers.length };
      }
      const { id: feature, states } = pack.features[question.feature];
      const again = session.answers.some((answer) => answer.feature === feature);
      const seen = (again ? there : says)[feature] ?? "none";
      const drawn = states.some(({ id }) => id === seen);
      const answer = { feature, how: drawn ? "sure" : "other", states: drawn ? [seen] : [] };
      session = core.answered(session, answer);
    }
  };
  return found.map(named);
}"""


def is_it(piece: Piece, named: dict[str, Any]) -> bool:
    """Whether the app named the item and the variant, and did not say that it knows neither."""
    known = named["stop"] != "unrecorded"
    return known and (named["number"], named["variant"]) == (piece.item.number, piece.variant)


def told(found: list[Piece], named: list[dict[str, Any]], right: list[bool]) -> str:
    """What was named right, with how many questions, and what was not and why."""
    asked = sum(one["asked"] for one in named) / len(named)
    odd = sum(bool(one.odd) for one in found)
    lines = [f"{sum(right)} of {len(found)} named right with {asked:.1f} questions, {odd} odd"]
    lines += [
        f"  {one.item.number}, variant {one.variant} ({', '.join(one.odd) or 'as made'}): {name}"
        for one, name, good in zip(found, named, right, strict=True)
        if not good
    ]
    return "\n".join(lines)


@pytest.mark.heavy
def test_ten_items_are_written_down_within_twenty_minutes(browser, site, capsys):
    context = browser.new_context(**PHONE)
    page = watched(context.new_page())
    with serving(site) as server:
        page.goto(server.url)
        page.wait_for_function("() => navigator.serviceWorker.controller !== null")
    page.reload()  # from cold, with no server
    hand = Hand(page)
    more(page, "Ranges")
    hand.effort.taps += 2
    hand.reads()
    hand.presses("A range of your own")
    hand.reads()
    hand.types("What is it called?", "Ostwick")
    hand.presses("Begin")
    expect(page.get_by_role("heading", name="Ostwick", level=1)).to_be_visible()
    hand.reads()
    for place, item in enumerate(ITEMS):
        writes_down(hand, item, ITEMS[:place])
    for change in CHANGES:
        adds_change(hand, change)
    hand.taps(page.get_by_role("list", name="Written down").get_by_role("button").first)
    expect(page.get_by_label("Number")).to_be_visible()
    hand.presses("Something of your own to look at")
    hand.types("Where do you look? For example: lamp brackets", "Tail lamp")
    hand.types("What you see", "Red lens")
    page.get_by_label("Photograph it").set_input_files(photo())  # type: ignore[arg-type]
    hand.effort.taps += 2
    hand.presses("Add it")
    expect(page.get_by_role("list", name="Noted")).to_contain_text("Red lens")
    hand.presses("Another source says otherwise")
    hand.types("Made, as another book says", "1953")
    found = [one for seed in range(DRAWS) for one in pieces(random.Random(seed), DRAWN)]
    sources = len(records(page, "range_source"))
    named = page.evaluate(IDENTIFIED, [[[one.says, one.there] for one in found], sources])
    right = [is_it(one, name) for one, name in zip(found, named, strict=True)]
    seconds = hand.effort.seconds()
    with capsys.disabled():
        print(f"\nten items written down: {seconds / 60:.1f} min, {hand.effort}")
        print(told(found[:DRAWN], named[:DRAWN], right[:DRAWN]))
        print(f"of {len(found)} drawn in {DRAWS} goes: {sum(right)}")
    assert len(records(page, "range_item")) == len(ITEMS)
    assert len(records(page, "range_variant")) == sum(1 + len(one.variants) for one in ITEMS)
    assert len(records(page, "range_change")) == 2 * len(CHANGES), "before and after"
    assert [len(one["other_years"]) for one in records(page, "range_item")].count(1) == 1
    assert any(one["drawing"].startswith("data:image/") for one in records(page, "range_state"))
    assert sum(one["kit"] != "" for one in records(page, "range_feature")) >= 10
    assert seconds <= MOST
    assert any(one.odd for one in found[:DRAWN]), "some have a part swapped, or are misread"
    assert sum(right[:DRAWN]) >= RIGHT, told(found[:DRAWN], named[:DRAWN], right[:DRAWN])
    assert sum(right) >= 0.9 * len(found), told(found, named, right)
    context.close()
