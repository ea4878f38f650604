"""What the phone keeps, read past the app: straight from the browser's storage."""

import base64
import json
import struct
from typing import Any

from playwright.sync_api import Page, expect

ALL = """
async () => {
  const database = await new Promise((resolve, reject) => {
    const request = indexedDB.open("identify");
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const all = store => new Promise(resolve => {
    const request = database.transaction(store).objectStore(store).getAll();
    request.onsuccess = () => resolve(request.result);
  });
  const text = blob => new Promise(resolve => {
    const reader = new FileReader();
    reader.onload = () => resolve(reader.result);
    reader.readAsDataURL(blob);
  });
  const [records, journal, photos] = await Promise.all(["records", "journal", "photos"].map(all));
  for (const photo of photos)
    for (const name of ["full", "small"]) photo[name] = await text(photo[name]);
  database.close();
  return { records, journal, photos };
}"""
JPEG = """
async ([width, height, noisy]) => {
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext("2d");
  pen.fillStyle = "#ffffff";
  pen.fillRect(0, 0, width, height);
  pen.fillStyle = "#c01010";
  pen.fillRect(0, 0, width / 4, height / 4);
  if (noisy) {
    const noise = pen.createImageData(width, height);
    noise.data.forEach((_, n, data) => { data[n] = n % 4 === 3 ? 255 : Math.random() * 256; });
    pen.putImageData(noise, 0, 0);
  }
  const blob = await new Promise(resolve => canvas.toBlob(resolve, "image/jpeg", 0.9));
  return [...new Uint8Array(await blob.arrayBuffer())];
}"""
TURNED = 6  # the EXIF orientation of a phone held upright: to be turned to the right


def kept(page: Page) -> dict[str, list[dict[str, Any]]]:
    """Every record, journal entry and photo (as data URLs)."""
    found: dict[str, list[dict[str, Any]]] = page.evaluate(ALL)
    return found


def records(page: Page, sort: str) -> list[dict[str, Any]]:
    """The records of one type that are not in the bin."""
    found = kept(page)["records"]
    return [one for one in found if one["type"] == sort and one["trashed"] == ""]


def picture(url: str) -> bytes:
    return base64.b64decode(url.split(",")[1])


def photo(page: Page, width: int, height: int, noisy: bool = False) -> bytes:
    """A JPEG as a camera would write it: with the place, the time, and held sideways."""
    plain = bytes(page.evaluate(JPEG, [width, height, noisy]))
    return plain[:2] + exif() + plain[2:]


def add_photo(page: Page, width: int, height: int, noisy: bool = False) -> None:
    """On a piece or a note: add a photo from a file, and wait until it is there."""
    count = page.locator(".photos .picture").count()
    page.get_by_label("Choose a picture").set_input_files(
        {"name": "a.jpg", "mimeType": "image/jpeg", "buffer": photo(page, width, height, noisy)}
    )
    expect(page.locator(".photos .picture")).to_have_count(count + 1)


def exif() -> bytes:
    """An EXIF segment by the CIPA standard DC-008: orientation, and a place in the GPS part."""
    gps_at = 8 + 2 + 2 * 12 + 4
    entry = struct.Struct(">HHI4s")
    first = struct.pack(">H", 2)
    first += entry.pack(0x0112, 3, 1, struct.pack(">H2x", TURNED))
    first += entry.pack(0x8825, 4, 1, struct.pack(">I", gps_at)) + bytes(4)
    degrees_at = gps_at + 2 + 2 * 12 + 4
    gps = struct.pack(">H", 2)
    gps += entry.pack(1, 2, 2, b"N\0\0\0")
    gps += entry.pack(2, 5, 3, struct.pack(">I", degrees_at)) + bytes(4)
    gps += struct.pack(">6I", 54, 1, 17, 1, 33, 1)
    tiff = b"MM\0*" + struct.pack(">I", 8) + first + gps
    return b"\xff\xe1" + struct.pack(">H", len(tiff) + 8) + b"Exif\0\0" + tiff


def place(page: Page, name: str) -> None:
    """Go to one of the main screens by the bar at the bottom."""
    page.get_by_role("navigation").get_by_role("button", name=name, exact=True).click()
    heading = {"Identify": "What have you got?"}.get(name, name)
    expect(page.get_by_role("heading", level=1)).to_have_text(heading)


def more(page: Page, name: str) -> None:
    """Go to a screen that stands under More."""
    place(page, "More")
    page.get_by_role("main").get_by_role("button", name=name).first.click()
    expect(page.get_by_role("heading", level=1)).to_have_text(name)


def takes_in(page: Page, rows: Any) -> None:
    """Imports a range of three items from a file into one of one's own."""
    said = {"format": 1, "kind": "identify range", "made": "", "rows": rows}
    more(page, "Ranges")
    page.get_by_label("Add a range from a file").set_input_files(
        {"name": "a.json", "mimeType": "application/json", "buffer": json.dumps(said).encode()}
    )
    page.get_by_role("dialog").get_by_role("button", name="Import it").click()
    expect(page.get_by_role("alert")).to_contain_text("3 items imported.")


def demo(page: Page) -> None:
    """At the first start: take the demo collection."""
    page.get_by_role("button", name="Try the demo").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Collection")
    expect(page.get_by_text("100 pieces.")).to_be_visible()


def fill(page: Page, label: str, text: str) -> None:
    """Type into a field and leave it; wait until it is saved."""
    box = page.get_by_label(label, exact=False).first
    box.fill(text)
    box.blur()
    expect(saved(page, label)).to_have_text("Saved")


def saved(page: Page, label: str) -> Any:
    """Where a field says that it is saved."""
    return page.locator(".field", has=page.get_by_text(label, exact=True)).first.locator(".saved")


def choose(page: Page, label: str, option: str) -> None:
    """Choose in a list, and wait until it is saved."""
    page.get_by_label(label, exact=True).or_(
        page.get_by_label(label + "Saved", exact=True)
    ).first.select_option(option)
    expect(saved(page, label)).to_have_text("Saved")


def add_piece(page: Page, number: str) -> None:
    """From the collection: add a piece by its number."""
    place(page, "Collection")
    page.get_by_role("button", name="Add a piece").click()
    page.get_by_label("Number or name").fill(number)
    page.get_by_role("list", name="Found").get_by_role("button").first.click()
    expect(page.get_by_role("heading", level=1)).to_contain_text(number)
