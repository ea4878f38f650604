"""The collection, wants, duplicates, sets, search and paper, on the phone."""

import re

import orjson
import pytest
from playwright.sync_api import expect

from identify.phone import DEMO
from tests.browser.many_pieces import bring_many
from tests.browser.phone import PHONE, watched
from tests.browser.phone_storage import (
    add_piece,
    choose,
    demo,
    fill,
    kept,
    more,
    place,
    records,
    saved,
)

WHERE_IT_IS_TAPPED = """() => document.addEventListener("click", ({ target }) => {
  window.tapped = target.closest("li").getBoundingClientRect().top;
}, { capture: true, once: true })"""
IS_WHERE_IT_WAS = """(place) => {
  const row = document.querySelectorAll(".rows > li")[place];
  return row !== undefined && Math.abs(row.getBoundingClientRect().top - window.tapped) < 5;
}"""


def test_the_demo_is_offered_and_taken_away_again(page, server):
    page.goto(server.url)
    demo(page)
    made = orjson.loads(DEMO.read_bytes())["records"]
    assert sorted(r["id"] for r in kept(page)["records"]) == sorted(r["id"] for r in made)
    more(page, "Bin")
    expect(page.get_by_role("main").get_by_text("Nothing is in the bin.")).to_be_visible()
    place(page, "More")
    page.get_by_role("button", name="Remove the demo collection").click()
    expect(page.get_by_role("alert")).to_contain_text("in the bin")
    place(page, "Collection")
    expect(page.get_by_role("main").get_by_text("0 pieces.")).to_be_visible()
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_role("main").get_by_text("100 pieces.")).to_be_visible()


def test_the_demo_names_only_what_is_in_the_packs(site):
    for record in orjson.loads(DEMO.read_bytes())["records"]:
        pack = orjson.loads(site[f"packs/{record['pack']}.json"])
        items = {item["number"] for item in pack["items"]}
        variants = {variant["id"] for variant in pack["variants"]}
        named = [entry["variant"] for entry in record.get("of", [])]
        named += [record["variant"]] if record.get("variant") else []
        assert set(named) <= variants
        assert record.get("item", "") in {"", *items}
        assert {entry["item"] for entry in record.get("of", []) if "item" in entry} <= items


def test_starting_empty_is_not_asked_twice(page, server):
    page.goto(server.url)
    page.get_by_role("button", name="Start empty").click()
    expect(page.get_by_role("button", name="Start empty")).to_have_count(0)
    page.reload()
    expect(page.get_by_role("heading", level=1)).to_have_text("What have you got?")
    expect(page.get_by_role("button", name="Start empty")).to_have_count(0)


def test_a_piece_is_written_down_and_every_field_is_saved_by_itself(page, server):
    page.goto(server.url)
    add_piece(page, "P 21")
    choose(page, "Variant", "blue, metal horns")
    choose(page, "Condition", "very good")
    choose(page, "Box", "yes")
    choose(page, "Condition of the box", "fair")
    fill(page, "Price paid", "12/6")
    fill(page, "Where it was bought", "Quarle Town Hall")
    fill(page, "When", "3 May 1998")
    fill(page, "Notes", "Runs well.")
    page.get_by_text("Parts, and what it is kept for").click()
    page.get_by_role("group", name="Replaced parts").get_by_label("Coupling").check()
    expect(page.get_by_role("group", name="Replaced parts")).to_contain_text("Saved")
    page.reload()
    (piece,) = records(page, "piece")
    assert piece["of"] == [{"variant": "p21_d", "chance": 1}]
    assert (piece["condition"], piece["boxed"], piece["box_condition"]) == (
        "very good", "yes", "fair",
    )  # fmt: skip
    assert piece["paid"] == {"minor": 62, "over": 24, "currency": "GBP", "typed": "12/6"}
    assert (piece["where"], piece["when"], piece["notes"]) == (
        "Quarle Town Hall", "1998-05-03", "Runs well.",
    )  # fmt: skip
    assert piece["replaced"] == ["coupling"]
    place(page, "Collection")
    expect(page.get_by_role("list", name="Pieces")).to_contain_text(
        "very good, box fair · £0.63 (12/6)"
    )


