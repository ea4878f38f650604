"""Portraits as drawn: web/parts/portrait-drawing.js, run by deno in a process of its own."""

import json
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from deno import find_deno_bin

from identify.shipped import WEB

SCRIPT = """
import { portraitText, whereIs } from "%s";
const lines = Deno.stdin.readable.pipeThrough(new TextDecoderStream());
const out = new TextEncoder();
let rest = "";
for await (const some of lines) {
  const parts = (rest + some).split("\\n");
  rest = parts.pop();
  for (const line of parts) {
    const { portrait, small } = JSON.parse(line);
    const text = portraitText(portrait, small);
    const places = portrait.layers.map(({ layer }) => whereIs(portrait, layer));
    await Deno.stdout.write(out.encode(JSON.stringify({ text, places }) + "\\n"));
  }
}
"""


class Drawing:
    """Draws portraits, one asked for after another."""

    def __init__(self, process: "subprocess.Popen[str]") -> None:
        self.process = process

    def ask(self, portrait: Any, small: bool) -> Any:
        """{text, places}: the drawing, and where each of its layers is to be seen."""
        assert self.process.stdin
        assert self.process.stdout
        self.process.stdin.write(json.dumps({"portrait": portrait, "small": small}) + "\n")
        self.process.stdin.flush()
        line = self.process.stdout.readline()
        assert line, "the drawing failed; its error stands above"
        return json.loads(line)

    def text(self, portrait: Any, small: bool = False) -> str:
        """The drawing as text of SVG."""
        return str(self.ask(portrait, small)["text"])


@contextmanager
def drawing(folder: Path) -> Iterator[Drawing]:
    """The process that draws, while it is used; its script is written into a folder."""
    script = folder / "draw.js"
    script.write_text(SCRIPT % (WEB / "parts" / "portrait-drawing.js").as_uri())
    with subprocess.Popen(
        [find_deno_bin(), "run", "--quiet", "--no-config", str(script)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    ) as process:
        yield Drawing(process)
        process.kill()
