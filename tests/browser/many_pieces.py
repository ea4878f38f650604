"""More pieces than the demo collection has."""

from pathlib import Path

import orjson
from playwright.sync_api import Page, expect

from identify.phone import DEMO
from tests.browser.phone_storage import more


def bring_many(page: Page, folder: Path, count: int) -> None:
    """The demo collection with so many pieces in place of its own, restored from a file."""
    demo_file = orjson.loads(DEMO.read_bytes())
    pieces = [r for r in demo_file["records"] if r["type"] == "piece"]
    many = [pieces[n % len(pieces)] | {"id": f"rmany{n}"} for n in range(count)]
    file = folder / "many.json"
    file.write_bytes(orjson.dumps(demo_file | {"records": many}))
    more(page, "Backup")
    page.get_by_label("Restore a backup file").set_input_files(file)
    expect(page.get_by_role("alert")).to_contain_text(f"{count} added", timeout=60_000)
