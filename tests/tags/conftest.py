"""A fresh project for each test."""

from pathlib import Path

import pytest

from tags.project import STICKERS, Project


@pytest.fixture
def project(tmp_path: Path) -> Project:
    return Project(tmp_path).studio(STICKERS)
