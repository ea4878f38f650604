"""The minute at the stall: keys of our own, the camera first, several pieces, the day of a meet."""

import re

from playwright.sync_api import Page, expect

from tests.browser.phone import (
    asking,
    begin,
    choices,
    expect_question,
    line,
    more_of_question,
    question,
    see,
    see_all,
    whole_piece,
)
from tests.browser.phone_storage import demo, fill, photo, place, records, saved


def key(page: Page, *signs: str) -> None:
    """Tap the keys that the app itself shows."""
    for sign in signs:
        page.locator(".keypad").get_by_role("button", name=sign, exact=True).tap()


def test_a_number_is_typed_with_keys_that_the_range_needs(page, server, pellmarsh):
    page.goto(server.url)
    demo(page)
    place(page, "Identify")
    page.get_by_role("searchbox").tap()
    expect(page.locator(".keypad")).to_be_visible()
    keys = page.locator(".keypad .key").all_inner_texts()
    numbers = "".join(item["number"] for item in pellmarsh["pack"]["items"])
    assert set("0123456789") < set(keys)
    assert {sign for sign in keys if sign.isalpha() and len(sign) == 1} == {
        sign for sign in numbers if sign.isalpha()
    }
    page.wait_for_function("() => document.activeElement.inputMode === 'none'")
    key(page, "G", "1", "1")
    expect(page.get_by_role("searchbox")).to_have_value("G11")
    found = page.get_by_role("list", name="Found").get_by_role("button")
    expect(found.filter(has_text="G 11 ").first).to_contain_text("Yours: ")
    key(page, "Delete the last", "Delete the last", "2", "1")
    hit = found.filter(has_text="G 21 ").first
    owned = [one for one in records(page, "piece") if one["item"] == "G 21"]
    expect(hit).to_contain_text(f"Yours: {len(owned)}")
    expect(hit.locator("svg.portrait")).to_be_visible()
    hit.tap()
    expect(page.locator(".strip, .answer")).to_contain_text("G 21")
    expect(page.locator(".keypad")).to_have_count(0)


def test_what_is_found_says_up_to_which_price_it_is_wanted(page, server):
    page.goto(server.url)
    demo(page)
    want = next(one for one in records(page, "want") if one["most"] and one["pack"] == "pellmarsh")
    place(page, "Identify")
    page.get_by_role("searchbox").fill(want["item"])
    hit = page.get_by_role("list", name="Found").get_by_role("button")
    named = hit.filter(has=page.locator("strong", has_text=re.compile(f"^{want['item']} "))).first
    expect(named).to_contain_text(re.compile(r"on your list up to £\d"))


def test_all_letters_are_a_key_away(page, server):
    page.goto(server.url)
    page.get_by_role("searchbox").tap()
    key(page, "All letters")
    expect(page.locator(".keypad")).to_have_count(0)
    page.wait_for_function("() => document.activeElement.inputMode !== 'none'")
    page.keyboard.type("coach")
    expect(page.get_by_role("list", name="Found")).to_be_visible()


def test_camera_first_then_the_price_by_keys_and_identified_later(page, server):
    page.goto(server.url)
    page.get_by_label("Photo for later").set_input_files(
        {"name": "a.jpg", "mimeType": "image/jpeg", "buffer": photo(page, 400, 300)}
    )
    expect(page.get_by_label("Price asked")).to_be_focused()
    key(page, "1", "2", ".", "5")
    key(page, "Next")
    expect(page.get_by_label("Table")).to_be_focused()
    key(page, "1", "4", "B", "Next")
    expect(page.get_by_label("My offer")).to_be_focused()
    key(page, "1", "0")
    expect(page.locator(".keypad").get_by_role("button", name="Next", exact=True)).to_have_count(0)
    key(page, "Done")
    expect(page.locator(".keypad")).to_have_count(0)
    expect(saved(page, "My offer")).to_have_text("Saved")
    (note,) = records(page, "note")
    assert (note["asked"]["minor"], note["offer"]["minor"], note["table"]) == (1250, 1000, "14B")
    assert len(note["photos"]) == 1
    page.get_by_role("button", name="Identify it").click()
    expect_question(page, "What kind of piece is it?")
    expect(page.get_by_role("button", name="Your photo")).to_be_visible()
    see(page, "Wagon")
    page.get_by_role("button", name="Your photo").click()
    expect(page.get_by_role("dialog").locator("img.full")).to_be_visible()
    page.get_by_role("button", name="Close", exact=True).click()
    more_of_question(page, "Save for later")
    expect(page.get_by_role("button", name="Go on identifying")).to_be_visible()
    (again,) = records(page, "note")
    assert again["id"] == note["id"]
    assert again["photos"] == note["photos"]
    assert len(again["answers"]) == 1


