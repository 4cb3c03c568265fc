"""Opening a base: which folders, what is in it, what a variant changes, and that no file makes it raise."""

from __future__ import annotations

import json
import os
import shutil
import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.knowledge.base import RECORDS, Base
from assistant.knowledge.library_records import Override, Term
from assistant.knowledge.load import load, types
from assistant.knowledge.records import Fact, Limit, Source, Step, TableRule, Value
from assistant.knowledge.shapes import SHAPES

SOUND = str(Path(__file__).parent / "sound")


@pytest.fixture(scope="module")
def base() -> Base:
    found, problems = load(SOUND, cache_dir="")
    assert problems == []
    assert found is not None
    return found


def new_type(root: Path, name: str, text: str = "") -> None:
    (root / name).mkdir()
    text = text or f"type: {{id: {name}, name: {name.title()}}}\n"
    (root / name / "type.yaml").write_text(text, encoding="utf-8")


class TestFolders:
    def test_a_missing_root_is_named(self) -> None:
        assert load("/no/such/root") == (
            None,
            [("/no/such/root", 0, "no such folder", "name the folder of the knowledge base")],
        )

    def test_a_root_without_a_type_is_named(self, tmp_path: Path) -> None:
        _, problems = load(str(tmp_path))

        assert [str(problem) for problem in problems] == [
            f"{tmp_path}: holds no type; give one of its folders a type.yaml"
        ]

    def test_the_first_type_unless_another_is_chosen(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        monkeypatch.delenv("DOWNLOCK_TYPE", raising=False)
        for name in ("two", "one", "six"):
            new_type(tmp_path, name)

        def chosen(type_id: str | None = None) -> str:
            found, problems = load(str(tmp_path), type_id, cache_dir="")
            return found.type_info.name if found else str(problems[0])

        assert types(str(tmp_path)) == ["one", "six", "two"]
        assert chosen() == "One"
        monkeypatch.setenv("DOWNLOCK_TYPE", "two")
        assert chosen() == "Two"
        assert chosen("six") == "Six"
        assert chosen("ten") == f"{tmp_path}: holds no type 'ten'; choose one of one, six, two"

    def test_an_unreadable_file_is_named(self, tmp_path: Path) -> None:
        new_type(tmp_path, "one")
        (tmp_path / "one" / "facts.yaml").mkdir()

        _, problems = load(str(tmp_path), cache_dir="")

        assert [str(problem) for problem in problems] == [
            "one/facts.yaml: cannot be read (Is a directory); check that it exists and may be read"
        ]

    @pytest.mark.parametrize(
        ("content", "expected"),
        [
            (b"", "records.yaml: holds nothing; write its lists again, or remove the file"),
            (b"facts: [\n", "records.yaml:2: is not well-formed YAML (did not find expected node content); "),
            (b"\xff", "records.yaml:1: is not UTF-8 text; save the file as plain UTF-8 text"),
            (b"- facts", "records.yaml:1: is not a mapping of lists; begin with the key of a list"),
        ],
    )
    @pytest.mark.parametrize(
        "broken", ["language/words", "principles/rules", "sample_glider/records", "sample_glider/type"]
    )
    def test_what_only_points_into_an_unread_file_is_held_back(
        self, tmp_path: Path, broken: str, content: bytes, expected: str
    ) -> None:
        shutil.copytree(SOUND, tmp_path, dirs_exist_ok=True)
        (tmp_path / f"{broken}.yaml").write_bytes(content)

        _, problems = load(str(tmp_path), cache_dir="")

        assert len(problems) == 1
        assert str(problems[0]).startswith(expected.replace("records.yaml", f"{broken}.yaml"))

    @pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="there are no named pipes here")
    def test_a_pipe_among_the_files_is_no_wait_for_its_writer(self, tmp_path: Path) -> None:
        shutil.copytree(SOUND, tmp_path, dirs_exist_ok=True)
        os.mkfifo(tmp_path / "sample_glider" / "more.yaml")

        _, problems = load(str(tmp_path), cache_dir="")

        assert list(map(str, problems)) == [
            "sample_glider/more.yaml: cannot be read (no file, but a pipe or a device); put a file in its place"
        ]

    def test_units_that_are_listed_nowhere_are_one_problem(self, tmp_path: Path) -> None:
        shutil.copytree(SOUND, tmp_path, dirs_exist_ok=True)
        lines = [f"  - {{id: more-{k}, of: x, asks: [x], maximum: 5 cubit, source: MAN 1}}" for k in range(6)]
        (tmp_path / "sample_glider" / "more.yaml").write_text("\n".join(["limits:", *lines, ""]), "utf-8")
        (tmp_path / "language" / "units.yaml").unlink(missing_ok=True)

        _, problems = load(str(tmp_path), cache_dir="")

        assert [str(p) for p in problems if "unit" in str(p)] == [
            "language/units.yaml: is missing: 6 figures have units that are listed nowhere; "
            "put the file back, or list the units in another"
        ]

    def test_a_slip_in_one_file_hides_nothing_of_the_others(self, tmp_path: Path) -> None:
        shutil.copytree(SOUND, tmp_path, dirs_exist_ok=True)
        records = tmp_path / "sample_glider" / "records.yaml"
        records.write_text(records.read_text(encoding="utf-8").replace("says: The skid", "says: [The skid", 1))
        (tmp_path / "sample_glider" / "more.yaml").write_text(
            "limits:\n"
            "  - {id: more, of: x, asks: [x], maximum: 5 knotts, source: MAN 1}\n"
            "facts:\n"
            "  - {id: there, asks: [x], says: x, source: MAN 1, why: skids-wear}\n"
            "  - {id: nowhere, asks: [x], says: x, source: MAN 1, why: no-such-record}\n"
        )

        _, problems = load(str(tmp_path), cache_dir="")

        assert [str(problem).split("; ")[0].split(" (")[0] for problem in problems] == [
            "sample_glider/more.yaml:2: 'maximum' of limit 'more' has the unknown unit 'knotts'",
            "sample_glider/more.yaml:5: fact 'nowhere' names the unknown record 'no-such-record'",
            "sample_glider/records.yaml:6: is not well-formed YAML",
        ]

    @pytest.mark.parametrize(
        ("text", "expected"),
        [
            ("{}", "type.yaml: no type is described; add 'type:' with id and name to the type's type.yaml"),
            (
                "type: {id: two, name: T}",
                "one/type.yaml:1: type 'two' stands in the folder 'one'; give the folder and the id one name",
            ),
            (
                "type: {id: one, name: T, not_here: {medium: settings}}",
                "one/type.yaml:1: type 'one' names the unknown record 'settings'; name a record of this type",
            ),
        ],
    )
    def test_a_type_describes_itself(self, tmp_path: Path, text: str, expected: str) -> None:
        new_type(tmp_path, "one", text)

        _, problems = load(str(tmp_path), cache_dir="")

        assert [str(problem) for problem in problems] == [expected]

    def test_a_partial_base_may_lack_its_type(self, tmp_path: Path) -> None:
        new_type(tmp_path, "one", "{}")

        base, _ = load(str(tmp_path), cache_dir="", partial=True)

        assert base is not None
        assert base.type_info == ("", "", (), "", (), "", (), ())


