"""The command line, as a person runs it."""

import re
import subprocess
import sys
from pathlib import Path

import jsonschema
import orjson
import pytest

from identify.cli import main, parser

pytestmark = pytest.mark.heavy

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


@pytest.mark.parametrize(
    ("started", "shown"),
    [("/usr/bin/stallside", "usage: stallside "), ("x/__main__.py", "usage: python -m identify ")],
)
def test_help_names_the_command_as_it_was_started(started, shown, monkeypatch, capsys):
    monkeypatch.setattr(sys, "argv", [started])
    with pytest.raises(SystemExit):
        main(["--help"])
    assert capsys.readouterr().out.startswith(shown)


@pytest.mark.parametrize("port", ["0", "65536", "http"])
def test_a_port_that_is_none_is_refused(port, capsys):
    for command in ("demo", "serve", "certificate"):
        with pytest.raises(SystemExit):
            main([command, "--port", port, *(["host"] if command == "certificate" else [])])
        assert f"“{port}” is not a whole number from 1 to 65535" in capsys.readouterr().err


def test_the_demo_pack_has_no_mistake():
    done = run("check", PELLMARSH)
    assert (done.returncode, done.stdout.strip()) == (0, f"0 mistakes in {PELLMARSH}.")


def test_a_pack_that_is_not_there_is_said_in_a_sentence(tmp_path):
    for command in ("check", "compile", "ask", "lab"):
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
    assert "That is the one" in done.stdout or "not in the range" in done.stdout


def test_typed_nonsense_is_answered_with_help_and_loses_nothing():
    typed = "1\nx\n99\n1 99\n0\n-1\nm\nn 77\nw\nu\ns\n2?\n1 2\ne\nc\n"
    done = run("ask", PELLMARSH, "--kind", "coach", typed=typed)
    assert done.returncode == 0, done.stderr
    assert "“99” is not an answer here" in done.stdout
    assert "Traceback" not in done.stderr


def test_what_matches_nothing_is_said():
    done = run("ask", PELLMARSH, "--find", "zzzzzzzz")
    assert done.returncode == 1
    assert "Nothing in Pellmarsh is like “zzzzzzzz”" in done.stdout
    done = run("ask", PELLMARSH, "--kind", "balloon")
    assert done.returncode == 1
    assert "There is no kind “balloon”" in done.stdout


def test_a_sighting_becomes_a_diff_that_is_proposed_and_not_made(tmp_path):
    answer = {"feature": "main_colour", "how": "sure", "states": ["yellow"]}
    seen = {"pack": "pellmarsh", "item": "P 20", "called": "yellow", "unrecorded": True}
    seen["answers"] = [answer]
    file = tmp_path / "seen.json"
    told = {"format": 1, "kind": "identify sightings", "sightings": [seen]}
    file.write_bytes(orjson.dumps(told))
    before = (ROOT / PELLMARSH / "variants.csv").read_bytes()
    done = run("sighting", str(file), PELLMARSH)
    assert done.returncode == 0, done.stderr
    assert "+p_20_seen1,P 20,yellow," in done.stdout
    assert (ROOT / PELLMARSH / "variants.csv").read_bytes() == before
    file.write_text("{}")
    done = run("sighting", str(file), PELLMARSH)
    assert done.returncode == 1
    assert "is not a file of sightings" in done.stderr
    assert "Traceback" not in done.stderr


def test_a_pack_of_your_own_from_start_to_terminal(tmp_path):
    folder = str(tmp_path / "mine")
    assert run("new-pack", folder).returncode == 0
    assert run("check", folder).stdout.strip() == f"0 mistakes in {folder}."
    done = run("new-pack", folder)
    assert done.returncode == 1
    assert "this folder is not empty" in done.stderr
    done = run("ask", folder, "--kind", "coach", typed="2\nq\n")
    assert "EXAMPLE: goods-train coach" in done.stdout


