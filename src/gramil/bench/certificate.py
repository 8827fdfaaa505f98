"""A certificate of the bench's own, for HTTPS on the network: made once and kept beside the record.

The one module that loads the `cryptography` library, which comes with the extra `lan`.
"""

import os
from datetime import datetime, timedelta
from ipaddress import ip_address
from pathlib import Path

from gramil.faults import MakersFault

LASTS = timedelta(days=397)
"""No browser takes a certificate for longer."""


def certificate_for(store: Path, address: str, now: datetime) -> Path:
    """The file with key and certificate for an address: the one beside the record while it serves, else a new one.

    Raises MakersFault if the extra is not installed.
    """
    kept = store.with_name(f"{store.stem}-bench.pem")
    if not kept.exists() or not _serves(kept.read_bytes(), address, now):
        _written(kept, _made(address, now))
    return kept


def _written(path: Path, content: bytes) -> None:
    """Written for this user's eyes alone: it holds the key."""
    path.unlink(missing_ok=True)
    with os.fdopen(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb") as file:
        file.write(content)


def _serves(content: bytes, address: str, now: datetime) -> bool:
    _library()
    from cryptography import x509

    try:
        found = x509.load_pem_x509_certificate(content)
        names = found.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
    except (ValueError, x509.ExtensionNotFound):
        return False
    known = {str(each) for each in names.get_values_for_type(x509.IPAddress)}
    return address in known and found.not_valid_before_utc <= now < found.not_valid_after_utc - timedelta(days=1)


def _made(address: str, now: datetime) -> bytes:
    """Key and certificate, one after the other (PEM)."""
    _library()
    from cryptography import x509
    from cryptography.hazmat.primitives import hashes, serialization
    from cryptography.hazmat.primitives.asymmetric import ec

    key, name = ec.generate_private_key(ec.SECP256R1()), x509.Name([])
    places = [x509.IPAddress(ip_address(each)) for each in dict.fromkeys((address, "127.0.0.1"))]
    made = (
        x509.CertificateBuilder()
        .subject_name(name)
        .issuer_name(name)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(now - timedelta(hours=1))
        .not_valid_after(now + LASTS)
        .add_extension(x509.SubjectAlternativeName([*places, x509.DNSName("localhost")]), critical=True)
        .add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
        .sign(key, hashes.SHA256())
    )
    plain = serialization.NoEncryption()
    secret = key.private_bytes(serialization.Encoding.PEM, serialization.PrivateFormat.PKCS8, plain)
    return secret + made.public_bytes(serialization.Encoding.PEM)


def _library() -> None:
    try:
        import cryptography  # noqa: F401  (asked for here, so that one sentence says what is missing)
    except ImportError:
        raise MakersFault.of(
            "HTTPS needs a library that is not installed", remedy="install the library cryptography beside gramil"
        ) from None
