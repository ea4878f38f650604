"""How much goes into one transaction: web/sync/pace.js by itself, run by deno."""

import json
import subprocess

from deno import find_deno_bin

from identify.shipped import WEB

SCRIPT = """
const { pace } = await import(%s);
const found = %s.map((turns) => {
  const own = pace();
  return turns.map(([ms, whole]) => {
    own.took(ms, whole);
    return own.most();
  });
});
console.log(JSON.stringify(found));
"""


def paces(*turns: list[tuple[float, bool]]) -> list[list[int]]:
    """What is to go into the next transaction after each of these: (milliseconds, a whole one)."""
    script = SCRIPT % (json.dumps((WEB / "sync" / "pace.js").as_uri()), json.dumps(turns))
    command = [find_deno_bin(), "run", "--quiet", "--no-config", "--allow-read", "-"]
    done = subprocess.run(command, input=script, capture_output=True, text=True, check=True)
    found: list[list[int]] = json.loads(done.stdout)
    return found


def test_more_goes_into_a_transaction_while_they_are_quick_and_less_when_they_are_not():
    quick, slow, hiccup, steady, last = paces(
        [(0, True), (5, True), (10, True), (10, True), (10, True), (10, True)],
        [(500, True), (500, False), (500, True), (500, True)],
        [(10, True), (10, True), (3000, True), (60, True)],
        [(20, True), (24, True), (30, True), (30, True)],
        [(5, False), (5, True)],
    )
    assert quick == [50, 100, 200, 400, 400, 400]
    assert slow == [13, 7, 5, 5]
    assert hiccup == [50, 100, 50, 25]
    assert steady == [38, 48, 48, 48]
    assert last == [25, 50]