class TestContents:
    def test_every_kind_is_read(self, base: Base) -> None:
        assert set(SHAPES) == set(RECORDS)
        assert all(base.ids(kind) for kind in RECORDS)

    def test_a_fact(self, base: Base) -> None:
        assert base.records["skid-made-of"] == Fact(
            id="skid-made-of",
            asks=("skid [made] of", "what skid"),
            says="The skid is of ash wood.",
            sources=(Source("MAN", "1.1"), Source("RULES", "1")),
            answers=("what", "shape"),
            values=(Value(1.0, "count", "count"),),
            points=("ash",),
            why="skids-wear",
            topic="32-10",
            when=(("pump", "lost"), ("brake.works", "no")),
        )

    def test_a_limit(self, base: Base) -> None:
        assert base.records["lever-travel"] == Limit(
            id="lever-travel",
            asks=("lever travel",),
            of="lever travel, either way",
            sources=(Source("MAN", "2.1"),),
            maximum=Value(30.0, "deg"),
            check=("move lever",),
            when=(("brake.works", "yes"),),
            applies=(("ground speed", "over", 5.0, "kt"),),
        )
        assert base.records["lever-figure"].value == Value(1450.5, "mm")
        assert base.records["hold"].minimum == Value(-5.0, "kt")

    def test_a_term(self, base: Base) -> None:
        assert base.terms["skid"] == Term(
            "skid", ("skid", "landing skid"), heard=("skit",), family="ground", misspelt=("skidd",)
        )
        assert base.terms["pump"].sets == (("pump", "lost"),)

    def test_bands_schedules_and_inputs(self, base: Base) -> None:
        assert [rule[:3] for rule in base.records["spring-bands"].rules] == [
            ("below", 80.0, "percent"),
            ("up to", 1500.0, "mm"),
            ("otherwise", 0.0, ""),
        ]
        schedule = base.records["lever-by-speed"]
        assert (schedule.input, schedule.input_unit, schedule.basis) == ("speed", "kt", "ground speed")
        assert (schedule.output, schedule.output_unit) == ("angle", "deg")
        assert schedule.points == ((0.0, 30.0), (10.0, 30.0), (20.5, 0.0))
        assert base.inputs["pump"].number == (
            ("below", 10.0, "psi", "lost", "too low"),
            ("otherwise", 0.0, "", "normal", ""),
        )
        assert base.inputs["spring"].failure is False

    def test_a_table(self, base: Base) -> None:
        table = base.records["brake"]

        assert table.outputs[0].id == "works"
        assert table.outputs[0].values == (
            ("yes", "The brake works", "works"),
            ("no", "The brake does not work", ""),
        )
        assert table.rules[0] == TableRule(
            ((("pump", "normal"),),), (("works", "yes"),), (Source("MAN", "5.1"),)
        )
        assert table.rules[1].when == ((("spring", "whole"),), (("spring", "broken"), ("pump", "normal")))
        assert table.rules[2].when == ((),)
        assert table.remarks == (("spring", "broken", "change it"),)

    def test_a_procedure_a_model_and_an_outline(self, base: Base) -> None:
        assert base.records["stop"].steps == (
            Step("Pull", memory=True),
            Step("Wait 5 s", asks=("wait",), values=(Value(5.0, "s", "duration"),)),
        )
        share = base.records["slide"].inputs[2]
        assert (share.default, share.choices) == ("both", (("wet", "0.5", ""), ("dry", "lever-figure", "")))
        assert base.records["slide"].extra == (("surface", "grass"),)
        assert base.records["before"].items[0] == ("Brake", "brake.works", "always")

    def test_what_is_no_record(self, base: Base) -> None:
        assert base.type_info.not_here == (("wheel", "skid-made-of"),)
        assert base.lists["lost"] == ["lost", "gone", "failed"]
        assert base.settings == {"greeting": "hello"}
        assert base.units_data == [{"symbol": "furlong", "names": ["furlong", "furlongs"]}]
        assert base.word_list("neutral_words").split()[-2:] == ["please", "thanks"]
        assert base.documents["MAN"].temporary_revisions == ("1A",)

    def test_order_kind_and_place(self, base: Base) -> None:
        assert base.order[:3] == ["skids-wear", "skid-made-of", "lever-travel"]
        assert base.kind("lever-travel") == "limits"
        assert base.place("lever-travel") == ("sample_glider/records.yaml", 14)
        assert base.place("MAN", "documents") == ("sample_glider/type.yaml", 8)


