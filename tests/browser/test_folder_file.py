"""A range of one's own leaves as a zipped folder that the check takes, and comes in from one."""

import io
import zipfile
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from identify.phone import demo_packs
from identify.reference.folder import read_pack
from identify.reference.folder_rows import rows_of_pack
from tests.browser.phone_storage import more, records
from tests.browser.registry import written_down
from tests.reference.small_pack import jpeg, small_files


def zipped(files: dict[str, str | bytes], folder: str = "small/") -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, text in files.items():
            archive.writestr(folder + name, text)
    return out.getvalue()


def give(page: Page, name: str, data: bytes) -> None:
    more(page, "Ranges")
    page.get_by_label("Add a range from a file").set_input_files(
        {"name": name, "mimeType": "application/zip", "buffer": data}
    )


def handed_on(page: Page, name: str, folder: Path) -> Path:
    """The folder that the app gives of a range of one's own."""
    more(page, "Ranges")
    page.get_by_role("list", name="Your own").get_by_role("button", name=name).click()
    page.get_by_text("About the range").click()
    with page.expect_download() as download:
        page.get_by_role("button", name="Share it as a folder of files").click()
    with zipfile.ZipFile(download.value.path()) as archive:
        assert archive.testzip() is None
        archive.extractall(folder)
    [made] = folder.iterdir()
    return made


def test_a_folder_comes_in_and_leaves_again_without_loss(page, server, tmp_path):
    [demo, *_] = demo_packs()
    files: dict[str, str | bytes] = {
        path.relative_to(demo).as_posix(): path.read_bytes()
        for path in sorted(demo.rglob("*"))
        if path.is_file()
    }
    files["range.toml"] = bytes(files["range.toml"]).replace(b'"Pellmarsh"', b'"Ostwick"')
    files["drawings/form-tank.jpg"] = jpeg()
    want = rows_of_pack(read_pack(demo)[0])
    page.goto(server.url)
    give(page, "ostwick.zip", zipped(files, "ostwick/"))
    sheet = page.get_by_role("dialog")
    expect(sheet).to_contain_text(f"It has {len(want['items'])} items.")
    sheet.get_by_role("button", name="Import it").click()
    expect(page.get_by_role("heading", name="Ostwick", level=1)).to_be_visible()
    found = rows_of_pack(read_pack(handed_on(page, "Ostwick", tmp_path))[0])
    photos = [one["id"] for one in found["drawings"] if one["text"].startswith("data:image/jpeg")]
    assert photos == ["form-tank"]
    for rows in (want, found):
        rows["range"]["name"] = ""
        rows["drawings"] = sorted(
            (one for one in rows["drawings"] if one["id"] != "form-tank"), key=lambda d: d["id"]
        )
    assert found == {**want, "id": "ostwick"}


def test_what_was_written_down_leaves_as_it_is(page, server, tmp_path):
    page.goto(server.url)
    written_down(page)
    made = handed_on(page, "Ostwick", tmp_path)
    rows = rows_of_pack(read_pack(made)[0])
    [item] = records(page, "range_item")
    assert [one["number"] for one in rows["items"]] == [item["number"]]
    assert len(rows["variants"]) == len(records(page, "range_variant")) == 2
    assert len(rows["features"]) == len(records(page, "range_feature"))
    assert sum(len(one["states"]) for one in rows["features"]) == len(records(page, "range_state"))


BAD = {
    "cut.zip": (zipped(dict(small_files()))[:900], "damaged, or was cut short"),
    "other.zip": (zipped({"notes.txt": "Hello"}), "There is no range in it"),
    "quotes.zip": (
        zipped({**small_files(), "range.toml": "name = Small\n"}),
        "“range.toml” cannot be read in line 1",
    ),
}


@pytest.mark.parametrize("name", BAD)
def test_a_zip_that_is_no_range_is_refused_in_a_sentence(page, server, name):
    data, said = BAD[name]
    page.goto(server.url)
    give(page, name, data)
    expect(page.get_by_role("alert")).to_contain_text(said)
    assert records(page, "range") == []


def test_what_would_be_left_out_is_told(page, server):
    files = small_files()
    files["sources.csv"] = files["sources.csv"].replace("trust\n", "trust,shelf\n")
    files["items.csv"] = files["items.csv"].replace("102,,green", "102,,gren")
    files["drawings/livery-red.svg"] += " " * 100_000
    page.goto(server.url)
    give(page, "small.zip", zipped(dict(files)))
    sheet = page.get_by_role("dialog")
    expect(sheet).to_contain_text("The column “shelf” is left out")
    expect(sheet).to_contain_text("1 thing in it means nothing in this range, and is left out")
    expect(sheet).to_contain_text("1 drawing is too large and left out")
