"""What goes to the phone is smaller, and says and does the same."""

import gzip

import pytest

from identify.minified import minified, uncommented
from identify.phone import WEB, engine_module


@pytest.mark.parametrize("name", ["style.css", "later.css"])
def test_a_style_is_smaller_and_said_twice_it_is_the_same(name):
    text = (WEB / name).read_text("utf-8")
    small = minified(name, text)
    assert len(small) < 0.95 * len(text)
    assert minified(name, small) == small


def test_the_engine_is_sent_in_less_than_three_quarters():
    engine = engine_module()
    before, after = (len(gzip.compress(e.encode())) for e in (engine, minified("a.js", engine)))
    assert after < 0.75 * before


def test_a_compiled_script_has_no_pattern_that_the_minifier_could_move():
    assert "const {" not in engine_module()
    assert "const [" not in engine_module()


def test_comments_and_indents_go_and_nothing_else():
    script = """/** One
 * two */
const a = "/* no comment */"; // stays

  // goes
  const b = `  // stays`;
"""
    kept = 'const a = "/* no comment */"; // stays\nconst b = `  // stays`;\n'
    assert uncommented(script) == kept


def test_other_files_stay_as_they_are():
    assert minified("packs/a.json", "{ }") == "{ }"
