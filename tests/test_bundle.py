"""The screens put together in one script."""

import re
import subprocess
import sys
from pathlib import Path

import orjson
import pytest

from identify.bundle import BundleError, bundled
from tests.conftest import serving

START = 'import { greet as hello } from "./parts/greet.js";\nconsole.log(hello("you"));\n'
GREET = """/** Says it. */
import { word } from "../data/word.js";

const own = 1;

export function greet(name) {
  return `${word}, ${name ? `dear  ${name}` : ""}  (${own})`;
}
"""
WORD = 'const own = 2;\n\nexport const word = "Hello" + own;\n'
MODULES = {"app.js": START, "parts/greet.js": GREET, "data/word.js": WORD}


def said(browser, script: str) -> list[str]:
    """What a script says on the console of a real browser."""
    page = browser.new_page()
    told: list[str] = []
    page.on("console", lambda message: told.append(message.text))
    page.evaluate(f"async () => {{ {script} }}")
    page.close()
    return told


@pytest.mark.heavy
def test_modules_keep_their_own_names_and_templates_their_spaces(browser):
    assert said(browser, bundled(MODULES, "app.js")["app.js"]) == ["Hello2, dear  you  (1)"]


def test_modules_may_export_the_same_name(browser):
    again = 'import { word as other } from "./more.js";\nconst greet = 3;\n'
    again += 'import { word } from "./data/word.js";\nconsole.log(word + other + greet);\n'
    more = {"app.js": again, "more.js": "export const word = 1;\n"}
    assert said(browser, bundled(MODULES | more, "app.js")["app.js"]) == ["Hello213"]


def test_what_is_only_asked_for_later_is_a_script_of_its_own_that_shares_the_rest(browser):
    start = START + 'import("./far/far.js").then(({ tell }) => tell());\n'
    start += 'import("./far/near.js").then(({ near }) => console.log(near));\n'
    far = """import { word } from "../data/word.js";
import { near } from "./near.js";

export async function tell() {
  const { last } = await import("./last.js");
  console.log(word, near, last);
}
"""
    more = {
        "app.js": start,
        "data/word.js": WORD + 'console.log("once");\n',
        "far/far.js": far,
        "far/near.js": 'console.log("near");\nexport const near = 5;\n',
        "far/last.js": "export const last = 6;\n",
    }
    scripts = bundled(MODULES | more, "app.js")
    assert set(scripts) == {"app.js", "later.js"}
    assert "near = 5" in scripts["later.js"]
    assert "near = 5" not in scripts["app.js"]
    page = browser.new_page()
    told: list[str] = []
    page.on("console", lambda message: told.append(message.text))
    html = (
        '<!doctype html><link rel="icon" href="data:,"><script type="module" src="app.js"></script>'
    )
    files = {"index.html": html.encode()} | {n: t.encode() for n, t in scripts.items()}
    with (
        serving(files) as server,
        page.expect_console_message(lambda message: message.text == "Hello2 5 6"),
    ):
        page.goto(server.url)
    page.close()
    assert told[:3] == ["once", "Hello2, dear  you  (1)", "near"]
    assert sorted(told[3:]) == ["5", "Hello2 5 6"]


def test_fixed_sentences_stand_where_they_are_used_and_others_keep_one_place(browser):
    start = (
        'import { FULL as ALL, left } from "./words.js";\nimport { EMPTY } from "./a/words.js";\n'
    )
    start += 'import { ALL_OF } from "./words.js";\n'
    start += 'import { left as gone } from "./a/words.js";\n'
    start += "const here = { FULL: ALL };\n"
    start += 'console.log(here.FULL, `${EMPTY === "It is" ? EMPTY : ALL}`, left(2));\n'
    start += "console.log(gone(3), ...ALL_OF);\n"
    words = 'export const FULL =\n  "It is " +\n  "\\"full\\".";\n'
    words += "export const left = (n) => `${n} left`;\n"
    words += "export const ALL_OF = [1, 2];\n"
    other = 'export const EMPTY = "It is";\nexport const left = (n) => `${EMPTY} ${n}`;\n'
    sources = {"app.js": start, "words.js": words, "a/words.js": other}
    script = bundled(sources, "app.js")["app.js"]
    assert said(browser, script) == ['It is "full". It is 2 left', "It is 3 1 2"]
    assert "EMPTY" not in script


def test_every_name_in_the_scripts_of_the_phone_is_there(site, tmp_path):
    rule = {"categories": {"correctness": "off"}, "rules": {"no-undef": "error"}}
    rule["env"] = {"browser": True, "es2024": True}
    (tmp_path / "rule.json").write_bytes(orjson.dumps(rule))
    for name in ("app.js", "later.js"):
        (tmp_path / name).write_bytes(site[name])
    oxlint = Path(sys.executable).with_name("oxlint")
    run = [oxlint, "-c", "rule.json", "--format", "unix", "."]
    done = subprocess.run(run, cwd=tmp_path, capture_output=True, text=True, check=False)
    assert (done.returncode, re.findall("'.+' is not defined", done.stdout)) == (0, [])


@pytest.mark.parametrize(
    ("path", "text", "sentence"),
    [
        ("app.js", 'import word from "./data/word.js";\n', "a form that cannot be put together"),
        ("app.js", 'import { word } from "elsewhere";\n', "a form that cannot be put together"),
        ("app.js", 'import { other } from "./data/word.js";\n', "which does not export it"),
        ("app.js", "export let word = 1;\n", "a form that cannot be put together"),
        ("app.js", 'import { word } from "./data/none.js";\n', "which is not there"),
        ("app.js", 'const { word } = await import("./far/none.js");\n', "which is not there"),
        ("app.js", START + 'import("./data/word.js");\n', "which is there from the start"),
        ("app.js", 'import("./app.js");\n', "which is there from the start"),
        ("app.js", 'import { a } from "./a/words.js";\n[1].map(a);\n', "those are only called"),
        ("data/word.js", 'import { greet } from "../parts/greet.js";\n' + WORD, "needs"),
    ],
)
def test_what_cannot_be_put_together_is_refused_by_name(path, text, sentence):
    with pytest.raises(BundleError, match=sentence) as refused:
        bundled(MODULES | {"a/words.js": "export const a = (b) => b;\n", path: text}, "app.js")
    assert path in str(refused.value)
