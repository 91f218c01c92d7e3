"""The same review gives the same bytes, whatever Python's hash seed."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

CODE = """
import hashlib
from dataclasses import replace
from made_by_hand import bench_report, bookcase_report
from reviewer.reports.html import render_html
from reviewer.reports.json_report import render_json
from reviewer.reports.buying import cut_list_of
from reviewer.reports.terminal import render_terminal
reports = [replace(r, cut_list=cut_list_of(r.review)) for r in (bench_report(), bookcase_report())]
for render in (render_terminal, render_json, render_html):
    text = render(reports)
    print(render.__name__, len(text), hashlib.sha256(text.encode()).hexdigest())
"""


def rendered(seed: str) -> str:
    environ = os.environ | {"PYTHONHASHSEED": seed, "PYTHONPATH": str(Path(__file__).parent)}
    done = subprocess.run(
        [sys.executable, "-c", CODE], env=environ, capture_output=True, text=True, check=True
    )
    return done.stdout


def test_same_bytes_under_every_hash_seed() -> None:
    first = rendered("0")
    assert len(first.splitlines()) == 3
    assert [rendered(seed) for seed in ("1", "2", "4294967295")] == [first] * 3
