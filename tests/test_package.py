"""The package gives the words of the main flow, and nothing it does not have."""

import pytest

import conewright


@pytest.mark.parametrize("name", sorted(conewright.FLOW))
def test_every_word_of_the_flow_is_there(name: str) -> None:
    assert getattr(conewright, name).__name__ == conewright.FLOW[name].rpartition(".")[2]


def test_an_unknown_word_says_what_there_is() -> None:
    with pytest.raises(AttributeError, match="rehearse"):
        conewright.juggle  # noqa: B018
