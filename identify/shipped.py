"""Where the files are that the app is made of and that are no Python.

In a checkout they stand beside the package (web/, fixtures/); a built wheel carries the same
folders inside it, so that the app needs no checkout.
"""

from pathlib import Path

PACKAGE = Path(__file__).resolve().parent
INSIDE = PACKAGE / "shipped"  # in a wheel only: see [tool.hatch.build.targets.wheel.force-include]
ROOT = INSIDE if INSIDE.is_dir() else PACKAGE.parent

WEB = ROOT / "web"
PACKS = ROOT / "fixtures" / "packs"
KIT = ROOT / "fixtures" / "kit"
MARKS = ROOT / "fixtures" / "marks"
DEMO = ROOT / "fixtures" / "demo" / "collection.json"
GRADES = ROOT / "fixtures" / "grading.csv"
