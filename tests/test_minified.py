"""What goes to the phone is smaller, and says and does the same."""

import gzip

import pytest

from identify.bundle import bundled
from identify.minified import minified, minified_by_hand, uncommented
from identify.phone import MODULE, WEB, engine_module


@pytest.mark.parametrize("name", ["style.css", "later.css"])
def test_a_style_is_smaller_and_said_twice_it_is_the_same(name):
    text = (WEB / name).read_text("utf-8")
    small = minified(name, text)
    assert len(small) < 0.95 * len(text)
    assert minified(name, small) == small


@pytest.mark.heavy
def test_the_engine_is_sent_in_less_than_three_quarters():
    engine = engine_module()
    before, after = (len(gzip.compress(e.encode())) for e in (engine, minified("a.js", engine)))
    assert after < 0.75 * before


def test_a_compiled_script_has_no_pattern_that_the_minifier_could_move():
    assert "const {" not in engine_module()
    assert "const [" not in engine_module()


def test_comments_and_indents_go_and_what_is_said_stays():
    script = """/** One
 * two */
const a = "/* no comment */"; // stays

  // goes
const b = `  // stays`;
export { a, b };
"""
    assert minified_by_hand(script) == "const a=`/* no comment */`,b=`  // stays`;export{a,b};"


@pytest.mark.parametrize("name", ["app.js", "later.js"])
def test_what_is_written_by_hand_is_smaller(name, site):
    modules = {
        path.relative_to(WEB).as_posix(): path.read_text("utf-8")
        for path in WEB.rglob("*.js")
        if MODULE.match(path.relative_to(WEB).as_posix())
    }
    assert len(site[name]) < 0.95 * len(uncommented(bundled(modules, "app.js")[name]))


def test_other_files_stay_as_they_are():
    assert minified("packs/a.json", "{ }") == "{ }"
