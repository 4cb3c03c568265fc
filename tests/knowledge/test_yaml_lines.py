"""YAML stays text with its lines; whatever could surprise is refused, and nothing raises."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.knowledge.yaml_lines import DEEPEST, LARGEST, Items, Pairs, Text, parse_yaml, plain, read_yaml


def messages(raw: bytes) -> list[str]:
    _, problems = parse_yaml(raw, "f.yaml")
    return [f"{problem.line}: {problem.message}" for problem in problems]


@pytest.mark.parametrize(
    "written", ["no", "012", "1e3", "2026-08-01", "1:30", "null", "~", "0x1F", ".inf", "=", "<<"]
)
def test_scalars_stay_as_written(written: str) -> None:
    tree, problems = parse_yaml(f"a: {written}\n".encode(), "f.yaml")

    assert problems == []
    assert tree is not None
    assert plain(tree) == {"a": written}


def test_each_node_knows_its_file_and_line() -> None:
    tree, _ = parse_yaml(b"a:\n  - one\n  - b: two\n", "f.yaml")

    one, two = Text("one", "f.yaml", 2), Text("two", "f.yaml", 3)
    inner = Pairs(((Text("b", "f.yaml", 3), two),), "f.yaml", 3)
    assert tree == Pairs(((Text("a", "f.yaml", 1), Items((one, inner), "f.yaml", 2)),), "f.yaml", 1)


@pytest.mark.parametrize("raw", [b"", b"\n\n", b"# a comment\n", b"\xef\xbb\xbf# after a byte order mark\n"])
def test_an_empty_file_is_named(raw: bytes) -> None:
    tree, problems = parse_yaml(raw, "f.yaml")

    assert tree is None
    assert [str(problem) for problem in problems] == [
        "f.yaml: holds nothing; write its lists again, or remove the file"
    ]


@pytest.mark.parametrize(
    ("raw", "expected"),
    [
        (b"a: &x 1\nb: *x\n", ["1: uses the anchor '&x'", "2: uses the alias '*x'"]),
        (b"a: !thing 1\n", ["1: uses the tag '!thing'"]),
        (b"a: 1\na: 2\n\n", ["2: repeats the key 'a' of line 1"]),
        (
            b"- {a: 1, b: 2, a: 3, b: 4}\n",
            ["1: repeats the key 'a' of line 1", "1: repeats the key 'b' of line 1"],
        ),
        (b"a: 1\n---\nb: 2\n", ["2: starts a second document"]),
        (b"a: 1\nb: \0\n", ["2: holds a NUL byte"]),
        (b"a: 1\n\nb: \xff\n", ["3: is not UTF-8 text"]),
        (b"[" * (DEEPEST + 1), [f"1: nests deeper than {DEEPEST}"]),
        (b"#" * (LARGEST + 1), [f"0: holds more than {LARGEST:,} bytes"]),
        (b"{a: 1}: 2\n", ["1: has a key that is not text"]),
    ],
)
def test_what_is_refused(raw: bytes, expected: list[str]) -> None:
    assert messages(raw) == expected


@pytest.mark.parametrize("start", [b"[", b"{", b"- ", b"? ", b"[{", b"a: [", b"&a ", b"!a "])
def test_endless_starts_are_problems_at_once(start: bytes) -> None:
    tree, problems = parse_yaml(start * (LARGEST // len(start)), "f.yaml")

    assert tree is None
    assert len(problems) >= 1


def test_nesting_up_to_the_bound_is_read() -> None:
    tree, problems = parse_yaml(b"[" * DEEPEST + b"]" * DEEPEST, "f.yaml")

    assert problems == []
    assert tree is not None


def test_a_billion_laughs_stay_one() -> None:
    lines = ["a0: &a0 ha"] + [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]" for n in range(1, 20)]
    tree, problems = parse_yaml("\n".join(lines).encode(), "f.yaml")

    assert len(problems) == 20 + 19 * 9
    assert tree is not None
    assert len(str(plain(tree))) < 2000


def test_ill_formed_yaml_names_its_line() -> None:
    assert messages(b"a: 1\nb: [1, 2\nc: 3\n")[0].startswith(
        ("2: is not well-formed", "3: is not well-formed")
    )


def test_a_missing_file_is_one_clear_line(tmp_path: Path) -> None:
    tree, problems = read_yaml(str(tmp_path / "none.yaml"), "none.yaml")

    assert tree is None
    assert [str(problem) for problem in problems] == [
        "none.yaml: cannot be read (No such file or directory); check that it exists and may be read"
    ]


@given(
    st.one_of(
        st.binary(max_size=300), st.text(max_size=300).map(lambda text: text.encode("utf-8", "replace"))
    )
)
def test_any_bytes_give_a_tree_or_problems(raw: bytes) -> None:
    tree, problems = parse_yaml(raw, "f.yaml")

    assert tree is not None or problems
    assert all("\n" not in str(problem) for problem in problems)


@given(
    st.recursive(
        st.text(st.characters(codec="ascii", categories=["L", "N"]), max_size=5),
        lambda inner: (
            st.lists(inner, max_size=3) | st.dictionaries(st.text("abc", max_size=3), inner, max_size=3)
        ),
        max_leaves=12,
    )
)
def test_what_is_written_is_read_back(value: object) -> None:
    import json

    tree, problems = parse_yaml(json.dumps(value).encode(), "f.yaml")

    assert problems == []
    assert tree is not None
    assert plain(tree) == value
