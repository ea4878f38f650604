"""The sentences of the app stand in its words files and nowhere else, so that they can be gone
through, or replaced by a translation, in few files.
"""

import re
from pathlib import Path

import pytest

from identify.shipped import WEB
from tests.test_words import texts_of_script

WORDS = re.compile(r"(^|-)words\.js$|^say\.js$")
# These are scripts by themselves, which start before the app or work beside it.
ALONE = {"sw.js", "light.js", "thread.js", "fetch-range.js"}
# What begins like a title, or has three words in a row. Of a shorter text in small letters nobody
# can tell whether it is shown.
SENTENCE = re.compile(r"^[ “(]*[A-Z][a-z’]+(?:[ ,.:;?!…]|$)|[a-z’]+ [a-z’]+ [a-z’]+")
CLASS = re.compile(r"\.(-?[a-z][\w-]*)")
MARKUP = re.compile(r'[<>\n]|^\{"|^svg ')
KEYS = {"Enter", "Escape", "Delete", "Backspace"}
OTHERS = {
    "use it now", "nothing chosen yet",  # from script to script
    "Files",  # what a browser calls files that are dragged
    "Id", "Target", "Relationship",  # in a workbook
    "Bearer {}",  # the header of a request
    "Done", "Next",  # keys, and what is called like them
    "Photo",  # a header of the server's
    "piece of another window", "identify first steps",  # names of what is kept
    "states columns dense",  # classes of a list
    "not of kind", "no such there",  # faults as the engine calls them
}  # fmt: skip


def outside(folder: Path) -> list[str]:
    """The sentences in the scripts of a folder that stand in no words file."""
    styles = "".join(path.read_text("utf-8") for path in sorted(folder.glob("*.css")))
    classes = set(CLASS.findall(styles))
    return [
        f"{path.relative_to(folder)}: “{text}” goes into a words file"
        for path in sorted(folder.rglob("*.js"))
        if not WORDS.search(path.name) and path.name not in ALONE
        for text in texts_of_script(path)
        if SENTENCE.search(text) and not code(text, classes)
    ]


def code(text: str, classes: set[str]) -> bool:
    """Is it a name of the code, a way to a screen, a list of classes, markup or a drawing?"""
    named = text in KEYS | OTHERS or text.startswith("list ")
    return named or set(text.split()) <= classes or MARKUP.search(text) is not None


def test_sentences_stand_in_words_files():
    assert outside(WEB) == []


@pytest.mark.parametrize(
    ("line", "found"),
    [
        ('el("p", {}, "Nothing is here yet.");', 1),
        ("notice(`${count} pieces are in the bin.`);", 1),
        ('heading(1, "Wants");', 1),
        ('button(DONE, act, { class: "plain wide file" });', 0),
        ('document.querySelector(".sheet h2");', 0),
        ("/* It is said here. */ // And here.", 0),
    ],
)
def test_a_sentence_outside_is_found(tmp_path, line, found):
    (tmp_path / "style.css").write_text(".plain, .wide, .file {}", "utf-8")
    (tmp_path / "screen.js").write_text(line + "\n", "utf-8")
    (tmp_path / "words.js").write_text('export const HERE = "It is here.";\n', "utf-8")
    assert len(outside(tmp_path)) == found
