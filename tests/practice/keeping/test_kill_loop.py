"""Programs that write are killed at random moments, a few times; scripts/kill_loop.py does it as often as is liked."""

import subprocess
import sys
from pathlib import Path

SCRIPT = Path(__file__).parents[3] / "scripts" / "kill_loop.py"


def test_a_kill_loses_at_most_the_answer_in_hand(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, str(SCRIPT), "--rounds", "10", "--seed", "3", "--keep", str(tmp_path)],
        capture_output=True,
        text=True,
        check=False,
    )

    assert done.returncode == 0, done.stdout + done.stderr
    assert done.stdout.splitlines()[-1] == "nothing lost but the answer in hand, in 10 kills of 2 programs each"
