"""Exercises made up at random that hold every construct of the notation, for properties."""

from collections.abc import Callable
from dataclasses import replace

from hypothesis import strategies as st

from conewright.model.exercise import (
    KINDS,
    Act,
    Ages,
    Bib,
    Contest,
    Ending,
    Event,
    Exercise,
    Fault,
    Foot,
    Form,
    Holds,
    Manner,
    Move,
    NextRound,
    Numbers,
    OpenPlay,
    Outcome,
    Pace,
    Place,
    PlayKind,
    Rotation,
    RotationKind,
    Script,
    SideOrder,
    Sides,
    Space,
    Start,
    Step,
    Supply,
    SupplyKind,
    Target,
    TargetKind,
    Team,
    Thing,
    ThingKind,
    Trigger,
    Verb,
    Via,
    Weight,
)
from conewright.model.geometry import Point
from conewright.model.stepped import apply
from conewright.model.variant import (
    AfterStep,
    ChangeManner,
    InsteadOf,
    LeaveOut,
    OneMore,
    OtherLength,
    OtherTeams,
    Patch,
    Resize,
    Shift,
    Variant,
    VariantKind,
)
from conewright.notation.boxes import usual_balls
from conewright.notation.words import DEFAULT_WIDTH_M, JOBS

NAMES = (
    "Base",
    "Stem",
    "Left",
    "Right",
    "Gate House",
    "Lane 2",
    "One",
    "Two",
    "Goal",
    "Out",
    "Home",
    "Far Goal",
    "Coach",
)
Drawn = Callable[..., object]

metres = st.integers(1, 1200).map(lambda quarter: quarter / 4)
coordinates = st.integers(-1200, 1200).map(lambda quarter: quarter / 4)
points = st.builds(Point, coordinates, coordinates)
times = st.integers(1, 200).map(lambda half: half / 2)
words = st.text("abcdefgh éß", min_size=1, max_size=12).map(lambda text: " ".join(text.split())).filter(bool)
remarks = st.text(st.characters(codec="utf-8", exclude_characters="\r\n"), min_size=1, max_size=20).map(
    lambda text: " ".join(text.split())
)
spoken = remarks.filter(lambda text: text.removesuffix(".").strip() == text.removesuffix(".") != "")


def few(strategy: st.SearchStrategy, most: int = 3) -> st.SearchStrategy:
    return st.lists(strategy, max_size=most).map(tuple)


def some(strategy: st.SearchStrategy, most: int = 3) -> st.SearchStrategy:
    return st.lists(strategy, min_size=1, max_size=most, unique=True).map(tuple)


supplies = st.one_of(
    st.just(Supply()),
    st.just(Supply(kind=SupplyKind.BALL, count=1)),
    st.just(Supply(kind=SupplyKind.EACH)),
    st.integers(1, 20).map(lambda count: Supply(kind=SupplyKind.STOCK, count=count)),
)


@st.composite
def places(draw: st.DrawFn, name: str, names: tuple[str, ...]) -> Place:
    holds, adult, keeper = draw(
        st.sampled_from(
            [
                (Holds.LINE, False, False),
                (Holds.ONE, False, False),
                (Holds.ONE, True, False),
                (Holds.ONE, False, True),
                (Holds.LINE, False, True),
                (Holds.ONE, True, True),
            ]
        )
    )
    return Place(
        name=name,
        at=draw(points),
        holds=holds,
        adult=adult,
        keeper=keeper,
        supply=draw(supplies),
        bib=draw(st.none() | st.sampled_from(Bib)),
        facing=draw(st.none() | st.sampled_from(names)),
        waits=draw(st.sampled_from(["behind", "left", "right"])),
        passive=draw(st.booleans()),
    )


@st.composite
def things(draw: st.DrawFn, name: str) -> Thing:
    kind = draw(st.sampled_from(ThingKind))
    width = DEFAULT_WIDTH_M[kind] if kind is ThingKind.CONE else draw(st.just(DEFAULT_WIDTH_M[kind]) | metres)
    return Thing(name=name, kind=kind, at=draw(points), width_m=width, upright=draw(st.booleans()))


@st.composite
def starts(draw: st.DrawFn, lines: tuple[str, ...], ones: tuple[str, ...]) -> Start | None:
    if draw(st.booleans()):
        return Start(even=True)
    counts = draw(st.lists(st.sampled_from(lines), max_size=3, unique=True)) if lines else []
    counted = [(name, draw(st.integers(1, 15))) for name in counts] + [(name, 1) for name in ones[:1]]
    rest = draw(few(st.sampled_from(lines), 3).map(lambda names: tuple(dict.fromkeys(names)))) if lines else ()
    return Start(counts=tuple(counted), rest=rest) if counted or rest else None


