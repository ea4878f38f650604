"""What is said on installing, and what an app on an iPhone's home screen does otherwise.

No device is here: the browser's name and what it can do are put in its place, and what is tested
is what the app makes of them.
"""

import orjson
import pytest

from identify.phone import WEB
from tests.conftest import Server, serving
from tests.every_browser.driven import Phone
from tests.every_browser.steps import add_piece, catch_files, look_round, open_more

IPHONE = "Mozilla/5.0 (iPhone; CPU iPhone OS 17_5 like Mac OS X) AppleWebKit/605.1.15"
ANDROID = "Mozilla/5.0 (Linux; Android 14) AppleWebKit/537.36"
MAC = "Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7)"
APART = "An app put there starts empty: make a backup here first"
AGENT = """
  Object.defineProperty(navigator, "userAgent", { value: arguments[0], configurable: true });
"""
# an app on the home screen, whose share sheet says what it did with a file
STANDALONE = """
  const define = (name, value) =>
    Object.defineProperty(navigator, name, { value, configurable: true });
  define("standalone", true);
  define("maxTouchPoints", 5);
  window.shared = [];
  define("canShare", () => true);
  define("share", async ({ files: [file] }) => {
    const [first] = window.answers.splice(0, 1);
    if (first !== "") throw new DOMException("", first);
    window.shared.push([file.name, await file.text()]);
  });
"""
# the moment in which the very first version is stored and not yet in use, held fast
FIRST = b"""
const first = { waiting: {}, active: null, installing: null, addEventListener() {} };
navigator.serviceWorker.register = async () => {
  window.asked = true;
  return first;
};
"""


MENUS = [
    (f"{IPHONE} Version/17.5 Mobile/15E148 Safari/604.1", "In Safari tap the Share", True),
    (f"{IPHONE} CriOS/126.0 Mobile/15E148 Safari/604.1", "open this page in Safari", True),
    (f"{MAC} AppleWebKit/605.1.15 Version/17.5 Safari/605.1.15", "“Add to Dock”", True),
    ("Mozilla/5.0 (Android 14; Mobile; rv:127.0) Gecko/127.0 Firefox/127.0", "three dots", False),
    ("Mozilla/5.0 (X11; Linux x86_64; rv:127.0) Firefox/127.0", "bookmark this page", False),
    (f"{ANDROID} Chrome/126.0 Mobile Safari/537.36", "“Install”", False),
    (f"{ANDROID} SamsungBrowser/25.0 Chrome/121.0 Mobile Safari/537.36", "“Add page to”", False),
    (f"{MAC} Chrome/126.0 Safari/537.36", "At the right end of the address", False),
]


def test_each_browser_is_told_of_its_own_menu(lent: Phone, app: Server):
    lent.goto(app.url)
    lent.sees("What have you got?")
    lent.run("window.dispatchEvent(new Event('appinstalled'))")  # no offer of the browser's own
    for agent, words, apart in MENUS:
        lent.run(AGENT, agent)
        lent.tap("Settings")
        lent.sees("On the home screen")
        told = lent.run("return document.querySelector('main').innerText")
        assert words in told, agent
        assert (APART in told) is apart, agent
        lent.tap("Back to the start")
        lent.sees("What have you got?")


def test_a_backup_counts_only_once_the_sheet_has_taken_it(lent: Phone, app: Server):
    look_round(lent, app)
    add_piece(lent, "P 24")
    open_more(lent, "Backup")
    catch_files(lent)
    lent.run(STANDALONE)
    lent.run("window.answers = ['AbortError', 'NotAllowedError', 'NotAllowedError', '', '']")
    for tapped_again in (False, True):
        lent.tap("Make a backup file")
        if tapped_again:  # it took so long that the browser wants another tap
            lent.tap("Share")
        lent.sees("The backup was not shared, and does not count as made.")
        lent.sees("1 record is only on this device: there is no backup yet.")
        lent.tap("Hide this")
    lent.tap("Collection", "#places button")  # no tap waits for the sheet
    lent.sees("101 pieces")
    open_more(lent, "Backup")
    lent.tap("Make a backup file")
    lent.sees("went where you chose")
    lent.sees("Everything is in the backup of")
    ((name, text),) = lent.run("return window.shared")
    assert name.startswith("stallside-backup-")
    assert len(orjson.loads(text)["records"]) == 123
    assert lent.run("return window.files.length") == 0, "nothing went to the downloads besides"


def test_a_list_is_printed_by_the_share_sheet(lent: Phone, app: Server):
    look_round(lent, app)
    lent.run(STANDALONE)
    lent.run("window.answers = ['']; window.print = () => { throw new Error('no printer'); }")
    lent.tap("Print for insurance")
    lent.sees("An app on the home screen cannot print by itself.")
    lent.tap("Print")
    lent.until("window.shared.length === 1")
    ((name, text),) = lent.run("return window.shared")
    assert name == "list-for-the-insurer.html"
    assert text.count("<tr") > 100
    assert "<button" not in text
    assert lent.reported() == []


def test_an_app_on_the_home_screen_says_where_the_rest_is(lent: Phone, app: Server):
    lent.goto(app.url)
    lent.run(STANDALONE)
    lent.place("Collection")
    lent.place("Identify")
    lent.sees("What you kept in Safari before is not here.")


def test_the_first_version_is_not_called_a_new_one(lent: Phone, site: dict[str, bytes]):
    index = site["index.html"].replace(b"<script ", b"<script src=first.js></script><script ", 1)
    with serving(site | {"index.html": index, "first.js": FIRST}) as app:
        lent.goto(app.url)
        lent.until("window.asked")
        lent.run("window.dispatchEvent(new Event('online'))")
        assert lent.run("return document.getElementById('signal').innerText") == ""


@pytest.mark.parametrize("lent", ["webkit"], indirect=True)
def test_the_page_of_the_certificate_helps_an_iphone(lent: Phone, site: dict[str, bytes]):
    """Safari alone takes a profile, and one that is a download is none."""
    with serving(site | {"certificate.html": (WEB / "certificate.html").read_bytes()}) as app:
        lent.goto(f"{app.url}certificate.html")
        lent.sees("On an iPhone or iPad open this page in Safari")
        lent.sees("Firefox on Android has a list of its own and does not go by the phone’s")
        links = "[...document.querySelectorAll('a[href=\"certificate.crt\"]')]"
        assert lent.run(f"return {links}.map((one) => one.download)") == ["own-authority.crt", ""]
