"""The order of the packages, as the contracts in pyproject.toml state it, holds."""

import os
import subprocess
import sys

ROOT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
LINT = "from importlinter.cli import lint_imports_command as run; run()"


def test_every_import_contract_is_kept() -> None:
    done = subprocess.run(
        [sys.executable, "-c", LINT, "--no-cache"], cwd=ROOT, capture_output=True, text=True, check=False
    )

    assert done.returncode == 0, done.stdout + done.stderr