def test_a_plain_table_becomes_a_pack_that_can_be_asked(tmp_path):
    pack = str(tmp_path / "zoo.json")
    zoo = ["table-pack", "fixtures/outside/zoo.csv", "--name", "animal"]
    done = run(*zoo, "--leave-out", "type", "-o", pack)
    assert (done.returncode, done.stderr) == (0, "")
    assert "101 names, 16 features" in done.stdout
    jsonschema.validate(orjson.loads(Path(pack).read_bytes()), orjson.loads(run("schema").stdout))
    asked = run("ask", pack, typed="1\nq\n")
    assert "years not recorded" in asked.stdout
    done = run(*zoo, "--leave-out", "typo", "-o", pack)
    assert done.returncode == 1
    assert 'there is no column "typo": did you mean "type"?' in done.stderr


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        (
            ["Regd. Des. 821265"],
            [
                "REGD DES 821265",
                "  British registered design 821265",
                "    It was registered in 1937; the piece is from 1937 or later. By the table, "
                "from memory.",
            ],
        ),
        (
            ["PAT. NO.", "10811/97"],
            [
                "PAT NO 10811/97",
                "  British patent, 10811 of 1897",
                "    Numbered in 1897; from 1916 on as an application. The piece is from 1897 or "
                "later.",
            ],
        ),
        (["W. Germany"], ["W GERMANY", "  Country of origin: Western or West Germany (Germany)"]),
        (
            ["5012345678900"],
            [
                "5012345678900",
                "  Barcode, EAN-13",
                "    Such bars have been printed since 1977. They do not say in which later year.",
            ],
        ),
    ],
)
def test_a_mark_as_it_stands_is_dated(asked, said):
    done = run("date", *asked)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.splitlines()[: len(said)] == said


def test_each_date_names_who_says_so():
    done = run("date", "£2.99 inc. VAT")
    assert "(published: Decimal Currency Act 1969" in done.stdout
    assert "(published: Hansard, Commons" in done.stdout


def test_marks_of_different_years_are_told():
    done = run("date", "Made in Occupied Japan; £2.99 inc. VAT")
    assert done.returncode == 0
    assert done.stdout.splitlines()[-1] == (
        '"VAT" is from 1972 or later, "MADE IN OCCUPIED JAPAN" from 1952 or earlier: '
        "not the same year."
    )


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("foo", "“FOO” is not a mark the app knows."),
        ("82I265", "Look again for I read for 1, O for 0 and S for 5. It may be 821265."),
        ("", "Nothing typed yet."),
    ],
)
def test_what_cannot_be_dated_is_said_in_a_sentence(asked, said):
    done = run("date", asked)
    assert (done.returncode, done.stdout) == (1, "")
    assert said in done.stderr
    assert "Traceback" not in done.stderr


def test_a_misread_figure_is_said_and_never_mended():
    done = run("date", "Regd. Des. 82I265")
    assert "“82I265” is not figures only." in done.stdout
    assert "1937" not in done.stdout
    assert "by the other figures the last one should be 0." in (
        run("date", "5012345678901").stdout.lower()
    )


def test_the_lab_writes_its_report_and_says_the_main_things(tmp_path):
    page = tmp_path / "report.html"
    run("new-pack", str(tmp_path / "mine"))
    lab = ["lab", str(tmp_path / "mine"), "-o", str(page), "--pieces", "5"]
    done = run(*lab)
    assert (done.returncode, done.stderr) == (0, "")
    assert "At the stall:" in done.stdout
    first = page.read_text("utf-8")
    assert first.startswith("<!doctype html>")
    assert run(*lab, "--seed", "2").returncode == 0
    assert page.read_text("utf-8") != first
    done = run(*lab[:-1], "0")
    assert done.returncode == 2
    assert "“0” is not a whole number from 1" in done.stderr


def test_the_site_is_published_into_a_folder_but_not_over_others(tmp_path):
    run("new-pack", str(tmp_path / "mine"))
    site = tmp_path / "site"
    done = run("publish", str(site), str(tmp_path / "mine"))
    assert (done.returncode, done.stderr) == (0, "")
    (entry,) = orjson.loads((site / "packs" / "index.json").read_bytes())
    assert entry["id"] == "mine"
    done = run("publish", str(tmp_path))
    assert done.returncode == 1
    assert "is not empty" in done.stderr
