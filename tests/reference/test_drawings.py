"""Drawings go into the page as they stand, so nothing but plain shapes may pass."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from identify.reference.drawings import ATTRIBUTES, ELEMENTS, clean_drawing

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 4">'


def said(inside: str, head: str = HEAD) -> list[str]:
    return [str(mistake) for mistake in clean_drawing(f"{head}\n{inside}\n</svg>", "a.svg")[1]]


def test_plain_shapes_pass() -> None:
    text = (
        f'{HEAD}<title>Bar &amp; "loop"</title><g class="mark" fill="none"><circle cx="1" cy="1" '
        'r="1"/><text x="1" y="2" font-family="serif">A &lt; B</text></g></svg>'
    )
    cleaned, mistakes = clean_drawing(f'<?xml version="1.0" encoding="UTF-8"?>\n{text}\n', "a.svg")
    assert mistakes == []
    assert cleaned == text.replace("/>", "></circle>").replace('r="1">', 'r="1">')


@pytest.mark.parametrize(
    ("inside", "sentence"),
    [
        (
            "<script>a()</script>",
            "line 2: <script> is not allowed in a drawing. Use only svg,",
        ),
        ("<image/>", "a.svg line 2: <image> is not allowed in a drawing."),
        ("<a><path/></a>", "a.svg line 2: <a> is not allowed in a drawing."),
        ("<style>*{}</style>", "a.svg line 2: <style> is not allowed in a drawing."),
        ("<use/>", "a.svg line 2: <use> is not allowed in a drawing."),
        ("<animate/>", "a.svg line 2: <animate> is not allowed in a drawing."),
        ("<foreignObject/>", "a.svg line 2: <foreignObject> is not allowed in a drawing."),
        ("<svg:path/>", "a.svg line 2: <svg:path> is not allowed in a drawing."),
        ("<PATH/>", "a.svg line 2: <PATH> is not allowed in a drawing."),
        (
            '<path onclick="a()"/>',
            'line 2: the attribute "onclick" is not allowed in a drawing',
        ),
        ('<path style="a:b"/>', 'line 2: the attribute "style" is not allowed in a drawing'),
        ('<path href="#a"/>', 'line 2: the attribute "href" is not allowed in a drawing'),
        ('<path id="a"/>', 'line 2: the attribute "id" is not allowed in a drawing'),
        ('<g xmlns:x="y"/>', 'line 2: the attribute "xmlns:x" is not allowed in a drawing'),
        ('<g strokewidth="2"/>', 'in a drawing: did you mean "stroke-width"?'),
        ('<g fill="url(#a)"/>', 'fill="url(#a)" is not allowed in a drawing. Remove it.'),
        ('<g fill=" URL (x)"/>', "is not allowed in a drawing. Remove it."),
        ('<g fill="u\\72l(x)"/>', "is not allowed in a drawing. Remove it."),
        ('<g class="big"/>', 'class="big" is not allowed in a drawing. Write mark.'),
        ('<g font-family="Any"/>', "Write sans-serif or serif or monospace."),
        ('<g xmlns="http://www.w3.org/1999/xhtml"/>', "Write http://www.w3.org/2000/svg."),
        ("<g>words</g>", "a.svg line 2: there is text outside <text> and <title>. Remove it."),
        ("<?php a ?>", "a.svg line 2: <?php ...?> is not allowed in a drawing. Remove it."),
        ("<g>", "a.svg line 3: this is not SVG: mismatched tag."),
        ("<g fill=red/>", "a.svg line 2: this is not SVG: not well-formed (invalid token)."),
        ("&nbsp;", "a.svg line 2: this is not SVG: undefined entity."),
    ],
)
def test_anything_else_is_said(inside: str, sentence: str) -> None:
    assert any(sentence in each for each in said(inside)), said(inside)


def test_entities_are_not_even_read() -> None:
    text = (
        '<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;">'
        f'<!ENTITY x SYSTEM "file:///etc/hostname">]>\n{HEAD}<title>&c;&x;</title></svg>'
    )
    cleaned, mistakes = clean_drawing(text, "a.svg")
    assert cleaned == ""
    assert [str(each) for each in mistakes] == [
        "a.svg line 1: a drawing has no DOCTYPE and no entities. Remove them."
    ]


@pytest.mark.parametrize(
    "head",
    ["<svg>", '<svg viewBox="0 0 4 4">', '<svg xmlns="http://www.w3.org/1999/xhtml">'],
)
def test_it_begins_as_svg(head: str) -> None:
    assert said("", head)[0].startswith("a.svg line 1: a drawing begins with <svg xmlns=")


def test_it_has_a_size() -> None:
    assert said("", '<svg xmlns="http://www.w3.org/2000/svg">') == [
        'a.svg line 1: <svg> has no viewBox. Give it one such as viewBox="0 0 120 80".'
    ]


def test_what_was_hidden_in_text_is_plain_text_afterwards() -> None:
    cleaned, mistakes = clean_drawing(
        f"{HEAD}<title><![CDATA[</title><script>a()</script>]]></title></svg>", "a.svg"
    )
    assert mistakes == []
    assert "<script" not in cleaned
    assert "&lt;/title&gt;&lt;script&gt;" in cleaned


PIECES = "<g> </g> <title> </title> <path d='M0' /> > <!-- --> &lt; <![CDATA[ ]]> x \" & < \u00e9"
PARTS = st.sampled_from([*PIECES.split(" "), " ", "\n", "<?a ?>", "<!DOCTYPE a>"])


@given(st.lists(PARTS, max_size=12).map("".join))
def test_any_text_is_cleaned_or_refused(inside: str) -> None:
    text = f"{HEAD}{inside}</svg>"
    cleaned, mistakes = clean_drawing(text, "a.svg")
    if not mistakes:
        assert clean_drawing(cleaned, "a.svg") == (cleaned, [])


def test_nothing_that_runs_or_loads_is_allowed() -> None:
    assert not any(name.lower().startswith("on") for name in ATTRIBUTES)
    assert not {"style", "href", "xlink:href", "id", "src"} & set(ATTRIBUTES)
    assert not {"script", "style", "use", "a", "image", "foreignObject"} & set(ELEMENTS)
