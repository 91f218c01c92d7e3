"""The review as one page that needs nothing else: no address is fetched and no script runs."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from importlib import resources

from jinja2 import Environment, FunctionLoader, StrictUndefined
from markupsafe import Markup

from reviewer import __version__
from reviewer.reports.content import DEFERS, Report, verdict
from reviewer.reports.excerpt import visible
from reviewer.reports.finishing import NEEDS_LEAD
from reviewer.reports.page import counts_line, plan_page
from reviewer.reports.page_sizes import sizes_shown
from reviewer.reports.used import PRESSED
from reviewer.reports.wall_fixing import LEAD as WALL_LEAD


def _shipped(name: str) -> str:
    return (resources.files("reviewer.reports") / name).read_text(encoding="utf-8")


def _shown(value: object) -> object:
    """Every text that the template prints, with controls and reordering marks made visible."""
    return visible(value) if isinstance(value, str) and not isinstance(value, Markup) else value


@lru_cache(maxsize=1)
def _environment() -> Environment:
    environment = Environment(
        autoescape=True,
        undefined=StrictUndefined,
        loader=FunctionLoader(_shipped),
        finalize=_shown,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    environment.filters["drawn"] = Markup  # SVG of our own strokes; every word in it is escaped there
    return environment


def render_html(reports: Sequence[Report]) -> str:
    """The review of some plans as one HTML page in UTF-8, ending in a new line."""
    pages = [plan_page(report, index) for index, report in enumerate(reports, 1)]
    said = verdict(reports)
    return (
        _environment()
        .get_template("page.html.jinja")
        .render(
            pages=pages,
            tables=sizes_shown(reports, pages),
            said=said,
            counts=counts_line(said),
            defers=DEFERS,
            needs_lead=NEEDS_LEAD,
            pressed=PRESSED,
            wall_lead=WALL_LEAD,
            style=Markup(_shipped("style.css")),
            version=__version__,
        )
    )
