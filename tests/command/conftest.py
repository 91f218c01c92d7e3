"""Runs the command in a folder of its own."""

from __future__ import annotations

import gc
import io
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import NamedTuple

import pytest

from reviewer.cli import main


class Ran(NamedTuple):
    """What a run gave: its exit status and both streams."""

    status: int
    out: str
    err: str


@pytest.fixture
def run(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> Iterator[Callable[..., Ran]]:
    """``run("review", "a.plan", stdin=b"…")`` in a fresh folder."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("NO_COLOR", "1")

    def ran(*arguments: str, stdin: bytes = b"") -> Ran:
        monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(stdin)))
        capsys.readouterr()
        try:
            status = main(arguments)
        except SystemExit as stop:
            status = int(stop.code or 0)
        said = capsys.readouterr()
        return Ran(status, said.out, said.err)

    yield ran
    gc.enable()  # the command turns it off for its own short life
