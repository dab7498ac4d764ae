"""What an exercise lacks once it is read, and counts that cannot stand; must not know how it was written."""

from conewright.model.exercise import Holds, Start, Team, Trigger
from conewright.model.problem import Span
from conewright.notation.cursor import Findings
from conewright.notation.draft import Draft
from conewright.notation.header import MOST_PLAYERS
from conewright.notation.shapes import HEADERS


def tell_lacking(draft: Draft, findings: Findings) -> None:
    """Tell the lines no exercise can do without, at the first line."""
    where = Span(line=1, column=1, end_line=1, end_column=2)
    lacking = (
        ("exercise", "no-name", "The exercise has no name."),
        ("kind", "no-kind", "The exercise does not say of which kind it is."),
        ("for", "no-numbers", "The exercise does not say for how many players it is."),
    )
    for key, code, message in lacking:
        if key not in draft.seen and not findings.header_lost:
            findings.add(code, where, message, f"Write a line like this: {HEADERS[key]}")
    if not draft.steps and draft.play is None and not (findings.problems or findings.undeclared):
        findings.add(
            "nothing-happens",
            where,
            "Nothing happens in this exercise.",
            'Write steps behind "Each round:", or "Open play in 20 by 20 m: ...".',
        )


def tell_impossible(draft: Draft, findings: Findings) -> None:
    """Tell counts that cannot stand and steps that are not there."""
    most = draft.numbers.most if draft.numbers and draft.numbers_sure else MOST_PLAYERS
    _tell_start(draft, draft.start, most, findings)
    _tell_teams(draft.play.teams if draft.play else (), most, findings)
    for form in draft.forms:
        _tell_start(draft, form.start, form.most, findings)
        _tell_teams(form.teams, form.most, findings)
    last = max((step.number for step in draft.steps), default=0)
    for trigger in _triggers(draft):
        if trigger.step is not None and trigger.step > last:
            told = f"There is no step {trigger.step}."
            findings.add("no-such-step", trigger.span, told, "Name a step by its number.")


def _tell_start(draft: Draft, start: Start | None, most: int, findings: Findings) -> None:
    if start is None:
        return
    one = {place.name for place in draft.places if place.holds is Holds.ONE}
    crowded = next((name for name, count in start.counts if count > 1 and name in one), None)
    if crowded:
        told = f"{crowded} holds one, and more start there."
        findings.add("impossible-count", start.span, told, "Let one start there, or make it a line.")
    elif sum(count for _, count in start.counts) > most:
        told = f"More start than the {most} this is for."
        findings.add("impossible-count", start.span, told, "Let fewer start, or say that it is for more.")


def _tell_teams(teams: tuple[Team, ...], most: int, findings: Findings) -> None:
    if sum(team.count or 0 for team in teams) > most:
        told = f"The teams hold more than the {most} this is for."
        findings.add("impossible-count", teams[0].span, told, "Make the teams smaller, or say that it is for more.")


def _triggers(draft: Draft) -> tuple[Trigger, ...]:
    of_acts = tuple(act.start for act in draft.acts() if act.start is not None)
    return of_acts if draft.next_trigger is None else (*of_acts, draft.next_trigger)
