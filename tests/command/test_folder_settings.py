"""A folder's settings: where they are found, what they set, and a word that is not known refused."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from reviewer.findings import Severity
from reviewer.language.reading import read
from reviewer.model.builder import understand
from reviewer.reference.limits import default_limits
from reviewer.settings import Settings, SettingsError, read_settings, settings_file, with_plan
from tests.command.conftest import Ran
from tests.command.pieces import FLAWED, SOUND

Run = Callable[..., Ran]
RULES = ("parts-overlap", "sags", "open-joint")


def settings(text: str, name: str = "dryfit.toml") -> Settings:
    path = Path(name)
    path.write_text(text, encoding="utf-8")
    return read_settings(path, default_limits(), RULES)


def refused(text: str, name: str = "dryfit.toml") -> tuple[str, str]:
    with pytest.raises(SettingsError) as caught:
        settings(text, name)
    assert caught.value.problem.name == name
    return caught.value.problem.says, caught.value.problem.do


def test_nearest_file_at_or_above_the_folder_counts(run: Run, tmp_path: Path) -> None:
    deep = tmp_path / "a" / "b"
    deep.mkdir(parents=True)
    (tmp_path / "dryfit.toml").write_text("")
    assert settings_file(deep) == tmp_path / "dryfit.toml"
    (tmp_path / "a" / "pyproject.toml").write_text("[tool.other]\n")
    assert settings_file(deep) == tmp_path / "dryfit.toml"
    (tmp_path / "a" / "pyproject.toml").write_text("[tool.dryfit.rules]\n")
    assert settings_file(deep) == tmp_path / "a" / "pyproject.toml"
    (tmp_path / "a" / "dryfit.toml").write_text("")
    assert settings_file(deep) == tmp_path / "a" / "dryfit.toml"


def test_limits_with_their_units(run: Run) -> None:
    found = settings(
        "[limits]\n"
        'sag-ratio = 360\ncover = "3 mm"\nkerf = "3/32 in"\nwallboard = "1/2\\""\n'
        'tip-push-force = "10 lb"\nsitter-force = "500 N"\nrestraint-mass = "10 kg"\ntouching-least-area = "50 mm2"\n'
        "moisture-room = 9.5\n"
    ).limits
    amounts = {name: found[name].amount for name in found}
    assert amounts["sag-ratio"] == 360
    assert amounts["cover"] == 3
    assert amounts["kerf"] == pytest.approx(3 / 32 * 25.4)
    assert amounts["wallboard"] == pytest.approx(12.7)
    assert amounts["tip-push-force"] == pytest.approx(10 * 4.4482216152605)  # pound-force in newtons, exact
    assert amounts["sitter-force"] == 500
    assert amounts["restraint-mass"] == 10
    assert amounts["touching-least-area"] == 50
    assert amounts["moisture-room"] == 9.5
    assert found["sag-ratio"].source == "set in dryfit.toml"
    assert found["trimmed-end"] == default_limits()["trimmed-end"]


def test_shared_file(run: Run) -> None:
    text = (
        '[project]\nname = "x"\n[tool.dryfit.limits]\nsag-ratio = 300\n[tool.dryfit.rules]\nsags = "note"\n'
    )
    found = settings(text, "pyproject.toml")
    assert found.limits["sag-ratio"].amount == 300
    assert found.weights == {"sags": Severity.NOTE}


def test_weights(run: Run) -> None:
    found = settings('[rules]\nparts-overlap = "silent"\nsags = "error"\nopen-joint = "warning"\n')
    assert found.weights == {"parts-overlap": None, "sags": Severity.ERROR, "open-joint": Severity.WARNING}


@pytest.mark.parametrize(
    ("text", "says", "do"),
    [
        (
            "[limits]\nsag-ration = 3",
            "No limit is called “sag-ration”.",
            "Did you mean sag-ratio or sway-ratio?",
        ),
        ("[limits]\nwobble = 3", "No limit is called “wobble”.", "dryfit limits lists them all."),
        ('[rules]\nsag = "note"', "No rule is called “sag”.", "Did you mean sags?"),
        (
            '[rules]\nwobbles-about = "note"',
            "No rule is called “wobbles-about”.",
            "dryfit rules lists them all.",
        ),
        (
            '[rules]\nsags = "loud"',
            "The rule “sags” is given a weight of “loud”.",
            "It can be error, warning, note or silent.",
        ),
        (
            "[rules]\nsags = 3",
            "The rule “sags” is given a weight of “3”.",
            "It can be error, warning, note or silent.",
        ),
        (
            "[limits]\ncover = 3",
            "The limit “cover” is a length, so it needs its unit.",
            'Write: cover = "1/8 in"',
        ),
        ('[limits]\ncover = "3"', "“3” is no number and unit for a length.", 'Write: cover = "1/8 in"'),
        (
            '[limits]\ncover = "-3 mm"',
            "“-3 mm” is no number and unit for a length.",
            'Write: cover = "1/8 in"',
        ),
        (
            '[limits]\ncover = "3 mm or so"',
            "“3 mm or so” is no number and unit for a length.",
            'Write: cover = "1/8 in"',
        ),
        (
            '[limits]\ncover = "1/0 in"',
            "“1/0 in” is no number and unit for a length.",
            'Write: cover = "1/8 in"',
        ),
        (
            '[limits]\nrestraint-mass = "3 in"',
            "“3 in” is no number and unit for a weight.",
            'Write: restraint-mass = "30 lb"',
        ),
        (
            "[limits]\ntip-push-force = 10",
            "The limit “tip-push-force” is a force, so it needs its unit.",
            'Write: tip-push-force = "10 lb"',
        ),
        (
            '[limits]\nsag-ratio = "3"',
            "The limit “sag-ratio” should be a plain number from 0.",
            "Write: sag-ratio = 360",
        ),
        (
            "[limits]\nsag-ratio = true",
            "The limit “sag-ratio” should be a plain number from 0.",
            "Write: sag-ratio = 360",
        ),
        (
            "[limits]\nsag-ratio = -1",
            "The limit “sag-ratio” should be a plain number from 0.",
            "Write: sag-ratio = 360",
        ),
        (
            "[limits]\nsag-ratio = nan",
            "The limit “sag-ratio” should be a plain number from 0.",
            "Write: sag-ratio = 360",
        ),
        (
            "[limits]\nsag-ratio = inf",
            "The limit “sag-ratio” should be a plain number from 0.",
            "Write: sag-ratio = 360",
        ),
        (
            "[limit]\n",
            "“limit” is nothing that dryfit's settings hold.",
            "They hold a level, limits and rules.",
        ),
        ("limits = 3", "“limits” should be a table of names and values.", "Write it as [limits]."),
        ('level = "all"', "The level is given as “all”.", "It can be error, warning or note."),
        ("level = []", "The level is given as “[]”.", "It can be error, warning or note."),
    ],
)
def test_word_that_is_not_known_is_refused(run: Run, text: str, says: str, do: str) -> None:
    assert refused(text) == (says, do)


def test_shared_file_of_the_wrong_shape(run: Run) -> None:
    assert (
        refused("[tool]\ndryfit = 3\n", "pyproject.toml")[0]
        == "“dryfit” should be a table of names and values."
    )
    assert refused("tool = 3\n", "pyproject.toml")[0] == "“tool” should be a table of names and values."


def test_file_that_does_not_read(run: Run) -> None:
    says, do = refused("[limits\n")
    assert says.startswith("The settings file is not well-formed TOML: ")
    assert do == "Mend that line."
    Path("dryfit.toml").write_bytes(b"\xff\xfe")
    with pytest.raises(SettingsError, match="cannot be read"):
        read_settings(Path("dryfit.toml"), default_limits(), RULES)


def test_command_tells_settings_it_does_not_know(run: Run) -> None:
    Path("a.plan").write_text(SOUND)
    Path("dryfit.toml").write_text("[limits]\nsag-ration = 3\n")
    ran = run("review", "a.plan")
    assert (ran.status, ran.out) == (2, "")
    assert ran.err.endswith(
        "dryfit.toml: No limit is called “sag-ration”. Did you mean sag-ratio or sway-ratio?\n"
    )


def test_silent_rule_says_nothing(run: Run) -> None:
    Path("a.plan").write_text(FLAWED)
    assert run("review", "a.plan").status == 1
    Path("dryfit.toml").write_text('[rules]\nparts-overlap = "silent"\nplacing-disagrees = "silent"\n')
    ran = run("review", "a.plan")
    assert (ran.status, ran.err) == (0, "")
    assert "parts-overlap" not in ran.out


def test_each_folder_has_its_own(run: Run, tmp_path: Path) -> None:
    (tmp_path / "strict").mkdir()
    (tmp_path / "a.plan").write_text(FLAWED)
    (tmp_path / "strict" / "a.plan").write_text(FLAWED)
    (tmp_path / "dryfit.toml").write_text('[rules]\nparts-overlap = "note"\n')
    (tmp_path / "strict" / "dryfit.toml").write_text("")
    assert run("review", "a.plan").status == 0
    assert run("review", "strict/a.plan").status == 1
    assert run("review", "-", stdin=FLAWED.encode()).status == 0  # standard input has the folder it is run in


def limits_of(text: str, unit: str = "inches") -> dict[str, float]:
    plan = understand(
        read(f'plan "a" in {unit}\n{SOUND.partition(chr(10))[2]}{text}\n'), default_limits()
    ).plan
    assert plan is not None
    return {setting.name: setting.amount for setting in plan.limits}


def test_plans_own_limit_wins(run: Run) -> None:
    plan = understand(read(f"{SOUND}limit sag-ratio: 480\nlimit cover: 2\n"), default_limits()).plan
    assert plan is not None
    folder = settings('[limits]\nsag-ratio = 300\nkerf = "2 mm"\n')
    found = with_plan(folder.limits, plan.limits)
    assert (found["sag-ratio"].amount, found["sag-ratio"].source) == (480, "set in this plan")
    assert (found["cover"].amount, found["kerf"].amount) == (2, 2)
    assert found["kerf"].source == "set in dryfit.toml"


@pytest.mark.parametrize(
    ("text", "unit", "amount"),
    [
        ("limit cover: 1/4", "inches", 6.35),
        ("limit cover: 3 mm", "inches", 3),
        ("limit cover: 3", "millimetres", 3),
        ("limit sag-ratio: 300 + 60", "inches", 360),
        ("limit restraint-mass: 20", "inches", 20 * 0.45359237),
        ("limit restraint-mass: 20 kg", "inches", 20),
        ("limit restraint-mass: 20", "millimetres", 20),
        ("limit restraint-mass: 20 lb", "millimetres", 20 * 0.45359237),
        ("limit tip-push-force: 10", "inches", 44.482216152605),
        ("limit tip-push-force: 10", "millimetres", 10),
        ("limit tip-push-force: 10 kg", "millimetres", 98.0665),
        ("limit touching-least-area: 1", "inches", 645.16),
        ("limit touching-least-area: 50", "millimetres", 50),
        ("limit escape-area: 5", "inches", 5 * 304.8**2),
        ("limit escape-area: 0.5", "millimetres", 500_000),
        ("limit moisture-room: 9", "inches", 9),
    ],
)
def test_plans_limit_is_in_the_unit_that_it_is_shown_in(text: str, unit: str, amount: float) -> None:
    """Pounds, pounds-force and standard gravity by their exact definitions."""
    ((_, found),) = limits_of(text, unit).items()
    assert found == pytest.approx(amount)
