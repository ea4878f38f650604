"""Requests and files that nobody in good faith would send. All chance comes from one Random."""

import io
import json
import struct
import zipfile
from collections.abc import Callable, Iterator
from random import Random
from typing import Any, NamedTuple

from PIL import Image, PngImagePlugin

from tests.browser.phone_storage import exif
from tests.keeping.samples import picture, sha
from tests.server.own_server import Pen


class Request(NamedTuple):
    """What to send with a paired device's token; `kept` where the server may well take it."""

    method: str
    path: str
    kind: str
    body: bytes


JSON = "application/json"
JPEG = "image/jpeg"
SHA = "a" * 64
DEVICE = "d" + "h" * 16
STRANGE: list[Any] = [
    None, True, 0, -1, 1.5, 2**53, 2**63, 2**64, 10**400, -(10**30), 1e308, "", " ", "x",
    "x" * 5000,
    "\0", "\n\r\t", "a\u202eb", "\ufeff", "\U0001d518", "é", "../../etc/passwd", "C:\\x",
    "'; drop table ops; --",
    "<script>alert(1)</script>", "=cmd()", "%00", "${7*7}", "{0.__class__}", "__proto__", [], {},
    [[]],
    [None], [{}], {"": ""}, {"__proto__": {"gone": True}}, {"constructor": 1}, ["x"] * 600,
]  # fmt: skip
RAW = [
    b"", b"null", b"[]", b"{}", b"{", b"}", b'"', b"\0", b"\xff\xfe{\0}\0", b"\xef\xbb\xbf{}",
    b"nul", b"NaN",
    b'{"ops":NaN}', b'{"ops":[Infinity]}', b'{"ops":[-Infinity]}', b'{"ops":[1e999]}',
    b'{"ops":["\\ud800"]}',
    b'{"ops":["\\udc00\\ud800"]}', b'{"ops":["\xff"]}', b'{"ops":["\xc0\xaf"]}',
    b'{"ops":["\xed\xa0\x80"]}',
    b'{"ops":[],"ops":[1]}', b'{"ops":[],}', b"{'ops':[]}", b'{"ops":[01]}', b'{"ops":[1]}x',
    b"<xml/>",
    b'{"ops":[' + b"9" * 5000 + b"]}", b'{"ops":[-0.0e-999]}',
    b'{"secret":"' + b"\\u0000" * 20 + b'"}',
    b"[" * 100_000, b'{"ops":' + b"[" * 5000 + b"]" * 5000 + b"}", b'{"a":' * 30_000,
    b'{"ops":[' + b"[" * 900,
]  # fmt: skip
POSTS = {
    "/api/push": {"ops": []},
    "/api/pair": {"secret": "x", "name": "y"},
    "/api/photos/missing": {"shas": [SHA]},
    "/api/devices/k0123456789abcdef": {"name": "x"},
    "/api/devices/k0123456789abcdef/revoke": {},
}
METHODS = ["GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE", "PROPFIND", "XYZ"]
TRICKS = [
    "../", "..%2f", "%2e%2e/", "%252e%252e%252f", "..\\", "..%5c", "....//", "/", "//", "%2f",
    "%00", "%0d%0a",
    ";", "?", "#", "%", "%zz", "%ff", "%c0%ae%c0%ae/", "~", "$(id)", "`id`", "|id", "*", "'", '"',
    "%u002e",
    "identify.sqlite", "etc/passwd", "photos", "api", "incoming", ".git/config", "a" * 300,
    "%F0%9F%9A%82",
]  # fmt: skip
HOME = ["/", "/api/", "/api/photos/", "/api/devices/", "/packs/"]


def written(value: Any) -> bytes:
    return json.dumps(value).encode()


def broken_json(chance: Random) -> Request:
    path = chance.choice(sorted(POSTS))
    if chance.random() < 0.5:
        return Request("POST", path, JSON, chance.choice(RAW))
    body = bytearray(written(POSTS[path] | {"ops": [Pen(DEVICE).writes("rone", notes="x")]}))
    for _ in range(chance.randint(1, 4)):
        body[chance.randrange(len(body))] = chance.randrange(256)
    return Request("POST", path, JSON, bytes(body[: chance.randint(0, len(body))] or body))


