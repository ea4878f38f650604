"""Names of hosts that a certificate may be for."""

import ipaddress
import re
from collections.abc import Sequence

from publicsuffixlist import PublicSuffixList

from identify.errors import UserError

Address = ipaddress.IPv4Address | ipaddress.IPv6Address
LABEL = re.compile(r"(?!-)[a-z0-9-]{1,63}(?<!-)")  # RFC 1123, 2.1
INSTEAD = "Name the one machine: such as trains.home.arpa, trains.local or 192.168.1.20."


def checked(names: Sequence[str]) -> list[str | Address]:
    """Host names in lower case and addresses, each once. Raises UserError for what is no machine's.

    Refused is what many machines of other people share: wildcards, and suffixes under which anyone
    can have a name (the list of publicsuffix.org; whatever has no dot counts as one).
    """
    hosts: list[str | Address] = []
    for name in names:
        host = _checked(name.strip())
        if host not in hosts:
            hosts.append(host)
    return hosts


def _checked(name: str) -> str | Address:
    try:
        address = ipaddress.ip_address(name.strip("[]"))
    except ValueError:
        return _host(name.lower().removesuffix("."))
    if address.is_unspecified or address.is_multicast or "%" in name:
        raise UserError(f"{name} is not the address of a machine. {INSTEAD}")
    return address


def _host(name: str) -> str:
    labels = name.split(".")
    if "*" in name:
        raise UserError(
            f"{name} stands for many machines, and a wildcard is not allowed. {INSTEAD}"
        )
    if len(name) > 253 or not all(LABEL.fullmatch(label) for label in labels):
        raise UserError(f"{name} is not the name of a machine. {INSTEAD}")
    if labels[-1].isdecimal():
        raise UserError(f"{name} is neither a name nor an address. {INSTEAD}")
    if PublicSuffixList().is_public(name):
        raise UserError(
            f"Others can have names under {name}, and the authority would be good for them too. "
            f"{INSTEAD}"
        )
    return name