@st.composite
def triggers(draw: st.DrawFn, roles: tuple[str, ...], names: tuple[str, ...], steps: int) -> Trigger:
    event = draw(st.sampled_from(Event))
    role = draw(st.sampled_from(roles))
    name = draw(st.sampled_from(names))
    nobody = (Event.STEP, Event.BACK, Event.BOX_CLEAR, Event.TOGETHER, Event.CALL)
    named = event in (Event.PASSED, Event.BACK) or (event is Event.ARRIVED and draw(st.booleans()))
    return Trigger(
        event=event,
        who="" if event in nobody else role,
        step=draw(st.integers(1, steps)) if event is Event.STEP else None,
        name=name if named else "",
        delay_s=draw(st.just(0.0) | times),
    )


def thing_or_place(sides: Sides, things: tuple[Thing, ...]) -> Thing | None:
    """One of the things the sides are, of a kind that all of them can stand in for; None where they are places."""
    meant = [thing for thing in things if thing.name in sides.places]
    plain = [thing for kind in (ThingKind.CONE, ThingKind.WALL) for thing in meant if thing.kind is kind]
    return (plain or meant or [None])[0]


@st.composite
def turns(draw: st.DrawFn, places: tuple[str, ...], things: tuple[str, ...]) -> Sides:
    over = draw(st.sampled_from([names for names in (places, things) if len(names) > 1]))
    meant = draw(st.lists(st.sampled_from(over), min_size=2, max_size=3, unique=True))
    order = draw(st.sampled_from(SideOrder))
    chooser = draw(st.sampled_from(places)) if order is SideOrder.CHOICE else ""
    chooser = draw(st.sampled_from(("", *places))) if order is SideOrder.CALL else chooser
    other = draw(st.sampled_from(("", "Rest"))) if len(meant) == 2 else ""
    return Sides(word="Side", places=tuple(meant), order=order, chooser=chooser, other=other)


class Ground:
    """The names an exercise has declared, for what refers to them."""

    def __init__(self, places: tuple[Place, ...], things: tuple[Thing, ...], sides: Sides | None) -> None:
        words = {word: thing_or_place(sides, things) for word in (sides.word, sides.other) if word} if sides else {}
        things = things + tuple(replace(thing, name=word) for word, thing in words.items() if thing)
        of_kind = {kind: tuple(thing.name for thing in things if thing.kind is kind) for kind in ThingKind}
        self.places = tuple(place.name for place in places)
        self.roles = (*self.places, *(word for word, thing in words.items() if thing is None))
        self.things = tuple(thing.name for thing in things)
        self.goals = of_kind[ThingKind.GOAL] + of_kind[ThingKind.MINI_GOAL] + of_kind[ThingKind.GATE]
        self.walls = of_kind[ThingKind.WALL]
        self.standing = tuple(thing.at for thing in things) + tuple(place.at for place in places)


@st.composite
def kick_targets(draw: st.DrawFn, verb: Verb, ground: Ground) -> Target:
    role = draw(st.sampled_from(ground.roles))
    options = [
        Target(kind=TargetKind.ROLE, name=role),
        Target(kind=TargetKind.AHEAD, name=role),
        Target(kind=TargetKind.AHEAD, name=role, at=draw(points | st.sampled_from(ground.standing))),
        Target(kind=TargetKind.POINT, at=draw(points)),
    ]
    options += [Target(kind=TargetKind.THING, name=name) for name in ground.goals]
    options += [Target(kind=TargetKind.THING, name=name) for name in ground.walls if verb is Verb.PASS]
    return draw(st.sampled_from(options))


@st.composite
def move_targets(draw: st.DrawFn, ground: Ground) -> Target:
    end = draw(st.booleans())
    options = [
        Target(kind=TargetKind.PLACE, name=draw(st.sampled_from(ground.roles)), end=end),
        Target(kind=TargetKind.POINT, at=draw(points)),
        Target(kind=TargetKind.OWN),
        Target(kind=TargetKind.TOWARDS, name=draw(st.sampled_from(ground.roles)), distance_m=draw(metres)),
        Target(kind=TargetKind.TOWARDS, at=draw(points | st.sampled_from(ground.standing)), distance_m=draw(metres)),
    ]
    options += [Target(kind=TargetKind.THING, name=name, end=end) for name in ground.things]
    return draw(st.sampled_from(options))


