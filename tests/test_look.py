"""The look: every colour, size and length of time stands among the tokens of web/style.css."""

import re
from collections.abc import Iterator

import pytest

from identify.phone import WEB

pytestmark = pytest.mark.quick

STYLES = sorted(WEB.glob("*.css"))
TOKENS = re.compile(r"--[\w-]+(?=:)")
COLOUR = re.compile(r"#[0-9a-f]{3,8}\b|\b(?:rgba?|hsla?|hwb|lab|lch|oklab|oklch|color)\(", re.I)
NAMED = re.compile(r"\b(?:black|white|red|green|blue|gr[ae]y|yellow|orange|brown|silver)\b")
SIZE = re.compile(r"(?<![\w-])-?\d*\.?\d+(?:px|rem|em|pt|ms|s)\b")
SIZED = re.compile(
    "font-size|padding|margin|(?:row-|column-)?gap|border|outline$|box-shadow|transition|animation"
)
NOUGHT = re.compile(r"var\(--(?:covered|keyboard), 0px\)")  # what is not covered yet
LIGHTS = ("", '[data-light="dark"]', '[data-light="sun"]')


def rules(text: str) -> Iterator[tuple[str, str, str]]:
    """Of each declaration the selector, the property and the value; those in print left out."""
    plain = re.sub(r"/\*.*?\*/", "", text, flags=re.DOTALL)
    on_screen = re.sub(r"@media print \{(?:[^{}]*\{[^{}]*\})*\s*\}", "", plain)
    for selector, body in re.findall(r"([^{};]+)\{([^{}]*)\}", on_screen):
        for one in body.split(";"):
            name, _, value = one.partition(":")
            yield selector.strip(), name.strip(), NOUGHT.sub("", value.strip())


def strays(text: str) -> list[str]:
    """Colours and sizes that are no token."""
    found = []
    for selector, name, value in rules(text):
        if name.startswith("--"):
            if not selector.startswith(":root") and name != "--bar":
                found.append(f"{selector}: a token of its own, {name}")
            continue
        coloured = COLOUR.search(value) or NAMED.search(value)
        sized = SIZED.match(name) and name != "border-spacing" and SIZE.search(value)
        if coloured or (sized and not value.startswith("max(var(")):
            found.append(f"{selector}: {name}: {value}")
    return found


@pytest.mark.parametrize("style", STYLES, ids=lambda path: path.name)
def test_colours_and_sizes_are_tokens(style):
    assert strays(style.read_text("utf-8")) == []


@pytest.mark.parametrize(
    "stray",
    [
        ".a { color: #123456; }",
        ".a { background: rgb(1 2 3); }",
        ".a { border: 1px solid red; }",
        ".a { padding: 0.5rem; }",
        ".a { font-size: 13px; }",
        ".a { transition: color 300ms; }",
        ".a { --own: 3px; }",
        "@media (min-width: 56em) { .a { gap: 3px; } }",
    ],
)
def test_a_stray_is_found(stray):
    assert len(strays(stray)) == 1


def test_tokens_stand_in_one_place_and_each_is_used_and_explained():
    text = (WEB / "style.css").read_text("utf-8")
    told = (WEB / "LOOK.md").read_text("utf-8")
    named = {name for selector, name, _ in rules(text) if selector == ":root" and name[:2] == "--"}
    used = {
        name
        for path in (*STYLES, *WEB.rglob("*.js"))
        for name in re.findall(r"var\((--[\w-]+)|getPropertyValue\(\"(--[\w-]+)", path.read_text())
        for name in name
    }
    assert named <= used
    assert sorted(name for name in named if f"`{name}`" not in told) == []


def test_the_other_lights_change_only_what_there_is():
    text = (WEB / "style.css").read_text("utf-8")
    tokens = {
        light: {name for selector, name, _ in rules(text) if selector == f":root{light}"}
        for light in LIGHTS
    }
    assert tokens[LIGHTS[1]] <= tokens[""]
    assert tokens[LIGHTS[2]] <= tokens[""]
    assert all(tokens.values())


def colours(text: str, light: str) -> dict[str, str]:
    plain = {name: value for s, name, value in rules(text) if s == ":root"}
    own = {name: value for s, name, value in rules(text) if s == f":root{light}"}
    return plain | own


def luminance(colour: str) -> float:
    """Relative luminance by WCAG 2.2."""
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("light", LIGHTS)
def test_what_is_read_has_seven_to_one_wherever_it_can_lie(light):
    """WCAG 2.2, success criteria 1.4.6 (7 : 1 for text) and 1.4.11 (3 : 1 for an edge)."""
    token = colours((WEB / "style.css").read_text("utf-8"), light)
    for ground in ("--ground", "--object", "--sunk"):
        for text in ("--text", "--quiet", "--accent", "--good", "--bad"):
            assert contrast(token[text], token[ground]) >= 7, (text, ground)
        assert contrast(token["--line"], token[ground]) >= 3, ground
    assert contrast(token["--on-accent"], token["--accent"]) >= 7
    assert contrast(token["--on-care"], token["--care"]) >= 7
    assert contrast(token["--looked-at"], token["--drawing"]) >= 10
