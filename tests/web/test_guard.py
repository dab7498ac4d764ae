"""Only this machine and its own pages are answered, and a page loads nothing from elsewhere."""

import pytest
from starlette.testclient import TestClient

from conewright.web.guard import MOST_BYTES, host_name


@pytest.mark.parametrize("host", ["127.0.0.1:8017", "localhost:8017", "LOCALHOST", "[::1]:80", "127.0.0.1"])
def test_names_of_this_machine_are_answered(client: TestClient, host: str) -> None:
    assert client.get("/static/cone.svg", headers={"host": host}).status_code == 200


@pytest.mark.parametrize(
    "host", ["example.org", "127.0.0.1.example.org", "localhost.example.org:8017", "192.168.1.20:8017", "", "0.0.0.0"]
)
def test_other_names_are_not(client: TestClient, host: str) -> None:
    answer = client.get("/tonight", headers={"host": host})
    assert answer.status_code == 400
    assert "this machine" in answer.text


@pytest.mark.parametrize(
    ("host", "name"), [("a:1", "a"), ("a", "a"), ("[::1]:8", "[::1]"), ("[::1]", "[::1]"), ("a:", "a")]
)
def test_the_port_is_not_part_of_the_name(host: str, name: str) -> None:
    assert host_name(host) == name


def test_a_page_may_load_nothing_from_elsewhere_and_run_nothing_of_its_own(client: TestClient) -> None:
    answer = client.get("/tonight")
    policy = dict(rule.strip().split(" ", 1) for rule in answer.headers["content-security-policy"].split(";"))
    assert policy["default-src"] == "'none'"
    assert policy["script-src"] == policy["style-src"] == policy["form-action"] == "'self'"
    assert "unsafe" not in answer.headers["content-security-policy"]
    assert answer.headers["x-content-type-options"] == "nosniff"
    assert " style=" not in answer.text
    assert "<style" not in answer.text
    assert " on" + "click" not in answer.text
    assert "http://" not in answer.text.replace("http://www.w3.org/2000/svg", "")
    assert "https://" not in answer.text


def test_refusals_carry_the_same_promises(client: TestClient) -> None:
    answer = client.get("/tonight", headers={"host": "example.org"})
    assert "default-src 'none'" in answer.headers["content-security-policy"]


@pytest.mark.parametrize(
    "headers",
    [
        {"origin": "http://example.org"},
        {"origin": "null"},
        {"origin": "http://127.0.0.1:9999"},
        {"origin": "https://127.0.0.1:8017"},
        {"sec-fetch-site": "cross-site"},
        {"sec-fetch-site": "same-site", "origin": "http://127.0.0.1:8017"},
    ],
)
def test_a_form_from_elsewhere_changes_nothing(client: TestClient, headers: dict[str, str]) -> None:
    answer = client.post("/tonight", data={"here": "7"}, headers=headers)
    assert answer.status_code == 403
    assert '<output id="here" data-part="here" for="fewer more">13</output>' in client.get("/tonight").text


@pytest.mark.parametrize(
    "headers", [{}, {"origin": "http://127.0.0.1:8017"}, {"sec-fetch-site": "same-origin"}, {"sec-fetch-site": "none"}]
)
def test_a_form_from_here_is_taken(client: TestClient, headers: dict[str, str]) -> None:
    assert client.post("/tonight", data={"here": "9"}, headers=headers).status_code == 200


def test_a_form_that_is_too_long_is_refused(client: TestClient) -> None:
    assert client.post("/tonight", data={"aim": "a" * MOST_BYTES}).status_code == 413


def test_a_form_of_unknown_length_is_refused(client: TestClient) -> None:
    assert client.post("/tonight", content=iter([b"here=9"])).status_code == 411


def test_what_is_not_there_is_said_in_the_frame(client: TestClient) -> None:
    answer = client.get("/desk")
    assert answer.status_code == 404
    assert "There is no such page" in answer.text
    assert 'href="/tonight"' in answer.text
    assert client.put("/tonight", content=b"").status_code == 405
    for path in ("/static/../app.py", "/tonight/static/..%2fhandler.py", "/static/fonts/../figures.json"):
        assert client.get(path).status_code == 404