@pytest.mark.parametrize(
    ("label", "text", "sentence"),
    [
        ("Price paid", "cheap", "One of its words is not a currency"),
        ("Price paid", "£", "There is no amount in it"),
        ("Price paid", "1.234", "more than one way"),
        ("Price paid", "£5 or €6", "Not saved"),
        ("When", "last Tuesday", "That date cannot be read. Write it like"),
        ("When", "31 February 2001", "February 2001 has 28 days"),
        ("When", "1961 to 1957", "It ends before it begins"),
    ],
)
def test_what_cannot_be_read_is_said_and_not_saved(page, server, label, text, sentence):
    page.goto(server.url)
    add_piece(page, "G 25")
    before = records(page, "piece")
    box = page.get_by_label(label, exact=True)
    box.fill(text)
    box.blur()
    expect(page.get_by_role("main").get_by_text(sentence)).to_be_visible()
    expect(box).to_have_attribute("aria-invalid", "true")
    expect(box).to_have_value(text)
    assert records(page, "piece") == before


def test_a_date_stands_there_as_it_was_understood(page, server):
    page.goto(server.url)
    add_piece(page, "G 25")
    for typed, shown, edtf in (
        ("3/5/1998", "3 May 1998", "1998-05-03"),
        ("spring 1957", "spring 1957", "1957-21"),
        ("c. 1957?", "perhaps about 1957", "1957%"),
        ("", "", ""),
    ):
        fill(page, "When", typed)
        expect(page.get_by_label("When", exact=True)).to_have_value(shown)
        assert records(page, "piece")[0]["when"] == edtf


def test_what_is_being_typed_is_saved_when_the_screen_is_left(page, server):
    page.goto(server.url)
    add_piece(page, "G 25")
    page.get_by_label("Notes").fill("Not yet left")
    place(page, "Wants")
    assert records(page, "piece")[0]["notes"] == "Not yet left"


def test_an_uncertain_piece_stays_uncertain_until_it_is_settled(page, server):
    page.goto(server.url)
    demo(page)
    page.get_by_label("Search the collection").fill("horns were off")
    page.get_by_role("list", name="Pieces").get_by_role("button").click()
    before = next(r for r in records(page, "piece") if "horns were off" in r["notes"])
    assert len(before["of"]) == 2
    page.get_by_role("button", name=re.compile("It is this one")).last.click()
    expect(page.get_by_role("button", name=re.compile("It is this one"))).to_have_count(0)
    after = next(r for r in records(page, "piece") if r["id"] == before["id"])
    assert after["of"] == [{"variant": before["of"][1]["variant"], "chance": 1}]
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_role("button", name=re.compile("It is this one"))).to_have_count(2)


def test_the_collection_is_searched_filtered_sorted_and_added_up(page, server):
    page.goto(server.url)
    demo(page)
    made = [r for r in orjson.loads(DEMO.read_bytes())["records"] if r["type"] == "piece"]
    paid = sum(48 * r["paid"]["minor"] + r["paid"].get("over", 0) for r in made if r["paid"]) / 4800
    expect(page.get_by_role("main").get_by_text(f"Paid £{paid:,.2f} for")).to_be_visible()
    page.get_by_text("Filter and sort").click()
    page.get_by_label("Condition", exact=True).select_option("excellent")
    count = len([r for r in made if r["condition"] == "excellent"])
    expect(page.get_by_role("main").get_by_text(f"{count} of 100 pieces.")).to_be_visible()
    page.get_by_label("Condition", exact=True).select_option("")
    page.get_by_label("Kept as", exact=True).select_option("donor")
    expect(page.get_by_role("list", name="Pieces").get_by_role("listitem")).to_have_count(1)
    page.get_by_label("Kept as", exact=True).select_option("")
    page.get_by_label("Sort", exact=True).select_option("paid")
    dearest = max((r for r in made if r["paid"]), key=lambda r: r["paid"]["minor"])
    first = page.get_by_role("list", name="Pieces").get_by_role("button").first
    expect(first).to_contain_text(dearest["item"])
    page.get_by_label("Search the collection").fill("wheel coal")
    expect(page.get_by_role("main").get_by_text("0 of 100 pieces.")).to_be_visible()
    page.get_by_label("Search the collection").fill("COAL train")
    expect(page.get_by_role("main").get_by_text("2 of 100 pieces.")).to_be_visible()
    page.get_by_label("Search the collection").fill("")
    page.get_by_label("Sort", exact=True).select_option("number")


