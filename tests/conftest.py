"""Options that all tests share."""

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--long", action="store_true", help="run the full counts of the long trials, not a sample")
    parser.addoption(
        "--rewrite", action="store_true", help="write golden files anew; read the difference before commit"
    )


@pytest.fixture(scope="session")
def long(request: pytest.FixtureRequest) -> bool:
    """Whether the full counts were asked for."""
    return bool(request.config.getoption("--long"))


@pytest.fixture(scope="session")
def rewrite(request: pytest.FixtureRequest) -> bool:
    """Whether golden files are to be written anew."""
    return bool(request.config.getoption("--rewrite"))
