"""The storage of the app before it could sync: version 2, made as that app made it."""

from typing import Any

from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.own_server import pair, phone, said_of, same_everywhere, settled, sync
from tests.browser.phone import PHONE, watched
from tests.browser.phone_storage import kept, place

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
    writing.objectStore("kept").put({ range: "tarrowby", first: false }, "settings");
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
    """Wants: changed once; with a journal that does not tell all; without one; deleted."""
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


def version_2(context: BrowserContext, url: str) -> Page:
    """A phone with that storage."""
    page = context.new_page()
    page.goto(url + "icons/icon.svg")
    page.evaluate(VERSION_2, old_phone())
    return page


def test_what_version_two_stored_is_all_there(browser, server):
    context = browser.new_context(**PHONE)
    page = version_2(context, server.url)
    watched(page).goto(server.url)
    expect(page.get_by_label("Range")).to_have_value("tarrowby")
    place(page, "Wants")
    expect(page.get_by_role("list", name="Wants").get_by_role("button")).to_have_count(3)
    there = kept(page)
    records, journal, _ = old_phone()
    assert sorted(there["records"], key=str) == sorted(records, key=str)
    assert there["journal"] == journal
    context.close()
    assert page.reported == []


def test_a_phone_used_before_brings_its_records_as_they_stand(browser, own):
    """Its journal becomes operations in order; what that does not come to is said by one more."""
    contexts = [browser.new_context(**PHONE) for _ in range(2)]
    old = version_2(contexts[0], own.url)
    before, _, _ = old_phone()
    old.goto(own.link())
    expect(old.get_by_text("3 records are on this device")).to_be_visible()
    old.get_by_role("button", name="Pair", exact=True).click()
    settled(old)
    fresh = phone(contexts[1])
    pair(fresh, own, "New one")
    sync(old)
    same_everywhere(own, old, fresh)
    assert said_of(kept(fresh)["records"]) == said_of(before)
    entries = kept(old)["journal"]
    device = entries[0]["op"].partition(".")[0]
    own_ids = [e["op"] for e in entries if e.get("op", "").startswith(device)]
    assert own_ids == [f"{device}.{n + 1}" for n in range(len(own_ids))], "in the journal's order"
    told = {e["record"]: e["after"] for e in entries if e["what"] == "As it was on this phone"}
    assert told["rodd"] == {"notes": before[1]["notes"], "extra": before[1]["extra"]}
    assert told["rsilent"]["urgency"] == 3
    assert set(told) == {"rodd", "rsilent"}
    for context in contexts:
        context.close()