def wrong_types(chance: Random) -> Request:
    path = chance.choice(sorted(POSTS))
    body = dict(POSTS[path])
    for _ in range(chance.randint(1, 3)):
        name = chance.choice([*body, "ops", "shas", "rows", "records", "columns", "x"])
        body[name] = chance.choice(STRANGE)
    return Request("POST", path, JSON, written(chance.choice([body, body, [body], [[body]]])))


def odd_operation(chance: Random) -> Request:
    one: dict[str, Any] = Pen(DEVICE).writes(f"r{chance.randint(0, 5)}", notes="x")
    for _ in range(chance.randint(1, 3)):
        name = chance.choice([*one, "gone", "scrubbed", "extra", "device", "n"])
        one[name] = chance.choice(STRANGE)
    if chance.random() < 0.3:
        one["fields"] = {"gone": chance.choice(STRANGE), "x" * 100: chance.choice(STRANGE)}
    if chance.random() < 0.2:
        one["fields"] = {"deep": deep(chance.randint(90, 900))}
    return Request("POST", "/api/push", JSON, written({"ops": [one] * chance.randint(1, 3)}))


def deep(levels: int) -> Any:
    value: Any = 0
    for _ in range(levels):
        value = [value]
    return value


def odd_query(chance: Random) -> Request:
    names = ["epoch", "after", "last", "limit", "from", "size", "name", "sheet", "header", "x"]
    values = [
        "",
        "0",
        "-1",
        "1e9",
        "9" * 15,
        "9" * 16,
        "%00",
        "%ff",
        "²",
        "a" * 200,
        "NaN",
        "0x1",
        "1 ",
    ]
    pairs = [f"{chance.choice(names)}={chance.choice(values)}" for _ in range(chance.randint(0, 5))]
    method, path = chance.choice(
        [("GET", "/api/pull"), ("GET", "/api/devices"), ("PUT", f"/api/photos/{SHA}")]
    )
    query = "&".join(pairs).replace("²", "%C2%B2").replace(" ", "%20")
    return Request(method, f"{path}?{query}", JPEG, b"x" if method == "PUT" else b"")


def odd_path(chance: Random) -> Request:
    tail = "".join(chance.choice(TRICKS) for _ in range(chance.randint(1, 5)))
    path = chance.choice(HOME) + tail
    method = chance.choice(METHODS)
    body = written(chance.choice(STRANGE)) if chance.random() < 0.5 else b""
    return Request(method, path, chance.choice([JSON, JPEG, "", "text/html"]), body)


def bomb() -> bytes:
    """A picture of 4 gigapixels in a few bytes: the size in the frame header is changed."""
    data = bytearray(picture(1))
    at = data.index(b"\xff\xc0")
    data[at + 5 : at + 9] = struct.pack(">HH", 65535, 65535)
    return bytes(data)


def as_png(chance: Random) -> bytes:
    out = io.BytesIO()
    told = PngImagePlugin.PngInfo()
    told.add_text("GPS", "x" * chance.randint(0, 100))
    Image.new("RGB", (8, 8)).save(out, "PNG", pnginfo=told)
    return out.getvalue()


def archive() -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as made:
        made.writestr("../../outside.txt", b"0" * 5_000_000)
    return out.getvalue()


def segment(marker: int, content: bytes) -> bytes:
    return b"\xff" + bytes([marker]) + struct.pack(">H", len(content) + 2) + content


def holding(more: bytes) -> bytes:
    """A picture with something at its beginning that is no picture."""
    whole = picture(4)
    return whole[:2] + more + whole[2:]


FILES: list[Callable[[Random], bytes]] = [
    lambda chance: bomb(),
    lambda chance: (p := picture(chance.randrange(99)))[: chance.randrange(1, len(p))],
    lambda chance: picture(1) + chance.choice([b"\0", archive(), b"<script>x", picture(2)]),
    lambda chance: b"GIF89a" + picture(3),
    as_png,
    lambda chance: b"<svg xmlns='http://www.w3.org/2000/svg'><script>x</script></svg>",
    lambda chance: b"<!doctype html><script>x</script>",
    lambda chance: archive(),
    lambda chance: holding(exif()),
    lambda chance: holding(segment(0xE1, b"http://ns.adobe.com/xap/1.0/\0<x/>")),
    lambda chance: holding(segment(0xED, b"Photoshop 3.0\08BIM\4\4\0\0\0\0\0\5hello\0")),
    lambda chance: holding(segment(0xFE, b"51.5 N 0.1 W")),
    lambda chance: holding(segment(chance.randrange(0xE0, 0xF0), chance.randbytes(40))),
    lambda chance: holding(b"\xff\xe0\xff\xff"),
    lambda chance: b"\xff\xd8" + b"\xff" * chance.randint(1, 5000),
    lambda chance: b"\xff\xd8\xff\xd9",
    lambda chance: chance.randbytes(chance.randint(1, 3000)),
    lambda chance: flipped(chance, picture(chance.randrange(99))),
]  # fmt: skip


