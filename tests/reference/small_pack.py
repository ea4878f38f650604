"""A small invented pack, written to a folder; tests change one thing in it and look again."""

import base64
import io
from pathlib import Path
from typing import Any

from PIL import Image

from identify.reference.photo_drawings import URL

SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 4"><path d="M0 0H4"/></svg>'

RANGE = """\
name = "Small"
maker = "Small Model Railways, Nowhere"
gauge_mm = 22.5
scale = "4.76 mm to the foot (1:64)"
country = "GB"
years = "1950/1959"
about = "A range made up for tests."
invented = true

[[kinds]]
id = "locomotive"
name = "Locomotive"
plural = "Locomotives"

[[kinds]]
id = "coach"
name = "Coach"
plural = "Coaches"

[[kinds]]
id = "set"
name = "Boxed set"
plural = "Boxed sets"

[[parts]]
id = "coupling"
name = "Coupling"
swap = 0.1

[[cautions]]
kinds = ["set"]
text = "Have mains equipment tested."

[[cautions]]
text = "Old paint may hold lead."
"""

FEATURES = """\
[[feature]]
id = "coupling"
name = "Coupling"
question = "What does the coupling look like?"
where = "At either end."
part = "coupling"
seconds = 4
needs = "nothing"
kinds = ["locomotive", "coach"]
mistaken = [["loop", "bar"]]
states = [
  { id = "bar", name = "Flat metal bar" },
  { id = "loop", name = "Wire loop" },
]

[[feature]]
id = "horns"
name = "Horns"
question = "Are there horns on the roof?"
where = "On the cab roof."
seconds = 2
needs = "nothing"
kinds = ["locomotive"]
states = [
  { id = "metal", name = "Metal" },
  { id = "plastic", name = "Plastic" },
  { id = "none", name = "No horns" },
]

[[feature]]
id = "horn_colour"
name = "Colour of the horns"
question = "What colour are the horns?"
where = "On the cab roof."
seconds = 2.5
needs = "loupe"
kinds = ["locomotive"]
when = { horns = ["metal", "plastic"] }
states = [
  { id = "black", name = "Black" },
  { id = "brass", name = "Brass" },
]

[[feature]]
id = "livery"
name = "Livery"
question = "What colour is it?"
where = "The sides."
seconds = 1
needs = "nothing"
states = [
  { id = "green", name = "Green" },
  { id = "red", name = "Red" },
]
"""

SOURCES = """\
id,what,year,trust
cat,Catalogues of the maker,,0.9
book,A history of the range,1971,0.3
"""

ITEMS = """\
number,name,kind,years,source,other_years,formation,contains,carried,note,livery
P1,Tank engine,locomotive,1950/1957,cat,,Night train,,101;102,,green
P2,Brake coach,coach,1952/1959,cat,book 1951/1959,Night train,,,,
S 1,Night train set,set,1953/1954,cat,,,P1;P2,,"Track, too",red
"""

VARIANTS = """\
id,item,name,years,source,other_years,common,note,horns,livery
p1a,P1,No horns,1950/1953,cat,,1,,none,
p1b,P1,With horns,1954/1957,cat,,2,,metal,?
p2a,P2,Red or green,1952/1955,cat,book 1951/1953,1,,,red|green
p2b,P2,Red,1956~/..,cat,,0.5,Late,,red
s1,S 1,As made,,,,1,,,
"""

CHANGES = """\
feature,state,from,to,kinds,items,source,other_from,note
coupling,bar,,,,,cat,,
coupling,loop,1953,,,,cat,book 1955,At the ends
horn_colour,black,,1955,locomotive,,cat,,
horn_colour,brass,1955,,locomotive,P1,cat,,
"""

DRAWINGS = (
    "kind-locomotive", "kind-coach", "kind-set", "coupling-bar", "coupling-loop", "horns-metal",
    "horns-plastic", "horns-none", "horn_colour-black", "horn_colour-brass", "livery-green",
    "livery-red", "none",
)  # fmt: skip


def small_files() -> dict[str, str]:
    """Every file of the pack, by its path."""
    tables = {
        "range.toml": RANGE,
        "features.toml": FEATURES,
        "sources.csv": SOURCES,
        "items.csv": ITEMS,
        "variants.csv": VARIANTS,
        "changes.csv": CHANGES,
    }
    return tables | {f"drawings/{name}.svg": SVG for name in DRAWINGS}


def write(folder: Path, files: dict[str, str] | dict[str, bytes]) -> Path:
    """Write the files into a new folder "small" and return it."""
    pack = folder / "small"
    (pack / "drawings").mkdir(parents=True)
    for name, content in files.items():
        data = content if isinstance(content, bytes) else content.encode()
        (pack / name).write_bytes(data)
    return pack


def changed(file: str, old: str, new: str) -> dict[str, str]:
    """The files with one text in one of them replaced."""
    files = small_files()
    assert files[file].count(old) >= 1, (file, old)
    return files | {file: files[file].replace(old, new, 1)}


def jpeg(width: int = 90, **more: Any) -> bytes:
    """A red photo, 60 pixels high."""
    out = io.BytesIO()
    Image.new("RGB", (width, 60), "red").save(out, "JPEG", **more)
    return out.getvalue()


def as_data(data: bytes) -> str:
    """A photo as a data: URL."""
    return URL + base64.b64encode(data).decode()
