"""The box for proposals: what followers of a shared range saw, for its keepers to judge.

A folder of its own, apart from any collection: who follows gets a word that lets in proposals and
nothing else.

    followers.json                 [{id, name, digest (SHA-256 of the word), made, ended}]
    waiting/, taken/, declined/    <id>.json: {id, from, time, said, file: a file of sightings}
"""

import base64
import binascii
import hashlib
import secrets
from datetime import datetime
from pathlib import Path
from typing import Any, TypedDict

import msgspec
import orjson

from identify.core.gate import DEEPEST, value_fault
from identify.core.gate_words import fault_words
from identify.keeping import files
from identify.keeping.photo_checks import check_picture
from identify.keeping.troubles import RefusedError, disk_troubles
from identify.reference.sighting import SightingError, sightings_in

WAITING, TAKEN, DECLINED = "waiting", "taken", "declined"
STATES = (WAITING, TAKEN, DECLINED)
FOLLOWERS = "followers.json"
MOST_BYTES = 4_000_000  # of one proposal, with its photos
MOST_SIGHTINGS = 20
MOST_OF_ONE = 20  # proposals of one follower that wait
MOST_WAITING = 500
LONGEST = 200  # characters of a name, and of what a keeper says
URL = "data:image/jpeg;base64,"


class Follower(TypedDict):
    """Somebody who may propose; `ended`: when that was over, or ""."""

    id: str
    name: str
    digest: str
    made: str
    ended: str


class Proposal(TypedDict):
    """What was proposed, by whose id and when; said: the keeper's answer."""

    id: str
    by: str
    time: str
    said: str
    file: dict[str, Any]


class Box:
    """The box in a folder, which is made at the first follower."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder.absolute()

    def followers(self) -> list[Follower]:
        """All, those too whose time is over."""
        try:
            everybody: list[Follower] = orjson.loads((self.folder / FOLLOWERS).read_bytes())
        except FileNotFoundError:
            return []
        return everybody

    def begun(self) -> bool:
        """Whether anybody was ever let in here."""
        return (self.folder / FOLLOWERS).is_file()

    def let_in(self, name: str, now: datetime) -> str:
        """The word for a new follower; it is kept as a digest only, and never told again."""
        if not 0 < len(name.strip()) <= LONGEST:
            raise RefusedError(f"A follower has a name of 1 to {LONGEST} characters.")
        word = secrets.token_urlsafe(24)
        new = Follower(
            id=f"f{secrets.token_hex(4)}",
            name=name.strip(),
            digest=_digest(word),
            made=now.isoformat(timespec="seconds"),
            ended="",
        )
        self._write([*self.followers(), new])
        return word

    def end(self, ident: str, now: datetime) -> None:
        """Takes nothing more of a follower; what came stays. Raises RefusedError."""
        every = self.followers()
        for follower in every:
            if follower["id"] == ident:
                follower["ended"] = follower["ended"] or now.isoformat(timespec="seconds")
                self._write(every)
                return
        raise RefusedError(
            f"There is no follower called {ident}. The act “followers” says who there is."
        )

    def follower(self, word: str) -> Follower | None:
        """Whose word this is, if it counts."""
        digest = _digest(word)
        for known in self.followers():
            if secrets.compare_digest(known["digest"], digest):
                return known if known["ended"] == "" else None
        return None

    def put_in(self, by: Follower, content: bytes, now: datetime) -> str:
        """Keeps a proposal; its id. Raises RefusedError with what is wrong with it."""
        file = _checked(content)
        waiting = self.all(WAITING)
        if sum(proposal["by"] == by["id"] for proposal in waiting) >= MOST_OF_ONE:
            raise RefusedError(
                "You have as many proposals waiting as are allowed. Wait for the keepers to look "
                "at them."
            )
        if len(waiting) >= MOST_WAITING:
            raise RefusedError("The box is full. Wait until the keepers have looked through it.")
        ident = f"s{secrets.token_hex(8)}"
        time = now.isoformat(timespec="seconds")
        self._put(WAITING, Proposal(id=ident, by=by["id"], time=time, said="", file=file))
        return ident

    def all(self, state: str) -> list[Proposal]:
        """The proposals in a state, the oldest first."""
        paths = (self.folder / state).glob("s*.json")
        proposals = [orjson.loads(path.read_bytes()) for path in paths]
        return sorted(proposals, key=lambda proposal: (proposal["time"], proposal["id"]))

    def settle(self, ident: str, state: str, said: str) -> Proposal:
        """Takes or declines one that waits. Raises RefusedError."""
        if len(said) > LONGEST:
            raise RefusedError(f"Say it in at most {LONGEST} characters.")
        for proposal in self.all(WAITING):
            if proposal["id"] == ident:
                proposal["said"] = said
                self._put(state, proposal)
                files.remove(self.folder / WAITING / f"{ident}.json")
                return proposal
        raise RefusedError(f"No proposal called {ident} is waiting. The act “list” says which are.")

    def _put(self, state: str, proposal: Proposal) -> None:
        with disk_troubles():
            path = self.folder / state / f"{proposal['id']}.json"
            files.write_whole(path, orjson.dumps(proposal))

    def _write(self, every: list[Follower]) -> None:
        with disk_troubles():
            files.write_whole(self.folder / FOLLOWERS, orjson.dumps(every))


def _digest(word: str) -> str:
    return hashlib.sha256(word.encode()).hexdigest()


def _checked(content: bytes) -> dict[str, Any]:
    """The file of sightings, which holds what it should. Raises RefusedError."""
    try:
        sightings = sightings_in(content, "This")
        file: dict[str, Any] = msgspec.json.decode(content, type=dict[str, Any])
    except SightingError as error:
        raise RefusedError(str(error)) from None
    except RecursionError:
        raise RefusedError(f"This is nested more than {DEEPEST} deep.") from None
    if len(sightings) > MOST_SIGHTINGS:
        raise RefusedError(f"Propose at most {MOST_SIGHTINGS} sightings at once.")
    for sighting in file["sightings"]:
        fault = value_fault({**sighting, "photos": []})
        if fault is not None:
            raise RefusedError(fault_words(fault))
        photos = sighting.get("photos", [])
        for photo in photos if isinstance(photos, list) else [None]:
            _check_photo(photo)
    return file


def _check_photo(photo: Any) -> None:
    """Raises RefusedError unless it holds a bare picture: no position, no camera."""
    text = photo.get("full") if isinstance(photo, dict) else None
    more = set(photo) - {"full", "width", "height"} if isinstance(photo, dict) else set()
    if not isinstance(text, str) or not text.startswith(URL) or more:
        raise RefusedError("A photo of a sighting must be a picture as the app makes them.")
    try:
        data = base64.b64decode(text.removeprefix(URL), validate=True)
    except binascii.Error:
        raise RefusedError("A photo of a sighting cannot be read.") from None
    check_picture(data)
