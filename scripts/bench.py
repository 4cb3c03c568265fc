"""Measures the assistant in one run and prints a Markdown table: `python3 scripts/bench.py [--write FILE]`.

Times are told as ratios between things timed in the same run, with that run's milliseconds beside them, which
hold for this machine alone. Right answers are counted beside plain baselines on the same questions.
"""

from __future__ import annotations

import argparse
import os
import platform
import random
import shutil
import subprocess
import sys
import tempfile
import time
from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Iterator, Sequence
from importlib import import_module
from importlib.util import find_spec
from math import log
from pathlib import Path
from statistics import median, quantiles
from typing import NamedTuple

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT))

from assistant.answering.compose import compose  # noqa: E402
from assistant.conversation.context import Context  # noqa: E402
from assistant.conversation.opening import Knowledge, open_knowledge  # noqa: E402
from assistant.conversation.turn import answer_turn, question_of  # noqa: E402
from assistant.knowledge.location import knowledge_root  # noqa: E402
from assistant.knowledge.records import Fact  # noqa: E402
from assistant.resolving.choosing import chosen_record  # noqa: E402
from tests.questions.judging import RIGHT, WRONG, Key, judge, one_line, read_keys  # noqa: E402

QUESTIONS = ROOT / "tests" / "questions"
SETS = ("tuned", "unseen")
ENTRIES = 10_000
RUNS = 7
REPEATS = 3
TIMED = 1_500  # questions that are timed, taken evenly from all: more would only take longer
Best = Callable[[str], str]
"""From a question to the id of the record that a baseline would answer with."""


class Row(NamedTuple):
    """A line of the table: what was measured, what came out, and what it should reach."""

    what: str
    found: str
    reach: str = ""


# --- one question, warm


def singles(name: str) -> list[Key]:
    """Return the questions of a set that stand alone, in file order."""
    keys = [key for path in sorted((QUESTIONS / name).glob("*.jsonl")) for key in read_keys(path)]
    return [key for key in keys if "q" in key]


