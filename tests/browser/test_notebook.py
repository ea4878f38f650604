"""The notebook at a stall: with no signal, with the camera, after a killed tab."""

import re

from playwright.sync_api import expect

from tests.browser.phone import (
    asking,
    begin,
    choices,
    expect_question,
    kept_phone,
    kill,
    line,
    more_of_question,
    question,
    see,
    see_all,
    watched,
    whole_piece,
)
from tests.browser.phone_storage import (
    add_piece,
    choose,
    demo,
    fill,
    kept,
    more,
    photo,
    picture,
    place,
    records,
)


def test_from_cold_with_no_signal_a_note_with_a_photo_survives_a_killed_tab(
    playwright, own_server, tmp_path
):
    with kept_phone(playwright, tmp_path) as context:
        page = context.new_page()
        page.goto(own_server.url)
        page.wait_for_function("() => navigator.serviceWorker.controller !== null")
        demo(page)
    own_server.stop()
    with kept_phone(playwright, tmp_path) as context:
        context.set_offline(True)
        page = watched(context.new_page())
        page.goto(own_server.url)
        begin(page, "Coach")
        while asking(page):
            see(page, choices(page)[0])
        box = page.locator(".answer")
        expect(box).to_contain_text(re.compile("own|want|adds", re.IGNORECASE))
        before = box.inner_text()
        line(page, "Price").click()
        choose(page, "Condition", "as new")
        choose(page, "Box", "yes")
        fill(page, "Price asked", "£500")
        expect(box).not_to_have_text(before, use_inner_text=True)
        page.get_by_role("button", name="Close", exact=True).click()
        page.get_by_role("button", name="Save for later").click()
        expect(page.get_by_text("Note", exact=True).first).to_be_visible()
        fill(page, "Table", "77")
        fill(page, "Come back at", "after two")
        page.get_by_label("Take a photo").set_input_files(
            {"name": "a.jpg", "mimeType": "image/jpeg", "buffer": photo(page, 4000, 3000)}
        )
        expect(page.get_by_role("button", name="Photo 1")).to_be_visible(timeout=30_000)
        noted = next(n for n in records(page, "note") if n["table"] == "77")
        assert page.reported == []
        kill(page)
        page = watched(context.new_page())
        page.goto(own_server.url)
        expect(page.locator(".answer")).to_contain_text("Open your note")
        place(page, "Notebook")
        first = page.get_by_role("list", name="Notes").get_by_role("button").first
        expect(first).to_contain_text("asked £500 · back after two")
        first.click()
        expect(page.get_by_role("button", name="Photo 1")).to_be_visible()
        again = next(n for n in records(page, "note") if n["table"] == "77")
        assert again == noted
        assert (again["condition"], again["boxed"], again["asked"]["minor"]) == (
            "as new",
            "yes",
            50000,
        )
        assert again["answers"]
        (stored,) = kept(page)["photos"]
        assert (stored["width"], stored["height"]) == (1200, 1600)
        assert page.reported == []


def test_a_photo_is_kept_without_the_place_where_it_was_taken(page, server):
    page.goto(server.url)
    add_piece(page, "P 24")
    taken = photo(page, 400, 200)
    assert b"Exif" in taken
    page.get_by_label("Take a photo").set_input_files(
        {"name": "a.jpg", "mimeType": "image/jpeg", "buffer": taken}
    )
    expect(page.get_by_role("button", name="Photo 1")).to_be_visible()
    (stored,) = kept(page)["photos"]
    assert sorted(stored) == ["full", "height", "id", "small", "width"]
    for size in ("full", "small"):
        data = picture(stored[size])
        assert data[:2] == b"\xff\xd8"
        assert b"Exif" not in data
        assert b"\xff\xe1" not in data[:200]
        assert data != taken
    # held sideways, it is turned: what was at the top left comes to the top right
    assert (stored["width"], stored["height"]) == (200, 400)
    red = page.evaluate(
        """async url => {
          const bytes = Uint8Array.from(atob(url.split(",")[1]), c => c.charCodeAt(0));
          const picture = await createImageBitmap(new Blob([bytes], { type: "image/jpeg" }));
          const pen = new OffscreenCanvas(picture.width, picture.height).getContext("2d");
          pen.drawImage(picture, 0, 0);
          const at = (x, y) => [...pen.getImageData(x, y, 1, 1).data.slice(0, 3)];
          return [at(190, 10), at(10, 10)];
        }""",
        stored["full"],
    )
    assert red[0][0] > 150
    assert red[0][1] < 60
    assert min(red[1]) > 200


