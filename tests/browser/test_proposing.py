"""A follower of a shared range proposes a sighting to its keepers, from a page of another host."""

from playwright.sync_api import expect

from identify import phone as gathered
from identify.keeping.proposals import WAITING, Box
from identify.publishing import publish
from tests.browser.phone import PHONE, watched
from tests.browser.phone_storage import more
from tests.browser.test_demo_pieces import at_hand
from tests.browser.test_published import plain_host
from tests.browser.test_sightings import BY_ID
from tests.server.own_server import own_server


def test_a_sighting_is_proposed_and_its_answer_is_read(browser, pellmarsh, tmp_path):
    box = Box(tmp_path / "box")
    with own_server(tmp_path / "data", box=box) as keepers:
        word = box.let_in("Ann", keepers.times.now())
        files = gathered.site(gathered.demo_packs(), proposals=keepers.url)
        publish(files, tmp_path / "site", keepers.url)
        with plain_host(tmp_path / "site") as host:
            context = browser.new_context(**PHONE)
            page = watched(context.new_page())
            page.goto(host)
            at_hand(page, pellmarsh, BY_ID["unrecorded_variant"])
            page.get_by_role("button", name="Keep as a sighting").click()
            page.get_by_role("button", name="Propose it to the keepers").click()
            sheet = page.get_by_role("dialog")
            expect(sheet).to_contain_text("nothing else that you keep")
            sheet.get_by_label("The word that the keepers gave you").fill(word)
            sheet.get_by_role("button", name="Send it").click()
            expect(page.get_by_role("alert")).to_contain_text("Sent. The keepers")
            (one,) = box.all(WAITING)
            (sighting,) = one["file"]["sightings"]
            assert sighting["pack"] == "pellmarsh"
            assert "session" not in sighting
            box.settle(one["id"], "taken", "Thank you.")
            more(page, "Sightings")
            expect(page.locator("main")).to_contain_text("was taken. Thank you.")
            assert page.reported == []
            context.close()


def test_where_no_keepers_take_proposals_nothing_is_offered(page, server, pellmarsh):
    page.goto(server.url)
    at_hand(page, pellmarsh, BY_ID["unrecorded_variant"])
    page.get_by_role("button", name="Keep as a sighting").click()
    expect(page.get_by_role("button", name="Save it as a file")).to_be_visible()
    expect(page.get_by_role("button", name="Propose it")).to_have_count(0)
