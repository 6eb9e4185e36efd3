# ruff: noqa: D102 - each method is named after what a sentence says
"""Works out the answers of one-step stories from their texts, by trying.

Nothing of the kit is used. Each sentence becomes a fact about who has how many; the number that
makes all of them true is found by trying every one. A sentence of an unknown form is an
AssertionError.
"""

from __future__ import annotations

import re

MOST = 300
N, WHO, WORD = r"(\d+)", r"([A-Z][a-z]+)", r"([a-z]+)"


class Story:
    """One story, read sentence by sentence.

    Attributes:
        situation: what kind of story it is.
        unknown: what is asked.
        wording: "more" or "fewer" of a comparison that says it, else "".
        numbers: those that it tells, in their order.
        answer: what is asked for; of two unknown parts the whole.
    """

    def __init__(self, text):
        self.numbers = [int(number) for number in re.findall(r"\d+", text)]
        *facts, self.question = re.split(r"(?<=[.?]) ", text)
        self.has, self.kinds = {}, {}
        self.change = self.way = self.end = self.gap = self.relation = None
        self.wording = self.first = ""
        self.apart = False
        for fact in facts:
            self.read(fact)
        self.ask()

    def read(self, fact):
        for pattern, act in SENTENCES:
            found = re.fullmatch(pattern, fact)
            if found:
                act(self, *(int(g) if g.isdigit() else g for g in found.groups()))
                return
        raise AssertionError(f"What does {fact!r} mean?")

    def has_some(self, who, number, _goods):
        if who not in self.has:
            self.has[who] = number
            self.first = self.first or who

    def has_kind(self, _who, number, kind, _goods):
        self.kinds[kind] = number

    def gets(self, _who, _verb, change):
        self.change, self.way = change, 1

    def loses(self, _who, _verb, change):
        self.change, self.way = change, -1

    def now(self, number):
        self.end = number

    def now_has(self, _who, number):
        self.end = number

    def are(self, number, kind):
        self.kinds[kind] = number

    def others(self, kind):
        self.kinds[kind] = "some"

    def compares(self, one, number, wording, other):
        self.relation = (one, number if wording == "more" else -number, other)
        self.wording = wording

    def puts(self, _who, one, other):
        assert one != other
        self.apart = True

    def ask(self):
        asks = self.question
        whole = next(iter(self.has.values()), None)
        if self.apart:
            assert asks == "How many may there be in each place?"
            self.situation, self.unknown, self.answer = "put together", "both", whole
        elif self.way is not None:
            self.situation = "add to" if self.way > 0 else "take from"
            self.ask_of_change(asks, whole)
        elif self.kinds:
            self.situation = "put together"
            if "some" in self.kinds.values():
                kind = re.fullmatch(rf"How many {WORD} are {WORD}\?", asks)[2]
                assert self.kinds[kind] == "some"
                known = sum(number for number in self.kinds.values() if number != "some")
                self.unknown, self.answer = "addend", found(lambda x: x + known == whole)
            else:
                assert re.fullmatch(rf"How many {WORD} does {WHO} have\?", asks)
                self.unknown, self.answer = "total", sum(self.kinds.values())
        else:
            self.situation = "compare"
            self.ask_of_two(asks)

    def ask_of_change(self, asks, start):
        if asks == "How many were there at first?":
            self.unknown = "start"
            assert start == "some"
            self.answer = found(lambda x: x + self.way * self.change == self.end)
        elif re.fullmatch(rf"How many did {WHO} [a-z ]+\?", asks):
            self.unknown = "change"
            assert self.change == "some"
            self.answer = found(lambda x: start + self.way * x == self.end)
        else:
            ends = (rf"How many {WORD} does {WHO} have now\?", rf"How many {WORD} are left\?")
            assert re.fullmatch(ends[self.way < 0], asks), asks
            self.unknown, self.answer = "result", start + self.way * self.change

    def ask_of_two(self, asks):
        difference = re.fullmatch(rf"How many (more|fewer) {WORD} does {WHO} have\?", asks)
        if difference:
            self.wording, who = difference[1], difference[3]
            other = next(each for each in self.has if each != who)
            sign = 1 if self.wording == "more" else -1
            self.unknown = "difference"
            self.answer = found(lambda x: self.has[who] - self.has[other] == sign * x)
            return
        who = re.fullmatch(rf"How many {WORD} does {WHO} have\?", asks)[2]
        one, more, other = self.relation
        assert who in (one, other)
        assert who not in self.has

        def fits(x):
            has = {**self.has, who: x}
            return has[one] - has[other] == more

        self.answer = found(fits)
        self.unknown = "bigger" if self.answer > next(iter(self.has.values())) else "smaller"


def found(fits):
    """Try every number, and return the only one that fits."""
    [one] = [number for number in range(MOST) if fits(number)]
    return one


SENTENCES = [
    (rf"{WHO} has {N} (more|fewer) than {WHO}\.", Story.compares),
    (rf"{WHO} has (\d+|some) {WORD}\.", Story.has_some),
    (rf"{WHO} has {N} {WORD} {WORD}\.", Story.has_kind),
    (rf"{WHO} has {N} {WORD} {WORD} too\.", Story.has_kind),
    (rf"Now {WHO} has {N}\.", Story.now_has),
    (rf"Now {N} (?:is|are) left\.", Story.now),
    (rf"{WHO} puts some ([a-z ]+), some ([a-z ]+)\.", Story.puts),
    (rf"{N} (?:is|are) {WORD}\.", Story.are),
    (rf"The others are {WORD}\.", Story.others),
    (rf"{WHO} ([a-z ]+?) (\d+|some) more\.", Story.gets),
    (rf"{WHO} ([a-z ]+?) (\d+|some)\.", Story.loses),
]
