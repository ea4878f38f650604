"""Photos in chunks, what a photo may hold, and that no position is kept anywhere."""

import io
import os
import struct
import threading
from datetime import UTC, datetime, timedelta

import pytest
from PIL import Image

from identify.keeping import backup, ops, photos
from identify.keeping.photo_checks import check_picture
from identify.keeping.troubles import RefusedError
from tests.browser.phone_storage import exif
from tests.keeping.samples import picture, sha

NOW = datetime(2026, 5, 1, tzinfo=UTC)


def send(store, data, *, step=100, name=""):
    name = name or sha(data)
    for start in range(0, len(data), step):
        chunk = data[start : start + step]
        found = photos.receive(store, name, chunk, start=start, size=len(data), now=NOW)
    return found


def files_of(folder):
    return [path for path in folder.rglob("*") if path.is_file() and "sqlite" not in path.name]


def with_segment(data, marker, body):
    """The JPEG with one more segment at its beginning."""
    return data[:2] + struct.pack(">BBH", 0xFF, marker, len(body) + 2) + body + data[2:]


def test_a_photo_comes_in_chunks_and_goes_on_after_a_break(store):
    data = picture(1)
    assert photos.missing(store, [sha(data)]) == [{"sha": sha(data), "have": 0}]
    found = photos.receive(store, sha(data), data[:50], start=0, size=len(data), now=NOW)
    assert found == {"have": 50, "whole": False}
    assert photos.missing(store, [sha(data)]) == [{"sha": sha(data), "have": 50}]
    assert photos.read(store, sha(data)) is None
    for start in (0, 20, 60):  # twice, and with a gap: left out, and told where to go on
        again = photos.receive(
            store, sha(data), data[start : start + 50], start=start, size=len(data), now=NOW
        )
        assert again == {"have": 50, "whole": False}
    rest = photos.receive(store, sha(data), data[50:], start=50, size=len(data), now=NOW)
    assert rest == {"have": len(data), "whole": True}
    assert photos.missing(store, [sha(data)]) == []
    assert photos.read(store, sha(data)) == data
    assert send(store, data)["whole"] is True
    assert files_of(store.folder) == [photos.path_of(store, sha(data))]


def test_what_is_not_what_it_should_be_is_thrown_away(store):
    data = picture(1)
    with pytest.raises(RefusedError, match="Send it again"):
        send(store, data, name=sha(b"another"))
    assert files_of(store.folder) == []
    assert photos.known(store) == {}
    damaged = data[:100] + b"?" + data[101:]
    for start in range(0, len(data), 50):
        try:
            photos.receive(
                store, sha(data), damaged[start : start + 50], start=start, size=len(data), now=NOW
            )
        except RefusedError:
            break
    assert photos.missing(store, [sha(data)])[0]["have"] == 0
    assert send(store, data)["whole"] is True


@pytest.mark.parametrize(
    "name", ["", "a" * 63, "A" * 64, "../" * 21 + "a", "a" * 64 + "\n", "/etc/passwd", None, 7]
)
def test_no_path_comes_from_a_name(name, store):
    with pytest.raises(RefusedError, match="64 of 0 to 9 and a to f"):
        photos.receive(store, name, b"x", start=0, size=1, now=NOW)
    with pytest.raises(RefusedError):
        photos.missing(store, [name])
    with pytest.raises(RefusedError):
        photos.read(store, name)
    assert files_of(store.folder) == []


@pytest.mark.parametrize(
    ("start", "size", "length", "why"),
    [
        (0, 8 * 2**20 + 1, 1, "up to 8 MB"),
        (0, 0, 1, "up to 8 MB"),
        (0, 10, 0, "chunks of 1 to 256 KB"),
        (0, 2**20, 256 * 1024 + 1, "chunks of 1 to 256 KB"),
        (8, 10, 3, "outside the photo"),
        (-1, 10, 3, "outside the photo"),
    ],
)
def test_chunks_that_cannot_be_are_refused(start, size, length, why, store):
    with pytest.raises(RefusedError, match=why):
        photos.receive(store, "a" * 64, b"x" * length, start=start, size=size, now=NOW)


