"""The browser closes the storage: it is opened again, and nothing is read from empty memory."""

from collections.abc import Iterator

import orjson
import pytest

from tests.conftest import Server, serving
from tests.every_browser.cutting import EMPTY, parts_site, watched_site
from tests.every_browser.driven import Phone
from tests.every_browser.steps import add_piece, catch_files, look_round, open_more

WAYS = ("event", "silent", "middle")
# what is there before: two records with a history, a photo, a piece, something set aside
BEGUN = """(async () => {
  const blob = new Blob([new Uint8Array([255, 216, 255, 217])], { type: "image/jpeg" });
  const made = (id, notes) => ({ id, type: "note", trashed: "", notes, photos: ["pa"] });
  const photo = { id: "pa", full: blob, small: blob, width: 1, height: 1 };
  await records.change("One", [records.making(made("ra", "a"))], { photos: [photo] });
  await records.change("Two", [records.making(made("rb", "b"))]);
  await records.change("Three", [records.setting("ra", "notes", "a", "aa")]);
  await settings.keepSettings({ range: "tarrowby" });
  await last.backedUp(1);
  await aside.putAside("sent", [{ id: "x", value: { odd: 1 }, why: "It is odd." }]);
  await piece.keepFormer({ format: 1, pack: "p", steps: [] });
  await seal();
  window.group = (await journal.latest(1))[0].group;
})()"""
READS = {
    "a value": "store.read('kept', 'settings')",
    "settings": "settings.readSettings()",
    "the last backup": "last.lastBackup()",
    "the latest changes": "journal.latest(9)",
    "what Undo would do": "journal.undoable()",
    "a history": "journal.historyOf('ra')",
    "what is not in a backup": "journal.changedAfter(0)",
    "a photo": "photos.photo('pa').then((one) => [one.id, one.full.size])",
    "loose photos": "photos.loosePhotos([])",
    "what is set aside": "aside.allAside()",
    "how much is set aside": "aside.countAside()",
    "where syncing stands": "standing.readState()",
    "what was not sent": "sending.unsent('none')",
    "operations": "sending.operations([1, 2, 3])",
    "records past the gate": "store.look(['records'], (there) => there.all('records'))",
    "a backup": "backups.makeBackup().then(({ seq, count }) => [seq, count])",
}
WRITES = {
    "a value": ("store.write('kept', 'k', 5)", "store.read('kept', 'k')", True, 5),
    "taking a value away": (
        "store.remove('kept', 'backup')",
        "store.read('kept', 'backup')",
        True,
        None,
    ),
    "settings": (
        "settings.keepSettings({ range: 'pellmarsh' })",
        "settings.readSettings().then((one) => one.range)",
        True,
        "pellmarsh",
    ),
    "a change": (
        "records.change('Four', [records.setting('rb', 'notes', 'b', 'bb')]).then((d) => d.kept)",
        "journal.historyOf('rb').then((all) => all.map((one) => one.what))",
        "disk",
        ["Four", "Two"],
    ),
    "an undo": (
        "journal.undo({ group, what: 'Three' }).then((done) => [done.kept, done.left])",
        "store.read('records', 'ra').then((one) => one.notes)",
        ["disk", 0],
        "a",
    ),
    "a thing set aside": (
        "aside.putAside('sent', [{ id: 'y', value: 1, why: 'Odd.' }])",
        "aside.countAside()",
        "disk",
        2,
    ),
    "a piece": (
        "piece.keep({ format: 1, id: 's', pack: 'p', steps: [] })",
        "store.read('kept', 'piece').then((one) => one.id)",
        True,
        "s",
    ),
    "where syncing stands": (
        "standing.setState({ epoch: 'e' }).then(() => 1)",
        "standing.readState().then((one) => one.epoch)",
        1,
        "e",
    ),
    "a restore": (
        """(async (made) => {
          const one = { id: 'rc', type: 'note', trashed: '', made, changed: made, notes: 'c' };
          const file = { records: [one], journal: [], photos: [] };
          const { kept, added } = await backups.restore(file);
          return [kept, added];
        })('2020-01-01T00:00:00.000Z')""",
        "journal.historyOf('rc').then((all) => all.length)",
        ["disk", 1],
        1,
    ),
    "deleting for good": (
        "records.change('Away', [records.trashing('rb')])"
        ".then(() => (cut[arguments[0]](), records.deleteForGood(['rb'], ['pa'])))",
        "store.read('records', 'rb').then((one) => one.gone)",
        "disk",
        True,
    ),
}


