"""The editor over real HTTP: folders on the disk are read, checked, written by this app."""

import shutil
import subprocess
import sys
from collections.abc import Iterator
from typing import Any

import httpx
import pytest

from identify.cli import main
from identify.reference.compile import compile_pack
from identify.reference.compiled import pack_bytes
from tests.editor_server import EditorServer
from tests.reference.small_pack import small_files, write
from tests.threaded_server import free_port


@pytest.fixture(scope="module")
def editor(tmp_path_factory: pytest.TempPathFactory) -> Iterator[EditorServer]:
    first = write(tmp_path_factory.mktemp("packs"), small_files())
    second = shutil.copytree(first, first.parent / "broken")
    (second / "items.csv").write_text((second / "items.csv").read_text().replace("coach", "couch"))
    server = EditorServer([first, second])
    yield server
    server.stop()


@pytest.fixture
def client(editor: EditorServer) -> Iterator[httpx.Client]:
    with httpx.Client(base_url=editor.url, timeout=30) as client:
        yield client


@pytest.fixture
def model(client: httpx.Client) -> dict[str, Any]:
    found: dict[str, Any] = client.get("api/editor/packs/small").json()
    return found


def key_of(model: dict[str, Any], table: str, name: str, value: str) -> str:
    (key,) = [e["key"] for e in model["tables"][table] if e["fields"].get(name) == value]
    return str(key)


def test_it_says_what_it_offers_and_which_packs_there_are(client):
    assert client.get("api/offers").json()["editor"] is True
    packs = client.get("api/editor/packs").json()["packs"]
    assert [pack["id"] for pack in packs] == ["small", "broken"]


def test_a_pack_with_mistakes_is_left_out_of_the_app_and_can_be_edited(client, editor):
    ids = [pack["id"] for pack in client.get("packs/index.json").json()]
    assert ids == ["small"]
    assert len(editor.editor.left_out) == 1
    model = client.get("api/editor/packs/broken").json()
    assert any('did you mean "coach"?' in mistake["text"] for mistake in model["mistakes"])
    assert model["mistakes"][0]["table"] == "items"


def test_a_save_is_on_the_disk_and_in_the_app(client, editor, model):
    (folder,) = [each.folder for each in editor.editor.folders if each.id == "small"]
    key = key_of(model, "items", "number", "P1")
    change = {"do": "set", "table": "items", "key": key, "field": "name",
              "old": "Tank engine", "value": "Saddle tank engine"}  # fmt: skip
    given = {"version": model["version"], "edits": [change]}
    worker = client.get("sw.js").text.splitlines()[0]
    assert client.post("api/editor/packs/small/check", json=given).json() == {"mistakes": []}
    answer = client.post("api/editor/packs/small/save", json=given).json()
    assert answer["mistakes"] == []
    assert answer["pack"]["undo"] is True
    assert "P1,Saddle tank engine,locomotive" in (folder / "items.csv").read_text()
    assert client.get("packs/small.json").json()["items"][0]["name"] == "Saddle tank engine"
    assert client.get("packs/small.json").json()["version"] == compile_pack(folder).version
    assert client.get("sw.js").text.splitlines()[0] != worker, "the app offers the new version"
    again = client.post("api/editor/packs/small/save", json=given)
    assert again.status_code == 409
    assert again.json()["changed"] is True
    assert "Nothing was written" in again.json()["error"]
    assert client.post("api/editor/packs/small/undo").status_code == 200
    assert "P1,Tank engine,locomotive" in (folder / "items.csv").read_text()


def test_mistakes_are_told_and_nothing_is_written(client, editor, model):
    (folder,) = [each.folder for each in editor.editor.folders if each.id == "small"]
    before = (folder / "variants.csv").read_bytes()
    new = {"do": "add", "table": "variants", "key": "n1",
           "fields": {"id": "p1c", "item": "P7", "name": "", "common": "1"}}  # fmt: skip
    given = {"version": model["version"], "edits": [new]}
    answer = client.post("api/editor/packs/small/save", json=given).json()
    told = {(m["key"], m["column"]) for m in answer["mistakes"]}
    assert told >= {("n1", "item"), ("n1", "name")}
    assert "pack" not in answer
    assert (folder / "variants.csv").read_bytes() == before


