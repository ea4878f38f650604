"""The storage of the app before it could sync: version 2 of the database, made as that app made it."""

from typing import Any

from playwright.sync_api import expect

from tests.browser.keeping import kept, place
from tests.browser.phone import PHONE, watched

# What version 2 was: four stores, and two indexes of the journal.
VERSION_2 = """
([records, journal, photos]) => new Promise((resolve, reject) => {
  const request = indexedDB.open("identify", 2);
  request.onupgradeneeded = () => {
    const database = request.result;
    database.createObjectStore("kept");
    database.createObjectStore("records", { keyPath: "id" });
    database.createObjectStore("photos", { keyPath: "id" });
    const store = database.createObjectStore("journal", { keyPath: "seq", autoIncrement: true });
    for (const field of ["record", "group"]) store.createIndex(field, field);
  };
  request.onerror = () => reject(request.error);
  request.onsuccess = () => {
    const database = request.result;
    const writing = database.transaction(["kept", "records", "photos", "journal"], "readwrite");
    writing.objectStore("kept").put({ range: "tarrowby", currency: "EUR", first: false }, "settings");
    for (const one of records) writing.objectStore("records").put(one);
    for (const one of journal) writing.objectStore("journal").put(one);
    for (const { full, small, ...one } of photos) {
      const blob = text => new Blob([Uint8Array.from(atob(text), c => c.charCodeAt(0))],
                                    { type: "image/jpeg" });
      writing.objectStore("photos").put({ ...one, full: blob(full), small: blob(small) });
    }
    writing.onabort = () => reject(writing.error);
    writing.oncomplete = () => { database.close(); resolve(); };
  };
})"""
TIME = "2026-05-0{}T10:00:00.000Z"


def entry(seq: int, record: str, before: Any, after: Any, **marks: Any) -> dict[str, Any]:
    bare = {"seq": seq, "time": TIME.format(seq), "record": record, "type": "want", "undoes": ""}
    said = {"group": f"g{seq}", "what": "A change", "side": False, "before": before, "after": after}
    return bare | said | marks


def want(ident: str, seq: int, **fields: Any) -> dict[str, Any]:
    bare = {"id": ident, "type": "want", "made": TIME.format(1), "changed": TIME.format(seq)}
    usual = {"pack": "pellmarsh", "item": "P 24", "variant": "", "least": "", "box": ""}
    rest: dict[str, Any] = {"most": None, "urgency": 2, "notes": "", "trashed": ""}
    return bare | usual | rest | fields


def old_phone() -> tuple[list[Any], list[Any], list[Any]]:
    """A want changed once; one whose journal does not tell all; one without a journal; one deleted."""
    first = want("rfirst", 1)
    changed = want("rfirst", 2, notes="with its box")
    odd = want("rodd", 3, notes="changed past the journal", extra={"of a newer version": [1, None]})
    silent = want("rsilent", 1, urgency=3)
    gone = {"id": "rgone", "type": "want", "made": TIME.format(1), "changed": TIME.format(5)}
    gone |= {"trashed": TIME.format(4), "gone": True}
    journal = [
        entry(1, "rfirst", None, first),
        entry(2, "rfirst", {"notes": ""}, {"notes": "with its box"}),
        entry(3, "rodd", None, want("rodd", 3)),
        entry(4, "rgone", None, {}, side=True),
        entry(5, "rgone", {}, gone, what="Deleted for good", side=True),
    ]
    return [changed, odd, silent, gone], journal, []


def test_what_version_two_stored_is_all_there(browser, server):
    context = browser.new_context(**PHONE)
    page = context.new_page()
    page.goto(server.url + "icons/icon.svg")
    records, journal, _ = old_phone()
    page.evaluate(VERSION_2, [records, journal, []])
    watched(page).goto(server.url)
    expect(page.get_by_label("Range")).to_have_value("tarrowby")
    place(page, "Wants")
    expect(page.get_by_role("list", name="Wants").get_by_role("button")).to_have_count(3)
    there = kept(page)
    assert sorted(there["records"], key=str) == sorted(records, key=str)
    assert there["journal"] == journal
    context.close()
    assert page.reported == []