def test_a_file_that_is_no_picture_is_said(page, server):
    page.goto(server.url)
    add_piece(page, "P 24")
    page.get_by_label("Choose a picture").set_input_files(
        {"name": "a.jpg", "mimeType": "image/jpeg", "buffer": b"no picture"}
    )
    expect(page.get_by_role("alert")).to_contain_text("not a picture this device can read")
    assert kept(page)["photos"] == []


def test_one_tap_on_the_question_card_makes_a_note_and_back_goes_on(page, server):
    page.goto(server.url)
    begin(page, "Wagon")
    see(page, choices(page)[0])
    asked = question(page)
    more_of_question(page, "Save for later")
    expect(page.get_by_label("Price asked")).to_be_visible()
    (note,) = records(page, "note")
    assert note["of"]
    assert len(note["answers"]) == 1
    page.go_back()
    expect_question(page, asked)
    see(page, choices(page)[0])
    more_of_question(page, "Save for later")
    expect(page.get_by_label("Price asked")).to_be_visible()
    (note,) = records(page, "note")
    assert len(note["answers"]) == 2, "the same note, brought up to date"


def test_the_other_screens_are_one_tap_away_from_a_question(page, server):
    page.goto(server.url)
    begin(page, "Wagon")
    asked = question(page)
    expect(page.get_by_role("navigation")).to_have_count(0)
    page.get_by_role("button", name="Other screens").tap()
    page.get_by_role("dialog").get_by_role("button", name="Notebook").tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Notebook")
    place(page, "Wants")
    page.get_by_role("navigation").get_by_role("button", name="Identify").tap()
    expect_question(page, asked)


def test_a_note_becomes_a_piece_and_the_budget_knows(page, server):
    page.goto(server.url)
    place(page, "Notebook")
    fill(page, "Today’s budget", "£50")
    page.get_by_role("button", name="New note").click()
    fill(page, "Price asked", "£20")
    fill(page, "My offer", "17.50")
    fill(page, "Hall", "Corrick Corn Exchange")
    fill(page, "Note", "Tin station")
    page.get_by_role("button", name="Bought: add to collection").click()
    expect(page.get_by_label("Price paid")).to_have_value("17.50")
    page.get_by_role("button", name="Add to collection", exact=True).click()
    expect(page.get_by_role("alert")).to_contain_text("It is in your collection.")
    expect(page.get_by_role("heading", level=1)).to_have_text("Tin station")
    (piece,) = records(page, "piece")
    (note,) = records(page, "note")
    assert (piece["paid"]["minor"], piece["where"]) == (1750, "Corrick Corn Exchange")
    assert (note["decision"], note["piece"]) == ("bought", piece["id"])
    place(page, "Notebook")
    expect(page.get_by_text("Spent today: £17.50. Left: £32.50.")).to_be_visible()
    fill(page, "Today’s budget", "£10")
    expect(page.get_by_text("That is £7.50 over budget.")).to_be_visible()


def test_a_note_is_crossed_off_and_that_is_undone(page, server):
    page.goto(server.url)
    demo(page)
    place(page, "Notebook")
    expect(page.get_by_text("5 of 8 notes")).to_be_visible()
    page.get_by_role("list", name="Notes").get_by_role("button").first.click()
    page.get_by_role("button", name="Left it: cross it off").click()
    expect(page.get_by_role("alert")).to_contain_text("Crossed off.")
    page.get_by_role("alert").get_by_role("button", name="Undo").click()
    expect(page.get_by_role("button", name="Left it: cross it off")).to_be_visible()
    page.go_back()
    expect(page.get_by_text("5 of 8 notes")).to_be_visible()


