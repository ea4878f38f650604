"""A spreadsheet goes up once; what the server no longer keeps is sent anew by itself."""

import urllib.request

import pytest
from playwright.sync_api import expect

from tests.browser.exchanging import as_csv, choose_file, listed, look, open_import

# Four of them are more than the server keeps.
LARGE = b"Number;Notes\n" + b"".join(b"%d;%b\n" % (n, b"a" * 480) for n in range(19_000))


@pytest.fixture
def sent(page, tables):
    """The requests about spreadsheets that the page makes, in order."""
    found = []

    def keep(request):
        if "/api/exchange/" in request.url:
            found.append(request)

    page.on("request", keep)
    page.goto(tables.url)
    open_import(page)
    return found


def path(request) -> str:
    return request.url.partition("/api/exchange/")[2].partition("?")[0]


def test_the_rows_go_up_once(page, sent, pellmarsh):
    choose_file(page, "list.csv", as_csv(listed(pellmarsh["pack"], 300)))
    page.get_by_label("Which row has the headings").select_option("0")
    expect(page.get_by_role("main")).to_contain_text("301 rows")
    look(page)
    assert [path(one) for one in sent] == ["read", "read", "keys", *["match"] * 4]
    assert ["upload=" in one.url for one in sent[:2]] == [False, True]
    assert not any("cells" in one.post_data for one in sent[2:])


def test_what_the_server_no_longer_keeps_is_sent_anew(page, sent, tables, pellmarsh):
    choose_file(page, "list.csv", as_csv(listed(pellmarsh["pack"], 20)))
    for _ in range(4):
        urllib.request.urlopen(f"{tables.url}api/exchange/read?name=other.csv", LARGE).close()
    look(page)
    assert [path(one) for one in sent] == ["read", "keys", "read", "keys", "match"]
    assert ["410" in text for text in page.reported] == [True]
    page.reported.clear()
