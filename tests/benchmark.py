"""How long a review takes, as ratios that hold when the machine's speed drifts.

Run ``python -m tests.benchmark``. It prints these figures, each beside its budget from DEVELOPERS.md:

- cold: a whole ``dryfit review`` of a 60-part plan over importing lark, pydantic, networkx and jinja2;
- rules: how many of all rules that review loads, and what loading one more costs over importing the same;
- growth: time a part at 8,000 parts over time a part at 2,000;
- large: seconds for a review of 10,000 parts;
- set out: seconds of one processor, start-up included, to read and set out 10,000 parts, and the growth
  of that alone;
- load path: a general structural solver (PyNiteFEA) on the beams of a 60-part plan over the whole way of its
  loads to the floor, what holds what included.
- sway: the frames of a 60-part plan by a general structural solver (PyNiteFEA, a test-only library) over ours,
  frame for frame with the same answer, building counted for both; the same where the solver gets each joint
  as one short member, which is less work and another frame; and over the whole judgement of sway, which works
  alike pieces out once and solves only what is not plainly stiff.
"""

from __future__ import annotations

import argparse
import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

IMPORTS = "import lark, pydantic, networkx, jinja2"
#: Prints the processor seconds of a fresh process up to the piece in space, and of the work alone.
SET_OUT = """
import gc, sys, time
from pathlib import Path
gc.disable()
from reviewer.language.reading import read
from reviewer.model.builder import understand
from reviewer.reference.limits import default_limits
from reviewer.setting_out.setting import set_out
text, limits = Path(sys.argv[1]).read_text(encoding="utf-8"), default_limits()
start = time.process_time()
plan = understand(read(text), limits).plan
assert plan is not None
assert len(set_out(plan).solids) == len(plan.parts)
done = time.process_time()
print(done, done - start)
"""
#: Prints how many rules there are, how many a review loaded, and the processor seconds to load the others.
RULES = """
import contextlib, importlib, io, sys, time
from reviewer.cli import main
from reviewer.rulebook import modules, packages
with contextlib.redirect_stdout(io.StringIO()):
    main(["review", sys.argv[1]])
files = [name for package in packages() for name in modules(package)]
others = [name for name in files if name not in sys.modules]
start = time.process_time()
for name in others:
    importlib.import_module(name)
print(len(files), len(files) - len(others), time.process_time() - start)
"""
#: Prints the processor seconds that the imports take.
IMPORTING = f"import time; start = time.process_time(); {IMPORTS}; print(time.process_time() - start)"
PARTS_PER_BAY = 10