def swipe(page: Page, far: int) -> None:
    """A finger drawn so far to the left across the screen, through the browser's own input."""
    client = page.context.new_cdp_session(page)
    send = lambda kind, points: client.send(  # noqa: E731
        "Input.dispatchTouchEvent", {"type": kind, "touchPoints": points}
    )
    send("touchStart", [{"x": 310, "y": 120}])
    for step in range(1, 6):
        send("touchMove", [{"x": 310 - far * step / 5, "y": 120}])
    send("touchEnd", [])
    client.detach()


def test_no_piece_is_dropped_and_each_goes_on_where_it_was(page, server):
    page.goto(server.url)
    begin(page, "Coach")
    see(page, choices(page)[0])
    first = question(page)
    more_of_question(page, "Next piece")
    begin(page, "Wagon")
    see(page, choices(page)[1])
    second = question(page)
    more_of_question(page, "1 other piece at hand")
    page.get_by_role("dialog").locator(".hit").first.click()
    expect_question(page, first)
    page.reload()
    expect_question(page, first)
    more_of_question(page, "1 other piece at hand")
    page.get_by_role("dialog").locator(".hit").first.click()
    expect_question(page, second)
    more_of_question(page, "1 other piece at hand")
    page.get_by_role("button", name="Clear them all").click()
    page.get_by_role("alert").get_by_role("button", name="Undo").click()
    more_of_question(page, "1 other piece at hand")
    expect(page.get_by_role("dialog").locator(".hit")).to_have_count(1)
    page.get_by_role("dialog").get_by_role("button", name="Close", exact=True).click()
    swipe(page, 60)
    expect_question(page, second)
    swipe(page, 250)
    expect_question(page, first)
    swipe(page, 250)
    expect_question(page, second)


def test_the_next_of_a_box_keeps_kind_hall_and_table(page, server, pellmarsh):
    page.goto(server.url)
    demo(page)
    place(page, "Identify")
    begin(page, "Wagon")
    asked = question(page)
    see_all(page, pellmarsh["pack"], whole_piece(pellmarsh["pack"], "wagon", 13))
    page.get_by_role("button", name="Save for later").click()
    fill(page, "Hall", "Corn Exchange")
    fill(page, "Table", "9")
    page.get_by_role("button", name="Next from the same box").click()
    expect_question(page, asked)
    while asking(page):
        see(page, choices(page)[1])
    page.get_by_role("button", name="Save for later").click()
    expect(page.get_by_label("Table")).to_have_value("9")
    expect(page.get_by_label("Hall")).to_have_value("Corn Exchange")
    page.get_by_role("button", name="Next from the same box").click()
    expect_question(page, asked)
    see_all(page, pellmarsh["pack"], whole_piece(pellmarsh["pack"], "wagon", 13))
    page.get_by_role("button", name="Save, next in box").click()
    expect_question(page, asked)
    here = [note for note in records(page, "note") if note["hall"] == "Corn Exchange"]
    assert sum(note["table"] == "9" for note in here) == 3
    more_of_question(page, "3 other pieces at hand")
    sheet = page.get_by_role("dialog")
    expect(sheet.locator(".hit")).to_have_count(3)
    expect(sheet.locator("h3").first).to_have_text(
        re.compile("Worth buying|Not in your collection|Look closer|In your collection")
    )


def test_what_was_told_of_a_piece_goes_with_it(page, server):
    """An Undo of an earlier piece never stands on the next one."""
    page.goto(server.url)
    begin(page, "Wagon")
    while asking(page):
        see(page, choices(page)[0])
    page.get_by_role("button", name="Add to collection").click()
    expect(page.get_by_role("alert")).to_contain_text("It is in your collection.")
    page.get_by_role("navigation").get_by_role("button", name="Identify").click()
    expect(page.locator(".answer")).to_be_visible()
    expect(page.get_by_role("alert")).to_have_count(0)


