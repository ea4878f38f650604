"""Ranges come as files and as new versions; what a person keeps follows."""

import hashlib
from pathlib import Path

import orjson
import pytest
from playwright.sync_api import Page, expect

from identify import phone
from identify.reference.compile import compile_pack
from identify.reference.compiled import pack_bytes
from tests.browser.phone import (
    asking,
    begin,
    choices,
    choose_range,
    expect_read,
    see,
    violations,
)
from tests.browser.phone_storage import add_piece, kept, more, place
from tests.reference.small_pack import RANGE, small_files, write


@pytest.fixture
def page(small_phone: Page) -> Page:
    return small_phone


def test_holdings_follow_a_new_number_and_keep_what_is_gone(page, folder, small_server):
    page.wait_for_function("() => navigator.serviceWorker.controller !== null")
    for number in ("P1", "S 1"):
        add_piece(page, number)
    for name in ("items.csv", "variants.csv", "changes.csv"):
        lines = (folder / name).read_text().replace("P1", "P1 L").splitlines()
        kept_lines = [line for line in lines if not line.startswith(("S 1,", "s1,"))]
        (folder / name).write_text("\n".join([*kept_lines, ""]))
    (folder / "moves.csv").write_text("what,from,to,note\nitem,P1,P1 L,\n")
    small_server.files = phone.site([folder])
    small_server.stop()
    small_server.start()
    page.evaluate("navigator.serviceWorker.ready.then(r => r.update())")
    expect(page.get_by_text("A new version is ready: see Settings")).to_be_visible()
    more(page, "Settings")
    with page.expect_navigation():
        page.get_by_role("button", name="Use it now").click()
    expect(page.get_by_role("navigation")).to_be_visible()
    expect(page.get_by_role("alert")).to_contain_text(
        "Small has changed: 1 record of yours now has its new number"
    )
    expect(page.get_by_role("alert")).to_contain_text(
        "1 record of yours points to what is no longer in it"
    )
    numbers = sorted(one["item"] for one in kept(page)["records"])
    assert numbers == ["P1 L", "S 1"]
    page.get_by_role("button", name="Look at them").click()
    expect(page.get_by_role("heading", name="Changed numbers in Small")).to_be_visible()
    expect(page.get_by_role("list", name="Moved")).to_contain_text("P1 L Tank engine")
    assert violations(page) == []
    page.get_by_role("button", name="Choose again: S 1").click()
    page.get_by_label("Number or name").fill("P2")
    found = page.get_by_role("list", name="Found")
    found.get_by_role("button", name="P2 Brake coach").click()
    found.get_by_role("button", name="Some variant of it").click()
    expect(page.get_by_role("list", name="No longer in the range")).to_have_count(0)
    assert sorted(one["item"] for one in kept(page)["records"]) == ["P1 L", "P2"]
    place(page, "More")
    page.get_by_role("button", name="History").click()
    page.get_by_role("button", name="Undo this: Changed numbers in Small").click()
    expect(page.get_by_role("alert")).to_contain_text("Undone")
    assert sorted(one["item"] for one in kept(page)["records"]) == ["P1", "P2"]


def give(page: Page, name: str, content: bytes) -> None:
    page.get_by_label("Add a range from a file").set_input_files(
        {"name": name, "mimeType": "application/json", "buffer": content}
    )


