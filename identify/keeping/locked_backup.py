"""A backup in one file that only its passphrase opens, for a place that others can read.

The format is age's (age-encryption.org/v1): the file is a tar archive for one key. That key lies
beside it as OpenSSH writes keys, locked with the passphrase (bcrypt, of a fixed cost; age's own
locking by a passphrase measures the machine, and refuses on a slower or busier one). So it opens
with any program for age: `age -d -i key.pem NAME.tar.age | tar x`.

    <folder>/key.pem          the key, locked with the passphrase; made once
    <folder>/NAME.tar.age     NAME/identify.sqlite, NAME/manifest.json, photos/ab/<sha>.jpg
"""

import hashlib
import secrets
import shutil
import tarfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from cryptography.hazmat.primitives import serialization as forms
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
from pyrage import DecryptError, decrypt_file, encrypt_file, ssh

from identify.keeping import files, photos
from identify.keeping.manifest import MANIFEST, manifest_of
from identify.keeping.store import FILE
from identify.keeping.troubles import DamagedError, DiskError, RefusedError, disk_troubles

KEY = "key.pem"
ROUNDS = 64  # of bcrypt; OpenSSH's own are 16 (ssh-keygen(1), -a)
ENDING = ".tar.age"
SHORTEST = 12  # characters of a passphrase
WRONG = "The passphrase does not open this backup. Give the one that it was locked with."
DAMAGED = "This locked backup is damaged or cut short. Nothing was changed; take another one."


def read_passphrase(file: Path) -> str:
    """The passphrase that a file holds in its first line. Raises RefusedError, OSError."""
    lines = file.read_text("utf-8").splitlines()
    phrase = lines[0].strip() if lines else ""
    if len(phrase) < SHORTEST:
        raise RefusedError(
            f"The passphrase in {file} is shorter than {SHORTEST} characters. Take some words that "
            "nobody would guess, and write them down in another place too."
        )
    return phrase


def lock(backup: Path, folder: Path, phrase: str) -> Path:
    """Locks a finished backup (its folder) into `folder` and opens it on trial; the file made.

    The disk has to have room for it twice meanwhile. Raises UserError; then there is no such file.
    """
    if manifest_of(backup) is None:
        raise RefusedError(f"{backup} is not a backup. Name the folder of one.")
    made = folder / f"{backup.name}{ENDING}"
    with disk_troubles():
        files.make_folder(folder)
        key = _key(folder, phrase)
        with _stage(backup.parent) as stage:
            plain, sealed, back = (stage / name for name in ("plain.tar", "sealed", "back.tar"))
            with tarfile.open(plain, "w") as tar:
                for path, name in _members(backup):
                    tar.add(path, name)
            encrypt_file(str(plain), str(sealed), [_recipient(key)])
            decrypt_file(str(sealed), str(back), [_opener(key)])
            if _digests(back) != {name: _sha(path) for path, name in _members(backup)}:
                raise DiskError(
                    "The locked backup was made, but what came out of it on trial was not the "
                    "same, so it was removed again. Check the disk and try once more."
                )
            files.copy_whole(sealed, made)
    return made


@contextmanager
def unlocked(file: Path, phrase: str, within: Path) -> Iterator[Path]:
    """The backup in a locked file, as a folder under `within` as long as this lasts.

    Raises RefusedError for a wrong passphrase, DamagedError for a file that is not whole.
    """
    with _stage(within) as stage:
        with disk_troubles():
            key = _key(file.parent, phrase, make=False)
            try:
                decrypt_file(str(file), str(stage / "plain.tar"), [_opener(key)])
                with tarfile.open(stage / "plain.tar") as tar:
                    tar.extractall(stage, filter="data")
            except (DecryptError, tarfile.TarError):
                raise DamagedError(DAMAGED) from None
            except OSError as error:
                if error.errno is not None:
                    raise
                raise DamagedError(DAMAGED) from None  # how age's stream says that it is cut short
        yield stage / file.name.removesuffix(ENDING)


def keep_locked(folder: Path, names: set[str]) -> None:
    """Takes away the locked backups whose plain ones (their names) are no longer kept."""
    with disk_troubles():
        for path in folder.glob(f"*{ENDING}"):
            if path.name.removesuffix(ENDING) not in names:
                files.remove(path)


def _members(backup: Path) -> list[tuple[Path, str]]:
    """What goes in: files, by what they are called inside."""
    members = [(backup / name, f"{backup.name}/{name}") for name in (FILE, MANIFEST)]
    for photo in (manifest_of(backup) or {"photos": []})["photos"]:
        path = photos.under(backup.parent / "photos", photo["sha"])
        members.append((path, f"photos/{path.parent.name}/{path.name}"))
    return members


def _key(folder: Path, phrase: str, *, make: bool = True) -> Ed25519PrivateKey:
    """The key of this folder; made where there is none yet."""
    file = folder / KEY
    if make and not file.is_file():
        locking = forms.PrivateFormat.OpenSSH.encryption_builder().kdf_rounds(ROUNDS)
        files.write_whole(file, _pem(Ed25519PrivateKey.generate(), locking.build(phrase.encode())))
    if not file.is_file():
        raise RefusedError(
            f"There is no {KEY} beside this backup. Put the one from the same folder there."
        )
    try:
        key = forms.load_ssh_private_key(file.read_bytes(), phrase.encode())
    except ValueError:
        raise RefusedError(WRONG) from None
    assert isinstance(key, Ed25519PrivateKey)
    return key


def _pem(key: Ed25519PrivateKey, locking: forms.KeySerializationEncryption) -> bytes:
    return key.private_bytes(forms.Encoding.PEM, forms.PrivateFormat.OpenSSH, locking)


def _opener(key: Ed25519PrivateKey) -> ssh.Identity:
    return ssh.Identity.from_buffer(_pem(key, forms.NoEncryption()))


def _recipient(key: Ed25519PrivateKey) -> ssh.Recipient:
    line = key.public_key().public_bytes(forms.Encoding.OpenSSH, forms.PublicFormat.OpenSSH)
    return ssh.Recipient.from_str(line.decode())


@contextmanager
def _stage(within: Path) -> Iterator[Path]:
    """A folder for what is unlocked meanwhile, for this user only, and gone afterwards."""
    stage = within / f".unlocked-{secrets.token_hex(4)}"
    try:
        with disk_troubles():
            files.make_folder(stage)
        yield stage
    finally:
        shutil.rmtree(stage, ignore_errors=True)


def _digests(archive: Path) -> dict[str, str]:
    digests = {}
    with tarfile.open(archive) as tar:
        for member in tar:
            digest = hashlib.sha256()
            data = tar.extractfile(member)
            while data is not None and (chunk := data.read(2**20)):
                digest.update(chunk)
            digests[member.name] = digest.hexdigest()
    return digests


def _sha(path: Path) -> str:
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()