@pytest.mark.parametrize(
    ("path", "body", "status", "text"),
    [
        ("packs/other", None, 404, "no pack of that name"),
        ("packs/..%2fsmall", None, 404, ""),
        ("packs/small/save", {"version": "x"}, 400, "cannot be read"),
        ("packs/small/save", {"version": "x", "edits": [{"do": "burn"}]}, 400, "cannot be read"),
        ("packs/small/save", {"version": "x", "edits": []}, 409, "Nothing was written"),
    ],
)
def test_anything_else_is_refused_in_a_sentence(client, path, body, status, text):
    at = f"api/editor/{path}"
    answer = client.get(at) if body is None else client.post(at, json=body)
    assert answer.status_code == status
    assert text in answer.text


def test_an_edit_that_fits_nothing_is_refused(client, model):
    edits = [
        {"do": "set", "table": "items", "key": "r99", "field": "name", "old": "", "value": "x"}
    ]
    given = {"version": model["version"], "edits": edits}
    answer = client.post("api/editor/packs/small/check", json=given)
    assert answer.status_code == 409
    assert "no longer there" in answer.json()["error"]


@pytest.mark.parametrize(
    "headers",
    [
        {"Host": "evil.example"},
        {"Origin": "https://evil.example"},
        {"Sec-Fetch-Site": "cross-site"},
    ],
)
def test_pages_elsewhere_cannot_write_to_the_disk(client, model, headers):
    given = {"version": model["version"], "edits": []}
    answer = client.post("api/editor/packs/small/save", json=given, headers=headers)
    assert answer.status_code in (403, 421)
    assert "error" in answer.json()


def test_a_form_of_another_page_cannot_be_sent(client, model):
    """A form needs no leave of the browser to be sent elsewhere; JSON does."""
    answer = client.post("api/editor/packs/small/save", content=b"{}")
    assert answer.status_code == 415
    assert "asked for as JSON" in answer.json()["error"]


@pytest.mark.heavy
def test_the_command_serves_folders_and_shows_compiled_packs(editor, tmp_path):
    """A real process, on a port of its own."""
    (folder,) = [each.folder for each in editor.editor.folders if each.id == "small"]
    other = shutil.copytree(folder, tmp_path / "other")
    compiled = tmp_path / "compiled.json"
    compiled.write_bytes(pack_bytes(compile_pack(folder)))
    port = free_port()
    command = [sys.executable, "-m", "identify", "edit", str(other), str(compiled)]
    with subprocess.Popen(
        [*command, "--port", str(port)], stdout=subprocess.PIPE, text=True
    ) as process:
        try:
            assert process.stdout is not None
            assert f"Open http://127.0.0.1:{port}/" in process.stdout.readline()
            with httpx.Client(transport=httpx.HTTPTransport(retries=20)) as client:
                at = f"http://127.0.0.1:{port}"
                packs = client.get(f"{at}/api/editor/packs").json()["packs"]
                shown = client.get(f"{at}/packs/index.json").json()
        finally:
            process.terminate()
    assert [pack["id"] for pack in packs] == ["other"]
    assert [pack["id"] for pack in shown] == ["other", "small"]


def test_a_compiled_pack_alone_cannot_be_edited(editor, tmp_path, capsys):
    compiled = tmp_path / "compiled.json"
    compiled.write_text("{}")
    assert main(["edit", str(compiled)]) == 1
    assert "Name the folder" in capsys.readouterr().err
    assert main(["edit", str(tmp_path / "nowhere")]) == 1
    assert "this is not a folder" in capsys.readouterr().err
