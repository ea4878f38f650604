"""The commands of the collector's own server: serve, pair and certificate."""

import argparse
import ipaddress
import logging
import shlex
import signal
import sys
import time
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import uvicorn

from identify import keeping, phone
from identify.arguments import port
from identify.errors import UserError
from identify.keeping import devices
from identify.keeping.backup import all_backups
from identify.keeping.commands import add_away, asked_away
from identify.keeping.data_folder import backup_folder, data_folder
from identify.keeping.proposals import Box
from identify.keeping.store import FILE, Store
from identify.keeping.troubles import DiskError
from identify.server import authority, limits
from identify.server.access import Notes, log
from identify.server.alone import alone
from identify.server.connections import Prompt, PromptLoop, listen
from identify.server.devices import LOOPBACK
from identify.server.hosts import checked
from identify.server.own_server import own_app
from identify.server.pairing import link, spaced, typed
from identify.server.tls import RENEWED, Tls
from identify.server.unit import started_with, unit, whole

ADDRESS = "address"  # under which the store keeps the public address, for `pair`


def serve(args: argparse.Namespace) -> int:
    """Serve the app and keep the collection, until stopped."""
    if args.print_unit:
        written = [
            whole(folder) for folder in (args.backups, args.locked, args.proposals) if folder
        ]
        print(unit(started_with(), _options(args), args.port, written), end="")
        return 0
    data = args.data or data_folder()
    refuse_to_begin_anew(data)
    away = asked_away(args)
    tls = _tls(args, data)
    public, hosts = _addresses(args, tls)
    packs = args.packs or phone.demo_packs()
    files = phone.site(packs) | phone.written_down(packs)
    root = authority.root_bytes(authority.folder_of(data))
    if root:
        files |= phone.trusting_files()
    _log()
    signal.signal(signal.SIGTERM, _end)  # uvicorn ends in order, then hands the signal on to this
    with alone(data), keeping.open(data) as store:
        _remember(store, public)
        app = own_app(
            files,
            store,
            backup_folder=args.backups or backup_folder(data),
            public=public,
            hosts=hosts,
            authority=root,
            tls=tls,
            away=away,
            box=Box(args.proposals) if args.proposals else None,
        )
        # behind a proxy all callers have its address
        share = limits.SHARE if args.behind_proxy is None else limits.CONNECTIONS
        listeners = listen(args.host, args.port, Notes(time.monotonic), share)
        print(f"Open {public} in a browser. Ctrl+C stops the server.", flush=True)
        _greet(store, public)
        config = uvicorn.Config(
            app,
            http=Prompt,
            loop=f"{PromptLoop.__module__}:{PromptLoop.__name__}",
            ssl_context_factory=(lambda *_: tls.context) if tls else None,
            lifespan="on",
            log_level="error",  # what is below that, any caller could fill the disk with
            access_log=False,
            server_header=False,
            # from this machine only, and only where a proxy is said to be there
            proxy_headers=args.behind_proxy is not None,
            forwarded_allow_ips="127.0.0.1,::1",
            timeout_keep_alive=limits.IDLE,
            timeout_graceful_shutdown=5,
        )
        uvicorn.Server(config).run(sockets=listeners)
    return 0


def _end(*_: object) -> None:
    """Ends the program by the way of every `with`: the store is closed, whole in its one file."""
    raise SystemExit(0)


def refuse_to_begin_anew(data: Path) -> None:
    """Raises UserError where there is no data, but backups of it: it is not begun anew unasked."""
    folder = backup_folder(data)
    made = [] if (data / FILE).is_file() else all_backups(folder)
    if made:
        words = ["python", "-m", "identify", "restore", str(folder / made[0]["name"])]
        if data != data_folder():
            words += ["--data", str(data)]
        raise UserError(
            f"There is no data in {data}, but there are backups of it. Restore the newest one: "
            f"{shlex.join(words)}. For an empty collection, name another folder: --data."
        )


def _remember(store: Store, public: str) -> None:
    """Keeps the public address for `pair`; a full disk keeps nobody from reading."""
    if store.meta(ADDRESS) == public:
        return
    try:
        store.set_meta(ADDRESS, public)
    except DiskError as trouble:
        log.error("disk: %s", trouble)


