"""Fifty megabytes of photos in a range of one's own: told in a sentence, and all of it is kept."""

import base64
import io
import json
import random
from typing import Any

import pytest
from PIL import Image
from playwright.sync_api import Page, expect

from identify.reference.folder import read_pack
from identify.reference.folder_rows import rows_of_pack
from tests.browser.phone_storage import more
from tests.reference.small_pack import RANGE, small_files, write

WAIT = 300_000
PHOTOS = 230
KEPT = """
async () => {  // how many states are kept with a photo
  const database = await new Promise((resolve) => {
    const request = indexedDB.open("identify");
    request.onsuccess = () => resolve(request.result);
  });
  const all = await new Promise((resolve) => {
    const request = database.transaction("records").objectStore("records").getAll();
    request.onsuccess = () => resolve(request.result);
  });
  database.close();
  return all.filter(({ drawing }) => drawing?.startsWith("data:")).length;
}"""


def photo(chance: random.Random) -> str:
    """A photo as the app keeps one of what can be seen: though larger: 219 KB as a data: URL."""
    out = io.BytesIO()
    picture = Image.frombytes("RGB", (520, 520), chance.randbytes(3 * 520 * 520))
    picture.save(out, "JPEG", quality=75)
    return f"data:image/jpeg;base64,{base64.b64encode(out.getvalue()).decode()}"


@pytest.fixture
def heavy(tmp_path) -> Any:
    """The rows of a range whose photos come to 50 MB."""
    files = {**small_files(), "range.toml": RANGE.replace("Small", "Club")}
    rows = rows_of_pack(read_pack(write(tmp_path / "club", files))[0])
    like, chance = rows["features"][-1], random.Random(1)
    for n in range(PHOTOS // 10):
        states = [{"id": f"s{m}", "name": f"S {m}", "caption": "", "look": ""} for m in range(10)]
        about = {"id": f"look{n}", "name": f"Look {n}", "title": f"Look {n}", "states": states}
        rows["features"].append({**like, **about, "mistaken": [], "when": []})
        for one in states:
            drawing = {"id": f"look{n}-{one['id']}", "text": photo(chance)}
            rows["drawings"].append(drawing)
    return rows


@pytest.mark.heavy
def test_fifty_megabytes_of_photos_are_told_and_kept(page: Page, server, heavy, tmp_path):
    said = json.dumps({"format": 1, "kind": "identify range", "made": "", "rows": heavy}).encode()
    assert 50_000_000 < len(said) < 60_000_000, len(said)
    page.goto(server.url)
    more(page, "Ranges")
    file = tmp_path / "club.json"
    file.write_bytes(said)
    page.get_by_label("Add a range from a file").set_input_files(file)
    page.get_by_role("dialog").get_by_role("button", name="Import it").click(timeout=WAIT)
    expect(page.get_by_role("alert")).to_contain_text("3 items imported.", timeout=WAIT)
    expect(page.get_by_text("nobody can follow or add one of more than 40 MB")).to_be_visible()
    page.reload()
    expect(page.get_by_text("nobody can follow or add one of more than 40 MB")).to_be_visible(
        timeout=WAIT
    )
    assert page.evaluate(KEPT) == PHOTOS