def test_the_price_is_held_against_the_limit_as_soon_as_it_is_typed(page, server):
    page.goto(server.url)
    demo(page)
    place(page, "Notebook")
    notes = page.get_by_role("list", name="Notes").get_by_role("button")
    notes.filter(has_text="43/6").first.click()
    expect(page.get_by_text("The price is above your limit of £25.")).to_be_visible()
    fill(page, "Price asked", "£20")
    expect(page.get_by_text("The price is within your limit of £25.")).to_be_visible()


def noted(page: Page, **fields: str) -> None:
    """A note made in the notebook, with these fields."""
    place(page, "Notebook")
    page.get_by_role("button", name="New note").click()
    expect(page.get_by_label("Price asked")).to_be_visible()
    for name, text in fields.items():
        fill(page, name.replace("_", " "), text)


def test_the_day_of_a_meet(page, server):
    page.clock.install(time="2026-05-02T09:00:00")
    page.goto(server.url)
    noted(page, Hall="Hall B", Note="Tin station", Table="3", Come_back_at="14:30")
    noted(page, Hall="Hall A", Note="Green van", My_offer="£10", Price_asked="£12")
    noted(page, Hall="Hall B", Note="Red crane", Come_back_at="11.15", My_offer="£20")
    place(page, "Notebook")
    page.get_by_role("button", name="New note").click()
    expect(page.get_by_label("Price asked")).to_be_visible()
    page.go_back()
    expect(page.get_by_text("3 of 3 notes")).to_be_visible()
    fill(page, "Today’s budget", "£50")
    expect(page.locator(".spent")).to_have_text(
        "Nothing spent today. Left: £50. Open offers: £30. If all are taken: Left: £20."
    )
    shown = page.get_by_role("list", name="Notes")
    expect(shown.locator(".day")).to_have_text(["Today, Hall A", "Today, Hall B"])
    titles = shown.get_by_role("button").locator("strong")
    expect(titles).to_have_text(["Green van", "Red crane", "Tin station"])
    page.clock.fast_forward("02:16:00")
    alert = page.get_by_role("alert")
    expect(alert).to_contain_text("11.15: come back to Red crane at Hall B.")
    alert.get_by_role("button", name="Open the note").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Red crane")


def test_the_evening_settles_what_is_open(page, server):
    page.goto(server.url)
    noted(page, Note="Green van", My_offer="£10", Price_asked="£12")
    noted(page, Note="Red crane")
    place(page, "Notebook")
    page.get_by_role("button", name="Settle the day").click()
    sheet = page.get_by_role("dialog")
    sheet.get_by_role("button", name="Bought: Green van").click()
    expect(sheet.get_by_label("Price paid")).to_have_value("£10")
    sheet.get_by_label("Price paid").fill("9.50")
    sheet.get_by_role("button", name="Add to collection").click()
    expect(sheet.get_by_role("button", name="Bought: Green van")).to_have_count(0)
    sheet.get_by_role("button", name="Left it: Red crane").click()
    expect(sheet).to_contain_text("Everything from today is settled.")
    (piece,) = records(page, "piece")
    assert piece["paid"]["minor"] == 950
    assert sorted(n["decision"] for n in records(page, "note")) == ["bought", "left"]


def test_a_piece_taken_up_again_says_from_when_it_is(page, server):
    page.clock.install(time="2026-05-02T09:00:00")
    page.goto(server.url)
    begin(page, "Coach")
    page.clock.set_system_time("2026-05-09T09:00:00")
    page.reload()
    expect(page.get_by_role("alert")).to_contain_text("You began this piece on 2 May 2026")


def test_the_price_stands_in_the_answer(page, server):
    page.goto(server.url)
    begin(page, "Wagon")
    while asking(page):
        see(page, choices(page)[0])
    expect(line(page, "Price")).to_have_accessible_name("Price: What is asked?")
    line(page, "Price").click()
    fill(page, "Price asked", "£8")
    expect(line(page, "Price")).to_contain_text("£8")
