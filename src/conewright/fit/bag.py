"""Whether the bag holds what is needed, and what stands in for what it lacks; must not know ground or time.

Two cones stand in for a mini goal, a mini goal or two cones for a full one, a few bottles for cones. Nothing stands in
for a ball.
"""

from dataclasses import dataclass

from conewright.fit.needs import Needs
from conewright.fit.wording import counted
from conewright.model.session import Kit, Tonight

MOST_BOTTLES = 8  # bottles, shirts and bags that a group can be expected to have for missing cones
CONES_FOR_A_GOAL = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """What comes out of the bag, what is still missing, and the stand-ins in words."""

    kit: Kit
    balls_short: int = 0
    cones_short: int = 0
    stand_ins: tuple[str, ...] = ()


def take(needs: Needs, asked: Tonight) -> Taken:
    """Take what is needed from the bag. The bibs are those needed, as the colouring left them."""
    goals = min(needs.goals, asked.goals)
    mini_for_goals = min(needs.goals - goals, max(0, asked.mini_goals - needs.mini_goals))
    mini_goals = min(needs.mini_goals, asked.mini_goals)
    cone_goals = needs.mini_goals - mini_goals + needs.goals - goals - mini_for_goals
    cones = needs.cones + CONES_FOR_A_GOAL * cone_goals
    bottles = min(max(0, cones - asked.cones), MOST_BOTTLES)
    balls = max(needs.least_balls, min(needs.balls, asked.balls))
    stand_ins = (
        _said(mini_for_goals, "full goal", "a mini goal"),
        _said(cone_goals, "goal", "two cones"),
        _said(bottles, "cone", "a bottle or a shirt"),
        f"{counted(balls, 'ball')} for {needs.balls}: some share, two to a ball" if balls < needs.balls else "",
    )
    return Taken(
        kit=Kit(
            balls=min(balls, asked.balls),
            cones=min(cones, asked.cones),
            mini_goals=mini_goals + mini_for_goals,
            goals=goals,
            bibs=needs.bibs,
        ),
        balls_short=max(0, needs.least_balls - asked.balls),
        cones_short=max(0, cones - bottles - asked.cones),
        stand_ins=tuple(words for words in stand_ins if words),
    )


def _said(count: int, missing: str, instead: str) -> str:
    if not count:
        return ""
    return f"{counted(count, missing)} short: {instead} {'each ' if count > 1 else ''}instead"
