"""Tells schemathesis what a piece of a photograph looks like: bytes, as they are."""

import schemathesis
from hypothesis import strategies


@schemathesis.serializer("application/offset+octet-stream")
def piece(ctx, value):  # noqa: ARG001
    return value if isinstance(value, bytes) else str(value).encode()


schemathesis.openapi.media_type("application/offset+octet-stream", strategies.binary(max_size=2000))
