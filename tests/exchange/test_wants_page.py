"""The page of wants for a friend: safe whatever is in it, readable, and nothing but a page."""

from html.parser import HTMLParser
from typing import Any
from urllib.parse import quote

import orjson
import pytest
from hypothesis import given
from hypothesis import strategies as st

from identify.core.exporting.naming import naming_of
from identify.core.exporting.wants_page import wants_page
from identify.phone import DEMO
from tests.browser.phone import violations
from tests.exchange.fitting import demo_reference
from tests.exchange.strategies import QUICK, TEXT, money

HOSTILE = '"><script>alert(1)</script><img src=x onerror=alert(2)>&lt;</style>'
ALLOWED = {"html", "head", "meta", "title", "style", "body", "main", "h1", "h2", "p", "ul", "li",
           "span"}  # fmt: skip


def page_of(records: list[Any], title: str = "", pictures: dict[str, str] | None = None) -> str:
    """The page where the demo ranges are at hand."""
    naming = naming_of([one["pack"] for one in demo_reference()["engines"]])
    return wants_page(records, naming, title, "1 May 2027", pictures or {})


class Tags(HTMLParser):
    """The tags and attributes of a page, and its text."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.tags: set[str] = set()
        self.names: set[str] = set()
        self.text = ""
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.add(tag)
        self.names |= {name for name, _ in attrs}

    def handle_data(self, data: str) -> None:
        self.text += data


def want(**fields: Any) -> dict[str, Any]:
    return {"id": "r1", "type": "want", "pack": "pellmarsh", "item": "P 21"} | fields


@given(
    pack=st.one_of(st.just("pellmarsh"), st.just(HOSTILE), TEXT),
    item=st.one_of(st.just(HOSTILE), TEXT),
    least=st.one_of(st.just(HOSTILE), TEXT),
    title=st.one_of(st.just(HOSTILE), TEXT),
    most=money(),
)
@QUICK
def test_nothing_in_a_want_becomes_a_tag(pack, item, least, title, most):
    page = page_of([want(pack=pack, item=item, called=item, least=least, most=most)], title)
    seen = Tags(page)
    assert seen.tags <= ALLOWED
    assert seen.names <= {"lang", "charset", "name", "content", "http-equiv", "class"}


def test_hostile_text_is_shown_as_it_is():
    assert HOSTILE in Tags(page_of([want(item=HOSTILE)])).text


def test_it_says_what_is_looked_for_and_no_more():
    wanted = want(variant="p21_c", least="good", box="yes", urgency=3, notes="mine is chipped",
                  most={"minor": 4500, "over": 0, "currency": "GBP", "typed": "£45"})  # fmt: skip
    others = [{"id": "r2", "type": "piece", "item": "P 20", "pack": "pellmarsh"}]
    text = Tags(page_of([wanted, *others, want(item="G 1", trashed="2024")])).text
    assert "P 21 Express electric, box-shaped body, black, silver line" in text
    assert "urgent; at least good; with its box; up to £45" in text
    assert "1 piece wanted" in text
    assert "A price is a wish" in text
    assert "chipped" not in text
    assert "P 20" not in text
    assert "G 1" not in text


def test_what_is_in_no_range_has_the_name_that_its_collector_gave_it():
    text = Tags(page_of([want(pack="", item="304", called="Brake van, grey")])).text
    assert "304 Brake van, grey" in text
    assert "Other" in text


def test_of_prices_it_speaks_only_where_there_is_one():
    text = Tags(page_of([want(least="good"), want(item="P 20", most=None)])).text
    assert "2 pieces wanted" in text
    assert "price" not in text


def test_it_is_one_file_that_fetches_and_runs_nothing(tmp_path, browser):
    """In a real browser, from the disk, with text that would run anywhere else."""
    path = shown(tmp_path, [want(item=HOSTILE, variant=HOSTILE)])
    page = browser.new_page()
    asked, talked = [], []
    page.on("request", lambda request: asked.append(request.url))
    page.on("dialog", lambda dialog: talked.append(dialog.message))
    page.goto(path)
    assert asked == [path]
    assert talked == []
    page.close()


def test_a_picture_of_a_want_is_shown_and_runs_nothing(tmp_path, browser):
    """What the phone drew is an image on the page: script in it is dead, and fetches nothing."""
    drawn = (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 120 66" onload="alert(1)">'
        '<script>alert(2)</script><image href="https://example.org/x.png" width="9" height="9"/>'
        '<rect width="120" height="66"/></svg>'
    )
    record = want(item="G 1", id="w1")
    address = f"data:image/svg+xml,{quote(drawn)}"
    path = shown(tmp_path, [record, want(item="P 20", id="w2")], {"w1": address})
    page = browser.new_page()
    asked, talked = [], []
    page.on("request", lambda request: asked.append(request.url))
    page.on("dialog", lambda dialog: talked.append(dialog.message))
    page.goto(path)
    assert page.locator("img").count() == 1
    assert page.locator("img").evaluate("image => image.naturalWidth") > 0
    assert [url for url in asked if not url.startswith("data:")] == [path]
    assert talked == []
    page.close()


def shown(
    folder: Any, records: list[dict[str, Any]], pictures: dict[str, str] | None = None
) -> str:
    """The address of the page of some wants on the disk."""
    path = folder / "wants.html"
    path.write_text(page_of(records, "", pictures), encoding="utf-8")
    return path.as_uri()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_it_is_readable(tmp_path, browser, scheme):
    records = orjson.loads(DEMO.read_bytes())["records"]
    context = browser.new_context(
        color_scheme=scheme, viewport={"width": 320, "height": 640}, bypass_csp=True
    )
    page = context.new_page()
    page.goto(shown(tmp_path, records))
    page.add_style_tag(content="html { font-size: 200%; }")
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    assert violations(page) == []
    context.close()
