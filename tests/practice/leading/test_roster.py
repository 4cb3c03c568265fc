"""Rosters as offices write them."""

import pytest

from assistant.practice.leading.roster import in_teams, read_roster, typed_roster

BOM = b"\xef\xbb\xbf"


def pairs(raw: bytes) -> list[tuple[str, str]]:
    return [(each.name, each.team) for each in read_roster(raw, "crew.csv").people]


@pytest.mark.parametrize(
    "raw",
    [
        b"Ana Lima\nBen Okoro\n",
        b"name\nAna Lima\nBen Okoro\n",
        BOM + b"Name\r\nAna Lima\r\nBen Okoro\r\n",
        b"Staff No;Full Name;E-mail\r\n17;Ana Lima;a@x\r\n18;Ben Okoro;b@x\r\n",
        b'"Surname","First name"\n"Lima","Ana"\n"Okoro","Ben"\n',
        b"First Name\tLast Name\nAna\tLima\nBen\tOkoro",
        "sep=;\nname\nAna Lima\nBen Okoro".encode("utf-16"),
        b"17,Ana,Lima\n18,Ben,Okoro\n",
        b"\n  Ana   Lima \n\n;;\nBen Okoro\n\n",
    ],
)
def test_everybody_is_found_whatever_the_file_looks_like(raw: bytes) -> None:
    assert pairs(raw) == [("Ana Lima", ""), ("Ben Okoro", "")]


def test_what_holds_no_text_is_told_in_one_line() -> None:
    roster = read_roster(bytes(range(256)) * 8, "photo.jpg")

    assert roster.people == ()
    (note,) = roster.notes
    assert note.startswith("photo.jpg: this is no list of names")


def test_teams_are_taken_from_their_column() -> None:
    assert pairs(b"name;team\nAna;Red\nBen;Blue\n") == [("Ana", "Red"), ("Ben", "Blue")]
    assert pairs(b"Ana,Red\nBen,Blue\nCleo,Red\nDan,Blue\n")[2] == ("Cleo", "Red")


def test_duplicates_and_what_is_no_name_are_told_by_line() -> None:
    roster = read_roster(b"name,team\nAna,\n\nBen,\n ANA ,\n,Red\nforget,\n", "crew.csv")

    assert [each.name for each in roster.people] == ["Ana", "Ben"]
    assert roster.notes == (
        "crew.csv:5: ANA stands in line 2 already; named once; if they are two people, add what tells them apart",
        "crew.csv:6: a name is needed; left out",
        'crew.csv:7: "forget" is a word of the command; add something to the name; left out',
    )


def test_two_people_of_one_name_in_two_teams_are_both_there() -> None:
    roster = read_roster(b"name;team\nBen;Blue\nBen;Red\nBEN;Red\nCleo;Red\n", "crew.csv")

    assert [tuple(each) for each in roster.people] == [("Ben", "Blue"), ("Ben (Red)", "Red"), ("Cleo", "Red")]
    assert roster.notes == (
        "crew.csv:3: Ben stands in line 2 already; taken for another person, of another team, and called Ben (Red)",
        "crew.csv:4: BEN stands in line 2 already; named once; if they are two people, add what tells them apart",
    )


def test_windows_text_is_read_and_said_to_be() -> None:
    roster = read_roster("name\nJosé Núñez\n".encode("cp1252"), "crew.csv")

    assert roster.people[0].name == "José Núñez"
    assert "not UTF-8" in roster.notes[0]


@pytest.mark.parametrize("raw", [b"", b"\n\n", BOM, b"\x00\x00", b'"', b"\xff\xfe"])
def test_a_file_of_nobody_holds_nobody(raw: bytes) -> None:
    assert read_roster(raw, "crew.csv").people == () or raw == b'"'


def test_typed_names_with_teams_in_brackets() -> None:
    roster = typed_roster("Ana Lima, Ben (Red); ana lima, ,Cleo [Blue]")

    assert [tuple(each) for each in roster.people] == [("Ana Lima", ""), ("Ben", "Red"), ("Cleo", "Blue")]
    assert [note.split(";")[0] for note in roster.notes] == ["name 3: ana lima stands as name 1 already"]


def test_people_are_dealt_into_teams_of_like_size() -> None:
    dealt = in_teams(typed_roster("A, B (Red), C, D, E").people, 2)

    assert [each.team for each in dealt] == ["Team 1", "Red", "Team 2", "Team 1", "Team 2"]
