"""What on the server needs somebody is told on the phone: once a start, and among the devices."""

import shutil

from playwright.sync_api import expect

from tests.browser.own_server import ROUND, OwnProcess, pair, phone
from tests.browser.phone import PHONE
from tests.browser.phone_storage import more

AWAY = "The copy of the last backup for another place could not be made. Check the server."


def test_a_server_that_needs_somebody_says_so_on_the_phone(browser, own_process: OwnProcess):
    context = browser.new_context(**PHONE)
    page = phone(context)
    pair(page, own_process, "Phone")
    expect(page.get_by_role("heading", name="Backups on the server")).to_be_visible()
    expect(page.get_by_text("Check the server")).to_have_count(0)
    own_process.end()
    shutil.rmtree(own_process.folder.with_name("data-backups"))
    own_process.start("--after-backup", "false")
    page.goto(own_process.url)
    notice = page.get_by_role("alert").filter(has_text=AWAY)
    for _ in range(20):  # the backup of the night is made as the server starts, and takes a while
        try:
            expect(notice).to_be_visible(timeout=ROUND / 10)
            break
        except AssertionError:
            page.reload()
    expect(notice).to_be_visible()
    notice.get_by_role("button", name="Hide this").click()
    more(page, "Devices and sync")
    expect(page.locator("p.warn", has_text=AWAY)).to_be_visible()
    context.close()