def test_two_devices_may_send_the_same_photo_at_once(store):
    data = picture(2, side=200)

    def send_on():
        have = 0
        while True:
            chunk = data[have : have + 500]
            found = photos.receive(store, sha(data), chunk, start=have, size=len(data), now=NOW)
            have = found["have"]
            if found["whole"]:
                return

    threads = [threading.Thread(target=send_on) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert photos.read(store, sha(data)) == data


def test_a_photo_whose_file_is_lost_is_asked_for_again(store):
    data = picture(1)
    send(store, data)
    photos.path_of(store, sha(data)).unlink()
    assert photos.missing(store, [sha(data)])
    assert photos.read(store, sha(data)) is None
    send(store, data)
    assert photos.read(store, sha(data)) == data


def test_a_photo_that_is_deleted_for_good_is_gone(store, writer):
    kept, gone = picture(1), picture(2)
    for place, pictures in enumerate(((kept, gone), (gone, gone), (kept, kept))):
        for data in pictures:
            send(store, data)
        full, small = (sha(data) for data in pictures)
        named = {"full": full, "small": small}
        ops.push(store, [writer.operation(f"p{place}", named, "photo")])
    ops.push(store, [writer.operation("p0", {"gone": True}, "photo")])
    assert set(photos.known(store)) == {sha(kept), sha(gone)}  # others name them still
    ops.push(store, [writer.operation("p1", {"gone": True}, "photo")])
    assert set(photos.known(store)) == {sha(kept)}
    assert files_of(store.folder) == [photos.path_of(store, sha(kept))]


def test_what_was_begun_is_cleared_after_days(store):
    begun, whole = picture(1), picture(2)
    photos.receive(store, sha(begun), begun[:50], start=0, size=len(begun), now=NOW)
    send(store, whole)
    theirs = store.folder / "photos" / "ab" / "holiday.jpg"
    theirs.parent.mkdir()
    theirs.write_bytes(b"not ours")
    now = datetime.now(UTC)
    assert photos.tidy(store, now) == 0
    assert photos.tidy(store, now + timedelta(days=4)) == 1
    assert photos.missing(store, [sha(begun)])[0]["have"] == 0
    assert photos.read(store, sha(whole)) == whole
    assert theirs.exists()


def test_a_photo_with_a_position_is_refused_and_left_nowhere(store, tmp_path):
    plain = picture(1)
    positioned = plain[:2] + exif() + plain[2:]
    with Image.open(io.BytesIO(positioned)) as image:  # it really has one: 54 degrees north
        assert image.getexif().get_ifd(0x8825)[2] == (54.0, 17.0, 33.0)
    with pytest.raises(RefusedError, match=r"where or with what it was taken \(EXIF\)"):
        send(store, positioned)
    send(store, plain)
    made = backup.backup(store, tmp_path / "backups", NOW)
    assert made["photos"] == 1
    looked_at = [*store.folder.rglob("*"), *(tmp_path / "backups").rglob("*")]
    looked_at = [path for path in looked_at if path.is_file()]
    assert len(looked_at) > 4
    for path in looked_at:
        assert b"Exif" not in path.read_bytes(), path
        if path.suffix == ".jpg":
            with Image.open(path) as image:
                assert dict(image.getexif()) == {}


def exif_with(tags, inner=None):
    made = Image.Exif()
    made.update(tags)
    if inner:
        made.get_ifd(0x8769).update(inner)
        made[0x8769] = made.get_ifd(0x8769)
    return made.tobytes()


MORE = {
    "XMP": (0xE1, b"http://ns.adobe.com/xap/1.0/\0<x:xmpmeta/>"),
    "EXIF": (0xE1, exif_with({0x010F: "Maker"})),
    "IPTC": (0xED, b"Photoshop 3.0\x008BIM\x04\x04\0\0\0\0\0\x08\x1c\x02\x5a\0\x03Ely"),
    "a comment": (0xFE, b"taken at home"),
    "a block APP2": (0xE2, b"MPF\0MM\0*"),
    "a block APP11": (0xEB, b"JP\0\0"),
}


@pytest.mark.parametrize("what", MORE)
def test_more_than_a_picture_is_refused(what):
    with pytest.raises(RefusedError, match=what):
        check_picture(with_segment(picture(1), *MORE[what]))


def test_nothing_may_follow_the_end_or_stand_between_the_scans():
    plain = picture(1)
    with pytest.raises(RefusedError, match="behind the end"):
        check_picture(plain + plain[:2] + exif() + plain[2:])
    out = io.BytesIO()
    with Image.open(io.BytesIO(picture(1, side=40))) as image:
        image.save(out, "JPEG", progressive=True)
    progressive = out.getvalue()
    check_picture(progressive)
    second = progressive.rindex(b"\xff\xda")
    between = progressive[:second] + exif() + progressive[second:]
    with Image.open(io.BytesIO(between)) as image:
        image.load()  # a reader takes it, and does not look there
        assert dict(image.getexif()) == {}
    with pytest.raises(RefusedError, match="EXIF"):
        check_picture(between)


def test_what_browsers_add_to_a_drawn_picture_is_let_through():
    plain = picture(1)
    bare = exif_with({0x0112: 1}, {0xA001: 1, 0xA002: 12, 0xA003: 12})
    empty = b"Photoshop 3.0\x008BIM\x04\x04\0\0\0\0\0\0" + b"8BIM\x04\x25\0\0\0\0\0\x10" + b"m" * 16
    for marker, body in (
        (0xE1, bare),
        (0xED, empty),
        (0xE2, b"ICC_PROFILE\0\x01\x01" + b"p" * 100),
        (0xEE, b"Adobe\0d\0\0\0\0\0"),
    ):
        check_picture(with_segment(plain, marker, body))
    with pytest.raises(RefusedError, match="EXIF"):  # a long one may hide anything
        check_picture(with_segment(plain, 0xE1, bare + b"x" * 300))


def saved(kind, **more):
    out = io.BytesIO()
    Image.new("RGB", (8, 8)).save(out, kind, **more)
    return out.getvalue()


NO_PICTURE = {
    "nothing": b"",
    "text": b"a photo",
    "PNG": saved("PNG"),
    "GIF": saved("GIF"),
    "cut off": picture(1)[:-20],
    "cut off in its head": picture(1)[:60],
    "head only": b"\xff\xd8\xff\xd9",
    "a length of none": b"\xff\xd8\xff\xe0\0\0" + picture(1)[2:],
    "filling": b"\xff\xd8" + b"\xff" * 5000,
    "a script behind two bytes": b"\xff\xd8<script>",
}


@pytest.mark.parametrize("what", NO_PICTURE)
def test_what_is_no_jpeg_is_refused(what):
    with pytest.raises(RefusedError, match="not a JPEG picture that can be read"):
        check_picture(NO_PICTURE[what])


@pytest.mark.parametrize(("width", "height"), [(6001, 4000), (15_000, 9_000), (60_000, 60_000)])
def test_a_picture_that_would_fill_the_memory_is_refused(width, height):
    plain = picture(1)
    at = plain.index(b"\xff\xc0") + 5  # height and width stand there (T.81, B.2.2)
    huge = plain[:at] + struct.pack(">HH", height, width) + plain[at + 4 :]
    with pytest.raises(RefusedError, match="up to 24 megapixels"):
        check_picture(huge)


def test_a_photo_of_24_megapixels_is_taken():
    out = io.BytesIO()
    Image.new("L", (6000, 4000), 128).save(out, "JPEG", quality=20)
    check_picture(out.getvalue())


def test_photos_are_private(store):
    data = picture(1)
    send(store, data)
    path = photos.path_of(store, sha(data))
    assert os.stat(path).st_mode & 0o077 == 0
    assert os.stat(path.parent).st_mode & 0o077 == 0
