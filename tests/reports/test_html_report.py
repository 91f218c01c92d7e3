"""The page: one file that needs nothing else, with hostile text harmless in it."""

from __future__ import annotations

import re
from dataclasses import replace
from html.parser import HTMLParser
from importlib import resources
from itertools import pairwise

import pytest
from made_by_hand import (
    BENCH_TEXT,
    INCH,
    RAN,
    bench_report,
    bench_review,
    bookcase_report,
    clean_bench_report,
    inch_board,
    part_of,
    plan_with,
    set_out,
)

from reviewer.findings import Edit, Figure, Finding, Severity, Working
from reviewer.judging import Judgement
from reviewer.language.problems import FileProblem, ReadingProblem
from reviewer.language.source import Source, Span
from reviewer.model.plan import Axis, Stock
from reviewer.reports.buying import cut_list_of
from reviewer.reports.content import Bought, Buying, Hardware, Piece, Report, unread
from reviewer.reports.html import render_html
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.workshop.assumptions import Assumption

VOID = {"meta", "link", "br", "path", "circle", "polygon", "line", "rect"}


class Page(HTMLParser):
    """Reads a page strictly: every tag closed in its order, ids unique, links inside the page resolved."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.open: list[str] = []
        self.tags: list[str] = []
        self.ids: list[str] = []
        self.links: list[str] = []
        self.attributes: list[tuple[str, str, str]] = []
        self.headings: list[tuple[int, str]] = []
        self.text = ""
        self.feed(text)
        self.close()
        assert self.open == []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        for name, value in attrs:
            self.attributes.append((tag, name, value or ""))
            if name == "id":
                self.ids.append(value or "")
            if name == "href" and tag == "a":
                self.links.append(value or "")
        if re.fullmatch("h[1-6]", tag):
            self.headings.append((int(tag[1]), ""))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        assert tag in VOID, tag
        self.handle_starttag(tag, attrs)

    def handle_endtag(self, tag: str) -> None:
        assert self.open, f"</{tag}> closes nothing"
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        if "style" not in self.open and "title" not in self.open:
            self.text += data
        if self.open and re.fullmatch("h[1-6]", self.open[-1]):
            level, words = self.headings[-1]
            self.headings[-1] = (level, words + data)


def whole_report() -> Report:
    report = bench_report()
    assert report.review
    return replace(
        report,
        cut_list=cut_list_of(report.review),
        mass=17.25,
        assumptions=(Assumption("seat.1", "it is taken as dry", "", "a table", "moisture 8 %", Span(0, 4)),),
        buying=Buying(
            (
                Bought(
                    "stud",
                    "2x4 spruce-pine-fir",
                    96 * INCH,
                    None,
                    4.1,
                    (Piece("rail.front", 0, 35 * INCH),),
                    60 * INCH,
                ),
            ),
            (Hardware(40, "screws #8 x 2 1/2", "seat.* to rail.*"),),
            4.1,
        ),
    )


def test_order_of_the_page() -> None:
    page = Page(render_html([whole_report()]))
    assert page.headings[0] == (1, "2 things to mend before you buy wood")
    assert page.headings[1] == (2, "Reading bench")
    assert [words for level, words in page.headings if level == 3] == [
        "Where someone can be hurt",
        "To mend before you buy wood",
        "Worth knowing",
        "Drawing",
        "Cut list",
        "What to buy",
        "Finish",
        "Taken for granted",
        "Accepted with a reason",
        "Usual cautions",
        "The plan",
    ]
    levels = [level for level, _ in page.headings]
    assert all(after <= before + 1 for before, after in pairwise(levels))


def test_findings_carry_sign_word_number_and_rule() -> None:
    page = Page(render_html([whole_report()]))
    cards = [" ".join(words.split()) for level, words in page.headings if level == 4]
    assert len(cards) == 5
    text = render_html([whole_report()])
    first = text[text.index('id="plan1-finding-1"') : text.index('id="plan1-finding-2"')]
    assert '<svg class="sign warning"' in first
    assert '<span class="weight">warning</span>' in first
    assert "tips" in first
    assert "<mark>2 people seated</mark>" in first
    assert '<a href="#plan1-depth-8">seat.1</a>' in first
    assert "<summary>The working</summary>" in first
    assert "<code>moment holding / moment tipping</code>" in first


def test_every_link_leads_somewhere_on_the_page() -> None:
    for reports in ([whole_report()], [whole_report(), bookcase_report()], [clean_bench_report()]):
        page = Page(render_html(reports))
        assert len(page.ids) == len(set(page.ids))
        assert len(page.links) >= 5
        assert [link for link in page.links if link[0] != "#" or link[1:] not in page.ids] == []


def test_nothing_is_fetched_and_nothing_runs() -> None:
    text = render_html([whole_report(), bookcase_report()])
    page = Page(text)
    assert "script" not in page.tags
    assert not {"img", "iframe", "object", "embed", "form", "base"} & set(page.tags)
    addresses = [
        v for _, name, v in page.attributes if name in ("src", "href", "srcset", "action", "data", "poster")
    ]
    assert {a for a in addresses if not a.startswith("#")} == {"data:,"}
    assert not [name for _, name, _ in page.attributes if name.startswith("on")]
    assert not re.search(r"https?://|//[a-z]|url\(|@import|@font-face", text)
    assert (
        '<meta http-equiv="Content-Security-Policy" content="default-src \'none\'; '
        "style-src 'unsafe-inline'; img-src data:\">"
    ) in text


def test_the_page_begins_as_a_page() -> None:
    text = render_html([whole_report()])
    assert text.startswith('<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n')
    assert text.endswith("</html>\n")
    assert '<a class="skip" href="#review">' in text
    assert '<th scope="col">' in text


HOSTILE = (
    "<script>alert('x')</script>\"><img src=x onerror=alert(1)> ]]> --> </style></pre>&amp;{{7*7}}\u202e\x1b"
)
SHOWN = HOSTILE.replace("\u202e", "\ufffd").replace("\x1b", "␛")


def hostile_report() -> Report:
    text = f'plan "{HOSTILE}" in inches\npart {HOSTILE}: stud\n'
    source = Source(f"{HOSTILE}.plan", text)
    solid = inch_board(HOSTILE, (0, 0, 0), (20, 3.5, 1.5), Axis.ACROSS, Axis.DEEP)
    span = Span(0, len(text) - 1)
    stock = Stock(
        name=HOSTILE,
        kind="board",
        material=HOSTILE,
        said=HOSTILE,
        thickness=38,
        width=89,
        offers=(),
        span=span,
    )
    plan = plan_with(
        source, title=HOSTILE, parts={HOSTILE: part_of(solid, HOSTILE, span)}, stocks={HOSTILE: stock}
    )
    review = Review(source, plan, set_out(solid), {})

    @rule("tips", topic="safety", severity=Severity.ERROR)
    def judged(review: Review) -> tuple[Finding, ...]:
        return ()

    judged.judge.__doc__ = HOSTILE
    finding = Finding(
        (HOSTILE,),
        span,
        "{a} is wrong.",
        "Mend {a}.",
        {"a": HOSTILE},
        Working(
            (Figure(HOSTILE, HOSTILE, HOSTILE),), HOSTILE, Figure(HOSTILE, HOSTILE), Figure(HOSTILE, HOSTILE)
        ),
        (span,),
        Edit(Span(0, 4), HOSTILE),
        waived_because=HOSTILE,
    ).stamped("tips", "safety", Severity.ERROR)
    return Report(
        source,
        (ReadingProblem(span, HOSTILE, HOSTILE, (HOSTILE,)),),
        review,
        Judgement((finding,), (finding,), RAN),
        FileProblem(HOSTILE, HOSTILE, HOSTILE),
        (Assumption(HOSTILE, "{value}", HOSTILE, HOSTILE, HOSTILE, span),),
        {"tips": judged},
        cut_list=cut_list_of(review),
        buying=Buying(
            (Bought(HOSTILE, HOSTILE, 500, None, 1, (Piece(HOSTILE, 0, 100),), 1),),
            (Hardware(1, HOSTILE, HOSTILE),),
            1,
            (HOSTILE,),
        ),
    )


def test_hostile_text_stays_text() -> None:
    text = render_html([hostile_report()])
    page = Page(text)
    assert "script" not in page.tags
    assert "img" not in page.tags
    assert not [name for _, name, _ in page.attributes if name.startswith("on")]
    assert "<script" not in text
    assert "\u202e" not in text
    assert "\x1b" not in text
    assert page.text.count(SHOWN) >= 30
    assert (("h2"), SHOWN) in [(f"h{level}", words) for level, words in page.headings]
    assert "49" not in page.text


def test_text_problems_stand_first_with_their_lines() -> None:
    source = Source("a.plan", "part leg: stdu\r\npart b: stud")
    problem = ReadingProblem(
        Span(10, 14), "There is no stock called stdu.", "Write a stock's name.", ("stud",)
    )
    text = render_html([Report(source, problems=(problem,))])
    page = Page(text)
    assert page.headings[:3] == [
        (1, "1 thing to mend before you buy wood"),
        (2, "a.plan"),
        (3, "Text to mend"),
    ]
    assert "<mark>stdu</mark>" in text
    assert "The plan knows stud." in page.text
    assert "The plan is not reviewed" not in page.text
    assert "the plan is not reviewed until the text can be read." in page.text
    assert "\r" not in text
    assert text.count('<span class="at">') == 2


def test_a_file_without_text() -> None:
    page = Page(render_html([unread(FileProblem("gone.plan", "There is no such file.", "Check the name."))]))
    assert "There is no such file." in page.text
    assert "The plan" not in [words for level, words in page.headings if level == 3]


def test_empty_plan_and_mark_without_words() -> None:
    source = Source("a.plan", "")
    problem = ReadingProblem(Span(0, 0), "The plan is empty.", "Write a plan.")
    assert '<mark class="blank"></mark>' in render_html([Report(source, problems=(problem,))])


def test_a_clean_plan_says_so_and_promises_nothing() -> None:
    page = Page(render_html([clean_bench_report()]))
    assert page.headings[0] == (1, "Nothing to mend: 6 rules looked at this plan")
    assert "None. Nothing to mend: 6 rules looked at this plan." in page.text
    assert (
        "Local codes, the manuals of your tools and products, and licensed practice come first." in page.text
    )
    for word in ("approved", "complies", "compliant"):
        assert word not in page.text.lower()


def test_several_plans_have_an_article_each() -> None:
    page = Page(render_html([whole_report(), bookcase_report()]))
    assert page.tags.count("article") == 2
    assert page.headings[0] == (1, "3 things to mend before you buy wood")
    assert [words for level, words in page.headings if level == 2] == [
        "Reading bench",
        "Bookcase by the window",
    ]
    assert "2 of 2 plans have something to mend." in page.text


def test_many_findings_of_a_rule_are_told_in_short_after_the_twentieth() -> None:
    report = bench_report()
    found = tuple(
        Finding(("seat.1",), Span(n, n + 1), f"Thing {n} is wrong.", "Mend it.").stamped(
            "tips", "x", Severity.ERROR
        )
        for n in range(25)
    )
    page = Page(render_html([replace(report, judgement=Judgement(found, (), ("tips",)))]))
    assert all(f"Thing {n} is wrong." in page.text for n in range(25))
    assert page.tags.count("mark") == 20


def test_the_page_of_a_rule_is_printed_once() -> None:
    @rule("tips", topic="safety", severity=Severity.ERROR)
    def tips(review: Review) -> tuple[Finding, ...]:
        """It falls over.

        A bench that falls over hurts.
        """
        return ()

    report = bench_report()
    assert report.judgement
    twice = tuple(f for f in report.judgement.findings if f.rule == "tips") * 2
    text = render_html([replace(report, rules={"tips": tips}, judgement=Judgement(twice, (), ("tips",)))])
    assert text.count("<summary>About tips</summary>") == 1
    assert "It falls over.\n\nA bench that falls over hurts." in text


def test_finish_in_the_plan_s_order() -> None:
    page = Page(render_html([bench_report()]))
    steps = [
        "Sand with 80, 120, 150 grit",
        "1 coat of stain gel",
        "3 days after it",
        "3 coats of polyurethane waterborne, sanded 400 grit between coats",
        "2 h after each coat",
    ]
    places = [page.text.index(step) for step in steps]
    assert places == sorted(places)


def test_boards_are_drawn_and_told() -> None:
    text = render_html([whole_report()])
    assert "rail.front 35 in, left over 60 in" in text
    assert "<b>stud: 2x4 spruce-pine-fir, 96 in</b> at 4.10" in text
    board = text[text.index('<svg class="board"') :]
    # 350 units are 96 in, so 35 in are 127.6
    assert '<rect class="piece" x="0" y="0" width="127.6" height="30"/>' in board[: board.index("</svg>")]


def test_waiting_rules_are_told() -> None:
    judged = Judgement((), (), RAN, ("sags", "tips"))
    assert (
        "2 rules wait until every part has its place."
        in Page(render_html([bench_report(judgement=judged)])).text
    )


# ---------------------------------------------------------------- colours

STYLE = (resources.files("reviewer.reports") / "style.css").read_text(encoding="utf-8")
COLOURS = dict(re.findall(r"--([a-z-]+): (#[0-9a-f]{6});", STYLE.partition("}")[0]))


def luminance(colour: str) -> float:
    """WCAG 2.2, definition of relative luminance (sRGB)."""
    shares = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [s / 12.92 if s <= 0.04045 else ((s + 0.055) / 1.055) ** 2.4 for s in shares]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    """WCAG 2.2, definition of contrast ratio."""
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def test_the_contrast_formula_on_known_pairs() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.005)  # WCAG's own example of a grey


@pytest.mark.parametrize("ground", ["paper", "sheet", "marked", "wood-top", "wood-front", "wood-side"])
@pytest.mark.parametrize("ink", ["ink", "pencil", "link", "error", "warning", "note", "accepted"])
def test_every_ink_reads_on_every_ground(ink: str, ground: str) -> None:
    # WCAG 2.2, 1.4.3 Contrast (Minimum), level AA: 4.5 to 1
    assert contrast(COLOURS[ink], COLOURS[ground]) >= 4.5


def test_colours_stand_in_one_place() -> None:
    assert len(COLOURS) == 14
    rest = STYLE.partition("}")[2]
    assert set(re.findall(r"#[0-9a-f]{3,8}\b", rest)) == {"#ffffff"}  # white paper for print
    assert set(re.findall(r"var\(--([a-z-]+)\)", STYLE)) <= set(COLOURS)


def test_the_bench_s_plan_is_printed_whole() -> None:
    text = render_html([bench_report()])
    assert text.count('<span class="at">') == len(BENCH_TEXT.splitlines())
    assert bench_review(Source("x", BENCH_TEXT)).plan.title == "Reading bench"
