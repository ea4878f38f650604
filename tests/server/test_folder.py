"""The folder of a server that runs: another server's already, read-only, or damaged on the disk."""

import sys
from random import Random

import pytest

from identify.keeping import ops
from identify.keeping.store import FILE, Store
from tests.keeping.samples import Writer
from tests.keeping.test_pages import PAGE
from tests.server.own_server import own_server
from tests.server.serving import KEPT, Serving, run, serving
from tests.threaded_server import free_port

# The commands of somebody who is not root: root may write everywhere (capabilities(7),
# CAP_DAC_OVERRIDE; prctl(2), PR_CAPBSET_DROP). For who is not, it changes nothing.
NOT_ROOT = "import ctypes, os, sys; ctypes.CDLL(None).prctl(24, 1); "
NOT_ROOT += "os.execv(sys.executable, [sys.executable, '-m', 'tests.kept_site', *sys.argv[1:]])"


def new(count: int) -> list[dict]:
    writer = Writer(Random(1))
    return [writer.operation(f"r{n}", {"notes": "x" * 900}) for n in range(count)]


@pytest.mark.heavy
def test_a_second_server_on_one_folder_is_told_and_the_first_goes_on(tmp_path):
    data = tmp_path / "data"
    with serving(data) as first:
        said = run("serve", "--data", data, "--port", free_port(), program=KEPT)
        assert said.returncode == 1
        assert "Another server is running with the data in" in said.stderr
        assert "Traceback" not in said.stderr
        assert run("verify", "--data", data).returncode == 0, "commands run beside it"
        assert first.process.poll() is None
        first.process.kill()
        first.process.wait(30)
        Serving(data).stop()  # what was killed holds nothing


@pytest.mark.heavy
def test_a_folder_that_may_not_be_written_is_told_and_left_as_it_is(tmp_path):
    data = tmp_path / "data"
    with Store(data) as store:
        ops.push(store, new(3))
    before = (data / FILE).read_bytes()
    data.chmod(0o500)
    tmp_path.chmod(0o500)
    try:
        for words in (["serve"], ["backup"], ["verify"], ["pair"]):
            said = run(*words, "--data", data, program=[sys.executable, "-c", NOT_ROOT])
            assert said.returncode == 1, words
            assert "The server may not write where its data is kept" in said.stderr
            assert "Give the folder to the user that runs the server" in said.stderr
            assert "Traceback" not in said.stderr
        said = run("serve", "--data", tmp_path / "new", program=[sys.executable, "-c", NOT_ROOT])
        assert "The server may not write where its data is kept" in said.stderr
    finally:
        tmp_path.chmod(0o700)
        data.chmod(0o700)
    assert [path.name for path in data.iterdir()] == [FILE]
    assert (data / FILE).read_bytes() == before


def test_pages_written_over_are_told_to_the_phone_in_a_sentence(tmp_path):
    with own_server(tmp_path / "data") as server:
        token = server.paired()
        assert server.post("/api/push", {"ops": new(40)}, token).status == 200
    path = tmp_path / "data" / FILE
    data = path.read_bytes()
    half = len(data) // PAGE // 2 * PAGE
    path.write_bytes(data[:half] + bytes(len(data) - half))
    with own_server(tmp_path / "data") as server:
        answer = server.ask("GET", "/api/pull?after=0&limit=500", None, token)
        assert answer.status == 503
        assert "The kept data is damaged." in answer.json["error"]
        assert "restore the newest backup into a new one" in answer.json["error"]
        assert server.ask("GET", "/").status == 200, "the app itself is there"
