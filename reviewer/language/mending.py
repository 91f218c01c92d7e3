"""The writer's own words with the least change that lets them read, tried out on the parser itself.

What is offered here always reads: each change is read once more before anyone is told of it.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from reviewer.language.examples import beginnings, example_of
from reviewer.language.lexer import STRAY
from reviewer.language.rephrasing import rephrased
from reviewer.language.stopping import Stop, near_keywords
from reviewer.language.tables import END
from reviewer.language.wordings import KINDS
from reviewer.records import NamedTuple

#: Where reading a text under a rule stops, None when it reads.
Trial = Callable[[str, str], Stop | None]

#: Words longer than this are no clause that somebody says; nothing is tried on them.
_LONGEST = 160
#: So many words may be lacking; after that an example helps more.
_MOST_CHANGES = 3
#: And after so many lacking commas.
_MOST_CLAUSES = 6
_QUOTED = re.compile(r'(?<!\d)"[^"]*"')
_WORD = re.compile(r"[^\W\d][\w-]*")
#: A name that is no word of the language.
_NO_WORD = "qqq"
#: Words that say nothing of their own: left out when the rest reads without them.
_FILLERS = frozenset(
    {"the", "a", "an", "is", "be", "its", "then", "about", "by", "for", "of", "at", "to", "in", "on"}
)


#: Little words and marks that writers swap for one another.
_SWAPPED = frozenset(
    {"and", "as", "at", "because", "by", "for", "from", "if", "in", "into", "on", "over", "through", "to"}
    | {"towards", "under", "with", "within", "every", ":", "="}
)


class Mended(NamedTuple):
    """Words that read, and what was done to them when that was one change."""

    words: str
    inserted: str = ""
    replaced: str = ""


def _words_of(stop: Stop) -> str:
    """The words under the rule, plainly spaced; empty when they are far too many to try anything on."""
    return " ".join(stop.text[stop.start : stop.end].split()) if stop.end - stop.start <= _LONGEST else ""


def said_otherwise(stop: Stop, trial: Trial) -> Mended | None:
    """What the language says for a usual phrase of makers; None when the words hold none."""
    words = _words_of(stop)
    for changed in _rephrased(stop.about, words):
        plain = " ".join(changed.split())
        clauses = plain.split(", ") if stop.of_clause else [plain]
        if all(trial(stop.rule, clause) is None for clause in clauses):
            return Mended(_as_quoted(plain, stop))
    return None


def mended(stop: Stop, trial: Trial) -> Mended | None:
    """The least change that reads. None when none does, or when several could be meant."""
    words = _words_of(stop)
    found = _changed(stop.rule, words, trial) if words else None
    return found and found._replace(words=_as_quoted(found.words, stop))


def reads_as_name(stop: Stop, trial: Trial) -> str | None:
    """The first word, where the clause was read as if it were a name that stands before a word."""
    found = _WORD.match(_words_of(stop))
    if found is None or found.group() in stop.measures:
        return None
    instead = trial(stop.rule, _NO_WORD + _words_of(stop)[found.end() :])
    return found.group() if instead is not None and instead.expected == stop.expected else None


def _as_quoted(words: str, stop: Stop) -> str:
    """The words with each quotation as the writer wrote it, capitals and all."""
    said = iter(
        stop.original[stop.start + found.start() : stop.start + found.end()]
        for found in _QUOTED.finditer(stop.text[stop.start : stop.end])
    )
    return _QUOTED.sub(lambda found: next(said, found.group()), words)


def _rephrased(about: str, words: str) -> Iterator[str]:
    """The words as the language says them: with one usual phrase changed, then with one more each time."""
    changed = words
    for pattern, said in rephrased(about):
        one = pattern.sub(said, words, count=1)
        if one != words:
            yield one
        more = pattern.sub(said, changed, count=1)
        if more != changed and more != one:
            yield more
        changed = more


def _changed(rule: str, words: str, trial: Trial) -> Mended | None:
    """Words put in, swapped or left out where reading stops, as few as will do."""
    first = trial(rule, words)
    if first is None:
        return None
    level = [(Mended(words), first)]
    for change in range(_MOST_CHANGES):
        further: list[tuple[Mended, Stop]] = []
        for _, stop in level:
            for same_kind in _changes(stop, only_sure=change > 0):
                found: list[Mended] = []
                for made in same_kind:
                    now = trial(rule, made.words)
                    if now is None:
                        found.append(made if change == 0 else Mended(made.words))
                    elif len(same_kind) == 1 and (now.span.start > stop.span.start or stop.at_end):
                        further.append((made, now))
                if len(found) == 1:
                    return found[0]
                if found:
                    return None
        level = further[:6]
    return None


def _changes(stop: Stop, only_sure: bool) -> Iterator[list[Mended]]:
    """Changes where reading stopped, kind by kind, the likeliest kind first."""
    text = stop.text
    place, end = stop.span.start, stop.span.end
    before, said, after = text[:place].rstrip(), text[place:end], text[end:].lstrip()
    if stop.kind == STRAY:
        return
    options = sorted(
        kind.lower() if kind not in KINDS else "%"
        for kind in stop.expected
        if kind == "PERCENT" or kind not in KINDS
    )
    if only_sure and len(options) > 1:
        return
    word = bool(_WORD.fullmatch(said))
    if word:
        near = near_keywords(said, stop.expected)
        yield [Mended(_joined(before, name, after), replaced=name) for name in near[:1]]
    beside = {before.split(" ")[-1], said}
    options = [name for name in options if name not in beside]
    yield [Mended(_joined(before, name, said, after), inserted=name) for name in options]
    if stop.at_end:
        return
    if said in _SWAPPED or stop.rule == "restrain_head":
        yield [Mended(_joined(before, name, after), replaced=name) for name in options]
    if said in _FILLERS or said in ("=", ",", ":"):
        yield [Mended(_joined(before, after))]


def _joined(*pieces: str) -> str:
    return " ".join(piece for piece in pieces if piece).replace(" ,", ",").replace(" :", ":")


def parted(stop: Stop, trial: Trial) -> str | None:
    """The words with the commas that let each clause read by itself; None when none do."""
    words = _words_of(stop).split(" ")
    clauses: list[str] = []
    starts = beginnings(stop.about)
    known = re.compile(rf"\bstock {re.escape(words[0])} *:")
    if len(words) > 1 and stop.about == "part" and known.search(stop.text):
        clauses.append(words[0])
        words = words[1:]
    while words:
        rest = " ".join(words)
        now = trial(stop.rule, rest)
        if now is None:
            if rest in starts and example_of(stop.about, [rest]) != rest:  # it only reads as a name
                return None
            clauses.append(rest)
            break
        before, after = rest[: now.span.start].strip(), rest[now.span.start :]
        if END not in now.expected or not before or now.at_end or len(clauses) > _MOST_CLAUSES:
            return None
        if after.split(" ")[0] not in starts and not after[0].isdigit():
            return None
        if trial(stop.rule, before) is not None or (
            _WORD.fullmatch(before) and before not in starts and not known.search(stop.text)
        ):
            return None
        clauses.append(before)
        words = after.split(" ")
    return ", ".join(clauses) if len(clauses) > 1 else None


#: Where any word goes on with the words before it, a comma that is left out would swallow a clause.
_OF_FREE_WORDS = frozenset({"stock_clause", "finish_clause", "load_clause", "purchase"})


def joined(rule: str, one: str, other: str, trial: Trial) -> str | None:
    """Two pieces that a comma parts as the one clause they are; None when they do not read together."""
    if rule in _OF_FREE_WORDS or not other or other.split()[0] in beginnings(rule.removesuffix("_clause")):
        return None
    if len(one) + len(other) > _LONGEST or not (other[:1].isalnum() or other[:1] in "½¼¾"):
        return None
    for between in (" ", " by ", " and "):
        whole = " ".join(f"{one}{between}{other}".split())
        if trial(rule, whole) is None:
            return whole
    return None


def number_lacks_before(stop: Stop, trial: Trial) -> str | None:
    """The word before which a number would let the words read: one of the language, read as a measure."""
    words = stop.text[stop.start : stop.end].split()
    if len(words) < 2 or stop.end - stop.start > _LONGEST:
        return None
    for place in range(1, len(words)):
        behind_a_sum = words[place].upper() in _ALL_BEHIND_SUMS
        if behind_a_sum and trial(stop.rule, " ".join([*words[:place], "1", *words[place:]])) is None:
            return words[place]
    return None


#: Words of the language that stand behind a number or a measure.
_ALL_BEHIND_SUMS = frozenset(
    {"ABOVE", "ACROSS", "ALONG", "AT", "AWAY", "BEHIND", "BELOW", "BY", "CLEAR", "DEEP", "DEGREES", "EACH"}
    | {"FROM", "INSIDE", "INTO", "LEFT", "LONG", "OUTSIDE", "OVER", "RIGHT", "TALL", "THICK", "THROUGH", "TO"}
    | {"TOWARDS", "UNDER", "UP", "WIDE", "WITHIN", "X"}
)
