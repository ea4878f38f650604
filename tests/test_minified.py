"""What goes to the phone is smaller, and says and does the same."""

import gzip

import pytest

from identify.minified import UnreadableError, minified
from identify.phone import WEB, engine_module

TEMPLATE = """/** One
 * two */
const name = "/* no comment */"; // said
export const text = `a
   // stays
     /* and ${ `this  ${name}` } */`;
"""


def test_texts_and_templates_stay_as_they_are(browser):
    page = browser.new_page()
    address = "`data:text/javascript,${encodeURIComponent(script)}`"
    read = f"async (script) => (await import({address})).text"
    said = page.evaluate(read, TEMPLATE)
    small = minified("a.js", TEMPLATE)
    assert (
        page.evaluate(read, small)
        == said
        == "a\n   // stays\n     /* and this  /* no comment */ */"
    )
    assert "said" not in small
    page.close()


@pytest.mark.parametrize("name", ["style.css", "later.css", "sw.js"])
def test_it_is_smaller_and_said_twice_it_is_the_same(name):
    text = (WEB / name).read_text("utf-8")
    small = minified(name, text)
    assert len(small) < 0.95 * len(text)
    assert minified(name, small) == small


def test_the_engine_is_sent_in_less_than_three_quarters():
    engine = engine_module()
    before, after = (len(gzip.compress(e.encode())) for e in (engine, minified("a.js", engine)))
    assert after < 0.75 * before


def test_what_cannot_be_read_is_refused_by_name():
    with pytest.raises(UnreadableError, match=r"^a\.js cannot be read: "):
        minified("a.js", "const = 1;")


def test_other_files_stay_as_they_are():
    assert minified("packs/a.json", "{ }") == "{ }"
