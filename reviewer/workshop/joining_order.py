"""The order in which joints are made: as the plan's steps say, and within a step in whatever order works.

Taking a piece apart is the same order backwards, and it is simpler: what has been taken off is never in the
way again. So joints are undone from the last step to the first, each as soon as it can be, and one that never
can be could not be made either. Where the plan has no steps the whole piece is one step, and the review
takes for granted the order that this gives.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence

from reviewer.model.plan import GROUNDS, Step
from reviewer.setting_out.result import Joint

#: A piece is taken apart in so many rounds at most; what then waits for others is taken to work.
ROUNDS = 200


def steps_of_joints(steps: Sequence[Step], joints: Sequence[Joint]) -> list[int | None]:
    """By joint, the step that makes it: the later of those that join or fit its parts; None: no step says.

    A part that several steps join is joined in the first of them.
    """
    first: dict[str, int] = {}
    for number, step in enumerate(steps):
        for work in step.works:
            if work.verb in ("join", "fit"):
                for part in work.parts:
                    first.setdefault(part, number)
    found: list[int | None] = []
    for joint in joints:
        named = [first[part] for part in (joint.left, joint.right) if part in first]
        found.append(max(named) if named else None)
    return found


class Groups:
    """Which parts hang together by some joints. Joints to the floor or the wall hold nothing together."""

    def __init__(self, joints: Iterable[Joint]) -> None:
        self._parent: dict[str, str] = {}
        for joint in joints:
            if joint.left in GROUNDS or joint.right in GROUNDS:
                continue
            one, two = self.of(joint.left), self.of(joint.right)
            if one != two:
                self._parent[one] = two

    def of(self, part: str) -> str:
        """The part that stands for the group of a part: itself where nothing holds it."""
        root = part
        while (above := self._parent.get(root, root)) != root:
            root = above
        while (above := self._parent.get(part, part)) != root:
            self._parent[part] = root
            part = above
        return root


def never_undone(
    joints: Sequence[Joint],
    steps: Sequence[int | None],
    blocked: Mapping[int, Callable[[Groups], bool]],
) -> dict[int, Groups]:
    """The joints that can't be undone at their turn, each with what then still hangs together.

    ``blocked`` has, by place among the joints, those that are in doubt, and whether one can be undone while
    the parts of a group are there. A joint that no step names may be undone at any time.
    """
    if not blocked:
        return {}
    stuck: dict[int, Groups] = {}
    left = dict.fromkeys(range(len(joints)))
    by_stage: dict[int, list[int]] = {}
    pending = []
    for place, step in enumerate(steps):
        if step is not None:
            by_stage.setdefault(step, []).append(place)
        elif place in blocked:
            pending.append(place)
        else:
            del left[place]
    rounds = ROUNDS
    groups: Groups | None = None
    for stage in sorted(by_stage, reverse=True) or [0]:
        for place in by_stage.get(stage, ()):
            if place in blocked:
                pending.append(place)
            else:
                del left[place]
                groups = None
        while pending and rounds:
            rounds -= 1
            groups = groups or Groups(joints[place] for place in left)
            undone = [place for place in pending if blocked[place](groups)]
            if not undone:
                break
            for place in undone:
                del left[place]
            pending = [place for place in pending if place in left]
            groups = None
        if not rounds:
            return stuck
        for place in [each for each in pending if steps[each] is not None]:
            assert groups is not None
            stuck[place] = groups
            del left[place]
            pending.remove(place)
        if stuck and groups is not None:
            groups = None
    groups = groups or Groups(joints[place] for place in left)
    return {**stuck, **dict.fromkeys(pending, groups)}