@st.composite
def manners(draw: st.DrawFn, verb: Verb) -> Manner:
    on_ball = verb in (Verb.PASS, Verb.SET_BACK, Verb.CROSS, Verb.THROW, Verb.SHOOT, Verb.DRIBBLE, Verb.TURN)
    return Manner(
        touches=draw(st.none() | st.integers(1, 9)) if on_ball else None,
        weight=draw(st.sampled_from(Weight)) if on_ball else Weight.USUAL,
        foot=draw(st.none() | st.sampled_from(Foot)) if on_ball else None,
        pace=draw(st.none() | st.sampled_from(Pace)),
        outside=draw(st.booleans()),
        lofted=on_ball and draw(st.booleans()),
    )


@st.composite
def acts(draw: st.DrawFn, ground: Ground, steps: int) -> Act:
    verb = draw(st.sampled_from([verb for verb in Verb if verb is not Verb.SHOOT or ground.goals]))
    target = None
    if verb in (Verb.PASS, Verb.SET_BACK, Verb.CROSS, Verb.THROW):
        target = draw(kick_targets(verb, ground))
    elif verb in (Verb.RUN, Verb.DRIBBLE):
        target = draw(move_targets(ground))
    elif verb is Verb.SHOOT:
        target = Target(kind=TargetKind.THING, name=draw(st.sampled_from(ground.goals)))
    elif verb is Verb.CHECK and draw(st.booleans()):
        target = Target(kind=TargetKind.TOWARDS, distance_m=draw(metres))
    round_it = st.builds(Via, how=st.just("round"), name=st.sampled_from(ground.roles + ground.things))
    ways = round_it | st.builds(Via, how=st.just("through"), name=st.sampled_from(ground.goals or ("Base",)))
    travels = verb in (Verb.PASS, Verb.CROSS, Verb.THROW, Verb.RUN, Verb.DRIBBLE)
    return Act(
        who=draw(st.sampled_from(ground.roles)),
        verb=verb,
        target=target,
        manner=draw(manners(verb)),
        via=draw(few(ways if ground.goals else round_it, 2)) if travels else (),
        start=draw(st.none() | triggers(ground.roles, ground.places + ground.things, steps)),
        seconds=draw(times) if verb is Verb.WAIT else draw(st.none() | times) if verb is Verb.TASK else None,
        what=draw(words) if verb in (Verb.CALL, Verb.TASK) else "",
    )


def moves(ground: Ground, movers: tuple[str, ...] = ()) -> st.SearchStrategy:
    place = st.sampled_from(ground.roles)
    return st.builds(Move, who=st.sampled_from(ground.roles + movers), to=place, brings_ball_to=st.none() | place)


@st.composite
def contests(draw: st.DrawFn, ground: Ground) -> Contest:
    endings = draw(st.permutations(list(Ending)))
    cut = draw(st.integers(0, 4))
    splits = [part for part in (tuple(endings[:cut]), tuple(endings[cut:])) if part]
    roles = st.sampled_from(ground.roles)
    movers = ("winner", "loser", "scorer", "other")
    goals = few(st.sampled_from(ground.goals), 2) if ground.goals else st.just(())
    return Contest(
        width_m=draw(metres),
        depth_m=draw(metres),
        middle=draw(points),
        attackers=draw(some(roles)),
        defenders=draw(some(roles, 2)),
        on=draw(goals),
        counter=draw(goals),
        limit_s=draw(st.none() | times),
        outcomes=tuple(
            Outcome(
                endings=part,
                moves=draw(few(moves(ground, movers))),
                ball_to=draw(st.none() | roles),
            )
            for part in splits
        ),
    )


@st.composite
def rotations(draw: st.DrawFn, ground: Ground) -> Rotation:
    kind = draw(st.sampled_from(RotationKind))
    timed = draw(st.booleans())
    return Rotation(
        kind=kind,
        moves=draw(few(moves(ground))) if kind is RotationKind.MOVES else (),
        every_rounds=1 if timed else draw(st.integers(1, 20)),
        every_s=draw(times | st.just(120.0) | st.just(60.0)) if timed else None,
    )


@st.composite
def scripts(draw: st.DrawFn, ground: Ground, sides: Sides | None) -> Script:
    count = draw(st.integers(1, 3))
    contest_at = draw(st.integers(0, 5))
    steps = []
    for number in range(1, count + 1):
        contest = draw(contests(ground)) if number == contest_at else None
        own = draw(st.lists(acts(ground, count), min_size=0 if contest else 1, max_size=3))
        steps.append(Step(number=number, acts=tuple(own), contest=contest))
    trigger = draw(st.none() | triggers(ground.roles, ground.places, count))
    in_flight = draw(st.none() | st.integers(1, 9))
    return Script(
        steps=tuple(steps),
        sides=sides,
        next_round=NextRound(trigger=trigger, in_flight=in_flight) if trigger or in_flight else None,
        rotations=draw(few(rotations(ground), 2)),
        mirrored_at_half_time=draw(st.booleans()),
    )


