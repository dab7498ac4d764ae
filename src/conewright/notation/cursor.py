"""Walking the tokens of one sentence and telling what is wrong with it; must not know the forms of sentences.

The first failure of a sentence is its only one: from then on the cursor stands at the end, everything asked of it
answers "nothing", and no further failure is told. So readers need not look after each step whether the last one went
well. A slip that leaves the meaning clear (a misspelled word, a name nobody declared) is told and read past.
"""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import TypeAlias

from conewright.model.problem import Problem, Severity, Span
from conewright.notation.guesses import closest, slip_of
from conewright.notation.lexer import END, NUMBER, TEXT, WORD, Token
from conewright.notation.names import Names, name_of
from conewright.notation.vocabulary import JOINERS, NEVER_NAMES, VOCABULARY
from conewright.notation.words import METRES, NUMBERS, SECONDS

_LONGEST = 6  # so many words the longest phrase has, less one
_UNITS = frozenset(METRES) | frozenset(SECONDS)
OFTEN = 2  # a name used so often is hardly a slip each time
Entry: TypeAlias = tuple[tuple[str, ...], str]
Index: TypeAlias = Mapping[str, tuple[Entry, ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """A phrase or name that would be taken at the end of a text: what is still to be written of it, and for what."""

    phrase: str
    rest: str
    what: str = ""
    is_name: bool = False


@dataclass(slots=True)
class Findings:
    """The problems of one text while it is read, and what keeps one mistake from being told twice."""

    problems: list[Problem] = field(default_factory=list)
    undeclared: dict[str, tuple[Problem, str]] = field(default_factory=dict)  # by name: the first use, the name meant
    uses: Counter[str] = field(default_factory=Counter)  # of undeclared names
    used: set[str] = field(default_factory=set)  # declared names that occur as they are
    lost: set[str] = field(default_factory=set)  # words of sentences that could not be read and may declare something
    own: set[str] = field(default_factory=set)  # undeclared names told in a lost sentence: it does not explain them
    said: set[str] = field(default_factory=set)  # what need not be told again
    steps_unsure: bool = False  # a step could not be read, or they are numbered wrongly
    ends_with: Token | None = None  # set where it is asked what may follow the last token of a text
    asked: list[Asked] = field(default_factory=list)  # what was looked for behind that token
    header_lost: bool = False  # a line was not understood that may be one of those an exercise needs
    unnamed: int = 0  # names that are missing where they should be declared

    def add(self, code: str, where: Span | None, message: str, hint: str = "") -> None:
        """Tell a problem that has to be mended."""
        self.problems.append(mend(code, where, message, hint))

    def lose(self, tokens: tuple[Token, ...]) -> None:
        """A sentence that may declare something could not be read: its words may be names that are missing now."""
        first, last = tokens[0], tokens[-1]
        for name, (problem, _) in self.undeclared.items():
            at = _position(problem)
            if (first.line, first.column) <= at < (last.line, last.end):
                self.own.add(name)
        self.lost |= {token.lower for token in tokens}
        self.lost |= {"open play"} if self.lost & {"open", "play"} else set()

    def at_declarations(self, declared: Mapping[str, Span | None]) -> None:
        """Tell a slip where it was made: in a name that is declared and never used, where one like it is used often."""
        unused = tuple(name for name in declared if name not in self.used)
        for name, (problem, near) in self.undeclared.items():
            meant = _most_like(name, unused)
            if not meant or self.uses[name] < OFTEN:
                continue
            used = f" in line {problem.where.line}" if problem.where else ""
            told = f'"{meant}" is not used, and there is no place or thing called "{name}", which stands{used}.'
            hint = f'Write "{name}" here, or "{meant}" there.'
            self.undeclared[name] = (replace(problem, where=declared[meant], message=told, hint=hint), near)

    def all(self) -> tuple[Problem, ...]:
        """Everything found, in the order of the text, without undeclared names that another problem explains."""
        unexplained: list[Problem] = []
        missing = self.unnamed
        for name, (problem, near) in self.undeclared.items():
            if name not in self.own and self.lost.intersection(name.lower().split()):
                continue
            if not near and missing > 0:
                missing -= 1
                continue
            unexplained.append(problem)
        return tuple(sorted((*self.problems, *unexplained), key=_position))


def mend(code: str, where: Span | None, message: str, hint: str = "") -> Problem:
    """A problem that has to be mended before the exercise runs."""
    return Problem(code=code, severity=Severity.MEND, message=message, where=where, hint=hint)


def _position(problem: Problem) -> tuple[int, int]:
    return (problem.where.line, problem.where.column) if problem.where else (0, 0)


def _most_like(name: str, known: tuple[str, ...]) -> str:
    """The known name that is most like a name, or that shares a word with it."""
    words = set(name.lower().split())
    return closest(name, known) or next((one for one in known if words.intersection(one.lower().split())), "")


def _shown(text: str) -> str:
    return text if text.startswith(('"', "\u201c")) else f'"{text}"'


def indexed(phrases: Mapping[str, str] | Iterable[str]) -> Index:
    """Phrases by their first word, the longest first, each with what it stands for (itself where nothing is said)."""
    pairs = phrases.items() if isinstance(phrases, Mapping) else ((phrase, phrase) for phrase in phrases)
    found: dict[str, list[tuple[tuple[str, ...], str]]] = {}
    for phrase, meaning in pairs:
        words = tuple(phrase.split())
        found.setdefault(words[0], []).append((words, meaning))
    return {first: tuple(sorted(entries, key=lambda entry: -len(entry[0]))) for first, entries in found.items()}


@dataclass(slots=True)
class Cursor:
    """A place in the tokens of one sentence: real state with a life of that sentence."""

    tokens: tuple[Token, ...]
    names: Names
    findings: Findings
    example: str = ""  # of the sentence, for hints
    at: int = 0
    failed: bool = False
    slips: int = 0
    asks: bool = field(init=False)  # is the end of these tokens where it is asked what may follow?
    guess: int = -1  # the token at which a name was guessed: more said about that name would be about the guess

    def __post_init__(self) -> None:
        self.asks = self.findings.ends_with is not None and self.tokens[-1] is self.findings.ends_with

    # --- looking ---

    def peek(self, offset: int = 0) -> Token:
        """The token `offset` ahead, or one that ends the sentence."""
        at = self.at + offset
        if self.failed or at >= len(self.tokens):
            last = self.tokens[-1]
            return Token(END, "", "", last.line, last.end, last.end + 1)
        return self.tokens[at]

    def done(self) -> bool:
        """True at the end of the sentence."""
        return self.failed or self.at >= len(self.tokens)

    def sees(self, phrase: str, offset: int = 0) -> bool:
        """True where the words of the phrase come next."""
        if self.asks:
            self._ask(phrase, offset=offset)
        start = self.at + offset
        if self.failed or start >= len(self.tokens) or not phrase.startswith(self.tokens[start].lower):
            return False  # decided without taking the phrase apart: this is asked some hundred times a text
        words = phrase.split(" ")
        return [token.lower for token in self.tokens[start : start + len(words)]] == words

    def sees_name(self, offset: int = 0) -> int:
        """How many tokens the name that comes next takes, 0 where none does."""
        at = self.at + offset
        if self.failed or at >= len(self.tokens):
            return 0
        return self.names.match(self.tokens, at)[1]

    def more(self) -> bool:
        """True before the end; at an end where it is asked what may follow, true once, so that all is looked for."""
        if self.asks and not self.failed and self.at == len(self.tokens):
            self.at += 1
            return True
        return not self.done()

    # --- asking ---

    def _ask(self, phrase: str, what: str = "", *, offset: int = 0, is_name: bool = False) -> None:
        """Remember a phrase of which the last tokens of the text are the beginning."""
        written = self.tokens[self.at + offset :]
        if self.failed or len(written) > _LONGEST or (is_name and not phrase):
            return
        words = phrase.split()
        if len(written) < len(words) and all(
            token.lower == word.lower() for token, word in zip(written, words, strict=False)
        ):
            rest = " ".join(words[len(written) :])
            self.findings.asked.append(Asked(phrase=phrase, rest=rest, what=what, is_name=is_name))

    def ask_names(self, what: str, *, offset: int = 0) -> None:
        """Remember every name that may come at the end where it is asked what may follow."""
        for name in self.names.all if self.asks else ():
            self._ask(name, what, offset=offset, is_name=True)

    # --- taking ---

    def takes(self, *phrases: str) -> bool:
        """Take the first of the phrases that comes next; False where none does."""
        for phrase in phrases:
            if self.sees(phrase):
                self.at += phrase.count(" ") + 1
                return True
        return False

    def one_of(self, index: Index, what: str = "") -> str:
        """Take the longest phrase of an index that comes next, and give what it stands for; "" where none does."""
        if self.asks:
            for entries in index.values():
                for words, _ in entries:
                    self._ask(" ".join(words), what)
        for words, meaning in index.get(self.peek().lower, ()):
            if tuple(token.lower for token in self.tokens[self.at : self.at + len(words)]) == words:
                self.at += len(words)
                return meaning
        return ""

    def guessed(self, index: Index, what: str) -> str:
        """Take a phrase of an index, or a slip of one and tell that; "" where neither comes next."""
        meaning = self.one_of(index, what)
        if meaning or self.peek().kind != WORD:
            return meaning
        entries = tuple(entry for found in index.values() for entry in found)
        for length in range(4, 0, -1):
            near = self._near(entries, length)
            if near is not None:
                self.slip(" ".join(near[0]), what, length)
                self.at += length
                return near[1]
        return ""

    def _near(self, entries: tuple[Entry, ...], length: int) -> Entry | None:
        """The phrase the next `length` words are a slip of."""
        tokens = self.tokens[self.at : self.at + length]
        if self.failed or len(tokens) < length or any(token.kind != WORD for token in tokens):
            return None
        words = tuple(token.lower for token in tokens)
        return next((entry for entry in entries if slip_of(words, entry[0])), None)

    def must(self, phrase: str, hint: str = "") -> bool:
        """Take a phrase that has to come next; a slip of it is told and taken, anything else fails."""
        if self.takes(phrase):
            return True
        token = self.peek()
        if token.kind == WORD and " " not in phrase and closest(token.lower, (phrase,)):
            self.slip(phrase, "word", 1)
            self.at += 1
            return True
        self.unexpected(f'"{phrase}"', hint)
        return False

    def slip(self, meant: str, what: str, length: int) -> None:
        """Tell that the next words are a slip of others."""
        tokens = self.tokens[self.at : self.at + length]
        self.slips += 1
        written = " ".join(token.text for token in tokens)
        span = Span(line=tokens[0].line, column=tokens[0].column, end_line=tokens[-1].line, end_column=tokens[-1].end)
        self.findings.add("unknown-word", span, f'There is no {what} "{written}".', f'Did you mean "{meant}"?')

    # --- numbers ---

    def number(self) -> float | None:
        """Take a number in digits or words; None where none comes next."""
        token = self.peek()
        if token.kind == NUMBER:
            self.at += 1
            return float(token.text.replace("\u2212", "-")) + 0.0
        if self._spells_number(0):
            self.at += 1
            return float(NUMBERS[token.lower])
        return None

    def sees_number(self, offset: int = 0) -> bool:
        """True where a number comes next."""
        return self.peek(offset).kind == NUMBER or self._spells_number(offset)

    def _spells_number(self, offset: int) -> bool:
        """True for "two", not for a place that was called "Two" and is named here."""
        token, at = self.peek(offset), self.at + offset
        if token.kind != WORD or token.lower not in NUMBERS:
            return False
        return not (token.text[0].isupper() and 0 < at < len(self.tokens) and self.names.match(self.tokens, at)[1])

    def count(self, what: str, *, least: int = 1, most: int = 100) -> int:
        """Take a whole number that has to come next; one outside the bounds is told. Fails where no number comes."""
        token = self.peek()
        value = self.number()
        if value is None:
            self.unexpected(f"a number of {what}")
            return least
        if not least <= value <= most or value != int(value):
            self.findings.add(
                "impossible-count",
                token.span,
                f"{token.text} {what} cannot be.",
                f"Write a whole number from {least} to {most}.",
            )
            self.slips += 1
            return least
        return int(value)

    # --- names and quoted words ---

    def name(self, what: str = "a name") -> str:
        """Take a name that has to come next; one nobody declared is told once and taken. Fails where none comes."""
        if self.failed:
            return ""
        self.ask_names(what)
        if self.at < len(self.tokens):
            name, length = self.names.match(self.tokens, self.at)
            if length and not self._goes_on(length):
                self.at += length
                self.findings.used.add(name)
                return name
            if length and self._runs_together(name, length):
                return name
        return self._undeclared(what)

    def _runs_together(self, name: str, length: int) -> bool:
        """Take a known name that stands before another one with nothing between them, and tell that."""
        other, more = self.names.match(self.tokens, self.at + length)
        if not more or self.peek(length).kind != WORD:
            return False
        self.at += length
        self.slips += 1
        told = f'Nothing stands between "{name}" and "{other}".'
        self.findings.add("unclear-sentence", self.peek().span, told, 'Write "and" or a comma between two names.')
        return True

    def _goes_on(self, length: int) -> bool:
        """True where a known name is the beginning of a longer one that is not known."""
        token = self.peek(length)
        if token.kind == NUMBER:
            return self._ends_name(length) or (self.peek(length + 1).lower == "," and not self.sees_number(length + 2))
        return token.kind == WORD and token.text[0].isupper() and token.lower not in NEVER_NAMES

    def _undeclared(self, what: str) -> str:
        run = self._name_run()
        near = self._meant(run) if run else ""
        token = self.peek()
        if not run or (not near and (token.text[0].islower() or token.lower in NEVER_NAMES)):
            self.unexpected(what)
            return ""
        self.guess = self.at
        self.at += len(run)
        self._tell_name(name_of(run), near, run)
        return near or name_of(run)

    def _meant(self, run: tuple[Token, ...]) -> str:
        """The known name that is most like a run of words, or that shares a word with it."""
        return _most_like(name_of(run), self.names.all)

    def _tell_name(self, name: str, near: str, run: tuple[Token, ...]) -> None:
        self.slips += 1
        span = Span(line=run[0].line, column=run[0].column, end_line=run[-1].line, end_column=run[-1].end)
        known = ", ".join(self.names.all[:8])
        hint = f'Did you mean "{near}"?' if near else f'Say where it stands: "{name} at 0, 8 holds one."'
        hint += f" Known are {known}." if known and not near else ""
        problem = mend("unknown-name", span, f'There is no place or thing called "{name}".', hint)
        self.findings.uses[name] += 1
        self.findings.undeclared.setdefault(name, (problem, near))

    def _name_run(self) -> tuple[Token, ...]:
        """The words that look like a name: capital ones with their numbers, or one small one that is no known word."""
        first = self.peek()
        if first.kind != WORD or first.lower in (JOINERS if first.text[0].isupper() else VOCABULARY | JOINERS):
            return ()
        run = [first]
        while first.text[0].isupper() and (
            self._goes_on(len(run)) or (self.peek(len(run)).kind == NUMBER and self._ends_name(len(run)))
        ):
            run.append(self.peek(len(run)))
        return tuple(run)

    def _ends_name(self, offset: int) -> bool:
        """True where a number closes a name: nothing measures or counts with it."""
        following = self.peek(offset + 1)
        return self.peek(offset).text.isdigit() and following.lower not in _UNITS and following.lower not in (",", "by")

    def quoted(self, what: str) -> str:
        """Take words in quotation marks that have to come next."""
        token = self.peek()
        if token.kind != TEXT or not token.text[1:-1].strip():
            self.unexpected(f"{what} in quotation marks")
            return ""
        self.at += 1
        return token.text[1:-1].strip()

    # --- failing and spans ---

    def unexpected(self, wanted: str, hint: str = "") -> None:
        """Fail because something else was wanted here."""
        token = self.peek()
        before = self.tokens[self.at - 1].text if 0 < self.at <= len(self.tokens) else ""
        place = f' after "{before}"' if before else ""
        if token.kind == END:
            message = f"The sentence stops{place} where {wanted} should come."
        else:
            message = f"{_shown(token.text)} stands{place} where {wanted} should come."
        self.fail("unclear-sentence", message, hint or self._like_this())

    def _like_this(self) -> str:
        return f"Write it like this: {self.example}" if self.example else ""

    def fail(self, code: str, message: str, hint: str, where: Span | None = None) -> None:
        """Tell a failure at the next token (unless one was told) and go to the end of the sentence."""
        if not self.failed:
            if self.slips == 0:
                self.findings.add(code, where or self._here(), message, hint)
            self.failed = True

    def note(self, code: str, start: int, message: str, hint: str) -> None:
        """Tell something wrong with the tokens from `start` to here, and go on."""
        if not self.failed and not start <= self.guess < self.at:
            self.slips += 1
            self.findings.add(code, self.span_from(start), message, hint)

    def finish(self) -> None:
        """Fail where words are left over."""
        if self.done():
            return
        if self.peek().lower == "," and self.at + 1 < len(self.tokens):
            self.at += 1  # the comma is not what is wrong
        token = self.peek()
        near = closest(token.lower, VOCABULARY) if token.kind == WORD and token.lower not in VOCABULARY else ""
        last = self.tokens[self.at - 1] if self.at else token
        if self.at and token.line > last.line and token.text[0].isupper():
            span = Span(line=last.line, column=last.end, end_line=last.line, end_column=last.end + 1)
            self.fail(
                "no-full-stop",
                f'A full stop is missing after "{last.text}".',
                "End the sentence with a full stop.",
                span,
            )
        elif near:
            self.fail("unknown-word", f'"{token.text}" is not understood here.', f'Did you mean "{near}"?')
        else:
            self.fail(
                "unclear-sentence",
                f'"{token.text}" is not understood here.',
                self._like_this() or "Leave it out, or end the sentence before it.",
            )

    def _here(self) -> Span:
        token = self.peek()
        if token.kind == END and token.column > 1:
            last = self.tokens[-1]
            return Span(line=last.line, column=last.column, end_line=last.line, end_column=last.end)
        return token.span

    def span_from(self, start: int) -> Span:
        """From token `start` to the last one taken."""
        first = self.tokens[min(start, len(self.tokens) - 1)]
        last = self.tokens[max(start, min(self.at, len(self.tokens)) - 1)] if start < len(self.tokens) else first
        return Span(line=first.line, column=first.column, end_line=last.line, end_column=last.end)
