"""Drawings: SVG of plain shapes only, since it is put into the page as it stands; or photos."""

import re
from pathlib import Path
from xml.parsers import expat
from xml.sax.saxutils import escape, quoteattr

from identify.reference.mistakes import Mistake, instead
from identify.reference.photo_drawings import photo_url
from identify.reference.text_files import read_text

SVG = "http://www.w3.org/2000/svg"
ELEMENTS = (
    "svg", "g", "path", "line", "circle", "ellipse", "rect", "polyline", "polygon", "text", "title",
)  # fmt: skip
ATTRIBUTES = (
    "xmlns", "viewBox", "width", "height", "d", "x", "y", "x1", "y1", "x2", "y2", "cx", "cy", "r",
    "rx", "ry", "points", "transform", "fill", "fill-opacity", "fill-rule", "stroke",
    "stroke-width", "stroke-linecap", "stroke-linejoin", "stroke-dasharray", "stroke-opacity",
    "opacity", "class", "font-family", "font-size", "font-weight", "text-anchor", "role",
    "aria-label", "aria-hidden",
)  # fmt: skip
FIXED = {"xmlns": (SVG,), "class": ("mark",), "font-family": ("sans-serif", "serif", "monospace")}
VALUE = re.compile(r"(?!.*url\s*\()[^\\]*", re.I | re.S)


class _Cleaner:
    """Takes a drawing apart and puts it together again from what is allowed."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.mistakes: list[Mistake] = []
        self.out: list[str] = []
        self.within: list[str] = []
        self.parser = expat.ParserCreate()
        self.parser.StartElementHandler = self.start
        self.parser.EndElementHandler = self.end
        self.parser.CharacterDataHandler = self.text
        self.parser.StartDoctypeDeclHandler = self.doctype
        self.parser.ProcessingInstructionHandler = self.instruction
        self.parser.buffer_text = True

    def wrong(self, text: str) -> None:
        line = self.parser.CurrentLineNumber
        self.mistakes.append(Mistake(self.file, line, "", text))

    def start(self, name: str, attributes: dict[str, str]) -> None:
        if not self.within and (name != "svg" or attributes.get("xmlns") != SVG):
            self.wrong(f'a drawing begins with <svg xmlns="{SVG}" viewBox="...">.')
        elif not self.within and "viewBox" not in attributes:
            self.wrong('<svg> has no viewBox. Give it one such as viewBox="0 0 120 80".')
        if name not in ELEMENTS:
            self.wrong(f"<{name}> is not allowed in a drawing. Use only {', '.join(ELEMENTS)}.")
        for key, value in attributes.items():
            if key not in ATTRIBUTES:
                what = f'the attribute "{key}" is not allowed in a drawing'
                near = instead(key, ATTRIBUTES)
                hint = near if near.startswith("did") else "remove it."
                self.wrong(f"{what}: {hint}")
            elif not VALUE.fullmatch(value) or value not in FIXED.get(key, (value,)):
                right = f"Write {' or '.join(FIXED[key])}." if key in FIXED else "Remove it."
                self.wrong(f'{key}="{value}" is not allowed in a drawing. {right}')
        said = "".join(f" {key}={quoteattr(value)}" for key, value in attributes.items())
        self.out.append(f"<{name}{said}>")
        self.within.append(name)

    def end(self, name: str) -> None:
        self.within.pop()
        self.out.append(f"</{name}>")

    def text(self, text: str) -> None:
        if self.within[-1] in ("text", "title"):
            self.out.append(escape(text))
        elif text.strip():
            self.wrong("there is text outside <text> and <title>. Remove it.")

    def doctype(self, *_: object) -> None:
        self.wrong("a drawing has no DOCTYPE and no entities. Remove them.")
        raise _StopError

    def instruction(self, target: str, _: str) -> None:
        self.wrong(f"<?{target} ...?> is not allowed in a drawing. Remove it.")


class _StopError(Exception):
    """Nothing after this is read."""


def clean_drawing(text: str, file: str) -> tuple[str, list[Mistake]]:
    """The drawing put together again without comments and spaces, and what is wrong with it."""
    cleaner = _Cleaner(file)
    try:
        cleaner.parser.Parse(text, True)
    except _StopError:
        pass
    except expat.ExpatError as error:
        reason = expat.ErrorString(error.code)
        what = f"this is not SVG: {reason}."
        cleaner.mistakes.append(Mistake(file, error.lineno, "", what))
    return "".join(cleaner.out), cleaner.mistakes


def read_drawings(folder: Path, mistakes: list[Mistake]) -> dict[str, str]:
    """Every drawing by its name without .svg or .jpg; a photo as a data: URL."""
    drawings: dict[str, str] = {}
    there = (folder / "drawings").glob("*.*")
    for path in sorted(each for each in there if each.suffix in (".svg", ".jpg")):
        file = f"drawings/{path.name}"
        if path.stem in drawings:
            what = f"there is a drawing and a photo called {path.stem}. Keep one of them."
            mistakes.append(Mistake(file, 0, "", what))
        if path.suffix == ".jpg":
            drawings[path.stem], wrong = photo_url(path, file)
            mistakes += wrong
            continue
        text = read_text(path, file, mistakes)
        drawings[path.stem] = ""
        if text is not None:
            drawings[path.stem], wrong = clean_drawing(text, file)
            mistakes += wrong
    return drawings
