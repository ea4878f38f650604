"""A follower's sighting comes back to the author, who sees what it would do before taking it in."""

import json
import re
from pathlib import Path
from typing import Any

import orjson
import pytest
from playwright.sync_api import Page, expect

from identify import phone
from identify.reference.folder import read_pack
from identify.reference.folder_rows import rows_of_pack
from tests.browser.phone import (
    expect_read,
    violations,
)
from tests.browser.phone_storage import more, records
from tests.browser.test_demo_pieces import at_hand
from tests.browser.test_sightings import BY_ID, exported, kept
from tests.reference.small_pack import RANGE, as_data, jpeg, small_files, write

CLUB = {**small_files(), "range.toml": RANGE.replace("Small", "Club")}
WAIT = 30_000


def give(page: Page, label: str, name: str, content: bytes) -> None:
    page.get_by_label(label).set_input_files(
        {"name": name, "mimeType": "application/json", "buffer": content}
    )


def own_range(page: Page, folder: Path) -> None:
    """The range of this folder as one of one's own, and its screen."""
    rows = rows_of_pack(read_pack(folder)[0])
    said = {"format": 1, "kind": "identify range", "made": "", "rows": rows}
    more(page, "Ranges")
    give(page, "Add a range from a file", "range.json", orjson.dumps(said))
    page.get_by_role("dialog").get_by_role("button", name="Import it").click()
    expect(page.get_by_role("heading", level=1)).to_have_text(rows["range"]["name"], timeout=WAIT)


@pytest.fixture
def author(small_phone: Page, tmp_path) -> Page:
    """A phone with the range Club written down on it, at the sightings of others."""
    made = write(tmp_path / "made", CLUB)
    own_range(small_phone, made.rename(made.parent / "club"))
    small_phone.get_by_role("button", name="Sightings from others").click()
    expect(small_phone.get_by_role("heading", level=1)).to_have_text("Sightings of Club")
    return small_phone


def sighting(number: int, **said: Any) -> dict[str, Any]:
    """A sighting as the app exports it."""
    made = "2026-05-03T10:00:00.000Z"
    return {
        "id": f"rsighting{number}", "type": "sighting", "made": made, "changed": made,
        "trashed": "", "pack": "club", "version": "x", "kind": "locomotive", "item": "",
        "called": "", "unrecorded": False, "of": [], "answers": [], "years": "", "text": "",
        "photos": [],
    } | said  # fmt: skip


def looked(**states: str) -> list[dict[str, Any]]:
    return [{"feature": f, "how": "sure", "states": [s]} for f, s in states.items()]


def file_of(*sightings: dict[str, Any]) -> bytes:
    told = {"format": 1, "kind": "identify sightings", "made": "", "sightings": sightings}
    return json.dumps(told).encode()


NEW = sighting(
    1, item="P1", called="red with plastic horns", unrecorded=True, years="1956",
    text="At a club sale.", answers=looked(livery="red", horns="plastic", gone="by"),
    photos=[{"width": 90, "height": 60, "full": as_data(jpeg())}],
)  # fmt: skip


def test_what_it_would_change_and_do_is_shown_and_it_is_taken_in_and_back_as_one(author):
    page = author
    give(page, "Add sightings from a file", "seen.json", file_of(NEW))
    one = page.get_by_role("region", name="red with plastic horns")
    expect(page.get_by_role("alert")).to_contain_text("1 sighting to look at.")
    told = one.get_by_role("list", name="It would change").get_by_role("listitem")
    expect(told).to_have_text(
        [
            "A new variant of P1 Tank engine: red with plastic horns, made 1956.",
            "Livery: red",
            "Horns: plastic",
        ]
    )
    expect(one.get_by_role("img")).to_have_count(1)
    said = re.compile(
        r"Of 40 pieces drawn from the range as it would be, (none|\d+) would be named"
    )
    expect(one.get_by_role("status")).to_contain_text(said, timeout=WAIT)
    expect(one.get_by_role("status")).to_contain_text(
        "is named “P1 Tank engine, with horns” now, and would be named “P1 Tank engine, red with "
    )
    page.get_by_role("button", name="Hide this").click()
    assert violations(page) == []
    before = {one["id"]: one for one in records(page, "range_variant")}
    one.get_by_role("button", name="Take it in").click()
    expect(page.get_by_role("alert")).to_contain_text("The sighting is in Club now.")
    expect(page.get_by_text("No sightings are waiting.")).to_be_visible()
    [fresh] = [one for one in records(page, "range_variant") if one["id"] not in before]
    assert (fresh["name"], fresh["years"]) == ("red with plastic horns", "1956")
    page.get_by_role("alert").get_by_role("button", name="Undo").click()
    expect(page.get_by_role("alert")).to_contain_text("Undone: sighting taken in.")
    assert {one["id"]: one["name"] for one in records(page, "range_variant")} == {
        ident: one["name"] for ident, one in before.items()
    }