@pytest.fixture
def parts(lent: Phone, site: dict[str, bytes]) -> Iterator[Phone]:
    """The parts of the app that read and write, with something stored."""
    with serving(parts_site(site)) as server:
        lent.goto(server.url)
        lent.until("window.ready")
        lent.run_later(BEGUN)
        yield lent


@pytest.mark.parametrize("way", WAYS)
def test_every_read_gives_what_is_stored(parts: Phone, way: str):
    for name, expression in READS.items():
        before = parts.run_later(expression)
        assert before not in (None, [], {}, 0), name
        parts.run(f"window.wasCut = false; cut.{way}()")
        assert parts.run_later(expression) == before, name
        assert way != "middle" or parts.run("return wasCut"), name
        assert parts.run_later("store.problem()") == ""


@pytest.mark.parametrize("way", WAYS)
def test_every_write_is_on_the_disk(parts: Phone, way: str):
    for name, (write, look, given, stored) in WRITES.items():
        parts.run(f"window.wasCut = false; cut.{way}()")
        assert parts.run_later(write, way) == given, name
        assert parts.run_later(look) == stored, name
        assert way != "middle" or parts.run("return wasCut"), name
        assert parts.run_later("store.problem()") == ""
    groups = parts.run_later(
        "store.look(['journal'], (there) => there.all('journal'))"
        ".then((all) => all.map((one) => `${one.group} ${one.record}`))"
    )
    assert len(groups) == len(set(groups)), "nothing was written twice"


def with_two_entries(phone: Phone, app: Server) -> None:
    """The demo, and two entries of one's own; on the screen for backups."""
    look_round(phone, app)
    for number in ("P 24", "G 25"):
        add_piece(phone, number)
    open_more(phone, "Backup")
    phone.sees("2 records are only on this device")


@pytest.mark.parametrize("way", WAYS)
def test_a_backup_after_the_connection_closed_holds_everything(
    lent: Phone, site: dict[str, bytes], way: str
):
    with serving(watched_site(site)) as app:
        with_two_entries(lent, app)
        lent.run(f"cut.{way}()")
        catch_files(lent)
        lent.tap("Make a backup file")
        lent.sees("with 124 records")
        assert len(orjson.loads(lent.until("window.files[0]"))["records"]) == 124
        lent.run(f"cut.{way}()")
        lent.tap("More")
        lent.sees("Everything is in the backup of")
        assert lent.reported() == []


def test_what_cannot_be_opened_again_is_said_and_no_memory_is_read(
    lent: Phone, site: dict[str, bytes]
):
    with serving(watched_site(site)) as app:
        with_two_entries(lent, app)
        catch_files(lent)
        lent.run("window.refusing = true; cut.event()")
        lent.tap("Make a backup file")
        lent.sees("The browser has closed its storage and will not open it again.")
        assert lent.run("return window.files.length") == 0
        lent.run("window.refusing = false")
        lent.tap("Make a backup file")
        lent.sees("with 124 records")
        assert lent.reported() == []


def test_no_backup_is_made_that_is_emptier_than_what_was_here(lent: Phone, site: dict[str, bytes]):
    with serving(watched_site(site)) as app:
        with_two_entries(lent, app)
        catch_files(lent)
        lent.run_later(EMPTY)
        lent.tap("More")
        lent.sees("This browser has just deleted what the app had stored on this device.")
        lent.tap("Make a file of them")
        lent.sees("without photos and history. Keep your last backup as well")
        assert len(orjson.loads(lent.until("window.files[0]"))["records"]) == 124
        open_more(lent, "Backup")
        lent.tap("Make a backup file")
        lent.sees("The storage gives 0 of the 124 records")
        assert lent.run("return window.files.length") == 1
        lent.goto(app.url)
        lent.sees("This browser has deleted what the app had stored on this device: 124 records")
        lent.tap("Restore a backup file", "button")
        catch_files(lent)
        lent.tap("Make a backup file")
        lent.sees("The storage gives 0 of the 124 records")
        assert lent.run("return window.files.length") == 0
