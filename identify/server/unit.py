"""How the server starts with the machine: a systemd unit that may do what it needs and no more."""

import os
import shlex
import sys
from collections.abc import Sequence
from pathlib import Path

from identify.errors import UserError

NAME = "stallside"
PRIVILEGED = 1024  # ports below it are for root, or for whoever is given that one right
HOMES = ("/home/", "/root/", "/run/user/")  # ProtectHome hides these from the service

TEMPLATE = """\
# The server of the collection, started with the machine. To set it up, as root:
#   useradd --system --home-dir /var/lib/{name} --shell /usr/sbin/nologin {name}
#   (this text) > /etc/systemd/system/{name}.service
#   systemctl daemon-reload && systemctl enable --now {name}
# Its data is in /var/lib/{name}, the backups in /var/lib/{name}-backups unless --backups names
# another folder; what options name has to belong to the user {name}. Pair a phone with:
#   sudo -u {name} {pair}
[Unit]
Description=Stallside, a collection kept in step on all devices
After=network-online.target
Wants=network-online.target

[Service]
Type=exec
User={name}
ExecStart={command}
Environment=IDENTIFY_DATA=%S/{name} SHIV_ROOT=%C/{name}
StateDirectory={name} {name}-backups
StateDirectoryMode=0700
CacheDirectory={name}
CacheDirectoryMode=0700
Restart=on-failure
RestartSec=5
TimeoutStopSec=30
UMask=0077
MemoryMax=1G
TasksMax=128
NoNewPrivileges=yes
ProtectSystem=strict
ProtectHome=yes
ProtectProc=invisible
ProcSubset=pid
ProtectClock=yes
ProtectHostname=yes
ProtectControlGroups=yes
ProtectKernelLogs=yes
ProtectKernelModules=yes
ProtectKernelTunables=yes
PrivateDevices=yes
PrivateTmp=yes
{writable}{rights}
LockPersonality=yes
MemoryDenyWriteExecute=yes
RemoveIPC=yes
RestrictAddressFamilies=AF_INET AF_INET6 AF_UNIX
RestrictNamespaces=yes
RestrictRealtime=yes
RestrictSUIDSGID=yes
SystemCallArchitectures=native
SystemCallFilter=@system-service
SystemCallFilter=~@privileged @resources

[Install]
WantedBy=multi-user.target
"""
NO_RIGHTS = "CapabilityBoundingSet=\nPrivateUsers=yes"
PORT_RIGHT = "CapabilityBoundingSet=CAP_NET_BIND_SERVICE\nAmbientCapabilities=CAP_NET_BIND_SERVICE"


class UnitError(UserError):
    """The service could not start in the way that is asked for."""


def started_with() -> list[str]:
    """The words that this program was started with, before the command: whole paths."""
    script = Path(sys.argv[0])
    if script.name == "__main__.py":
        return [sys.executable, "-m", "identify"]
    return [sys.executable, str(script.resolve())]


def unit(
    program: Sequence[str], options: Sequence[str], port: int, written: Sequence[str] = ()
) -> str:
    """The unit's text. program: as `started_with` gives it; options: what follows `serve`;
    written: the folders among them that the server writes into.

    Raises UnitError where the service's own user could not reach the program or its files.
    """
    for word in program:
        if word.startswith(HOMES):
            raise UnitError(
                f"{word} is in somebody's home folder, which the service cannot see. Put the app "
                f"where all users can read it, such as /opt/{NAME}, and ask there again."
            )
    for word in options:
        if word.startswith(HOMES):
            raise UnitError(
                f"{word} is in somebody's home folder, which the service cannot see. Put it where "
                f"all users can read it, such as /etc/{NAME}, and ask again."
            )
    return TEMPLATE.format(
        name=NAME,
        command=shlex.join([*program, "serve", *options]),
        pair=shlex.join([*program, "pair", "--data", f"/var/lib/{NAME}"]),
        # a folder that is missing, such as a disk not yet plugged in, keeps no server from starting
        writable="".join(f'ReadWritePaths="-{folder}"\n' for folder in written),
        rights=PORT_RIGHT if port < PRIVILEGED else NO_RIGHTS,
    )


def whole(path: Path | None) -> str:
    """A path as the service needs it, which starts in another folder."""
    return "" if path is None else os.path.abspath(path)
