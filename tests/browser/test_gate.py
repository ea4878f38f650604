"""One bad file, entry or operation never stops the app: it starts, and everything else works."""

import base64
import io
import json
from typing import Any

import orjson
import pytest
from PIL import Image
from playwright.sync_api import expect

from tests.browser.damaged_storage import PUT, starts
from tests.browser.phone_storage import add_piece, kept, more, place, records
from tests.browser.test_backup import GOOD, HEAD, backup, restore


def as_file(**more_: Any) -> dict[str, Any]:
    content = orjson.dumps(HEAD | {"records": []} | more_)
    return {"name": "b.json", "mimeType": "application/json", "buffer": content}


def entry(**more_: Any) -> dict[str, Any]:
    change = {"time": "2026-11-01T00:00:00Z", "group": "g", "record": "r1"}
    return change | {"before": None, "after": None} | more_


def test_a_file_with_a_change_that_says_nothing_leaves_every_screen_working(page, server, tmp_path):
    """Finding 1, by the file and as it may lie in a phone's storage since before."""
    page.goto(server.url)
    add_piece(page, "P 24")
    assert "1 in the file could not be read" in restore(page, as_file(journal=[entry()]))
    page.evaluate(PUT, json.dumps([["journal", entry(seq=999)], ["records", {"id": "r9"}]]))
    starts(page)
    expect(page.get_by_role("alert")).to_contain_text("cannot be read, and set aside")
    more(page, "Set aside")
    page.reload()
    expect(page.get_by_role("heading", level=1)).to_have_text("Set aside")
    assert backup(page, tmp_path).exists()
    place(page, "Collection")
    expect(page.get_by_role("list", name="Pieces")).to_contain_text("P 24")


BESIDE = [
    "piece", "piece of another window", "former", "settings", "backup", "ranges", "tray", "sync",
    "paired", "moved", "first steps", "proposing",
]  # fmt: skip
LINE = {"id": "mine", "name": "Mine", "version": "1", "own": True}  # and no text of the range


@pytest.mark.parametrize("seq", [0, "zzzz", {"a": 1}], ids=str)
def test_a_field_called_as_the_journals_key_hides_no_record(page, server, tmp_path, seq):
    """Records are read by pages, each beginning behind the last one's key."""
    page.goto(server.url)
    add_piece(page, "P 24")
    (piece,) = kept(page)["records"]
    more_of_it = [piece | {"id": f"r{n:04}", "seq": seq} for n in range(250)]
    page.evaluate(PUT, json.dumps([["records", one] for one in more_of_it]))
    starts(page)
    place(page, "Collection")
    expect(page.get_by_text("251 pieces")).to_be_visible()
    assert len(orjson.loads(backup(page, tmp_path).read_bytes())["records"]) == 251


@pytest.mark.parametrize("value", [7, "zzzz", [None], {"a": None}, [LINE]], ids=str)
def test_whatever_is_kept_beside_the_records_the_app_starts(page, server, tmp_path, value):
    page.goto(server.url)
    add_piece(page, "P 24")
    page.evaluate(PUT, json.dumps([["kept", value, name] for name in BESIDE]))
    starts(page)
    assert backup(page, tmp_path).exists()
    place(page, "Collection")
    expect(page.get_by_role("list", name="Pieces")).to_contain_text("P 24")


def test_a_file_says_what_it_would_remove_and_deletes_nothing_for_good(page, server):
    """Finding 4: a record that is gone, with a known id and a later time, emptied ours."""
    page.goto(server.url)
    add_piece(page, "P 24")
    (ours,) = records(page, "piece")
    times = {"made": ours["made"], "changed": "2031-01-01T00:00:00.000Z"}
    gone = {"id": ours["id"], "type": "piece", **times, "trashed": times["changed"], "gone": True}
    for tapped, trashed in (("keep them here", False), ("move them to the bin", True)):
        more(page, "Backup")
        page.get_by_label("Restore a backup file").set_input_files(as_file(records=[gone]))
        sheet = page.get_by_role("dialog")
        expect(sheet).to_contain_text("This file would remove 1 record")
        expect(sheet).to_contain_text("P 24")
        sheet.get_by_role("button", name=f"Restore, and {tapped}").click()
        expect(page.get_by_role("alert").last).to_contain_text("Restored:")
        (now,) = [one for one in kept(page)["records"] if one["id"] == ours["id"]]
        assert now["item"] == "P 24", "nothing of it is lost"
        assert (now["trashed"] != "") == trashed


def test_a_photo_of_a_file_is_bared_as_one_of_the_camera_is(page, server):
    """Finding 7: camera and position stayed in what was restored."""
    image = Image.new("RGB", (64, 48), "red")
    exif = Image.Exif()
    exif[0x010F] = "A Camera"
    out = io.BytesIO()
    image.save(out, "JPEG", exif=exif)
    assert b"A Camera" in out.getvalue()
    url = "data:image/jpeg;base64," + base64.b64encode(out.getvalue()).decode()
    photo = {"id": "p1", "full": url, "small": url, "width": 64, "height": 48}
    page.goto(server.url)
    assert "1 added" in restore(page, as_file(records=[GOOD], photos=[photo]))
    (stored,) = kept(page)["photos"]
    for name in ("full", "small"):
        assert b"A Camera" not in base64.b64decode(stored[name].partition(",")[2])
    assert (stored["width"], stored["height"]) == (64, 48)
