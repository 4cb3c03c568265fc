"""Where the knowledge base lies, so that a checkout and an installed copy both find theirs.

A checkout keeps it beside the package, in `knowledge_base/`, where curators edit it; a wheel carries a copy
inside the package. Uses os.path alone, since every question passes through here.
"""

import os

OVERRIDE = "DOWNLOCK_KNOWLEDGE"


def knowledge_root() -> str:
    """Return the absolute path of the folder that holds the knowledge base.

    The environment variable DOWNLOCK_KNOWLEDGE, unless empty, names another folder.
    Raises FileNotFoundError, saying what to do, when there is no such folder.
    """
    named = os.environ.get(OVERRIDE)
    if named:
        return _existing(os.path.abspath(os.path.expanduser(named)), f"correct or unset {OVERRIDE}")
    package = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
    carried = os.path.join(package, "_knowledge_base")
    if os.path.isdir(carried):
        return carried
    return _existing(
        os.path.join(os.path.dirname(package), "knowledge_base"), f"reinstall Downlock, or set {OVERRIDE}"
    )


def _existing(folder: str, remedy: str) -> str:
    if not os.path.isdir(folder):
        raise FileNotFoundError(f"no knowledge base at {folder}: {remedy}")
    return folder
