"""The collection, wants and notes: written down, found again, taken back."""

from pathlib import Path

import pytest

from tests.conftest import Server
from tests.every_browser.driven import Phone
from tests.every_browser.steps import (
    add_piece,
    by_number,
    choose,
    labelled,
    look_round,
    open_more,
    put_file,
    records,
    stored,
    write,
)
from tests.every_browser.things import HEIC, jpeg


@pytest.fixture
def piece(lent: Phone, app: Server) -> Phone:
    """A piece just added, on its screen."""
    lent.goto(app.url)
    add_piece(lent, "P 21")
    return lent


def test_every_field_is_saved_by_itself(piece: Phone, app: Server):
    choose(piece, "Condition", "very good")
    choose(piece, "Box", "yes")
    write(piece, "Price paid", "12/6")
    write(piece, "When", "3 May 1998")
    write(piece, "Notes", "“Runs” well, ümlaut.")
    piece.goto(app.url)
    (kept,) = records(piece, "piece")
    assert (kept["condition"], kept["boxed"], kept["when"]) == ("very good", "yes", "1998-05-03")
    assert (kept["paid"]["minor"], kept["notes"]) == (62, "“Runs” well, ümlaut.")


@pytest.mark.parametrize(
    ("label", "text", "sentence"),
    [
        ("Price paid", "cheap", "One of its words is not a currency"),
        ("When", "last Tuesday", "That date cannot be read."),
        ("When", "31 February 2001", "February 2001 has 28 days"),
    ],
)
def test_what_cannot_be_read_is_said(piece: Phone, label: str, text: str, sentence: str):
    box = labelled(piece, label)
    box.send_keys(text)
    piece.run("arguments[0].blur()", box)
    piece.sees(sentence)
    assert piece.run("return arguments[0].value", box) == text


def test_undo_takes_back_one_change(piece: Phone):
    write(piece, "Notes", "first")
    write(piece, "Notes", "second")
    piece.tap("Undo")
    piece.until("document.querySelector('textarea').value === 'first'")
    piece.tap("Undo")
    piece.until("document.querySelector('textarea').value === ''")


def test_a_piece_goes_to_the_trash_and_comes_back(piece: Phone):
    piece.tap("Move to the bin")
    piece.sees("0 pieces.")
    open_more(piece, "Bin")
    piece.press("document.querySelector('[aria-label^=\"Put back: Piece: P 21\"]')")
    piece.sees("Nothing is in the bin.")
    assert len(records(piece, "piece")) == 1


def test_back_leads_to_the_list(piece: Phone):
    piece.driver.back()
    piece.until("document.querySelector('h1').innerText === 'Collection'")
    piece.sees("P 21")


def test_a_photo_is_kept_without_the_place_where_it_was_taken(piece: Phone, tmp_path: Path):
    put_file(piece, "Choose a picture", jpeg(tmp_path, piece))
    piece.until("document.querySelectorAll('.photos .picture').length === 1")
    (photo,) = stored(piece)["photos"]
    assert b"GPS" not in photo["full"]
    assert b"Exif" not in photo["full"]
    assert (photo["width"], photo["height"]) == (300, 200), "turned as the camera was held"


def test_a_browser_that_refuses_to_be_told_more_takes_the_photo(piece: Phone, tmp_path: Path):
    """createImageBitmap with options, as an older Safari refuses it; and then any at all."""
    piece.run("""
      window.decode = HTMLImageElement.prototype.decode;
      HTMLImageElement.prototype.decode = () => Promise.reject(new Error("not this way"));
      const old = createImageBitmap;
      window.createImageBitmap = (file, ...more) =>
        more.length > 0 ? Promise.reject(new TypeError("options")) : old(file);
    """)
    put_file(piece, "Choose a picture", jpeg(tmp_path, piece))
    piece.until("document.querySelectorAll('.photos .picture').length === 1")
    piece.run("""
      HTMLImageElement.prototype.decode = window.decode;
      window.createImageBitmap = () => Promise.reject(new TypeError("none"));
    """)
    put_file(piece, "Choose a picture", jpeg(tmp_path, piece))
    piece.until("document.querySelectorAll('.photos .picture').length === 2")
    assert {(one["width"], one["height"]) for one in stored(piece)["photos"]} == {(300, 200)}


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        (b"no picture", "not a picture this device can read"),
        (HEIC, "in the form in which an iPhone keeps its own (HEIC)"),
    ],
)
def test_a_file_that_cannot_be_shown_is_said(
    piece: Phone, tmp_path: Path, content: bytes, sentence: str
):
    path = tmp_path / "a.jpg"
    path.write_bytes(content)
    put_file(piece, "Choose a picture", path)
    piece.sees(sentence)
    piece.sees("Nothing else was changed.")
    assert stored(piece)["photos"] == []


def test_the_demo_is_taken_away_and_that_undone(lent: Phone, app: Server):
    look_round(lent, app)
    lent.place("More")
    lent.tap("Remove the demo collection")
    lent.sees("in the bin")
    lent.place("Collection")
    lent.sees("0 pieces.")
    lent.tap("Undo")
    lent.sees("100 pieces.")


def test_starting_empty_is_not_asked_twice(lent: Phone, app: Server):
    lent.goto(app.url)
    lent.tap("Start empty")
    lent.until("!document.body.innerText.includes('Start empty')")
    lent.goto(app.url)
    lent.sees("What have you got?")
    assert not lent.run("return document.body.innerText.includes('Start empty')")


def test_a_number_finds_the_piece(lent: Phone, app: Server):
    look_round(lent, app)
    lent.until("document.querySelector('input[type=search]')").send_keys("P 24")
    shown = "[...document.querySelectorAll('ul[aria-label=Pieces] li')]"
    lent.until(f"{shown}.length < 20 && {shown}.every((one) => one.innerText.includes('P 24'))")


def test_duplicates_are_derived(lent: Phone, app: Server):
    look_round(lent, app)
    open_more(lent, "Duplicates")
    lent.sees("9 to part with.")


def test_a_want_is_written_down(lent: Phone, app: Server):
    lent.goto(app.url)
    lent.place("Wants")
    lent.tap("Add a want")
    labelled(lent, "Number or name").send_keys("43/6")
    lent.press("document.querySelector('ul[aria-label=Found] button')")
    choose(lent, "How urgent", "3")
    write(lent, "Most to pay", "£25")
    lent.driver.back()
    lent.sees("up to £25")
    (want,) = records(lent, "want")
    assert (want["item"], want["urgency"]) == ("43/6", 3)


def test_the_verdict_is_told_and_a_note_with_a_photo_is_kept(
    lent: Phone, app: Server, tmp_path: Path
):
    look_round(lent, app)
    by_number(lent, "G 8B")
    lent.sees("You have one, perhaps this")
    lent.tap("Save for later")
    write(lent, "Table", "77")
    put_file(lent, "Take a photo", jpeg(tmp_path, lent))
    lent.until("document.querySelectorAll('.photos .picture').length === 1")
    (photo,) = stored(lent)["photos"]
    (note,) = [one for one in records(lent, "note") if one["table"] == "77"]
    assert (note["photos"], photo["width"]) == ([photo["id"]], 300)


def test_paper_shows_the_list(lent: Phone, app: Server):
    look_round(lent, app)
    lent.tap("Print for insurance")
    lent.until("document.querySelectorAll('table.paper tbody tr').length > 100")
    lent.run("window.print = () => { window.printed = true; }")
    lent.tap("Print")
    lent.until("window.printed")