def flipped(chance: Random, data: bytes) -> bytes:
    out = bytearray(data)
    for _ in range(chance.randint(1, 30)):
        out[chance.randrange(len(out))] = chance.randrange(256)
    return bytes(out)


def odd_photo(chance: Random) -> Request:
    data = chance.choice(FILES)(chance)
    size = len(data) if chance.random() < 0.8 else chance.choice([0, 1, len(data) + 1, 10**14])
    start = 0 if chance.random() < 0.9 else chance.choice([1, len(data), 10**14])
    name = sha(data) if chance.random() < 0.9 else sha(b"another")
    return Request("PUT", f"/api/photos/{name}?from={start}&size={size}", JPEG, data)


SORTS = (
    broken_json, wrong_types, odd_operation, odd_query, odd_path, odd_photo, odd_photo,
)  # fmt: skip


def requests(chance: Random, count: int) -> Iterator[Request]:
    """So many of all sorts, in any order."""
    for _ in range(count):
        yield chance.choice(SORTS)(chance)


def torn(chance: Random, token: str) -> bytes:
    """Bytes on the line that are hardly HTTP: lengths that lie, heads without end, noise."""
    line = chance.choice(
        ["POST /api/push HTTP/1.1", "GET / HTTP/9.9", "GET  / HTTP/1.1", "GET /\0 HTTP/1.1",
         "POST /api/push",
         "GET http://127.0.0.1/api/pull HTTP/1.1",
         "PUT /api/photos/" + SHA + "?from=0&size=9 HTTP/1.1",
         "GET /" + "a" * 70_000 + " HTTP/1.1", "PRI * HTTP/2.0",
         "\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03"]
    )  # fmt: skip
    told = [
        "Host: 127.0.0.1", f"Authorization: Bearer {token}", "Content-Type: application/json",
        "Content-Length: 5", "Content-Length: 99", "Content-Length: -5",
        "Content-Length: 18446744073709551617",
        "Transfer-Encoding: chunked", "Transfer-Encoding: gzip, chunked",
        "Transfer-Encoding : chunked",
        "Expect: 100-continue", "Upgrade: websocket", "Connection: Upgrade", "X: a\r\n b",
        "X" * 200 + ": x",
        "Host: a\0b", ": empty", "Range: bytes=" + ",".join("0-1" for _ in range(2000)),
        "Bad header",
        "Accept-Encoding: " + ",".join(["gzip"] * 5000), "Content-Encoding: gzip",
        "Cookie: " + "a=b; " * 5000,
    ]  # fmt: skip
    head = [line, *told[: chance.randint(0, 3)], *chance.sample(told, chance.randint(0, 4))]
    body = chance.choice(
        [b"", b"{}", b'{"ops":[]}', b"5\r\nhello\r\n0\r\n\r\n", b"ffffffffffffffff\r\nx",
         b"-5\r\nx\r\n",
         b"5\r\nhel", b"zz\r\n", b"0\r\n\r\nGET /api/devices HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n",
         b"\0" * 2000]
    )  # fmt: skip
    return "\r\n".join(head).encode("latin-1") + b"\r\n\r\n" + body


def heavy(chance: Random) -> list[Request]:
    """Just short of what is refused for its size, and made to take much memory when it is read."""
    return [
        Request("POST", "/api/push", JSON, b'{"ops":[%s]}' % (b"{}," * 90_000 + b"{}")),
        Request("POST", "/api/push", JSON, b'{"ops":[{"id":"%s"}]}' % (b"x" * 1_900_000)),
        Request("POST", "/api/push", JSON, b" " * 2_000_001),
        Request("PUT", f"/api/photos/{SHA}?from=0&size=262145", JPEG, b"x" * 262_145),
    ]
