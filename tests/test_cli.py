"""The command line, as a person runs it."""

import re
import subprocess
import sys
from pathlib import Path

import jsonschema
import orjson
import pytest

from identify.cli import parser

ROOT = Path(__file__).resolve().parent.parent
PELLMARSH = "fixtures/packs/pellmarsh"


def run(*args: str, typed: str = "") -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "identify", *args],
        input=typed,
        capture_output=True,
        text=True,
        cwd=ROOT,
        check=False,
    )


def commands() -> list[str]:
    (choices,) = [a.choices for a in parser()._actions if a.dest == "command"]
    return list(choices)


@pytest.mark.parametrize("command", commands())
def test_every_command_is_in_the_readme(command):
    assert f"python -m identify {command}" in (ROOT / "README.md").read_text("utf-8")


def test_the_demo_pack_has_no_mistake():
    done = run("check", PELLMARSH)
    assert (done.returncode, done.stdout.strip()) == (0, f"0 mistakes in {PELLMARSH}.")


def test_a_pack_that_is_not_there_is_said_in_a_sentence(tmp_path):
    for command in ("check", "compile", "ask"):
        done = run(command, str(tmp_path / "nowhere"))
        assert done.returncode == 1
        assert "Traceback" not in done.stderr
        assert "nowhere" in done.stdout + done.stderr


def test_compiled_pack_fits_the_schema_and_is_the_same_each_time(tmp_path):
    done = run("compile", PELLMARSH, "-o", str(tmp_path / "one.json"))
    assert done.returncode == 0, done.stderr
    again = run("compile", PELLMARSH)
    assert (tmp_path / "one.json").read_text("utf-8") == again.stdout
    jsonschema.validate(orjson.loads(again.stdout), orjson.loads(run("schema").stdout))


def test_a_piece_is_identified_in_the_terminal():
    """Always the first state, whatever is asked: it ends by naming something, or says it cannot."""
    done = run("ask", PELLMARSH, "--kind", "wagon", typed="1\n" * 30 + "q\n")
    assert done.returncode == 0, done.stderr
    assert re.search(r"1\. (over )?\d+ %", done.stdout)
    assert "That is the one" in done.stdout or "not in the reference" in done.stdout


def test_typed_nonsense_is_answered_with_help_and_loses_nothing():
    typed = "1\nx\n99\n1 99\n0\n-1\nm\nn 77\nw\nu\ns\n2?\n1 2\ne\nc\n"
    done = run("ask", PELLMARSH, "--kind", "coach", typed=typed)
    assert done.returncode == 0, done.stderr
    assert "'99' is no answer here" in done.stdout
    assert "Traceback" not in done.stderr


def test_what_matches_nothing_is_said():
    done = run("ask", PELLMARSH, "--find", "zzzzzzzz")
    assert done.returncode == 1
    assert "Nothing in Pellmarsh is like 'zzzzzzzz'" in done.stdout
    done = run("ask", PELLMARSH, "--kind", "balloon")
    assert done.returncode == 1
    assert "There is no kind 'balloon'" in done.stdout
