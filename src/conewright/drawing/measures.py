"""The sizes of the drawing language, on a screen and on paper; must not know what is drawn with them or its colours."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Measures:
    """Sizes in drawing units: px on a screen, mm on paper. Widths of strokes belong to the style table."""

    unit: str
    radius: float  # of a person's mark
    radius_least: float
    radius_share_m: float  # a mark is at most so many metres of ground in radius before it shrinks
    lettered_size: float  # size of a letter with its number
    letter_least: float  # least size of a letter alone
    gap: float  # between a mark's edge and the end of a line
    head_length: float
    head_half: float
    open_back: float  # the open head: how far back its arms reach
    open_half: float
    wave_half: float
    wave_length: float
    wave_tail: float  # the straight last piece of a wave
    between: float  # least distance between two lines of the same two places
    step_side: float
    step_size: float
    name_size: float
    name_clear: float
    tick_below: float
    ball_least: float
    cone_width: float
    cone_height: float
    goal_depth_least: float
    wall_half: float
    hatch_pitch: float
    dash_length: float  # of the level dashes of open play
    dash_across: float
    dash_down: float
    number_size: float  # of the numbers along the edges
    room_left: float  # beside the ground when its edges are numbered
    room_below: float
    room_round: float
    meeting_half: float
    letter_alone: bool  # letters without numbers


SCREEN = Measures(
    unit="px",
    radius=12.0,
    radius_least=9.5,
    radius_share_m=0.62,
    lettered_size=11.5,
    letter_least=10.0,
    gap=5.0,
    head_length=10.6,
    head_half=4.4,
    open_back=8.5,
    open_half=5.3,
    wave_half=3.2,
    wave_length=12.0,
    wave_tail=5.0,
    between=13.0,
    step_side=16.0,
    step_size=12.5,
    name_size=13.5,
    name_clear=8.0,
    tick_below=3.5,
    ball_least=3.4,
    cone_width=10.4,
    cone_height=9.4,
    goal_depth_least=9.0,
    wall_half=3.0,
    hatch_pitch=9.0,
    dash_length=5.0,
    dash_across=12.0,
    dash_down=9.0,
    number_size=11.5,
    room_left=26.0,
    room_below=24.0,
    room_round=10.0,
    meeting_half=9.5,
    letter_alone=False,
)

PAPER = Measures(
    unit="mm",
    radius=2.2,
    radius_least=2.0,
    radius_share_m=0.62,
    lettered_size=2.1,
    letter_least=1.9,
    gap=0.9,
    head_length=2.5,
    head_half=1.05,
    open_back=2.0,
    open_half=1.2,
    wave_half=0.6,
    wave_length=2.3,
    wave_tail=1.0,
    between=2.8,
    step_side=3.1,
    step_size=2.5,
    name_size=3.0,
    name_clear=1.6,
    tick_below=0.7,
    ball_least=0.9,
    cone_width=2.1,
    cone_height=1.9,
    goal_depth_least=1.8,
    wall_half=0.6,
    hatch_pitch=2.0,
    dash_length=1.2,
    dash_across=2.9,
    dash_down=2.2,
    number_size=3.0,
    room_left=6.0,
    room_below=5.0,
    room_round=0.3,
    meeting_half=2.0,
    letter_alone=True,
)
