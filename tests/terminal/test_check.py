"""`check` names every problem, or counts what there is."""

import shutil
from pathlib import Path

from assistant.knowledge.location import knowledge_root
from assistant.terminal import disputes
from tests.terminal.conftest import Runner

KNOWLEDGE = Path(__file__).parents[1] / "knowledge"


def test_sound_knowledge_is_counted(run: Runner) -> None:
    done = run("check", "--knowledge", str(KNOWLEDGE / "sound"))

    assert done.code == 0
    assert done.out.splitlines()[-1].endswith("no problems")


def test_each_problem_has_its_line(run: Runner, tmp_path: Path) -> None:
    folder = tmp_path / "glider"
    folder.mkdir()
    (folder / "type.yaml").write_text("type: {id: glider, name: Glider}\nfactz: []\n", "utf-8")

    done = run("check", "--knowledge", str(tmp_path))

    assert done.code == 1
    assert done.out.startswith("glider/type.yaml:2: unknown key 'factz'; did you mean 'facts'?")


def test_every_type_is_checked_unless_one_is_named(run: Runner, tmp_path: Path) -> None:
    for name, key in (("good", "facts"), ("poor", "factz")):
        (tmp_path / name).mkdir()
        text = f"type: {{id: {name}, name: {name}}}\n{key}: []\n"
        (tmp_path / name / "type.yaml").write_text(text, "utf-8")

    assert run("check", "--knowledge", str(tmp_path)).code == 1
    assert run("check", "--knowledge", str(tmp_path), "--type", "poor").code == 1
    assert run("check", "--knowledge", str(tmp_path), "--type", "good").code == 0
    assert run("check", "--knowledge", str(tmp_path), "--type", "goood").code == 2


def test_what_is_disputed_is_for_the_curator_to_look_at(run: Runner, own_places: Path) -> None:
    disputes.keep_disputes("sample_glider", (("lever-travel", "the card says 25"), ("gone", "")))

    told = run("check", "--knowledge", str(KNOWLEDGE / "sound"))

    assert told.code == 0
    assert [line for line in told.out.splitlines() if "disputed" in line] == [
        "note: sample_glider/records.yaml:14: 'lever-travel' is set aside as disputed (the card says 25); "
        "look at it, then clear the dispute",
        "note: sample_glider: 'gone', which is no longer there, is set aside as disputed; "
        "look at it, then clear the dispute",
    ]


def test_schemas_are_written(run: Runner, tmp_path: Path) -> None:
    done = run("check", "--knowledge", str(KNOWLEDGE / "sound"), "--schema", str(tmp_path / "schemas"))

    assert done.code == 0
    assert (tmp_path / "schemas" / "file.schema.json").is_file()


def test_a_place_that_cannot_be_written_is_wrong_usage(run: Runner, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", "utf-8")

    assert run("check", "--schema", str(tmp_path / "file")).code == 2


def test_an_empty_folder_holds_no_type(run: Runner, tmp_path: Path) -> None:
    done = run("check", "--knowledge", str(tmp_path))

    assert done.code == 1
    assert "holds no type" in done.out


def test_a_figure_that_was_changed_in_one_place_alone_is_named(run: Runner, tmp_path: Path) -> None:
    shutil.copytree(knowledge_root(), tmp_path / "copy")
    limits = tmp_path / "copy" / "aldermere_120" / "limits.yaml"
    limits.write_text(limits.read_text("utf-8").replace("maximum: 205 kt", "maximum: 207 kt"), "utf-8")

    told = run("check", "--knowledge", str(tmp_path / "copy"))

    assert told.code == 1
    assert "fact 'vlo-both' states 205 kt" in told.out
    assert "change 'change-vlo-retraction' says that 'vlo-retraction' is now 205 kt, and that states 207 kt" in told.out
    assert run("ask", "--knowledge", str(tmp_path / "copy"), "gear retraction speed").out.startswith("207 kt")
