"""Several ranges at once: gauge and material first, then on in the range that is left."""

import pytest
from playwright.sync_api import expect

from tests.browser.phone import (
    choices,
    expect_answers,
    expect_other_question,
    expect_question,
    question,
    see,
    tap,
    undo,
)


@pytest.fixture
def any_range(page, server):
    page.goto(server.url)
    page.get_by_label("Range").select_option("Any range")
    expect(page.get_by_role("button", name="Tender", exact=True)).to_be_visible()
    return page


def test_gauge_and_material_are_asked_first_and_then_one_range_is_left(any_range):
    page = any_range
    tap(page, "Wagon")
    first = question(page)
    assert first in ("How far apart are its wheels?", "What is the body made of?")
    see(page, choices(page)[1])
    if question(page) in ("How far apart are its wheels?", "What is the body made of?"):
        see(page, choices(page)[1])
    expect_answers(page, 1)
    see(page, choices(page)[0])
    page.reload()
    expect_answers(page, 2)
    expect(page.get_by_role("dialog")).to_have_count(0)
    while question(page) != first:
        undo(page)
    undo(page)
    expect_question(page, "What have you got?")
    expect(page.get_by_label("Range")).to_have_value("all")


def test_a_kind_that_one_range_has_leaves_that_range(any_range):
    tap(any_range, "Tender")
    expect_other_question(any_range, "What have you got?")
    assert question(any_range) != "How far apart are its wheels?"


def test_a_number_is_found_in_every_range_and_opens_its_own(any_range, pellmarsh):
    item = pellmarsh["pack"]["items"][0]
    any_range.get_by_role("searchbox").fill(item["number"])
    found = any_range.get_by_role("list", name="Found")
    found.get_by_role("button").filter(has_text=item["name"]).first.click()
    expect(any_range.locator(".strip, .answer").first).to_contain_text(item["name"])