def test_a_note_holds_the_price_against_the_limit_and_what_was_paid(page, server):
    page.goto(server.url)
    demo(page)
    add_piece(page, "43/6")
    choose(page, "Condition", "fair")
    fill(page, "Price paid", "£19")
    place(page, "Notebook")
    notes = page.get_by_role("list", name="Notes").get_by_role("button")
    notes.filter(has_text="43/6").first.click()
    main = page.get_by_role("main")
    expect(main.get_by_text("This one: £28, good, no box.")).to_be_visible()
    expect(main.get_by_text("The price is above your limit of £25.")).to_be_visible()
    expect(main.get_by_role("button", name="£19").filter(has_text="fair")).to_be_visible()


def test_the_app_stops_when_every_candidate_means_the_same(page, server, pellmarsh):
    """All variants of an item are owned: which one it is need not be found out."""
    pack = pellmarsh["pack"]
    number = "42/5"
    item = next(n for n, i in enumerate(pack["items"]) if i["number"] == number)
    names = [v["name"] for v in pack["variants"] if v["item"] == item]
    assert len(names) > 1
    page.goto(server.url)
    for name in names:
        add_piece(page, number)
        choose(page, "Variant", name[0].lower() + name[1:])
        choose(page, "Condition", "as new")
    place(page, "Identify")
    page.get_by_role("searchbox").fill(number)
    page.get_by_role("list", name="Found").get_by_role("button").first.click()
    expect(page.get_by_role("heading", level=1)).to_contain_text(number)
    expect(page.locator(".pill")).to_have_text("In your collection")
    expect(page.get_by_role("button", name="Keep asking")).to_be_visible()


def test_the_verdict_says_why_with_condition_box_and_price(page, server):
    page.goto(server.url)
    for place_in_list in (1, 2):
        add_piece(page, "G 28")
        name = page.get_by_label("Variant").locator("option").nth(place_in_list).inner_text()
        choose(page, "Variant", name)
        choose(page, "Condition", "fair")
        choose(page, "Box", "no")
        fill(page, "Price paid", "£6")
        fill(page, "When", "2019")
    place(page, "Identify")
    page.get_by_role("searchbox").fill("G 28")
    page.get_by_role("list", name="Found").get_by_role("button").first.click()
    top = page.locator(".pill")
    sheet = page.get_by_role("dialog")
    expect(top).to_have_text("In your collection")
    line(page, "Yours or wanted").click()
    expect(sheet).to_contain_text("fair, no box; bought for £6, 2019")
    sheet.get_by_role("button", name="Close", exact=True).click()
    line(page, "Price").click()
    choose(page, "Condition", "excellent")
    expect(top).to_have_text("Better than yours")
    expect(line(page, "Yours or wanted")).to_have_accessible_name(
        re.compile("Whichever it is, it’s better than yours")
    )
    choose(page, "Condition", "poor")
    expect(top).to_have_text("In your collection")
    expect(sheet).to_contain_text("The one in your hand is not better.")
    sheet.get_by_role("button", name="Close", exact=True).click()
    line(page, "Yours or wanted").click()
    sheet.get_by_role("button", name="Add to wants").click()
    fill(page, "Most to pay", "£5")
    page.get_by_role("navigation").get_by_role("button", name="Identify").click()
    line(page, "Price").click()
    fill(page, "Price asked", "£8")
    expect(sheet).to_contain_text("The price is above your limit of £5.")
    expect(line(page, "Price")).to_contain_text("£8, above your limit")
    fill(page, "Price asked", "£4")
    expect(sheet).to_contain_text("The price is within your limit of £5.")
    expect(line(page, "Price")).to_contain_text("£4, within your limit")


def test_an_identified_piece_goes_into_the_collection_with_its_answers(page, server, pellmarsh):
    page.goto(server.url)
    begin(page, "Wagon")
    see_all(page, pellmarsh["pack"], whole_piece(pellmarsh["pack"], "wagon", 13))
    page.get_by_role("button", name="Add to collection").click()
    expect(page.get_by_role("alert")).to_contain_text("It is in your collection.")
    (piece,) = records(page, "piece")
    assert piece["answers"]
    assert abs(sum(one["chance"] for one in piece["of"]) - 1) < 0.2
    page.get_by_text("What you saw when you identified it").click()
    page.go_back()
    expect(page.get_by_role("button", name="Open it in the collection")).to_be_visible()
    page.get_by_role("button", name="Open it in the collection").click()
    assert len(records(page, "piece")) == 1
    more(page, "History")
    expect(page.get_by_text("Added to collection")).to_be_visible()
