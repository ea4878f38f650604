"""identify/server/README.md against OWASP ASVS 5.0.0: nothing left out, nothing made up."""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent.parent

# OWASP ASVS 5.0.0 (github.com/OWASP/ASVS, 5.0/docs_en, the released CSV; CC BY-SA 4.0): for each
# section the level of its requirements, in order. V10 and V17 apply as a whole or not at all.
LEVELS = {
    "V1.1": "22", "V1.2": "1111122223", "V1.3": "112222222223", "V1.4": "222", "V1.5": "123",
    "V2.1": "122", "V2.2": "112", "V2.3": "12223", "V2.4": "23",
    "V3.1": "3", "V3.2": "113", "V3.3": "12223", "V3.4": "11222233", "V3.5": "11122333",
    "V3.6": "3", "V3.7": "22333",
    "V4.1": "12233", "V4.2": "23333", "V4.3": "22", "V4.4": "1222",
    "V5.1": "2", "V5.2": "112333", "V5.3": "113", "V5.4": "222",
    "V6.1": "122", "V6.2": "111111112222", "V6.3": "11223333", "V6.4": "112233",
    "V6.5": "22222333", "V6.6": "2223", "V6.7": "33", "V6.8": "2222",
    "V7.1": "222", "V7.2": "1111", "V7.3": "22", "V7.4": "11222", "V7.5": "223", "V7.6": "22",
    "V8.1": "1233", "V8.2": "1123", "V8.3": "133", "V8.4": "23",
    "V9.1": "111", "V9.2": "1222",
    "V11.1": "2233", "V11.2": "22233", "V11.3": "11233", "V11.4": "1222", "V11.5": "23",
    "V11.6": "23", "V11.7": "33",
    "V12.1": "12233", "V12.2": "11", "V12.3": "22223",
    "V13.1": "2333", "V13.2": "222223", "V13.3": "2233", "V13.4": "1222233",
    "V14.1": "22", "V14.2": "12223333", "V14.3": "122",
    "V15.1": "12233", "V15.2": "12233", "V15.3": "1222222", "V15.4": "3333",
    "V16.1": "2", "V16.2": "22222", "V16.3": "2222", "V16.4": "222", "V16.5": "2223",
}  # fmt: skip
ALL = {
    f"{section}.{n}": int(level)
    for section, levels in LEVELS.items()
    for n, level in enumerate(levels, 1)
}


def page() -> str:
    return (ROOT / "identify" / "server" / "README.md").read_text("utf-8")


def rows() -> list[list[str]]:
    found = [line for line in page().splitlines() if line.startswith("| V")]
    return [[cell.strip() for cell in line.strip("|").split("|")] for line in found]


def parts(ident: str) -> list[int]:
    return [int(part) for part in ident[1:].split(".")]


def left_out() -> set[str]:
    """Every requirement that is said not to apply."""
    told = page().split("\nDoes not apply:")[1]
    told = re.sub(r"\(.*?\)", "", told, flags=re.DOTALL)
    found: set[str] = set()
    for first, last in re.findall(r"(V[\d.]*\d)(?:\s+to\s+(V[\d.]*\d))?", told):
        low, high = parts(first), parts(last or first)
        for ident in ALL:
            if low <= parts(ident)[: len(low)] <= high:
                found.add(ident)
    return found


def test_every_requirement_of_levels_1_and_2_is_answered_once():
    named = [row[0] for row in rows()]
    assert named == sorted(set(named), key=parts)
    assert set(named) & left_out() == set()
    wanted = {ident for ident, level in ALL.items() if level < 3}
    assert wanted - set(named) - left_out() == set()
    assert set(named) <= wanted


@pytest.mark.parametrize("row", rows(), ids=lambda row: row[0])
def test_a_row_says_what_is_asked_how_it_is_met_and_which_test_shows_it(row):
    ident, asked, here, by = row
    assert str(ALL[ident]) in re.findall(r"\d+", asked.partition("(")[2])
    assert here
    tests = re.findall(r"\btest_\w+", by)
    assert tests or re.fullmatch(r"\(.+\)", by)
    for name in tests:
        assert name in NAMES, name


NAMES = {
    name
    for path in (ROOT / "tests").rglob("test_*.py")
    for name in re.findall(r"^\s*def (test_\w+)\(", path.read_text("utf-8"), re.MULTILINE)
}