def _options(args: argparse.Namespace) -> list[str]:
    """The options of `serve` as they were given, but for the data, with whole paths."""
    named: list[tuple[str, list[str]]] = [
        ("--host", [args.host]),
        ("--port", [str(args.port)]),
        ("--cert", [whole(args.cert)]),
        ("--key", [whole(args.key)]),
        ("--packs", [whole(pack) for pack in args.packs or []]),
        ("--behind-proxy", [args.behind_proxy or ""]),
        ("--backups", [whole(args.backups)]),
        ("--proposals", [whole(args.proposals)]),
        ("--locked", [whole(args.locked)]),
        ("--passphrase-file", [whole(args.passphrase_file)]),
        ("--after-backup", [args.after_backup or ""]),
    ]
    return [word for option, words in named if any(words) for word in (option, *words)]


def pair(args: argparse.Namespace) -> int:
    """Print a square code and a typed code that pair one device."""
    data = args.data or data_folder()
    if not (data / FILE).is_file():
        raise UserError(
            f"There is no data in {data}. Start the server first: python -m identify serve"
        )
    with keeping.open(data) as store:
        public = store.meta(ADDRESS)
        if public == "":
            raise UserError("The server has not run yet. Start it first: python -m identify serve")
        _offer(store, public)
    return 0


def certificate(args: argparse.Namespace) -> int:
    """Make or renew a certificate of one's own for this server."""
    data = args.data or data_folder()
    made = authority.make(authority.folder_of(data), checked(args.hosts), datetime.now(UTC))
    server = authority.folder_of(data) / authority.SERVER
    print(f"{server}: for {', '.join(args.hosts)}, until {made.until:%Y-%m-%d}.")
    print("The server renews it by itself as long as it runs.")
    if made.new_authority:
        print(
            "\nIts authority can vouch for these hosts (and names below theirs) only; the key\n"
            "that made it is gone. Start the server with --host and an address of this machine\n"
            "(0.0.0.0 is all of them), then open this on each phone, and do what it says:"
        )
        for host in args.hosts:
            print(f"  {_url('https', host, args.port)}{phone.CERTIFICATE_PAGE}")
    print("\nThe authority's fingerprint (SHA-256), to compare with what the phone shows:")
    print(f"  {made.fingerprint}")
    return 0


def _tls(args: argparse.Namespace, data: Path) -> Tls | None:
    """What shows the certificate: the files named, else those that `certificate` made where others
    than this machine are served; None without https. One of our own that ends is renewed.
    """
    if (args.cert is None) != (args.key is None):
        raise UserError("A certificate and its key go together: name both, --cert and --key.")
    folder = authority.folder_of(data)
    made = (folder / authority.SERVER).is_file()
    if args.cert is not None:
        tls = Tls(args.cert, args.key, None)
    elif made and args.behind_proxy is None and not _loopback(args.host):
        tls = Tls(folder / authority.SERVER, folder / authority.SERVER_KEY, folder)
    else:
        return None
    now = datetime.now(UTC)
    done = tls.refresh(now)
    if done:
        print(f"{done[0].upper()}{done[1:]}.", flush=True)
    left = tls.until() - now
    if left < RENEWED:
        elsewhere = "Get a new one from where it came from; the server reads it as it runs."
        when = "has expired" if left <= timedelta(0) else f"expires on {tls.until():%Y-%m-%d}"
        said = f"The certificate in {tls.certificate} {when}. {elsewhere}"
        if left <= timedelta(0):
            raise UserError(said)
        print(said, file=sys.stderr, flush=True)
    return tls


def _addresses(args: argparse.Namespace, tls: Tls | None) -> tuple[str, list[str]]:
    """The address that people know, with a slash, and every name that the server goes by."""
    if args.behind_proxy is not None:
        parts = urlsplit(args.behind_proxy)
        if parts.scheme != "https" or not parts.hostname or parts.path not in ("", "/"):
            raise UserError(
                f"{args.behind_proxy} is not the address of a proxy. Give the https address that "
                "people open, without a path: such as https://trains.example.org"
            )
        return f"https://{parts.netloc.lower()}/", [*LOOPBACK, parts.hostname]
    if tls is not None:
        names = authority.names_in(tls.certificate)
        known = next((name for name in names if name not in LOOPBACK), names[0])
        return _url("https", known, args.port), [*LOOPBACK, *names]
    if not _loopback(args.host):
        raise UserError(
            f"{args.host} can be reached from other machines, and without https no phone there "
            "keeps the app for use without a signal, and others can read what is sent. Make "
            "a certificate (python -m identify certificate --help), name one (--cert, --key), or "
            "give the https address of the proxy in front of this server (--behind-proxy)."
        )
    return _url("http", args.host, args.port), list(LOOPBACK)


