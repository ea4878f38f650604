"""A TLS handshake between two ends in memory, by OpenSSL: would this client trust that server?"""

import ssl
from pathlib import Path


def refusal(root: Path, certificate: Path, key: Path, name: str) -> str:
    """Why a client that trusts `root` only turns from this server as `name`; "" if it does not."""
    client = ssl.create_default_context(cafile=str(root))
    server = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    server.load_cert_chain(certificate, key)
    there, back = ssl.MemoryBIO(), ssl.MemoryBIO()
    asking = client.wrap_bio(back, there, server_hostname=name)
    answering = server.wrap_bio(there, back, server_side=True)
    ends = [asking, answering]
    for _ in range(10):
        for end in list(ends):
            try:
                end.do_handshake()
                ends.remove(end)
            except ssl.SSLWantReadError:
                continue
            except ssl.SSLCertVerificationError as error:
                return error.verify_message
        if not ends:
            return ""
    raise AssertionError("the handshake did not end")
