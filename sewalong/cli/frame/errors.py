"""What stops a command: always a plain sentence, never a traceback."""

from __future__ import annotations


class CommandError(Exception):
    """The command cannot be carried out and nothing was changed.

    `str()` is one or more plain sentences, one a line, that say what to do next.
    """


def sentence_of(error: Exception) -> str | None:
    """The plain sentence in `error`, or None when it is a fault of the program itself.

    The kinds of the layers below are asked for by name only here, after something went
    wrong, so that a command that goes well need not load them all.
    """
    if isinstance(error, CommandError):
        return str(error)
    from sewalong.lengths import LengthFault
    from sewalong.piecing.faults import SizeRefused, UnknownMethod
    from sewalong.progress.record.refused import Refused
    from sewalong.quilt.refusal import NumbersFault
    from sewalong.store.faults import StoreFault

    if isinstance(error, Refused | StoreFault | LengthFault | NumbersFault | SizeRefused):
        return str(error)
    if isinstance(error, UnknownMethod):
        return f"{error} All are listed by: sewalong methods. Nothing was changed."
    if isinstance(error, OSError):
        return (
            f"The system said: {error.strerror or error}. "
            "What was recorded before is on disk; look with: sewalong log"
        )
    return None