def test_a_range_comes_as_a_file_and_as_a_newer_file_and_goes_again(page, tmp_path):
    other = write(
        tmp_path / "club", {**small_files(), "range.toml": RANGE.replace("Small", "Club")}
    )
    pack = other.rename(other.parent / "club")
    first = pack_bytes(compile_pack(pack))
    (pack / "moves.csv").write_text("what,from,to,note\nitem,P1,P7,\n")
    for name in ("items.csv", "variants.csv", "changes.csv"):
        (pack / name).write_text((pack / name).read_text().replace("P1", "P7"))
    second = pack_bytes(compile_pack(pack))

    more(page, "Ranges")
    give(page, "club.json", first)
    expect(page.get_by_role("alert")).to_contain_text("Club is added.")
    expect(page.get_by_role("heading", name="Club")).to_be_visible()
    page.reload()
    expect(page.get_by_role("heading", name="Club")).to_be_visible()
    place(page, "Collection")
    page.get_by_role("button", name="Add a piece").click()
    page.get_by_label("Range", exact=True).select_option("club")
    page.get_by_label("Number or name").fill("P1")
    page.get_by_role("list", name="Found").get_by_role("button").first.click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("P1 Tank engine")

    more(page, "Ranges")
    give(page, "newer.json", second)
    expect(page.get_by_role("alert")).to_contain_text("Club has changed: 1 record of yours now has")
    assert [one["item"] for one in kept(page)["records"]] == ["P7"]
    with page.expect_download() as download:
        page.get_by_role("button", name="Share Club").click()
    assert Path(download.value.path()).read_bytes() == second, "it can be handed on to the byte"
    more(page, "Ranges")
    page.get_by_role("button", name="Remove Club").click()
    expect(page.get_by_role("heading", name="Club")).to_have_count(0)
    assert [one["item"] for one in kept(page)["records"]] == ["P7"], "what was kept of it stays"
    page.get_by_role("button", name="Put it back").click()
    expect(page.get_by_role("heading", name="Club")).to_be_visible()
    place(page, "Identify")
    choose_range(page, "Club")
    begin(page, "Locomotive")
    expect(page.locator(".states button")).not_to_have_count(0)


def test_a_newer_file_and_the_piece_at_hand(page, tmp_path):
    """What it was is still what it is, wherever it stands in the newer range."""
    text = {**small_files(), "range.toml": RANGE.replace("Small", "Club")}
    pack = write(tmp_path / "made", text)
    pack = pack.rename(pack.parent / "club")
    first = pack_bytes(compile_pack(pack))
    for name in ("items.csv", "variants.csv"):
        head, *lines = (pack / name).read_text().splitlines()
        (pack / name).write_text("\n".join([head, *reversed(lines), ""]))
    second = pack_bytes(compile_pack(pack))
    numbers = [[one["number"] for one in orjson.loads(made)["items"]] for made in (first, second)]
    assert numbers[0] == numbers[1][::-1]

    more(page, "Ranges")
    give(page, "club.json", first)
    expect(page.get_by_role("alert")).to_contain_text("Club is added.")
    place(page, "Identify")
    choose_range(page, "Club")
    begin(page, "Coach")
    while asking(page):
        see(page, choices(page)[0])
    before = page.locator("main").inner_text()
    page.get_by_role("navigation").get_by_role("button", name="More").click()
    page.get_by_role("button", name="Ranges").click()
    give(page, "newer.json", second)
    expect(page.get_by_role("alert")).to_contain_text("Club is now as in the file.")
    page.get_by_role("button", name="Remove Club").click()
    expect(page.get_by_role("alert").last).to_contain_text("Finish it or start again")
    expect(page.get_by_role("heading", name="Club")).to_be_visible()
    page.get_by_role("navigation").get_by_role("button", name="Identify").click()
    expect(page.locator(".answer")).to_be_visible()
    expect_read(page, page.locator("main").inner_text, before)
    page.reload()
    expect(page.locator(".answer")).to_be_visible()
    expect_read(page, page.locator("main").inner_text, before)


def test_a_file_that_is_no_range_is_refused_in_a_sentence(page, folder):
    good = pack_bytes(compile_pack(folder))
    pack = orjson.loads(good)
    beyond = {**pack, "variants": [{**pack["variants"][0], "item": 99}], "version": ""}
    version = hashlib.sha256(
        orjson.dumps(
            {k: v for k, v in beyond.items() if k != "version"}, option=orjson.OPT_SORT_KEYS
        )
    ).hexdigest()[:16]
    files = {
        "note.json": (b"Hello", "this is not a range, or the file is damaged"),
        "short.json": (good[:-20], "this is not a range, or the file is damaged"),
        "list.json": (b"[]", "can read (the whole file)"),
        "kinds.json": (orjson.dumps({**pack, "kinds": [{"id": 1}]}), "can read (kinds 1, "),
        "changed.json": (
            good.replace(b"Tank engine", b"Dank engine"),
            "was changed after it was made",
        ),
        "beyond.json": (
            orjson.dumps({**beyond, "version": version}, option=orjson.OPT_SORT_KEYS),
            "contradicts itself",
        ),
    }
    more(page, "Ranges")
    for name, (content, text) in files.items():
        give(page, name, content)
        expect(page.get_by_role("alert")).to_contain_text(f"{name}: ")
        expect(page.get_by_role("alert")).to_contain_text(text)
    expect(page.locator(".ranges > li")).to_have_count(1)