def test_back_returns_to_the_same_place_of_a_long_list(page, server):
    page.goto(server.url)
    demo(page)
    button = page.get_by_role("list", name="Pieces").get_by_role("button").nth(35)
    button.scroll_into_view_if_needed()
    before = page.evaluate("scrollY")
    assert before > 1000
    button.click()
    expect(page.get_by_role("heading", level=1)).not_to_have_text("Collection")
    page.go_back()
    expect(page.get_by_role("heading", level=1)).to_have_text("Collection")
    page.wait_for_function("y => Math.abs(scrollY - y) < 5", arg=before)


def test_duplicates_are_derived_and_those_kept_on_purpose_are_not(page, server):
    page.goto(server.url)
    demo(page)
    more(page, "Duplicates")
    expect(page.get_by_role("main").get_by_text("9 to part with.")).to_be_visible()
    page.get_by_label("What to ask").first.fill("£11")
    page.get_by_label("What to ask").first.blur()
    expect(page.locator(".saved").filter(has_text="Saved")).to_have_count(1)
    page.get_by_role("button", name=re.compile("^Keep both")).first.click()
    expect(page.get_by_role("main").get_by_text("8 to part with.")).to_be_visible()
    page.get_by_role("alert").get_by_role("button", name="Undo").click()
    expect(page.get_by_role("main").get_by_text("9 to part with.")).to_be_visible()
    page.get_by_label("What counts as the same").select_option("item")
    expect(page.get_by_role("main").get_by_text(re.compile(r"\d\d to part with"))).to_be_visible()


def test_a_want_is_written_down_shared_and_printed(browser, server):
    context = browser.new_context(**PHONE)
    page = watched(context.new_page())
    page.goto(server.url)
    context.grant_permissions(["clipboard-read", "clipboard-write"], origin=server.url.rstrip("/"))
    place(page, "Wants")
    page.get_by_role("button", name="Add a want").click()
    page.get_by_label("Number or name").fill("43/6")
    page.get_by_role("list", name="Found").get_by_role("button").first.click()
    choose(page, "Lowest condition", "good")
    page.get_by_label("Only with its box").check()
    expect(page.get_by_role("group", name="Box")).to_contain_text("Saved")
    fill(page, "Most to pay", "£25")
    choose(page, "How urgent", "3")
    (want,) = records(page, "want")
    assert (want["item"], want["variant"], want["least"], want["box"], want["urgency"]) == (
        "43/6", "", "good", "yes", 3,
    )  # fmt: skip
    page.go_back()
    expect(page.get_by_role("list", name="Wants")).to_contain_text(
        "urgent · at least good · with its box · up to £25"
    )
    page.evaluate("Object.defineProperty(navigator, 'share', { value: undefined })")
    page.get_by_role("button", name="Share as text").click()
    expect(page.get_by_role("alert")).to_contain_text("Copied")
    assert page.evaluate("navigator.clipboard.readText()") == (
        "Wanted:\n- 43/6 Dining car, long: "
        "any variant, urgent, at least good, with its box, up to £25\n"
    )
    assert page.reported == []
    context.close()


@pytest.mark.parametrize(
    ("where", "button", "sheets"),
    [("Wants", "Print", 1), ("Duplicates", "Print", 1), ("Collection", "Print for insurance", 6)],
)
def test_paper_shows_the_list_and_no_controls(page, server, where, button, sheets):
    page.goto(server.url)
    demo(page)
    if where == "Duplicates":
        more(page, where)
    else:
        place(page, where)
    page.get_by_role("main").get_by_role("button", name=button, exact=True).click()
    expect(page.get_by_role("table")).to_be_visible()
    page.emulate_media(media="print")
    expect(page.get_by_role("button")).to_have_count(0)
    expect(page.get_by_role("table")).to_be_visible()
    paper = page.pdf(format="A4")
    assert 1 <= len(re.findall(rb"/Type /Page\b", paper)) <= sheets


def test_what_is_missing_from_a_set_can_be_wanted(page, server):
    page.goto(server.url)
    demo(page)
    more(page, "Sets and trains")
    page.get_by_role("button", name="Want it: G 52 Starter van").click()
    expect(page.get_by_role("button", name="Wanted: G 52 Starter van")).to_be_visible()
    assert [w["item"] for w in records(page, "want") if w["item"] == "G 52"] == ["G 52"]


