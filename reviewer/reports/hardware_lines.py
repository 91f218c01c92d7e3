"""The joints with what each takes, and the hardware to buy, as lines for the terminal."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.reports.content import Hardware, JointRow, Report, counted_word


def _joint(row: JointRow) -> str:
    takes = "; ".join(each for each in (row.how, row.fasteners, row.glue) if each)
    return f"{row.parts} ({counted_word(row.joints, 'joint')}): {takes or 'nothing'}"


def _line(item: Hardware) -> str:
    many = "" if item.how_many is None else f"{item.how_many} "
    together = "" if item.price is None else f"; together {item.price:.2f}"
    return f"{many}{item.said}: {item.why}{together}"


def hardware_lines(report: Report) -> Iterator[tuple[str, tuple[str, ...]]]:
    """A title with its lines: what every join takes, and what to buy of it in all. Nothing without joins."""
    if report.joints:
        yield "What the joints take", tuple(_joint(row) for row in report.joints)
    if report.buying is not None and report.buying.hardware:
        yield "Hardware and glue to buy", tuple(_line(item) for item in report.buying.hardware)