@st.composite
def teams(draw: st.DrawFn, name: str) -> Team:
    colours = {bib.value: bib for bib in Bib}
    bib = colours.get(name) or draw(st.none() | st.sampled_from(Bib))
    return Team(name=name, count=draw(st.none() | st.integers(1, 14)), bib=bib, has_ball_each=draw(st.booleans()))


@st.composite
def plays(draw: st.DrawFn, goals: tuple[str, ...]) -> OpenPlay:
    kind = draw(st.sampled_from(PlayKind))
    least = 0 if kind is PlayKind.BALL_EACH else 2
    named = draw(
        st.lists(
            st.sampled_from(["Yellow", "Blue", "Red", "catchers", "others", "neutral"]),
            min_size=least,
            max_size=4,
            unique=True,
        )
    )
    sides = tuple(draw(teams(name)) for name in named)
    if kind is PlayKind.BALL_EACH:
        sides = tuple(Team(name=team.name, count=team.count, bib=team.bib, has_ball_each=True) for team in sides)
    beside = draw(st.integers(0, len(sides) - 2)) if kind is not PlayKind.BALL_EACH else 0
    balls = st.just(usual_balls(kind, sides)) | st.integers(0, 12)
    return OpenPlay(
        width_m=draw(metres),
        depth_m=draw(metres),
        middle=draw(st.just(Point(0.0, 0.0)) | points),
        kind=kind,
        teams=sides,
        together=tuple(team.name for team in sides[1 : 1 + beside]),
        on=draw(few(st.sampled_from(goals), 2)) if goals else (),
        balls=draw(balls),
        odd_one=draw(st.sampled_from(["neutral", "shares", "rests in turn", *named])),
        bout_s=draw(st.none() | times | st.just(180.0)),
        swap=draw(st.just("") | spoken),
        restart=draw(st.just("") | spoken),
        rules=draw(few(spoken, 2)),
    )


@st.composite
def forms(draw: st.DrawFn, lines: tuple[str, ...]) -> Form:
    least, most = draw(st.sampled_from([(5, 60), (60, 60), (31, 60)]))
    names = draw(st.lists(st.sampled_from(["Yellow", "Blue", "neutral", "others"]), max_size=2, unique=True))
    return Form(
        least=least,
        most=most,
        copies=draw(st.integers(1, 8)),
        apart_m=draw(st.none() | metres),
        mirrored=draw(st.booleans()),
        teams=tuple(draw(teams(name)) for name in names),
        start=draw(st.none() | starts(lines, ())),
    )


@st.composite
def exercises(draw: st.DrawFn) -> Exercise:
    """A whole exercise that the reader has nothing against."""
    names = draw(st.permutations(NAMES))
    split = draw(st.integers(2, 6))
    stands = tuple(draw(places(name, tuple(names))) for name in names[:split])
    lies = tuple(draw(things(name)) for name in names[split : split + draw(st.integers(0, 5))])
    known = tuple(place.name for place in stands) + tuple(thing.name for thing in lies)
    stands = tuple(place if place.facing in known else _looking_nowhere(place) for place in stands)
    turning = draw(st.booleans())
    sides = None
    if turning:
        sides = draw(turns(tuple(place.name for place in stands), tuple(thing.name for thing in lies)))
    ground = Ground(stands, lies, sides)
    lines = tuple(place.name for place in stands if place.holds is Holds.LINE)
    ones = tuple(place.name for place in stands if place.holds is Holds.ONE)
    youngest, oldest = sorted((draw(st.integers(4, 21)), draw(st.integers(4, 21))))
    least = draw(st.integers(1, 60))
    script = draw(scripts(ground, sides)) if turning else draw(st.none() | scripts(ground, None))
    exercise = Exercise(
        name=draw(remarks.filter(bool)),
        kind=draw(st.sampled_from(KINDS)),
        numbers=Numbers(least=least, most=60, best=draw(st.none() | st.integers(least, 60))),
        ages=draw(st.just(Ages(youngest=6, oldest=19)) | st.just(Ages(youngest=youngest, oldest=oldest))),
        aims=draw(few(words)),
        good_for=draw(st.lists(st.sampled_from(JOBS), unique=True).map(tuple)),
        space=draw(st.none() | st.builds(Space, width_m=metres, depth_m=metres)),
        places=stands,
        things=lies,
        start=draw(st.none() | starts(lines, ones)),
        script=script,
        open_play=draw(plays(ground.goals)) if script is None else draw(st.none() | plays(ground.goals)),
        forms=draw(few(forms(lines), 2)),
        cues=draw(few(remarks.filter(bool))),
        faults=draw(few(st.builds(Fault, fault=words, remedy=st.just("") | words))),
        notes=draw(few(remarks.filter(bool))),
        score=draw(st.just("") | remarks),
        cautions=draw(few(remarks.filter(bool))),
    )
    return draw(with_variants(exercise, sides)) if draw(st.booleans()) else exercise