def test_years_that_stretch_a_running_change_stand_beside_the_known_ones(author):
    early = sighting(2, called="early loops", item="P2", kind="coach", years="1951",
                     of=[{"item": "P2", "variant": "p2a", "chance": 1.0}],
                     answers=looked(coupling="loop"))  # fmt: skip
    give(author, "Add sightings from a file", "seen.json", file_of(early))
    one = author.get_by_role("region", name="early loops")
    told = one.get_by_role("list", name="It would change")
    expect(told).to_contain_text("Coupling, wire loop: from 1951 as well, by this sighting.")
    one.get_by_role("button", name="Take it in").click()
    expect(author.get_by_role("alert")).to_contain_text("The sighting is in Club now.")
    loops = [one for one in records(author, "range_change") if one["since"] == "1953"]
    [source] = [s for s in records(author, "range_source") if s["key"] == "sighting"]
    assert [source["id"], "1951"] in loops[0]["other_from"]


def test_one_without_a_number_is_given_one_and_one_that_says_nothing_new_is_left(author):
    page = author
    loose = {**NEW, "id": "rsighting3", "item": "", "called": "found loose"}
    dull = sighting(4, called="as known", item="P1", years="1951", answers=looked(livery="green"))
    give(page, "Add sightings from a file", "seen.json", file_of(loose, dull))
    one = page.get_by_role("region", name="found loose")
    expect(one).to_contain_text("It does not say which number it is a variant of.")
    expect(one.get_by_role("button", name="Take it in")).to_have_count(0)
    expect(one.get_by_role("button", name="Write it down as a new number")).to_be_visible()
    one.get_by_label("It is a variant of").select_option("P1")
    expect(one.get_by_role("button", name="Take it in")).to_be_visible()
    other = page.get_by_role("region", name="as known")
    expect(other).to_contain_text("It says nothing that your range does not say already.")
    other.get_by_role("button", name="Leave it").click()
    expect(page.get_by_role("alert")).to_contain_text("Your range stays as it is.")
    expect(other).to_have_count(0)
    page.reload()
    expect(one).to_be_visible()
    give(page, "Add sightings from a file", "again.json", file_of(loose))
    expect(page.get_by_role("alert")).to_contain_text("All of these wait here already.")
    give(page, "Add sightings from a file", "again.json", file_of(loose, dull))
    expect(page.get_by_role("alert")).to_contain_text("wait here already, or were taken in or left")
    odd = sighting(5, called="odd one", kind="locomotive", unrecorded=True,
                   answers=looked(livery="purple", horns="plastic"))  # fmt: skip
    give(page, "Add sightings from a file", "odd.json", file_of(odd, loose, odd))
    expect(page.get_by_role("alert")).to_contain_text(
        "1 sighting to look at. Some of them waited here already."
    )
    unknown = page.get_by_role("region", name="odd one")
    unknown.get_by_role("button", name="Write it down as a new number").click()
    expect(page.get_by_role("heading", level=1)).not_to_contain_text("Sightings of")
    assert len(records(page, "range_item")) == 4


def test_two_are_taken_in_in_a_row_and_what_is_undone_or_put_back_waits_again(author):
    page = author
    items = len(records(page, "range_item"))
    before = {one["id"]: one for one in records(page, "range_variant")}
    blue = sighting(6, item="P2", called="blue coach", kind="coach", unrecorded=True, years="1955",
                    answers=looked(livery="red", coupling="loop"))  # fmt: skip
    third = sighting(7, called="a third", item="P1", answers=looked(livery="green"))
    given = file_of(NEW, blue, third)
    give(page, "Add sightings from a file", "seen.json", given)
    expect(page.get_by_role("button", name="Take it in")).to_have_count(2)
    page.evaluate(
        """() => [...document.querySelectorAll("main button")]
            .filter((one) => one.textContent === "Take it in").forEach((one) => one.click())"""
    )
    expect(page.get_by_role("button", name="Take it in")).to_have_count(0)
    expect_read(
        page,
        lambda: {one["name"] for one in records(page, "range_variant") if one["id"] not in before},
        {"red with plastic horns", "blue coach"},
    )
    now = {one["id"]: one for one in records(page, "range_variant")}
    assert all(now[ident] == one for ident, one in before.items()), "they are not written again"
    assert len(records(page, "range_item")) == items

    page.get_by_role("alert").get_by_role("button", name="Undo").click()
    one = page.get_by_role("region", name="blue coach")
    expect(one.get_by_role("button", name="Take it in")).to_be_visible()
    page.get_by_role("alert").get_by_role("button", name="Put it back").click()
    expect(one).to_have_count(0)
    give(page, "Add sightings from a file", "again.json", given)
    expect(page.get_by_role("alert")).to_contain_text("wait here already, or were taken in or left")
    page.get_by_role("region", name="a third").get_by_role("button", name="Leave it").click()
    expect(page.get_by_text("No sightings are waiting.")).to_be_visible()
    page.get_by_role("alert").get_by_role("button", name="Put it back").click()
    expect(page.get_by_role("region", name="a third")).to_be_visible()
    expect(page.get_by_role("button", name="Leave it")).to_have_count(1)


