"""Drawings as a browser shows them: nothing of one lies outside it, and letters keep a margin."""

import pytest
from playwright.sync_api import Page

from identify.phone import demo_packs
from identify.reference.new_pack import TEMPLATE
from identify.shipped import KIT, MARKS

FOLDERS = [KIT, MARKS, *demo_packs(), TEMPLATE]
MARGIN = 4  # of letters, left and right: they are wider in some fonts
OUTSIDE = """(text) => {
  const box = document.body;
  box.innerHTML = text;
  const root = box.querySelector("svg");
  const { x, y, width, height } = root.viewBox.baseVal;
  const back = root.getScreenCTM().inverse();
  return [...root.querySelectorAll("text,path,circle,rect,ellipse,line,polyline,polygon")]
    .filter((node) => {
      const { x: left, y: top, width: wide, height: high } = node.getBBox();
      const [right, bottom] = [left + wide, top + high];
      const corners = [[left, top], [right, top], [left, bottom], [right, bottom]];
      const letters = node.localName === "text";
      const margin = letters ? MARGIN : 0;
      return corners.some(([a, b]) => {
        const at = new DOMPoint(a, b).matrixTransform(back.multiply(node.getScreenCTM()));
        const beside = at.x < x + margin - 0.5 || at.x > x + width - margin + 0.5;
        return beside || (!letters && (at.y < y - 0.5 || at.y > y + height + 0.5));
      });
    })
    .map((node) => node.outerHTML);
}""".replace("MARGIN", str(MARGIN))


@pytest.mark.parametrize("folder", FOLDERS, ids=lambda folder: folder.name)
def test_nothing_lies_outside(page: Page, folder):
    page.set_content("<body style='width: 480px'></body>")
    paths = sorted((folder / "drawings").glob("*.svg"))
    found = {path.stem: page.evaluate(OUTSIDE, path.read_text("utf-8")) for path in paths}
    assert {name: out for name, out in found.items() if out} == {}