@st.composite
def reliefs(draw: st.DrawFn, name: str, ground: Ground) -> Rotation:
    other = draw(st.sampled_from(ground.places))
    swap = (Move(who=name, to=other), Move(who=other, to=name))
    every = draw(rotations(ground))
    return every if draw(st.booleans()) else replace(every, kind=RotationKind.MOVES, moves=swap)


@st.composite
def held_steps(draw: st.DrawFn, number: int, ground: Ground, steps: int) -> Step:
    contest = draw(st.none() | contests(ground))
    own = draw(st.lists(acts(ground, steps), min_size=0 if contest else 1, max_size=2))
    return Step(number=number, acts=tuple(own), contest=contest)


@st.composite
def changes_of_steps(draw: st.DrawFn, below: Exercise, ground: Ground) -> Patch:
    steps = below.script.steps if below.script else ()
    step = draw(st.sampled_from(steps))
    sort = draw(st.sampled_from([LeaveOut, InsteadOf, AfterStep, ChangeManner]))
    if sort is ChangeManner and step.acts:
        act = draw(st.sampled_from(step.acts))
        manner = draw(manners(act.verb).filter(lambda manner: manner != Manner()))
        return ChangeManner(step=step.number, who=act.who, verb=act.verb, manner=manner)
    if sort is InsteadOf:
        return InsteadOf(step=draw(held_steps(step.number, ground, len(steps))))
    if sort is AfterStep:
        held = draw(held_steps(step.number + 1, ground, len(steps) + 1))
        return AfterStep(after=step.number, step=held)
    return LeaveOut(number=step.number)


@st.composite
def patches(draw: st.DrawFn, below: Exercise, sides: Sides | None) -> Patch:
    ground = Ground(below.places, below.things, sides)
    steps = below.script.steps if below.script else ()
    options: list[Drawn] = [
        lambda: Shift(name=draw(st.sampled_from(ground.places + tuple(t.name for t in below.things))), at=draw(points))
    ]
    new = [name for name in ("Shadow", "Extra 2", "Bug") if name not in ground.places]
    if new:
        place = replace(draw(places(new[0], ground.places)), name=new[0])
        options.append(lambda: OneMore(place=place, rotation=draw(st.none() | reliefs(new[0], ground))))
    if steps:
        options.append(lambda: draw(changes_of_steps(below, ground)))
    if below.open_play or any(step.contest for step in steps):
        options.append(lambda: OtherLength(seconds=draw(times)))
        options.append(lambda: Resize(width_m=draw(metres), depth_m=draw(metres)))
    if below.open_play:
        play = below.open_play
        each = play.kind is PlayKind.BALL_EACH
        others = tuple(draw(teams(team.name)) for team in play.teams)
        others = tuple(replace(team, has_ball_each=True) for team in others) if each else others
        options.append(lambda: OtherTeams(teams=others))
    found = draw(st.sampled_from(options))()
    assert isinstance(found, Patch)
    return found


@st.composite
def with_variants(draw: st.DrawFn, exercise: Exercise, sides: Sides | None) -> Exercise:
    """The exercise with some steps up and down, each of whose changes is there to be made."""
    rungs: dict[VariantKind, Exercise] = {}
    found: list[Variant] = []
    for name in draw(st.lists(words, max_size=3, unique=True)):
        kind = draw(st.sampled_from(VariantKind))
        as_before = draw(st.booleans())
        below = rungs.get(kind, exercise) if as_before else exercise
        made: list[Patch] = []
        for _ in range(draw(st.integers(1, 3))):
            made.append(draw(patches(below, sides)))
            below = apply(below, made[-1])
        rungs[kind] = below
        least = draw(st.integers(1, 20))
        best = st.none() | st.integers(least, 30)
        numbers = draw(st.none() | st.builds(Numbers, least=st.just(least), most=st.just(30), best=best))
        found.append(Variant(kind=kind, name=name, patches=tuple(made), as_before=as_before, numbers=numbers))
    return replace(exercise, variants=tuple(found))


def _looking_nowhere(place: Place) -> Place:
    return replace(place, facing=None)
