"""Nothing that a person looks at moves when a part of the app comes late."""

from playwright.sync_api import Route, expect

from tests.browser.phone import PHONE, unfold, watched
from tests.browser.test_access import answer

SHIFTS = """() => {
  window.shifts = [];
  new PerformanceObserver((list) => {
    for (const shift of list.getEntries())
      if (!shift.hadRecentInput)
        window.shifts.push([shift.value, ...shift.sources.map(({ node }) => node?.outerHTML)]);
  }).observe({ type: "layout-shift" });
}"""
NOT_OF_THE_TAP = "at => performance.now() > at + 700"  # 500 ms are put down to who tapped
TWO_FRAMES = "() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))"


def test_the_rest_of_an_answer_may_come_late(browser, server):
    context = browser.new_context(**PHONE, service_workers="block")
    page = watched(context.new_page())
    held = []

    def hold(route: Route) -> None:
        held.append(route)

    page.route("**/later.js", hold)
    page.goto(server.url)
    answer(page)
    page.evaluate(SHIFTS)
    unfold(page)
    page.wait_for_function(NOT_OF_THE_TAP, arg=page.evaluate("performance.now()"))
    assert held
    for route in held:
        route.continue_()
    expect(page.locator(".everything > div")).not_to_be_empty()
    page.evaluate(TWO_FRAMES)
    assert page.evaluate("window.shifts") == []
    context.close()
    assert page.reported == []
