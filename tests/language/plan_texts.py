"""Every plan that the project ships, in files and on rules' pages, a text with every clause, and their layouts."""

from __future__ import annotations

import re
from pathlib import Path
from textwrap import dedent

from hypothesis import strategies as st

from reviewer.language.reading import read
from reviewer.language.sharing import nothing_in_files
from reviewer.pages import page_of
from reviewer.rulebook import all_rules
from tests.language.test_every_clause import EVERYTHING

PLANS = Path(__file__).parent.parent.parent / "plans"
TEXTS = {
    path.relative_to(PLANS).as_posix(): path.read_text(encoding="utf-8")
    for path in sorted(PLANS.rglob("*.plan"))
}
for _rule in all_rules().values():
    _page = page_of(_rule)
    TEXTS[f"{_rule.name} flagged"] = dedent(_page.flagged)
    TEXTS[f"{_rule.name} quiet"] = dedent(_page.quiet)
EVERY_CLAUSE = "every clause"
TEXTS[EVERY_CLAUSE] = EVERYTHING
READABLE = {name: text for name, text in TEXTS.items() if not read(text, nothing_in_files).problems}
UNREADABLE = {name: text for name, text in TEXTS.items() if name not in READABLE}

BLANKS = (" ", "  ", "\t", "\u00a0", " \u2009 ", "     ")
_COMMENT = re.compile(r"(?:^|(?<= ))#(?!\d).*$")
_QUOTED = re.compile(r'("[^"]*")')
_FRACTION_SIGNS = {"1/2": "½", "1/4": "¼", "3/4": "¾", "1/8": "⅛", "3/8": "⅜", "5/8": "⅝"}
_FRACTION = re.compile(r"(?<![\w/.])(?:(\d+) )?(\d+/\d+)(?![\w/.])")
_OTHER_SPELLINGS = {
    "centred": "centered",
    "coats of": "coat of",
    "1 coat": "1 coats",
    "copies": "copy",
    "screws": "screw",
    "inches": "inch",
    "millimetres": "mm",
    " ft": "'",
    " h": " hours",
}


def split_comment(line: str) -> tuple[str, str]:
    """A line's words and its comment. Enough for the texts here, and not the way the reader does it."""
    for match in re.finditer("#", line):
        if line[: match.start()].count('"') % 2 == 0 and _COMMENT.match(line, match.start()):
            return line[: match.start()], line[match.start() :]
    return line, ""


def comments_of(text: str) -> list[str]:
    """The words of all comments in order."""
    found = (split_comment(line.expandtabs(1))[1] for line in text.splitlines())
    return [" ".join(comment.lstrip("#").split()) for comment in found if comment]


class Drawn:
    """Draws another layout of a text, a choice at a time."""

    def __init__(self, draw: st.DrawFn, *, lines: bool, levels: bool) -> None:
        self.random = draw(st.randoms(use_true_random=False))
        self.lines = lines
        # Where statements stand in statements, how far in a line stands has to follow from its level.
        self.level = self.random.choice(("  ", "   ", "      ", "\t")) if levels else None

    def once_in(self, often: int) -> bool:
        return self.random.randrange(often) == 0

    def number(self, match: re.Match[str]) -> str:
        whole, part = match.groups()
        sign = _FRACTION_SIGNS.get(part)
        if whole is None:
            return sign if sign and self.once_in(2) else part
        forms = [f"{whole} {part}", f"{whole}-{part}", f"{whole}   {part}"]
        if sign:
            forms += [whole + sign, f"{whole} {sign}"]
        return self.random.choice(forms)

    def words(self, words: str) -> str:
        """Words outside quotations."""
        for ours, other in _OTHER_SPELLINGS.items():
            if self.once_in(2):
                words = re.sub(rf"{ours}\b(?![\w.-])", other, words)
        words = _FRACTION.sub(self.number, words)
        out = []
        for char, after in zip(words, (words + " ")[1:], strict=True):
            if char == " " and after in _FRACTION_SIGNS.values():
                pass  # one blank is all that the language allows there
            elif char == " " and self.once_in(4):
                char = self.random.choice(BLANKS)
            elif char in ",:=" and self.once_in(4):
                char = self.random.choice(BLANKS) + char + self.random.choice(BLANKS)
            elif char == "x" and self.once_in(8):
                char = "×"
            elif self.once_in(8):
                char = char.upper()
            out.append(char)
        return "".join(out)

    def line(self, line: str) -> list[str]:
        words, comment = split_comment(line)
        body = words.strip()
        if not body:
            return [line]
        indent = ""
        if words[0] == " ":
            level = (len(words) - len(words.lstrip())) // 4
            indent = self.level * level if self.level else self.random.choice(("  ", "    ", "\t", "       "))
        pieces = _QUOTED.split(body)
        pieces = [
            self.random.choice((piece, f"“{piece[1:-1]}”")) if number % 2 else self.words(piece)
            for number, piece in enumerate(pieces)
        ]
        body = "".join(pieces)
        if comment:
            comment = self.random.choice((" ", "  ", "       ", "\t")) + comment
        if self.lines and len(pieces) == 1:
            return self.split(body, indent, comment)
        return [indent + body + (comment or self.random.choice(("", "", "  ")))]

    def split(self, body: str, indent: str, comment: str) -> list[str]:
        """A line of clauses on several lines, with remarks between."""
        clauses = re.split(r"(?<=\S),\s+", body)
        rows = [indent + clauses[0]]
        for clause in clauses[1:]:
            goes_on = re.match(r"(?i)(?:and|because|to)\b", clause)
            if self.once_in(3):
                rows[-1] += "," if goes_on or self.once_in(2) else ""
                if self.once_in(3):
                    rows[-1] += self.random.choice(("  # a", "\t# b, c: d", " #e"))
                while self.once_in(3):
                    rows.append(self.random.choice(("", "   ", "# f", "  # g", "     # h", "\t\t# i")))
                rows.append(indent + self.random.choice(("  ", "\t", "      ")) + clause)
            else:
                rows[-1] += ", " + clause
        rows[-1] += comment or self.random.choice(("", "", "  # j", "   "))
        if self.once_in(6):
            rows.append(self.random.choice(("", "# k", "    # l", "          # m")))
        return rows


@st.composite
def other_layouts(draw: st.DrawFn, *, lines: bool) -> tuple[str, str]:
    """A shipped text, and the same words in another layout. ``lines`` lets the lines differ as well."""
    text = READABLE[draw(st.sampled_from([*sorted(READABLE), *[EVERY_CLAUSE] * 20]))]
    drawn = Drawn(draw, lines=lines, levels="assembly" in text)
    rows = [row for line in text.splitlines() for row in drawn.line(line)]
    end = drawn.random.choice(("\n", "\n", "\r\n"))
    other = end.join(rows) + drawn.random.choice(("", end, end * 3))
    return text, drawn.random.choice(("", "\ufeff")) + other
