"""Reports go to disk whole or not at all, and never over a plan."""

from __future__ import annotations

import os
import stat
import tempfile
from collections.abc import Iterable
from contextlib import suppress
from pathlib import Path


class ReportNotWrittenError(Exception):
    """A report could not be written; nothing was changed. ``says`` what is wrong, ``do`` what helps."""

    def __init__(self, says: str, do: str) -> None:
        super().__init__(f"{says} {do}")
        self.says = says
        self.do = do


class PlanInTheWayError(ReportNotWrittenError):
    """The place asked for a report is a plan under review."""


def _same_file(one: Path, other: Path) -> bool:
    if one == other:
        return True
    with suppress(OSError):
        return one.samefile(other)
    return False


def _mode_for(target: Path) -> int:
    try:
        return stat.S_IMODE(target.stat().st_mode)
    except OSError:
        mask = os.umask(0)
        os.umask(mask)
        return 0o666 & ~mask


def _refuse_odd_places(target: Path, path: Path) -> None:
    if target.is_dir():
        raise ReportNotWrittenError(f"{path} is a folder.", "Name a file inside it for the report.")
    if target.exists() and not target.is_file():
        raise ReportNotWrittenError(
            f"{path} is not an ordinary file.", "Name an ordinary file for the report."
        )
    if not target.parent.is_dir():
        raise ReportNotWrittenError(
            f"There is no folder {target.parent}.", "Make the folder first, or name another."
        )


def write_whole(
    path: str | Path, text: str, *, plans: Iterable[str | Path] = (), what: str = "report"
) -> None:
    """Put ``text`` at ``path`` as UTF-8 in one move, so that no reader ever sees half a report.

    The text is written beside the target and moved over it. Raises PlanInTheWayError when ``path`` is
    one of ``plans`` (through links too), and ReportNotWrittenError for every other trouble; a file that stood
    there before is then still whole. ``what`` is the word for it in the last.
    """
    path = Path(path)
    try:
        target = path.resolve()
        for plan in plans:
            if _same_file(target, Path(plan).resolve()):
                raise PlanInTheWayError(
                    f"{path} is a plan under review; a report would wipe it out.",
                    "Name another file for the report.",
                )
        _refuse_odd_places(target, path)
        handle, beside = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name[:40]}.", suffix=".part")
        try:
            with os.fdopen(handle, "wb") as file:
                # A lone surrogate has no UTF-8; spelled out, it cannot stop the report.
                file.write(text.encode("utf-8", errors="backslashreplace"))
                file.flush()
                os.fsync(file.fileno())
            os.chmod(beside, _mode_for(target))
            os.replace(beside, target)
        except BaseException:
            with suppress(OSError):
                os.unlink(beside)
            raise
    except (OSError, ValueError, RuntimeError) as error:
        why = getattr(error, "strerror", None) or str(error)
        raise ReportNotWrittenError(
            f"The {what} could not be written to {path}: {why}.",
            "Check the folder's permissions and the space left, or name another file.",
        ) from error
