"""Identifying: answers taken back and changed, what stands behind them, the light."""

from selenium.webdriver.common.keys import Keys

from tests.conftest import Server
from tests.every_browser.driven import Phone
from tests.every_browser.steps import SELLER, answer, begin, choose, identify, labelled

SHEET = "document.querySelector('dialog[open]').innerText"


def test_back_takes_back_one_answer(lent: Phone, app: Server):
    lent.goto(app.url)
    begin(lent)
    first = lent.heading()
    answer(lent)
    second = lent.heading()
    answer(lent)
    lent.driver.back()
    lent.until("document.querySelector('h1').innerText === arguments[0]", second)
    lent.driver.back()
    lent.until("document.querySelector('h1').innerText === arguments[0]", first)


def test_an_answer_survives_a_reload(lent: Phone, app: Server):
    lent.goto(app.url)
    begin(lent)
    answer(lent)
    asked = lent.heading()
    lent.goto(app.url)
    lent.until("document.querySelector('h1')?.innerText === arguments[0]", asked)
    lent.tap("More", ".reach button")
    lent.sees("1 answer so far")


def test_start_again_can_be_undone(lent: Phone, app: Server):
    lent.goto(app.url)
    begin(lent)
    answer(lent)
    asked = lent.heading()
    lent.tap("More", ".reach button")
    lent.tap("Next piece", "dialog button")
    lent.sees("What have you got?")
    lent.tap("Undo that")
    lent.until("document.querySelector('h1').innerText === arguments[0]", asked)


def test_an_answer_is_changed_in_the_list(lent: Phone, app: Server):
    lent.goto(app.url)
    begin(lent)
    asked = lent.heading()
    answer(lent)
    lent.tap("More", ".reach button")
    lent.tap("1 answer so far", "dialog button")
    lent.press(
        "[...document.querySelectorAll('dialog button')]"
        ".find((one) => one.innerText.includes('Change'))"
    )
    lent.until("document.querySelector('h1').innerText === arguments[0]", asked)


def test_why_this_question_is_told(lent: Phone, app: Server):
    lent.goto(app.url)
    begin(lent)
    lent.tap("More", ".reach button")
    lent.tap("Why this question?", "dialog button")
    lent.until(f"{SHEET}.includes('possible')")
    lent.tap("Close")
    lent.until("!document.querySelector('dialog')")


def test_cannot_tell_goes_on(lent: Phone, app: Server):
    lent.goto(app.url)
    begin(lent)
    asked = lent.heading()
    lent.tap("Can’t see it")
    lent.until("document.querySelector('h1').innerText !== arguments[0]", asked)
    lent.tap("More", ".reach button")
    lent.tap("1 answer so far", "dialog button")
    lent.until(f"{SHEET}.includes('Can’t see it')")


def test_a_misread_number_finds_the_item(lent: Phone, app: Server):
    lent.goto(app.url)
    lent.until("document.querySelector('input[type=search]')").send_keys("P24")
    lent.until("document.querySelector('ul[aria-label=Found]')?.innerText.includes('P 24')")


def test_an_answer_says_what_else_it_could_be(lent: Phone, app: Server):
    lent.goto(app.url)
    assert identify(lent, "Wagon")
    lent.tap("Everything else", "summary")
    lent.tap("Why not these?")
    lent.until("document.querySelector('dialog[open] h2')")
    lent.tap("Close")
    lent.tap("Your answers")
    lent.until(f"{SHEET}.length > 100")


def test_the_sellers_date_is_held_against_it(lent: Phone, app: Server):
    lent.goto(app.url)
    identify(lent, "Wagon")
    lent.press(SELLER)
    lent.tap("Say it another way", "summary")
    lent.until("document.querySelector('#claim-text')").send_keys("1955", Keys.ENTER)
    lent.sees("The seller says: 1955")


def test_another_range_is_looked_in(lent: Phone, app: Server):
    lent.goto(app.url)
    box = labelled(lent, "Range")
    lent.run(
        "arguments[0].value = 'tarrowby'; arguments[0].dispatchEvent(new Event('change'))", box
    )
    lent.until("document.activeElement.id === 'range'")  # stored, and drawn anew
    lent.goto(app.url)
    lent.until("document.querySelector('select')?.value === 'tarrowby'")


def test_the_light_and_the_money_stay_as_chosen(lent: Phone, app: Server):
    lent.goto(app.url)
    lent.tap("Settings")
    lent.press("document.querySelector('input[name=light][value=dark]')")
    choose(lent, "Money without a sign", "EUR")
    lent.until("document.documentElement.dataset.light === 'dark'")
    lent.goto(app.url)
    assert lent.run("return document.documentElement.dataset.light") == "dark"
    lent.tap("Settings")
    lent.until("[...document.querySelectorAll('select')].some((one) => one.value === 'EUR')")


def test_a_mark_is_read(lent: Phone, app: Server):
    lent.goto(app.url)
    lent.tap("Read a mark")
    lent.until("document.querySelector('dialog input')").send_keys("W. Germany")
    lent.until(f"{SHEET}.includes('19')")


def test_first_steps_begin_with_nothing_of_ones_own(lent: Phone, app: Server):
    lent.goto(app.url)
    lent.tap("First steps")
    lent.until("document.querySelector('h1').innerText === 'First steps'")
    lent.press("document.querySelector('main .hit, main .main')")
    lent.until("location.search.startsWith('?first-steps=')")
    lent.until("document.querySelector('#guide')")