def shelving(parts: int) -> str:
    """A plan of a long run of open shelving, ten parts a bay: two sides, six shelves and two rails."""
    lines = [
        'plan "Shelving along the long wall" in inches',
        "stock ply: birch plywood 3/4, sheet 48 x 96 at 64",
        "stock strip: 1x3 pine, 8 ft at 5.20",
        "room reading room: indoors, wall behind, studs every 16, no children",
    ]
    for bay in range(max(1, parts // PARTS_PER_BAY)):
        name = f"bay{bay}"
        sides = f"{name}.side.left and {name}.side.right"
        lines += [
            f"outline {name}-box: 30 across, 11 deep, 60 tall, on floor, left at {bay * 34 % 2000}",
            f"    front {bay * 34 // 2000 * 40} behind front of bay0-box" if bay * 34 >= 2000 else "",
            f"part {name}.side for each of left, right: ply, upright, facing side",
            f"    11 deep, as tall as {name}-box, flush with each of {name}-box, flush with bottom of {name}-box",
            f"    flush with front of {name}-box",
            f"part {name}.shelf: ply, across, flat, 11 deep, flush with front of {name}-box",
            f"    between {sides}, housed 1/4 each end",
            f"    6 copies spread evenly up from bottom of {name}-box to top of {name}-box",
            f"part {name}.rail for each of 2, 5: strip, across, on edge, between {sides}",
            f"    flush with back of {name}-box, under {name}.shelf.each",
            f"join {name}.shelf.* to {name}.side.*: dado 1/4 deep, glue pva",
            f"join {name}.rail.* to {name}.side.*, {name}.shelf.*: pocket screws 1 1/4, 2 per joint",
            f"load {name}.shelf.*: books",
            f"restrain {name}.side.left to wall: strap, screws #10 x 2 1/2 into stud, 58 up, 2 of them",
        ]
    return "\n".join(line for line in lines if line) + "\n"


def seconds(command: list[str]) -> float:
    """Wall seconds of a whole process; its output is thrown away. Raises when it fails outright."""
    start = time.perf_counter()
    done = subprocess.run(command, capture_output=True, check=False)
    spent = time.perf_counter() - start
    if done.returncode not in (0, 1):
        raise SystemExit(f"{' '.join(command)} failed:\n{done.stdout.decode()}{done.stderr.decode()}")
    return spent


def set_out_seconds(plan: Path, runs: int = 5) -> tuple[float, float]:
    """Least processor seconds to read, understand and set out a plan: with the start-up, and without."""
    command = [sys.executable, "-c", SET_OUT, str(plan)]
    printed = [
        subprocess.run(command, capture_output=True, check=True, text=True).stdout.split()
        for _ in range(runs)
    ]
    return min(float(whole) for whole, _ in printed), min(float(work) for _, work in printed)


def rules_loaded(plan: Path, runs: int = 5) -> tuple[int, int, float]:
    """How many rules there are, how many a review of the plan loads, and the cost of one more.

    The cost is that of a rule it leaves alone, with what only that rule loads, over importing our libraries.
    """

    def printed(*command: str) -> list[str]:
        done = subprocess.run([sys.executable, "-c", *command], capture_output=True, check=True, text=True)
        return done.stdout.split()

    found = [printed(RULES, str(plan)) for _ in range(runs)]
    number, loaded = (int(figure) for figure in found[0][:2])
    least = min(float(spent) for _, _, spent in found)
    imports = min(float(printed(IMPORTING)[0]) for _ in range(runs))
    return number, loaded, least / max(1, number - loaded) / imports


def load_path_ratio(plan: Path, runs: int = 5) -> float:
    """How many times faster the loads of a plan come down than a general solver does its beams alone.

    The solver gets what ``carrying`` found out for it: where each beam is held and what comes onto it.
    """
    import gc

    from Pynite import FEModel3D

    from reviewer.mechanics.beam import BeamResult
    from reviewer.reviewing import reviewed
    from reviewer.workshop.carrying import carrying
    from reviewer.workshop.holding import holding
    from tests.support import settings

    review = reviewed(plan.name, plan.read_text(encoding="utf-8"), settings(), {}).review
    assert review is not None
    masses, declared = review.masses, review.declared
    members = [each for each in review.carrying.members.values() if isinstance(each.standing, BeamResult)]
    gc.disable()

    def ours() -> None:
        carrying(
            review.plan, review.setting, holding(review.setting), masses, declared, lambda: review.driven
        )

    def theirs() -> None:
        model = FEModel3D()
        model.add_material("wood", 10_000.0, 4_000.0, 0.3, 0.0)
        for number, member in enumerate(members):
            inertia = member.second_moment
            model.add_section(f"S{number}", member.width * member.height, inertia, inertia, inertia)
            held = {reaction.at for reaction in member.standing.reactions}
            places = sorted({0.0, member.length, *held})
            for place in places:
                name = f"{number}@{place}"
                model.add_node(name, place, 0.0, 1000.0 * number)
                first = place == places[0]
                model.def_support(name, first, place in held, True, first, True, False)
            ends = f"{number}@{places[0]}", f"{number}@{places[-1]}"
            model.add_member(f"M{number}", *ends, "wood", f"S{number}")
            model.add_member_dist_load(f"M{number}", "FY", -sum(member.uniform), -sum(member.uniform))
            for spread in member.spreads:
                force = -spread.lasting - spread.brief
                model.add_member_dist_load(f"M{number}", "FY", force, force, spread.start, spread.end)
            for point in member.points:
                model.add_member_pt_load(f"M{number}", "FY", -point.lasting - point.brief, point.at)
        model.analyze_linear()

    def least(work: Callable[[], None]) -> float:
        spent = []
        for _ in range(runs):
            start = time.process_time()
            work()
            spent.append(time.process_time() - start)
        return min(spent)

    return least(theirs) / least(ours)


def sway_ratios(runs: int = 5) -> tuple[float, float, float]:
    """Processor time of a general solver over ours, both ways pushed and the building of the model counted.

    Frame for frame with the same answer; with every joint as one short member, which is another frame of as
    many nodes (less work than any way to hold the joints as they are); and over judging all sway of the plan.
    """
    import gc

    from reviewer.workshop.swaying import swaying
    from reviewer.workshop.swaying_frame import framed
    from reviewer.workshop.swaying_structure import structure
    from tests.general_solver import general, kept, swayed
    from tests.support import review_of

    review = review_of(shelving(60))
    found = [structure(review, piece) for piece in review.pieces]
    pieces = [each for each in found if each is not None]
    alike = [kept(each) for each in pieces]
    pushes = (1.0, 0.0, 0.0, 0.0, 0.0, 0.0), (0.0, 1.0, 0.0, 0.0, 0.0, 0.0)

    def theirs(short: bool) -> None:
        for frame, top in alike:
            model = general(frame, top, (0, 1), short=short)
            # Its own check of stability takes the stiff arms of the joints for a fault, and would cost it more.
            model.analyze_linear(check_stability=False)

    def ours() -> None:
        for each in pieces:
            frame, top, _ = framed(each)
            ready = frame.factors()
            for push in pushes:
                ready.solve(dict.fromkeys(top, push))

    def least(work: Callable[[], object]) -> float:
        spent = []
        for _ in range(runs):
            start = time.process_time()
            work()
            spent.append(time.process_time() - start)
        return min(spent)

    frame, top = alike[0]
    model = general(frame, top, (0, 1))
    model.analyze_linear(check_stability=False)
    for axis, push in enumerate(pushes):
        moved = frame.solve(dict.fromkeys(top, push))
        mine = sum(moved[node][axis] for node in top) / len(top)
        assert abs(swayed(model, top, axis) / mine - 1) < 1e-4, "not the same answer"
    gc.disable()
    whole = least(lambda: theirs(False))
    own = least(ours)
    short = least(lambda: theirs(True))
    judged = least(lambda: swaying(review))
    gc.enable()
    return whole / own, short / own, whole / judged


def main() -> None:
    """Print the ratios."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--runs", type=int, default=7, help="pairs of runs for the cold ratio")
    asked = parser.parse_args()
    python = sys.executable
    with tempfile.TemporaryDirectory() as folder:
        # Both sides load compiled files, as any run but the first does, whatever this shell says of them.
        os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
        os.environ["PYTHONPYCACHEPREFIX"] = folder
        plans = {}
        for parts in (60, 2_000, 8_000, 10_000):
            plans[parts] = Path(folder) / f"shelving-{parts}.plan"
            plans[parts].write_text(shelving(parts), encoding="utf-8")
        review = [python, "-m", "reviewer", "review"]
        imports = [python, "-c", IMPORTS]
        cold = [*review, str(plans[60])]
        seconds(cold), seconds(imports)  # warm the disk
        ratios = [seconds(cold) / seconds(imports) for _ in range(asked.runs)]
        print(f"cold review of 60 parts / imports alone: {statistics.median(ratios):.2f}   (budget 1.50)")
        number, loaded, each_rule = rules_loaded(plans[60])
        print(f"rules it loads: {loaded} of {number}; one more / imports alone: {each_rule:.4f}")
        base = statistics.median(seconds(cold) for _ in range(3))
        each = {}
        for parts in (2_000, 8_000):
            spent = statistics.median(seconds([*review, str(plans[parts])]) for _ in range(3))
            each[parts] = (spent - base) / (parts - 60)
        print(
            f"growth, time a part at 8,000 / at 2,000: {each[8_000] / each[2_000]:.2f}   (near linear: 1.30)"
        )
        print(f"review of 10,000 parts: {seconds([*review, str(plans[10_000])]):.1f} s   (budget 10 s)")
        whole, _ = set_out_seconds(plans[10_000])
        print(f"read and set out 10,000 parts: {whole:.2f} s   (budget 3 s)")
        print(f"load path of 60 parts, times faster than a solver: {load_path_ratio(plans[60]):.0f}   (20)")
        large, small = (set_out_seconds(plans[parts])[1] / parts for parts in (8_000, 2_000))
        print(f"growth of that, time a part at 8,000 / at 2,000: {large / small:.2f}   (near linear: 1.30)")
    solver, short, judged = sway_ratios()
    print(f"general solver / our frames of a 60-part plan, same answer: {solver:.1f}   (20)")
    print(f"the same with each joint as one short member: {short:.1f}; / judging its sway: {judged:.0f}")


if __name__ == "__main__":
    main()