def evenly(texts: Sequence[str], count: int) -> Sequence[str]:
    """Return about so many of the texts, from the first to the last; all of them if there are no more."""
    return texts[:: max(1, len(texts) // count)]


def question_times(bases: Sequence[Knowledge], texts: Sequence[str]) -> list[list[float]]:
    """Return, for each base, the milliseconds of each question once everything has been asked before.

    The bases take turns with every question, and the best of some runs counts: a machine that is busy for a
    while then slows all of them alike, instead of making one look faster than another.
    """
    for text in texts:
        for knowledge in bases:
            answer_turn(text, Context(), knowledge)
    times = [[float("inf")] * len(texts) for _ in bases]
    for _ in range(REPEATS):
        for place, text in enumerate(texts):
            for of_base, knowledge in zip(times, bases, strict=True):
                of_base[place] = min(of_base[place], _milliseconds(text, knowledge))
    return times


def _milliseconds(text: str, knowledge: Knowledge) -> float:
    begun = time.perf_counter()
    answer_turn(text, Context(), knowledge)
    return 1000 * (time.perf_counter() - begun)


def time_rows(texts: Sequence[str], small: Knowledge, large: Knowledge) -> Iterator[Row]:
    """Yield the times of a question with the delivered base, and with a padded one as ratios to it."""
    before, after = map(_spread, question_times((small, large), texts))
    name = f"one question, warm, best of {REPEATS}, of {len(texts)}"
    reaches = (("median", "1 ms"), ("99th percentile", "3 ms"))
    for (what, reach), one, other in zip(reaches, before, after, strict=True):
        yield Row(f"{name}: {what}, {len(small.base.order)} entries", f"{one:.2f} ms", reach)
        ratio = f"{other / one:.1f} times ({other:.2f} ms)"
        yield Row(f"{name}: {what}, {len(large.base.order):,} entries", ratio, "under 3 times")
    yield _same_row(texts, small, large)


def _same_row(texts: Sequence[str], small: Knowledge, large: Knowledge) -> Row:
    """A larger base that is fast because it no longer answers would show here."""
    pairs = [[answer_turn(text, Context(), base)[0].text for base in (small, large)] for text in texts]
    same = 100 * sum(one == other for one, other in pairs) / len(pairs)
    return Row(f"the same answer with {len(large.base.order):,} entries as with few", f"{same:.1f} %")


def _spread(times: Sequence[float]) -> tuple[float, float]:
    return median(times), quantiles(times, n=100)[98]


# --- a base padded with facts of no meaning


def padded(entries: int, folder: str) -> Knowledge:
    """Return the delivered base with made-up facts beside it, read by the loader as any other files are."""
    root = Path(folder, "padded")
    shutil.copytree(knowledge_root(), root)
    base = opened(str(root)).base
    missing = entries - len(base.order)
    cited = next(s for r in base.records.values() for s in r.sources if not base.documents[s.document].published)
    names = [term.names[0] for term in base.terms.values() if term.kind == "thing" and term.names[0].isalpha()]
    facts = list(made_up_facts(missing, names, f"{cited.document} {cited.paragraph}"))
    for start in range(0, len(facts), 500):
        text = "facts:\n" + "".join(facts[start : start + 500])
        Path(root, base.type_info.id, f"padding_{start}.yaml").write_text(text, encoding="utf-8")
    return opened(str(root))


def made_up_facts(count: int, names: Sequence[str], source: str) -> Iterator[str]:
    """Yield facts in the form of a knowledge file, on the trade's things and on words that are none."""
    pick = random.Random(1)
    for number in range(count):
        thing, other = pick.choice(names), pick.choice(names)
        word, second = (_invented(pick) for _ in range(2))
        yield (
            f'  - {{id: padding-{number}, asks: ["where {word} {thing}", "{word} {thing} {other}"], '
            f'says: "The {word} {thing} is by the {second} {other}.", source: {source}}}\n'
        )


def _invented(pick: random.Random) -> str:
    return "".join(pick.choice("bdfgklmnprstvz") + pick.choice("aeiou") for _ in range(4)) + "x"


def opened(root: str | None = None) -> Knowledge:
    """Return a knowledge base, compiled anew."""
    knowledge, problems = open_knowledge(root, cache_dir="")
    if knowledge is None:
        raise SystemExit("\n".join(map(str, problems)))
    return knowledge


# --- whole processes


def process_row(environment: dict[str, str]) -> Row:
    """Return how long a whole question takes beside a bare interpreter, the best of some runs of each."""
    bare = [sys.executable, "-c", "pass"]
    ask = [sys.executable, "-m", "assistant", "ask", "vle"]
    _seconds(ask, environment)  # fills the cache
    pairs = [(_seconds(bare, environment), _seconds(ask, environment)) for _ in range(RUNS)]
    least, whole = (1000 * min(column) for column in zip(*pairs, strict=True))
    return Row(
        f"`ask vle` as a whole process, against `python -c pass`, best of {RUNS}",
        f"{whole / least:.1f} times ({whole:.0f} ms and {least:.0f} ms)",
        "under 8 times",
    )


def _seconds(command: Sequence[str], environment: dict[str, str]) -> float:
    begun = time.perf_counter()
    subprocess.run(command, cwd=ROOT, env=environment, stdout=subprocess.DEVNULL, check=True)
    return time.perf_counter() - begun


# A small process between, since the peak of a child counts what its parent held when it was started.
_WATCH = """
import os, pty, resource, select, subprocess, sys

ours, theirs = pty.openpty()
command = [sys.executable, "-m", "assistant", "--no-history"]
child = subprocess.Popen(command, stdin=theirs, stdout=theirs, stderr=theirs)
os.close(theirs)


def read_until_quiet(longest):
    while select.select([ours], [], [], longest)[0]:
        try:
            os.read(ours, 65536)
        except OSError:  # the other side has closed
            return
        longest = 0.2


read_until_quiet(20)
for line in [*sys.stdin.read().splitlines(), "stop"]:
    os.write(ours, line.encode() + b"\\r")
    read_until_quiet(5)
print(child.wait(30), resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss)
"""


def memory_row(texts: Sequence[str], environment: dict[str, str]) -> Row:
    """Return the most memory that a conversation at a terminal held."""
    what = f"memory of a conversation of {len(texts)} questions, peak"
    if find_spec("resource") is None or find_spec("pty") is None:
        return Row(what, "not measured: this system has no such terminal", "under 60 MB")
    done = subprocess.run(
        [sys.executable, "-c", _WATCH], cwd=ROOT, env=environment, input="\n".join(texts),
        capture_output=True, text=True, check=False, timeout=120,
    )  # fmt: skip
    if done.returncode or not done.stdout.startswith("0 "):
        return Row(what, f"not measured: {(done.stderr or done.stdout).strip()[-80:]}", "under 60 MB")
    held = int(done.stdout.split()[1]) * (1 if sys.platform == "darwin" else 1024)
    return Row(what, f"{held / 1e6:.0f} MB", "under 60 MB")


# --- right answers, beside baselines


def texts_of(knowledge: Knowledge) -> dict[str, str]:
    """Return what each record is asked by and says, for the baselines to search."""
    found = {}
    for name in knowledge.base.order:
        record = knowledge.base.records[name]
        asks = [*getattr(record, "asks", ()), *(a for o in getattr(record, "outputs", ()) for a in o.asks)]
        says = record.says if isinstance(record, Fact) else getattr(record, "of", getattr(record, "title", ""))
        found[name] = " ".join([*asks, says]).replace("[", "").replace("]", "")
    return found


def bm25(texts: dict[str, str], k: float = 1.5, b: float = 0.75) -> Best:
    """Return the ranking of Okapi BM25 over whole words."""
    counts = {name: Counter(_words(text)) for name, text in texts.items()}
    lengths = {name: sum(count.values()) for name, count in counts.items()}
    mean = sum(lengths.values()) / len(lengths)
    holders: dict[str, list[str]] = defaultdict(list)
    for name, count in counts.items():
        for word in count:
            holders[word].append(name)

    def best(question: str) -> str:
        scores: dict[str, float] = defaultdict(float)
        for word in _words(question):
            having = holders.get(word, ())
            rarity = log(1 + (len(texts) - len(having) + 0.5) / (len(having) + 0.5))
            for name in having:
                often = counts[name][word]
                scores[name] += rarity * often * (k + 1) / (often + k * (1 - b + b * lengths[name] / mean))
        return max(scores, key=lambda name: scores[name], default="")

    return best


def _words(text: str) -> list[str]:
    return "".join(c if c.isalnum() else " " for c in text.lower()).split()


def fuzzy(texts: dict[str, str]) -> Best:
    """Return the ranking of rapidfuzz's token_set_ratio."""
    from rapidfuzz import fuzz, process

    names, choices = list(texts), [" ".join(_words(text)) for text in texts.values()]

    def best(question: str) -> str:
        found = process.extractOne(" ".join(_words(question)), choices, scorer=fuzz.token_set_ratio)
        return names[found[2]] if found else ""

    return best


def embedding(texts: dict[str, str], model: str) -> Best:
    """Return the ranking by cosine of a sentence-embedding model, which must lie in a folder already."""
    encoder = import_module("sentence_transformers").SentenceTransformer(model)
    names, held = list(texts), encoder.encode(list(texts.values()), normalize_embeddings=True)

    def best(question: str) -> str:
        return names[int((held @ encoder.encode([question], normalize_embeddings=True)[0]).argmax())]

    return best


def verdicts(keys: Iterable[Key], best: Best, knowledge: Knowledge) -> list[str]:
    """Return the verdicts on a baseline: the record that it chose answers, as well as that record can."""
    found = []
    for key in keys:
        question = question_of(one_line(key["q"]), knowledge, "")
        name = best(one_line(key["q"]))
        result = chosen_record(name, question, knowledge) if name else None
        found.append(judge(key, compose(result, question, knowledge)) if result else WRONG)
    return found


def own_verdicts(keys: Iterable[Key], knowledge: Knowledge) -> list[str]:
    """Return the verdicts on the assistant itself."""
    return [judge(key, answer_turn(one_line(key["q"]), Context(), knowledge)[0]) for key in keys]


def answer_rows(knowledge: Knowledge, model: str) -> Iterator[Row]:
    """Yield right answers on each set of questions: all of them, and those alone that have an answer."""
    texts = texts_of(knowledge)
    methods: dict[str, Best] = {"BM25": bm25(texts), "rapidfuzz token_set_ratio": fuzzy(texts)}
    missing = "" if find_spec("sentence_transformers") else "skipped: sentence_transformers is not installed"
    missing = missing or ("" if model else "skipped: no --embedding-model folder given")
    if not missing:
        methods["sentence embedding"] = embedding(texts, model)
    for name in SETS:
        keys = singles(name)
        yield Row(f"{name}, {len(keys)} questions: Downlock", _told(keys, own_verdicts(keys, knowledge)))
        for method, best in methods.items():
            told = _told(keys, verdicts(keys, best, knowledge))
            yield Row(f"{name}: {method}, the best record always answers", told, "less")
        if missing:
            yield Row(f"{name}: sentence embedding", missing, "less")


def _told(keys: Sequence[Key], found: Sequence[str]) -> str:
    answerable = [v for key, v in zip(keys, found, strict=True) if key["outcome"] == "answer"]
    right, wrong = (100 * found.count(v) / len(found) for v in (RIGHT, WRONG))
    with_answer = 100 * answerable.count(RIGHT) / len(answerable)
    return f"right {right:.1f} %, wrong {wrong:.1f} %; of those with an answer right {with_answer:.1f} %"


# --- the table


def rows(entries: int, model: str, folder: str) -> Iterator[Row]:
    """Yield everything measured, in the order of the table."""
    environment = {**os.environ, "DOWNLOCK_CACHE": f"{folder}/cache", "DOWNLOCK_HOME": f"{folder}/home"}
    environment["TERM"] = environment.get("TERM", "xterm")
    environment.pop("PYTHONDONTWRITEBYTECODE", None)  # an installed program is compiled once, not at every start
    compiling = [sys.executable, "-m", "compileall", "-q", str(ROOT / "assistant")]
    subprocess.run(compiling, env=environment, stdout=subprocess.DEVNULL, check=True)
    texts = evenly([one_line(key["q"]) for key in singles("tuned")], TIMED)
    small = opened()
    yield process_row(environment)
    yield memory_row([text for text in texts if len(text) < 100][:40], environment)
    yield from time_rows(texts, small, padded(entries, folder))
    yield from answer_rows(small, model)


def on_the_way(found: Iterable[Row]) -> Iterator[Row]:
    """Yield the rows, each named on the way: the whole takes some minutes."""
    for row in found:
        sys.stderr.write(f"{row.what}: {row.found}\n")
        yield row


def markdown(found: Iterable[Row]) -> str:
    """Return the table with the machine that it was measured on."""
    body = [f"| {row.what} | {row.found} | {row.reach} |" for row in on_the_way(found)]
    machine = f"Python {platform.python_version()}, {platform.system()} {platform.machine()}"
    machine += f", {os.cpu_count()} cores"
    if hasattr(os, "getloadavg"):
        machine += f", load {os.getloadavg()[0]:.1f} at the end"
    lines = [f"Measured on {machine}, {time.strftime('%Y-%m-%d')}.", "", "| what | found | reach |"]
    lines.append("| --- | --- | --- |")
    return "\n".join([*lines, *body]) + "\n"


def main(arguments: Sequence[str] | None = None) -> int:
    """Measure, print and perhaps write the table."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").split(":")[0])
    parser.add_argument("--write", metavar="FILE", help="also write the table to a file")
    parser.add_argument("--entries", type=int, default=ENTRIES, help="entries of the padded base")
    parser.add_argument("--embedding-model", default="", metavar="DIR", help="a sentence model on this disk")
    options = parser.parse_args(arguments)
    with tempfile.TemporaryDirectory() as folder:
        text = markdown(rows(options.entries, options.embedding_model, folder))
    sys.stdout.write(text)
    if options.write:
        Path(options.write).write_text(text, encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
