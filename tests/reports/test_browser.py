"""The page in a real browser, opened from disk: what it shows, what it complains of, how wide it is."""

from __future__ import annotations

import re
import shutil
import subprocess
from dataclasses import replace
from pathlib import Path

import pytest
from made_by_hand import bench_report, bookcase_report

from reviewer.reports.buying import cut_list_of
from reviewer.reports.html import render_html
from reviewer.reports.writing import write_whole

BROWSER = shutil.which("chromium") or shutil.which("chromium-browser")

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(BROWSER is None, reason="no browser is installed here"),
]

QUIET = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)

#: Holds the page at a given width and writes down how wide the page thinks it is. Only tests run scripts.
HARNESS = """<!doctype html><meta charset="utf-8"><body style="margin:0">
<iframe id="page" src="page.html" style="width:{width}px;height:900px;border:0"></iframe>
<pre id="seen"></pre>
<script>
onload = () => {{
  const view = document.getElementById("page").contentWindow, root = view.document.documentElement;
  const wide = [...view.document.querySelectorAll("body *")].filter(e => !e.closest(".wide, .skip, svg")
    && e.getBoundingClientRect().right > {width} + 0.5).map(e => e.tagName + "." + e.className);
  const small = [...view.document.querySelectorAll("svg.view")].map(svg => {{
    const box = svg.getBoundingClientRect();
    return 14 * box.width / svg.viewBox.baseVal.width;
  }});
  document.getElementById("seen").textContent =
    "scroll " + root.scrollWidth + " client " + root.clientWidth + " wide [" + wide.join() + "] lettering "
    + Math.min(...small).toFixed(1) + " views " + small.length;
}};
</script>"""


def browse(folder: Path, page: str, *more: str) -> subprocess.CompletedProcess[str]:
    assert BROWSER
    return subprocess.run(
        [BROWSER, *QUIET, f"--user-data-dir={folder / 'profile'}", *more, (folder / page).as_uri()],
        capture_output=True,
        text=True,
        timeout=120,
        check=True,
    )


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    place = tmp_path_factory.mktemp("page")
    reports = []
    for report in (bench_report(), bookcase_report()):
        assert report.review
        reports.append(replace(report, cut_list=cut_list_of(report.review), mass=20.0))
    write_whole(place / "page.html", render_html(reports))
    for width in (390, 1280):
        (place / f"at-{width}.html").write_text(HARNESS.format(width=width), encoding="utf-8")
    return place


def complaints(log: str) -> list[str]:
    return [line for line in log.splitlines() if "CONSOLE" in line]


def test_the_log_would_show_a_complaint(folder: Path) -> None:
    (folder / "bad.html").write_text(
        "<!doctype html><meta http-equiv='Content-Security-Policy' content=\"default-src 'none'\">"
        "<script>1</script><img src='x.png'>"
    )
    log = browse(folder, "bad.html", "--enable-logging=stderr", "--dump-dom").stderr
    assert len(complaints(log)) >= 2


def test_the_page_opens_from_disk_without_a_complaint(folder: Path) -> None:
    done = browse(folder, "page.html", "--enable-logging=stderr", "--dump-dom", "--window-size=1280,900")
    assert complaints(done.stderr) == []
    assert "<h1>3 things to mend before you buy wood</h1>" in done.stdout
    assert "<h2>Reading bench</h2>" in done.stdout
    assert "<h2>Bookcase by the window</h2>" in done.stdout
    assert done.stdout.count('<svg class="view"') == 8
    assert done.stdout.rstrip().endswith("</html>")


@pytest.mark.parametrize("width", [390, 1280])
def test_the_page_fits_its_width_and_its_lettering_reads(folder: Path, width: int) -> None:
    more = ("--allow-file-access-from-files", "--dump-dom", "--window-size=1400,1000")
    found = re.search(
        r"scroll (\d+) client (\d+) wide \[(.*)\] lettering ([\d.]+) views (\d+)",
        browse(folder, f"at-{width}.html", *more).stdout,
    )
    assert found, "the harness did not run"
    scroll, client, wide, lettering, views = found.groups()
    assert (int(scroll), wide, int(views)) == (int(client), "", 8)
    assert width - 20 <= int(client) <= width  # less a scroll bar where it takes room
    assert float(lettering) >= 10


def test_it_prints(folder: Path) -> None:
    browse(folder, "page.html", f"--print-to-pdf={folder / 'page.pdf'}", "--no-pdf-header-footer")
    paper = (folder / "page.pdf").read_bytes()
    assert paper.startswith(b"%PDF-")
    assert len(paper) < 1_500_000  # patterns and pictures would swell it to many times that
