"""The link that pairs a device, as a square code."""

import io

import segno


def link(public: str, secret: str) -> str:
    """The address that pairs who opens it; what follows # is sent to no server (RFC 3986, 3.5)."""
    return f"{public}#pair={secret}"


def spaced(code: str) -> str:
    """A typed code in two halves, which are easier to read."""
    return f"{code[:4]} {code[4:]}"


def drawn(address: str) -> str:
    """The address as a square code (ISO/IEC 18004), black on white in any light: SVG."""
    out = io.BytesIO()
    segno.make(address, error="m", micro=False).save(
        out, kind="svg", xmldecl=False, scale=6, border=4, dark="#000", light="#fff"
    )
    return out.getvalue().decode()


def typed(address: str) -> str:
    """The same in characters, for a terminal."""
    out = io.StringIO()
    segno.make(address, error="l", micro=False).terminal(out=out, border=2, compact=True)
    return out.getvalue()
