"""How the server is: for a watching program here, for the owner in words, for paired devices."""

import os
import time
from datetime import timedelta
from pathlib import Path

import pytest

from identify.errors import UserError
from identify.keeping import backup as backups
from identify.keeping import standing
from identify.keeping.away import AWAY
from identify.server import authority
from identify.server.tls import Tls
from tests.keeping.samples import picture, sha
from tests.server.own_server import OwnServer, Times, own_server
from tests.server.test_tls import NAMES
from tests.server.test_tls import made as certificate_made


@pytest.fixture
def server(tmp_path, monkeypatch):
    monkeypatch.setattr(backups, "nightly_due", lambda *_: False)  # only those made here
    with own_server(tmp_path / "data") as server:
        yield server


def backed_up(server: OwnServer) -> None:
    backups.backup(server.store, server.data.with_name("backups"), server.times.now())


def test_all_is_well_after_a_backup_and_only_this_machine_is_told(server):
    backed_up(server)
    answer = server.ask("GET", "/api/health")
    assert answer.status == 200
    found = answer.json
    assert found["well"] is found["writable"] is True
    assert (found["backup"][:10], found["certificate"], found["away"]) == ("2026-05-01", "", "")
    page = server.ask("GET", "/health")
    assert page.status == 200
    assert b"The last backup was made and tried out on 2026-05-01." in page.body
    assert server.ask("GET", "/api/health", X_Forwarded_For="203.0.113.7").status == 404
    assert server.ask("GET", "/health", X_Forwarded_For="203.0.113.7").status == 404


def test_fourteen_days_without_a_proven_backup_are_told_to_all(server):
    token = server.paired()
    backed_up(server)
    server.times.pass_(days=14)
    assert server.ask("GET", "/api/standing", token=token).json["overdue"] is False
    server.times.pass_(minutes=1)
    assert server.ask("GET", "/api/standing", token=token).json == {
        "backup": "2026-05-01T12:00:00+00:00", "overdue": True, "full": False,
        "away": "", "certificate": "", "authority": "",
    }  # fmt: skip
    answer = server.ask("GET", "/api/health")
    assert (answer.status, answer.json["well"]) == (503, False)
    assert b"No backup has been tried out for 14 days." in server.ask("GET", "/health").body


def test_a_device_that_is_not_paired_hears_nothing(server):
    assert server.ask("GET", "/api/standing").status == 401


def test_a_backup_of_a_day_to_come_does_not_count(server):
    server.times.pass_(days=400)
    backed_up(server)
    server.times.pass_(days=-400)
    assert server.ask("GET", "/api/health").json["backup"] == ""
    assert b"No backup has been made yet." in server.ask("GET", "/health").body


def test_a_disk_nearly_full_stops_photos_before_records(server, monkeypatch):
    token, data = server.paired(), picture(1)
    monkeypatch.setattr("identify.server.photo_upload.room", lambda _: standing.PHOTOS_STOP - 1)
    monkeypatch.setattr(standing, "room", lambda _: standing.PHOTOS_STOP - 1)
    address = f"/api/photos/{sha(data)}?from=0&size={len(data)}"
    refused = server.ask("PUT", address, data, token, Content_Type="image/jpeg")
    assert refused.status == 507
    assert "photos wait on this device until there is space" in refused.json["error"]
    assert server.post("/api/push", {"ops": []}, token).status == 200
    assert server.ask("GET", "/api/standing", token=token).json["full"] is True
    assert b"photos wait until there is more" in server.ask("GET", "/health").body
    monkeypatch.undo()
    assert server.ask("PUT", address, data, token, Content_Type="image/jpeg").json["whole"] is True


def test_a_store_that_takes_no_change_is_told(server):
    backed_up(server)
    with server.store.write() as db:
        db.execute("create trigger full before insert on meta begin select raise(fail, 'x'); end")
    answer = server.ask("GET", "/api/health")
    assert (answer.status, answer.json["writable"]) == (503, False)
    assert b"Nothing can be saved." in server.ask("GET", "/health").body


def test_a_second_place_that_could_not_be_reached_is_told(server):
    backed_up(server)
    server.store.set_meta(AWAY, "The command after the backup failed (1): no route")
    answer = server.ask("GET", "/api/health")
    assert (answer.status, answer.json["well"]) == (503, False)
    assert b"no route" in server.ask("GET", "/health").body


def test_what_cut_off_runs_left_is_counted(server):
    backed_up(server)
    left = server.data.with_name("backups") / ".trial-0123abcd"
    os.mkdir(left)
    assert server.ask("GET", "/api/health").json["left_over"] == 1
    assert b"left by runs that were cut off: 1." in server.ask("GET", "/health").body


def test_what_was_cut_off_is_cleared_at_the_next_start(tmp_path, monkeypatch):
    monkeypatch.setattr(backups, "nightly_due", lambda *_: False)
    data, made = tmp_path / "data", tmp_path / "backups"
    ago = Times().moment.timestamp() - 2 * 3600
    for folder in (
        made / ".trial-0123abcd",
        data / ".restoring-0123abcd",
        data / ".upgrading-ab_d1234",
    ):
        folder.mkdir(parents=True)
        (folder / "half").write_bytes(b"x")
        os.utime(folder, (ago, ago))
    at_work = made / ".trial-4567cdef"
    at_work.mkdir()
    with own_server(data) as server:
        for _ in range(600):
            if server.ask("GET", "/api/health").json["left_over"] == 1:
                break
            time.sleep(0.05)
        assert [*made.glob(".*-*"), *data.glob(".*-*")] == [at_work]


@pytest.mark.parametrize(("left", "told"), [(15, False), (13, True)])
def test_a_certificate_from_elsewhere_that_ends_soon_is_told(tmp_path: Path, left, told):
    pair = certificate_made(tmp_path / "elsewhere", 100)
    with own_server(tmp_path / "data", certificate=pair) as server:
        end = authority.until(pair[0])
        server.times.moment = end - timedelta(days=left)
        backed_up(server)
        answer = server.ask("GET", "/api/health")
        assert answer.json["certificate"] == (f"{end:%Y-%m-%d}" if told else "")
        assert answer.status == (503 if told else 200)


@pytest.mark.parametrize(("left", "told"), [(91, False), (89, True)])
def test_the_end_of_an_authority_of_ones_own_is_told_90_days_before(tmp_path: Path, left, told):
    folder = tmp_path / "certificate"
    pair = certificate_made(folder, 100)
    end = authority.authority_until(folder)
    with own_server(tmp_path / "data", certificate=pair, own=folder) as server:
        server.times.moment = end - timedelta(days=left)
        token = server.paired()
        backed_up(server)
        for path in ("/api/health", "/api/standing"):
            found = server.ask("GET", path, token=token).json
            assert found["authority"] == (f"{end:%Y-%m-%d}" if told else "")
            assert found["certificate"] == ""
        said = f"The authority that you made expires on {end:%Y-%m-%d}.".encode()
        assert (said in server.ask("GET", "/health").body) is told


def test_nothing_outlives_its_authority_and_at_its_end_nothing_is_renewed_for_ever(tmp_path):
    folder = tmp_path / "certificate"
    pair = certificate_made(folder, 100)
    end = authority.authority_until(folder)
    near = end - timedelta(days=200)
    authority.make(folder, NAMES, near)
    assert end - timedelta(days=2) < authority.until(pair[0]) <= end
    tls = Tls(*pair, folder)
    assert tls.refresh(end - timedelta(days=20)) == ""
    with pytest.raises(UserError, match="has expired"):
        authority.make(folder, NAMES, end)
