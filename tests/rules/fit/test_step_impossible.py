"""step-impossible: parts with no way in, and holes drilled when their joint is closed."""

from __future__ import annotations

from tests.support import told
from tests.workshop.test_going_together import BETWEEN_POSTS, FRAME, TENONS

RULE = "step-impossible"


def test_a_panel_that_comes_too_late() -> None:
    text = FRAME.format(
        rails=TENONS, steps='step "Glue the frame": join stile.*, rail.*\nstep "Put in the panel": join panel'
    )
    assert told(text, RULE) == [
        "error panel, stile.left, stile.right, rail.bottom, rail.top @ groove 1/2 deep: panel can't go into place in "
        "“Put in the panel”: it is let into stile.left, stile.right, rail.bottom and rail.top, which by then are "
        "joined to each other, and there is no way that leads into all of them. → Join panel to stile.left, "
        "stile.right, rail.bottom and rail.top in the same step that joins those to each other."
    ]


def test_in_time_it_is_quiet() -> None:
    assert told(FRAME.format(rails=TENONS, steps='step "All": join stile.*, rail.*, panel'), RULE) == []
    assert told(FRAME.format(rails=TENONS, steps=""), RULE) == []


def doweled(steps: str) -> str:
    how = "centred deep on frame"
    return BETWEEN_POSTS.format(how=how, joint="dowels 3/8 x 1 1/2, 2 per end", steps=steps)


def test_holes_drilled_after_the_glue() -> None:
    late = 'step "Glue up": join post.*, rail, tie\nstep "Holes": drill post.*, rail'
    assert told(doweled(late), RULE) == [
        "error rail, post.left, post.right @ post.*: The dowel holes in rail, post.left and post.right are "
        "drilled in “Holes”, after “Glue up” has joined them: the joint is closed by then. → Put “Holes” before "
        "“Glue up”."
    ]


def test_holes_drilled_before_or_never_spoken_of() -> None:
    glue = 'step "Glue up": join post.*, rail, tie'
    assert told(doweled(f'step "Holes": drill post.*, rail\n{glue}'), RULE) == []
    assert told(doweled(glue), RULE) == []
    # More holes later are other holes.
    assert (
        told(doweled(f'step "Holes": drill post.*, rail\n{glue}\nstep "More": drill post.*, rail'), RULE)
        == []
    )
