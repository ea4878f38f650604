"""The report: everything in it, nothing from outside, readable by all."""

import io
import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from identify.lab.measuring import Findings, Progress, measure
from identify.lab.report import report, summary
from identify.reference.compile import compile_pack
from identify.reference.plain_tables import table_pack
from tests.browser.phone import violations
from tests.reference.small_pack import changed, small_files, write

pytestmark = pytest.mark.heavy


@pytest.fixture(scope="module")
def folder(tmp_path_factory) -> Path:
    return write(tmp_path_factory.mktemp("packs"), small_files())


@pytest.fixture(scope="module")
def found(folder) -> Findings:
    return measure(compile_pack(folder), 12, 1, io.StringIO())


def test_the_same_seed_gives_the_same_report(folder, found):
    again = measure(compile_pack(folder), 12, 1, io.StringIO())
    assert report(again) == report(found)
    assert report(measure(compile_pack(folder), 12, 2, io.StringIO())) != report(found)


def test_every_trial_and_feature_is_in_the_report(found):
    page = report(found)
    for word in ("perfect answers", "at the stall", "5 % wrong answers", "random order"):
        assert word in page
    for feature in found.pack["features"]:
        assert f">{feature['name']}</th>" in page
    assert len(found.calibrations) == 4
    assert any(line.startswith("Huffman bound") for line in summary(found))


def test_nothing_is_fetched_and_nothing_runs(found):
    page = report(found)
    assert "<script" not in page
    assert not re.search(r"\b(?:src|href|url)\b\s*[=(]", page)


def test_what_a_pack_says_is_text_and_not_markup(tmp_path):
    files = changed("variants.csv", "No horns", "<b>No</b> & horns")
    files["variants.csv"] = files["variants.csv"].replace(
        "p1b,P1", "p1c,P1,<b>No</b> & horns,1950/1953,cat,,1,,none,\np1b,P1", 1
    )
    found = measure(compile_pack(write(tmp_path, files)), 2, 1, io.StringIO())
    page = report(found)
    assert found.alike
    assert "<b>No</b>" not in page
    assert "&lt;b&gt;No&lt;/b&gt; &amp; horns" in page


def test_a_feature_that_never_helps_is_named(tmp_path):
    alone = tmp_path / "alone.csv"
    alone.write_text("name,colour\na,red\na,green\n", "utf-8")
    found = measure(table_pack(alone, "name", [])[0], 4, 1, io.StringIO())
    assert [found.pack["features"][n]["id"] for n in found.useless] == ["colour"]
    assert "Never of any help here: Colour." in report(found)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_it_is_readable_by_all_and_fits_a_phone(browser: Browser, found, tmp_path, scheme):
    path = tmp_path / "report.html"
    path.write_text(report(found), "utf-8")
    page = browser.new_page(viewport={"width": 360, "height": 740}, color_scheme=scheme)
    page.goto(path.as_uri())
    assert violations(page) == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    for picture in page.get_by_role("img").all():
        assert len(picture.get_attribute("aria-label") or "") > 20
    page.close()


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_progress_is_shown_on_a_terminal_only():
    shown, quiet = Terminal(), io.StringIO()
    for out in (shown, quiet):
        progress = Progress(2, out)
        progress.step()
        progress.step()
        progress.end()
    assert " 50%" in shown.getvalue()
    assert "100%" in shown.getvalue()
    assert quiet.getvalue() == ""
