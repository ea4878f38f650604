"""Pairing, tokens, shutting out; and that no secret is in a file or a sentence."""

import logging
from datetime import UTC, datetime, timedelta, timezone

import pytest

from identify.keeping import devices
from identify.keeping.devices import ALPHABET, NotPairedError, UnknownDeviceError

NOW = datetime(2026, 5, 1, 12, tzinfo=UTC)
LATER = timedelta(minutes=5)


def wrong(code):
    return code[:-1] + ALPHABET[ALPHABET.index(code[-1]) - 1]


def paired(store, name="Phone", now=NOW):
    pairing = devices.new_pairing(store, now)
    return devices.pair(store, now, secret=pairing["secret"], name=name)


def test_by_the_link_once(store):
    pairing = devices.new_pairing(store, NOW)
    assert pairing["until"] == "2026-05-01T12:05:00+00:00"
    found = devices.pair(store, NOW, secret=pairing["secret"], name="  My \n phone ")
    assert devices.by_token(store, found["token"], NOW) == {
        "id": found["device"],
        "name": "My phone",
        "revoked": "",
    }
    with pytest.raises(NotPairedError, match="Start a new one"):
        devices.pair(store, NOW, secret=pairing["secret"])
    with pytest.raises(NotPairedError):
        devices.pair(store, NOW, code=pairing["code"])


def test_by_the_code_as_people_type_it(store):
    for _ in range(3):
        code = devices.new_pairing(store, NOW)["code"]
        typed = f" {code[:4]}-{code[4:]} ".lower().replace("0", "o").replace("1", "l")
        assert devices.pair(store, NOW, code=typed)["token"]
    assert len(code) == 8
    assert len(ALPHABET) == 32  # 8 of 32: 40 bits
    assert not set("ILOU") & set(ALPHABET)  # crockford.com/base32.html


def test_five_wrong_tries_end_the_code_and_not_the_link(store):
    pairing = devices.new_pairing(store, NOW)
    for _ in range(5):
        with pytest.raises(NotPairedError, match="not right"):
            devices.pair(store, NOW, code=wrong(pairing["code"]))
    with pytest.raises(NotPairedError, match="five minutes are up"):
        devices.pair(store, NOW, code=pairing["code"])
    assert devices.all_devices(store) == []
    another = devices.new_pairing(store, NOW)
    assert devices.pair(store, NOW, code=another["code"])
    assert devices.pair(store, NOW, secret=pairing["secret"])
    with pytest.raises(NotPairedError):
        devices.pair(store, NOW, secret=pairing["secret"])


def test_four_wrong_tries_do_not(store):
    pairing = devices.new_pairing(store, NOW)
    for _ in range(4):
        with pytest.raises(NotPairedError):
            devices.pair(store, NOW, code=wrong(pairing["code"]))
    assert devices.pair(store, NOW, code=pairing["code"])


def test_five_minutes_end_it(store):
    pairing = devices.new_pairing(store, NOW)
    for way in ({"code": pairing["code"]}, {"secret": pairing["secret"]}):
        with pytest.raises(NotPairedError):
            devices.pair(store, NOW + LATER, **way)
    assert devices.pair(store, NOW + LATER - timedelta(seconds=1), code=pairing["code"])


@pytest.mark.parametrize("way", [{}, {"code": ""}, {"secret": "x"}, {"code": "\ud800"}])
def test_nothing_to_pair_with(way, store):
    with pytest.raises(NotPairedError):
        devices.pair(store, NOW, **way)
    devices.new_pairing(store, NOW)
    with pytest.raises(NotPairedError):
        devices.pair(store, NOW, **way)


def test_a_token_that_is_not_known(store):
    paired(store)
    for token in ("", "x", "é" * 40, "\ud800", "x" * 100_000):
        assert devices.by_token(store, token, NOW) is None


def test_devices_are_listed_named_and_shut_out(store):
    first, second = paired(store, "Phone"), paired(store, "", NOW + LATER)
    assert [one["name"] for one in devices.all_devices(store)] == ["Phone", "A device"]
    devices.rename(store, second["device"], "Tablet " * 20)
    devices.revoke(store, first["device"], NOW + LATER)
    devices.revoke(store, first["device"], NOW + 2 * LATER)
    listed = {one["id"]: one for one in devices.all_devices(store)}
    assert listed[first["device"]]["revoked"] == "2026-05-01T12:05:00+00:00"
    assert len(listed[second["device"]]["name"]) == 60
    assert devices.by_token(store, first["token"], NOW)["revoked"] != ""
    assert devices.by_token(store, second["token"], NOW)["revoked"] == ""
    for change in (devices.rename, devices.revoke):
        with pytest.raises(UnknownDeviceError, match="no such device"):
            change(store, "kunknown\ud800", NOW if change is devices.revoke else "x")


def test_when_a_device_was_seen(store):
    found = paired(store)

    def seen(after):
        devices.by_token(store, found["token"], NOW + after)
        return devices.all_devices(store)[0]["seen"]

    assert seen(timedelta(seconds=59)) == "2026-05-01T12:00:00+00:00"
    assert seen(timedelta(hours=1)) == "2026-05-01T13:00:00+00:00"
    assert seen(timedelta(0)) == "2026-05-01T12:00:00+00:00"  # the clock was put back
    east = timezone(timedelta(hours=9))
    assert (
        seen(timedelta(hours=2, seconds=NOW.astimezone(east).second)) == "2026-05-01T14:00:00+00:00"
    )


def test_no_secret_is_kept_or_told(store, caplog):
    caplog.set_level(logging.DEBUG)
    pairing = devices.new_pairing(store, NOW)
    used = devices.new_pairing(store, NOW)
    found = devices.pair(store, NOW, secret=used["secret"])
    secrets = [pairing["secret"], pairing["code"], used["secret"], used["code"], found["token"]]
    with pytest.raises(NotPairedError) as error:
        devices.pair(store, NOW, code=wrong(pairing["code"]))
    with pytest.raises(NotPairedError) as other:
        devices.pair(store, NOW, secret=used["secret"])
    kept = b"".join(path.read_bytes() for path in store.folder.iterdir())
    told = repr(error.value) + repr(other.value) + caplog.text
    for secret in secrets:
        assert secret.encode() not in kept
        assert secret not in told
    assert len(found["token"]) >= 43  # 256 bits in base 64 (RFC 4648)
    assert len(pairing["secret"]) >= 22  # 128 bits