class TestVariants:
    def test_the_base_type_is_unchanged(self, base: Base) -> None:
        assert list(base.variants) == ["S1", "S2"]
        assert (
            base.record("lever-travel", "S1") is base.record("lever-travel") is base.records["lever-travel"]
        )

    def test_an_override_replaces_fields_and_comes_first_among_sources(self, base: Base) -> None:
        changed = base.record("lever-travel", "S2")

        assert changed.maximum == Value(40.0, "deg")
        assert changed.sources == (Source("MAN", "9.1"), Source("MAN", "2.1"))
        assert changed.of == base.records["lever-travel"].of
        assert base.record("skid-made-of", "S2").says == "The skid is of steel."

    def test_a_schedule_follows_its_top(self, base: Base) -> None:
        changed = base.record("lever-by-speed", "S2")

        assert changed.points == ((0.0, 40.0), (10.0, 40.0), (20.5, 0.0))
        assert changed.sources == (Source("MAN", "9.1"), Source("MAN", "4"))

    def test_overrides_are_listed(self, base: Base) -> None:
        assert base.overrides[0] == Override(
            "S2",
            "lever-travel",
            (("maximum", Value(40.0, "deg")),),
            (Source("MAN", "9.1"),),
            "The S2 travels further.",
        )

    def test_an_unknown_record_is_a_key_error(self, base: Base) -> None:
        with pytest.raises(KeyError):
            base.record("no-such-record")


def test_a_compiled_base_survives_json(base: Base) -> None:
    again = Base(json.loads(json.dumps(base.compiled)))

    for kind in ("records", "terms", "inputs", "documents", "variants", "changes"):
        assert dict(getattr(again, kind)) == dict(getattr(base, kind))
    assert again.overrides == base.overrides
    assert again.type_info == base.type_info


def load_text(text: str) -> tuple[Base | None, list[str]]:
    with tempfile.TemporaryDirectory() as folder:
        Path(folder, "any.yaml").write_bytes(text.encode("utf-8", "surrogatepass"))
        found, problems = load(SOUND, cache_dir="", extra=[folder])
    return found, [str(problem) for problem in problems]


@settings(max_examples=60, deadline=None)
@given(st.text(max_size=200))
def test_any_text_gives_a_base_or_problems(text: str) -> None:
    found, problems = load_text(text)

    assert (found is None) == bool(problems)


JUNK = st.recursive(
    st.sampled_from(
        ["", "x", "pump", "lost", "yes", "3 kt", "otherwise", "skid", "lever-travel", "MAN 1", "S2", "@lost"]
    ),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.sampled_from("abc"), inner, max_size=2),
    max_leaves=4,
)
FILES = st.sampled_from(sorted(SHAPES)).flatmap(
    lambda kind: st.fixed_dictionaries(
        {
            kind: st.lists(
                st.fixed_dictionaries({}, optional={field.name: JUNK for field in SHAPES[kind].fields}),
                max_size=2,
            )
        }
    )
)


@settings(max_examples=150, deadline=None)
@given(FILES)
def test_any_fields_give_a_base_or_problems(content: dict[str, object]) -> None:
    found, problems = load_text(json.dumps(content))

    assert (found is None) == bool(problems)
