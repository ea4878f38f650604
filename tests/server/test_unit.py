"""The systemd unit: accepted by systemd itself, and rated by its own measure of exposure."""

import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from identify.cli import main
from identify.keeping.data_folder import backup_folder
from identify.server.unit import UnitError, unit

ROOT = Path(__file__).parents[2]
EXPOSURE = 20  # of 100, "OK" is up to 40; systemd.exec(5), systemd-analyze(1)
PYTHON = shutil.which("python3", path="/usr/bin:/bin") or sys.executable


def written(tmp_path: Path, port: int) -> Path:
    path = tmp_path / "stallside.service"
    path.write_text(unit([PYTHON, "/opt/stallside.pyz"], ["--port", str(port)], port))
    return path


def analyzed(*words: str) -> subprocess.CompletedProcess[str]:
    tool = shutil.which("systemd-analyze")
    assert tool, "systemd-analyze is missing: apt-get install systemd"
    return subprocess.run([tool, *words], check=False, capture_output=True, text=True, timeout=60)


@pytest.mark.parametrize("port", [8100, 443])
def test_systemd_accepts_it_and_calls_it_little_exposed(tmp_path: Path, port: int) -> None:
    path = written(tmp_path, port)
    verified = analyzed("verify", "--man=no", "--recursive-errors=no", str(path))
    assert verified.returncode == 0, verified.stderr
    assert "stallside.service" not in verified.stderr
    rated = analyzed("security", "--offline=true", f"--threshold={EXPOSURE}", str(path))
    found = re.search(r"Overall exposure level[^\n]*: ([\d.]+)", rated.stdout)
    assert rated.returncode == 0, rated.stdout[-400:]
    assert found
    assert float(found[1]) * 10 <= EXPOSURE


def test_only_a_low_port_gets_the_right_to_it(tmp_path: Path) -> None:
    assert "CAP_NET_BIND_SERVICE" in written(tmp_path, 443).read_text()
    assert "CAP_NET_BIND_SERVICE" not in written(tmp_path, 8100).read_text()


@pytest.mark.parametrize(
    ("program", "options"),
    [
        (["/home/ann/.local/bin/stallside"], []),
        ([PYTHON, "/opt/stallside.pyz"], ["--packs", "/home/ann/ranges/mine"]),
    ],
)
def test_what_the_service_could_not_see_is_refused(program: list[str], options: list[str]) -> None:
    with pytest.raises(UnitError, match="home folder, which the service cannot see"):
        unit(program, options, 8100)


def test_the_command_prints_it_with_the_options_given(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys, "argv", ["/opt/stallside/bin/stallside"])
    monkeypatch.setattr(sys, "executable", "/opt/stallside/bin/python")
    monkeypatch.chdir("/srv")
    words = (
        "serve --print-unit --port 8111 --behind-proxy https://trains.example.org --packs".split()
    )
    assert main([*words, "a range"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert (
        "ExecStart=/opt/stallside/bin/python /opt/stallside/bin/stallside serve --host 127.0.0.1 "
        "--port 8111 --packs '/srv/a range' --behind-proxy https://trains.example.org"
    ) in lines


def test_the_service_may_write_its_data_its_backups_and_the_folders_that_are_named(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Backups go beside the data: where only the data could be written, none was ever made."""
    lines = written(tmp_path, 8100).read_text().splitlines()
    (folders,) = [
        line.removeprefix("StateDirectory=") for line in lines if "StateDirectory=" in line
    ]
    assert folders.split() == ["stallside", backup_folder(Path("/var/lib/stallside")).name]
    monkeypatch.setattr(sys, "argv", ["/opt/stallside/bin/stallside"])
    monkeypatch.setattr(sys, "executable", "/opt/stallside/bin/python")
    assert (
        main(["serve", "--print-unit", "--backups", "/mnt/a disk", "--proposals", "/srv/box"]) == 0
    )
    text = capsys.readouterr().out
    assert 'ReadWritePaths="-/mnt/a disk"\nReadWritePaths="-/srv/box"\n' in text
    path = tmp_path / "stallside.service"
    path.write_text(re.sub("ExecStart=\\S+ \\S+", f"ExecStart={PYTHON} /opt/stallside.pyz", text))
    verified = analyzed("verify", "--man=no", "--recursive-errors=no", str(path))
    assert verified.returncode == 0, verified.stderr
    assert "stallside.service" not in verified.stderr


def test_the_container_keeps_data_and_backups_in_its_one_volume() -> None:
    text = (ROOT / "identify/server/Containerfile").read_text()
    (volume,) = re.findall(r"(?m)^VOLUME (.*)$", text)
    (data,) = re.findall(r"IDENTIFY_DATA=(\S+)", text)
    assert Path(data).parent == backup_folder(Path(data)).parent == Path(volume)


def test_the_container_is_not_root_and_copies_what_is_there() -> None:
    text = (ROOT / "identify/server/Containerfile").read_text()
    assert re.findall(r"(?m)^USER (.*)$", text)[-1] == "10001"
    copied = re.findall(r"(?m)^COPY (?!--from)(.*) /tmp/$", text)
    assert [name for line in copied for name in line.split() if not name.startswith("dist/")] == [
        ".ci/requirements.lock"
    ]
    assert (ROOT / ".ci/requirements.lock").is_file()
    assert "--require-hashes" in text