def test_everything_is_found_by_any_word(page, server):
    page.goto(server.url)
    demo(page)
    more(page, "Search everything")
    page.get_by_label("Search for").fill("corrick corn")
    expect(page.get_by_role("heading", name=re.compile("^Collection"))).to_be_visible()
    expect(page.get_by_role("heading", name=re.compile("^Notebook"))).to_be_visible()
    page.get_by_label("Search for").fill("wrenthwaite")
    expect(page.get_by_role("heading", name="Wants (1)")).to_be_visible()


def test_five_thousand_pieces_are_drawn_a_slice_at_a_time(page, server, tmp_path):
    page.goto(server.url)
    bring_many(page, tmp_path, 5000)
    place(page, "Collection")
    expect(page.get_by_role("main").get_by_text("5000 pieces.")).to_be_visible()
    rows = page.get_by_role("list", name="Pieces").get_by_role("listitem")
    expect(rows).to_have_count(40)
    page.evaluate("scrollTo(0, document.body.scrollHeight)")
    page.wait_for_function("() => document.querySelectorAll('.rows li').length > 40")
    assert rows.count() < 400
    page.evaluate("scrollTo(0, document.body.scrollHeight)")
    page.wait_for_function("() => document.querySelectorAll('.rows li').length > 80")
    far = rows.nth(75)
    far.scroll_into_view_if_needed()
    page.evaluate(WHERE_IT_IS_TAPPED)
    drawn = rows.count()
    far.get_by_role("button").click()
    expect(page.get_by_label("Notes")).to_be_visible()
    page.go_back()
    expect(page.get_by_role("heading", level=1)).to_have_text("Collection")
    page.wait_for_function(IS_WHERE_IT_WAS, arg=75)
    page.wait_for_function("n => document.querySelectorAll('.rows button').length >= n", arg=drawn)
    expect(page.locator(".rows > li[aria-hidden]")).to_have_count(0)
    assert page.evaluate(IS_WHERE_IT_WAS, 75), "what came after it has moved it"
    page.get_by_label("Search the collection").fill("coal train")
    expect(page.get_by_role("main").get_by_text("100 of 5000 pieces.")).to_be_visible()


def test_nothing_is_said_to_be_saved_before_it_is(page, server):
    """The mark comes with the write: whenever it shows, the value is in the storage."""
    page.goto(server.url)
    add_piece(page, "P 24")
    for n in range(20):
        page.get_by_label("Notes").fill(f"note {n}")
        page.get_by_label("Notes").blur()
        expect(saved(page, "Notes")).to_have_text("Saved")
        assert records(page, "piece")[0]["notes"] == f"note {n}"


@pytest.mark.parametrize("text", ["P 20", "p20", "p 20 "])
def test_a_number_finds_just_the_pieces_that_bear_it(page, server, text):
    page.goto(server.url)
    demo(page)
    made = [r for r in orjson.loads(DEMO.read_bytes())["records"] if r["type"] == "piece"]
    count = len([r for r in made if r["item"].replace(" ", "").startswith("P20")])
    assert count > 1
    page.get_by_label("Search the collection").fill(text)
    expect(page.get_by_role("main").get_by_text(f"{count} of 100 pieces.")).to_be_visible()


def test_a_piece_that_may_be_of_two_items_names_both_and_takes_the_one_chosen(page, server):
    page.goto(server.url)
    demo(page)
    page.get_by_label("Search the collection").fill("horns were off")
    page.get_by_role("list", name="Pieces").get_by_role("button").click()
    piece = next(r for r in records(page, "piece") if "horns were off" in r["notes"])
    page.evaluate(
        """async ([id, of]) => {
          const database = await new Promise(r => {
            const request = indexedDB.open("identify");
            request.onsuccess = () => r(request.result);
          });
          const store = database.transaction("records", "readwrite").objectStore("records");
          const piece = await new Promise(r => (store.get(id).onsuccess = e => r(e.target.result)));
          await new Promise(r => (store.put({ ...piece, of }).onsuccess = r));
          database.close();
        }""",
        [piece["id"], [piece["of"][0], {"variant": "c43_1_a", "chance": 0.2}]],
    )
    page.reload()
    expect(page.get_by_role("heading", level=1)).to_contain_text("or another number")
    page.get_by_role("button", name="It is this one: 43/1 ").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("43/1 Corridor coach, long")
    after = next(r for r in records(page, "piece") if r["id"] == piece["id"])
    assert (after["item"], after["of"]) == ("43/1", [{"variant": "c43_1_a", "chance": 1}])