def _url(scheme: str, host: str, port: int) -> str:
    shown = f"[{host}]" if ":" in host else host
    usual = {"https": 443, "http": 80}[scheme]
    return f"{scheme}://{shown}/" if port == usual else f"{scheme}://{shown}:{port}/"


def _loopback(host: str) -> bool:
    try:
        return ipaddress.ip_address(host).is_loopback
    except ValueError:
        return host == "localhost"


def _greet(store: Store, public: str) -> None:
    """At the first start: how to pair. A code is shown to a person only, and put in no log."""
    if devices.all_devices(store):
        return
    if sys.stdout.isatty():
        _offer(store, public)
    else:
        print("No device is paired yet: python -m identify pair", flush=True)


def _offer(store: Store, public: str) -> None:
    pairing = devices.new_pairing(store, datetime.now(UTC))
    url = link(public, pairing["secret"])
    print("Point the phone's camera at this, and open the link:\n")
    print(_for_terminal(url))
    print(f"{url}\n")
    print(
        f"Or open {public} there, go to More, Devices and sync, and type: {spaced(pairing['code'])}"
    )
    print(
        f"Good for {devices.MINUTES} minutes and one device. Show it to nobody else: whoever has "
        "it can read the collection.",
        flush=True,
    )


def _for_terminal(url: str) -> str:
    drawn = typed(url)
    try:
        drawn.encode(sys.stdout.encoding or "ascii")
    except UnicodeEncodeError:
        return "(This terminal cannot show the square code. Use the link or the typed code.)"
    return drawn


def _log() -> None:
    """Lines of the server's own on standard error: time (UTC), level, what happened."""
    handler = logging.StreamHandler()
    form = logging.Formatter("%(asctime)s %(levelname)s %(message)s", "%Y-%m-%dT%H:%M:%SZ")
    form.converter = time.gmtime
    handler.setFormatter(form)
    log.handlers = [handler]
    log.setLevel(logging.INFO)
    log.propagate = False


def add(commands: "argparse._SubParsersAction[Any]") -> None:
    """Adds the parsers of these commands."""
    folder = "folder of the data ($IDENTIFY_DATA, else ~/.local/share/identify)"
    pack = "folder of a range, or a file made from one (the demo ranges)"

    p = commands.add_parser("serve", help="serve the app and keep the collection: your own server")
    p.add_argument("--data", type=Path, help=folder)
    p.add_argument("--host", default="127.0.0.1", help="address to listen on (this machine only)")
    p.add_argument("--port", type=port, default=8100, help="port to listen on (8100)")
    p.add_argument("--cert", type=Path, help="certificate for https, with its chain (PEM)")
    p.add_argument("--key", type=Path, help="key of that certificate (PEM)")
    p.add_argument("--packs", type=Path, nargs="+", metavar="PACK", help=pack)
    p.add_argument(
        "--behind-proxy", metavar="URL", help="https address of the proxy in front of it"
    )
    p.add_argument(
        "--proposals",
        type=Path,
        help="folder in which proposals for your ranges wait (no proposals)",
    )
    p.add_argument("--backups", type=Path, help="folder of the backups (beside the data)")
    add_away(p)
    p.add_argument(
        "--print-unit", action="store_true", help="print a systemd unit with these options instead"
    )
    p.set_defaults(run=serve)

    p = commands.add_parser("pair", help="show a square code that pairs one device")
    p.add_argument("--data", type=Path, help=folder)
    p.set_defaults(run=pair)

    p = commands.add_parser("certificate", help="make or renew your own certificate for https")
    p.add_argument("hosts", nargs="+", metavar="HOST", help="name or address of this machine")
    p.add_argument("--data", type=Path, help=folder)
    p.add_argument("--port", type=port, default=8100, help="port of the server, to show (8100)")
    p.set_defaults(run=certificate)