def test_what_its_follower_corrects_comes_again_and_says_so(author):
    page = author
    wait = page.get_by_role("region")
    give(page, "Add sightings from a file", "seen.json", file_of(NEW))
    wait.get_by_role("button", name="Leave it").click()
    expect(page.get_by_text("No sightings are waiting.")).to_be_visible()
    second = {**NEW, "changed": "2026-05-04T10:00:00.000Z", "called": "red with metal horns"}
    give(page, "Add sightings from a file", "second.json", file_of(second, NEW))
    one = page.get_by_role("region", name="red with metal horns")
    expect(one).to_contain_text("has changed it since you settled it")
    give(page, "Add sightings from a file", "seen.json", file_of(NEW))
    expect(page.get_by_role("alert")).to_contain_text("All of these wait here already.")
    third = {**second, "changed": "2026-05-05T10:00:00.000Z", "called": "red after all"}
    give(page, "Add sightings from a file", "third.json", file_of(third))
    expect(page.get_by_role("region", name="red after all")).to_be_visible()
    expect(page.get_by_role("button", name="Leave it")).to_have_count(1)
    page.get_by_role("button", name="Take it in").click()
    expect(page.get_by_role("alert")).to_contain_text("The sighting is in Club now.")
    give(page, "Add sightings from a file", "third.json", file_of(third))
    expect(page.get_by_role("alert")).to_contain_text("taken in or left")
    fourth = {**third, "changed": "2026-05-06T10:00:00.000Z", "called": "red, as I said"}
    give(page, "Add sightings from a file", "fourth.json", file_of(fourth))
    expect(page.get_by_role("region", name="red, as I said")).to_be_visible()
    give(page, "Add sightings from a file", "third.json", file_of(third))
    expect(page.get_by_role("alert")).to_contain_text("All of these wait here already.")


def test_what_is_no_file_of_sightings_is_refused_in_a_sentence(author):
    wrong = {
        "text": (b"Hello", "this is not a file of sightings"),
        "cut": (file_of(NEW)[:-9], "this is not a file of sightings"),
        "none": (file_of(), "this is not a file of sightings"),
        "odd": (file_of({**NEW, "id": 7}), "this is not a file of sightings"),
        "other": (file_of({**NEW, "pack": "small"}), "are of another range, not Club"),
    }
    for name, (content, said) in wrong.items():
        give(author, "Add sightings from a file", f"{name}.json", content)
        expect(author.get_by_role("alert")).to_contain_text(f"{name}.json: ")
        expect(author.get_by_role("alert")).to_contain_text(said)
    expect(author.get_by_text("No sightings are waiting.")).to_be_visible()


def test_what_a_followers_app_exports_is_what_the_authors_takes_in(
    page, server, small_phone, pellmarsh, tmp_path
):
    page.goto(server.url)
    at_hand(page, pellmarsh, BY_ID["unrecorded_variant"])
    page.get_by_role("button", name="Keep as a sighting").click()
    kept(page, "What to call it", "yellow with a band")
    page.get_by_label("It is a variant of").select_option(label="P 5 Express engine with tender")
    kept(page, "When was it made?", "1955")
    file = exported(page, "Save it as a file", tmp_path)
    author = small_phone
    own_range(author, next(path for path in phone.demo_packs() if path.name == "pellmarsh"))
    author.get_by_role("button", name="Sightings from others").click()
    give(author, "Add sightings from a file", file.name, file.read_bytes())
    one = author.get_by_role("region", name="yellow with a band")
    expect(one.get_by_role("list", name="It would change")).to_contain_text(
        "A new variant of P 5 Express engine with tender: yellow with a band, made 1955.",
        timeout=WAIT,
    )
    one.get_by_role("button", name="Take it in").click()
    expect(author.get_by_role("alert")).to_contain_text("The sighting is in Pellmarsh now.")
