"""The site as a folder: written whole, written again, never over anything else."""

import pytest

from identify.compressed import ENDINGS
from identify.phone import demo_packs
from identify.phone import site as gathered
from identify.publishing import PublishError, publish
from identify.reference.compile import compile_pack
from identify.reference.compiled import pack_bytes
from identify.reference.mistakes import PackError
from identify.reference.new_pack import new_pack
from identify.shipped import WEB
from tests.kept_site import kept_site

NOTHING = {"api/offers": b"{}"}  # the answer to what a plain host offers besides files


def written(folder) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file() and path.suffix not in ENDINGS.values()
    }


@pytest.mark.heavy
def test_every_file_is_there_as_it_is_served(tmp_path, site):
    folder = tmp_path / "a" / "b"
    assert publish(site, folder) == len(site) + 1
    assert written(folder) == {**site, **NOTHING}


def test_pages_for_developers_stay_at_home(site):
    assert list(WEB.rglob("README.md"))
    assert [name for name in site if name.endswith(".md")] == []


@pytest.mark.heavy
def test_it_is_published_again_over_what_was_published(tmp_path, site):
    """What the new version has no longer is taken away; what was never its own stays."""
    publish(site, tmp_path)
    (tmp_path / "CNAME").write_text("trains.example", "utf-8")
    fewer = kept_site(demo_packs()[:1])
    gone = set(site) - set(fewer)
    assert gone, "two packs before, one now"
    publish(fewer, tmp_path)
    assert [name for name in gone if list(tmp_path.glob(f"{name}*"))] == []
    assert written(tmp_path) == {**fewer, **NOTHING, "CNAME": b"trains.example"}


@pytest.mark.parametrize("name", ["sw.js", "index.html", ".hidden"])
def test_a_folder_with_anything_else_in_it_is_refused_and_left_as_it_was(tmp_path, site, name):
    (tmp_path / name).write_bytes(b"// mine\xff")
    with pytest.raises(PublishError, match="is not empty, and was not written by publish"):
        publish(site, tmp_path)
    assert written(tmp_path) == {name: b"// mine\xff"}


def test_a_file_is_refused(tmp_path, site):
    (tmp_path / "file").write_text("mine", "utf-8")
    with pytest.raises(PublishError, match="is a file"):
        publish(site, tmp_path / "file")


@pytest.mark.heavy
def test_nothing_outside_the_folder_is_taken_away(tmp_path, site):
    (tmp_path / "outside.txt").write_text("mine", "utf-8")
    folder = tmp_path / "site"
    publish(site, folder)
    worker = (folder / "sw.js").read_text("utf-8")
    (folder / "sw.js").write_text(worker.replace('["./"', '["../outside.txt", "./"', 1), "utf-8")
    publish(site, folder)
    assert (tmp_path / "outside.txt").read_text("utf-8") == "mine"


@pytest.mark.heavy
def test_compiled_files_can_be_published_and_two_of_the_same_name_cannot(tmp_path, site):
    pellmarsh = demo_packs()[0]
    file = tmp_path / "one.json"
    file.write_bytes(pack_bytes(compile_pack(pellmarsh)))
    assert gathered([file])["packs/pellmarsh.json"] == site["packs/pellmarsh.json"]
    with pytest.raises(PackError, match='the id "pellmarsh" is taken already'):
        gathered([file, pellmarsh])


@pytest.mark.parametrize("name", ["index", "marks", "schema"])
def test_a_pack_cannot_take_the_name_of_another_file(tmp_path, name):
    folder = tmp_path / name
    new_pack(folder)
    with pytest.raises(PackError, match=f'the id "{name}" is taken already'):
        gathered([folder])
