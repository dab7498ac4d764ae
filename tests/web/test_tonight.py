"""The page Tonight over HTTP: answers kept and shown, mistakes marked, nothing that leads nowhere."""

import re
import sqlite3
from html import unescape
from io import BytesIO
from pathlib import Path

import pypdf
import pytest
from starlette.testclient import TestClient

from conewright.model.rehearsed import Rehearsal
from conewright.model.session import Session
from conewright.store.demo import TONIGHT
from conewright.store.evening import last_evening
from conewright.store.keep import Keep, open_keep
from conewright.web.app import make_app
from conewright.web.planner import Planner
from tests.web.conftest import ADDRESS, NOW


def words(page: str) -> str:
    """The words of a page, without marks, on one line."""
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", page)).split())


def counted(page: str) -> int:
    found = re.search(r'<output id="here"[^>]*>(\d+)</output>', page)
    assert found is not None
    return int(found[1])


@pytest.fixture
def session(planner: Planner) -> Session:
    return planner.session(TONIGHT, planned=TONIGHT.here)


def test_the_first_page_shows_the_demo_evening(client: TestClient, session: Session) -> None:
    answer = client.get("/")
    assert answer.url.path == "/tonight"
    shown = words(answer.text)
    assert "Tuesday 3 June, 17:45 to 18:55" in shown
    assert counted(answer.text) == 13
    for said in ("under 11", "70 minutes", "30 by 22 m of grass", "12 balls, 24 cones, 2 mini goals, 20 bibs"):
        assert said in shown
    for block in session.blocks:
        assert block.exercise.name in shown
    assert "Local rules" in shown


def test_adults_are_spoken_of_before_the_clock(client: TestClient) -> None:
    page = client.get("/tonight").text
    assert page.index("adults for 13 children") < page.index('class="clock ')


def test_only_pages_that_exist_are_named(client: TestClient) -> None:
    nav = client.get("/tonight").text.split("<nav", 1)[1].split("</nav>", 1)[0]
    assert re.findall(r">(\w+)</a>", nav) == ["Tonight"]


def test_everything_a_page_links_to_is_there(client: TestClient) -> None:
    page = client.get("/tonight").text
    links = {unescape(link).split("#")[0] for link in re.findall(r'(?:href|src|action|data-film)="([^"]+)"', page)}
    got = {link for link in links if link.startswith("/") and link not in ("/light",)}
    assert len(got) > 10
    for link in got:
        assert client.get(link).status_code == 200, link
    for script in ("tonight", "player", "film", "moment", "swap", "track"):
        answer = client.get(f"/tonight/static/{script}.js")
        assert answer.status_code == 200
        assert answer.headers["content-type"].startswith("text/javascript")


def test_one_more_and_one_fewer_work_without_a_script(client: TestClient, keep: Keep) -> None:
    more = client.post("/tonight", data={"here": "13", "step": "more", "block": "2"})
    assert (more.url.path, more.url.query) == ("/tonight", b"here=14&block=2")
    assert counted(more.text) == 14
    assert last_evening(keep).tonight.here == 14
    assert "Planned for 13, fitted again to 14" in words(more.text)
    fewer = client.post("/tonight", data={"here": "13", "step": "fewer"})
    assert counted(fewer.text) == 12


@pytest.mark.parametrize(("here", "step", "after"), [("0", "fewer", 0), ("60", "more", 60), ("1", "fewer", 0)])
def test_the_count_stays_within_bounds(client: TestClient, here: str, step: str, after: int) -> None:
    assert counted(client.post("/tonight", data={"here": here, "step": step}).text) == after


def test_another_count_keeps_the_plan_and_a_wish_plans_anew(client: TestClient, keep: Keep) -> None:
    client.post("/tonight", data={"here": "16"})
    assert last_evening(keep).planned == 13
    page = client.get("/tonight").text
    assert "Plan it anew for 16" in page
    page = client.post("/tonight", data={"here": "16", "anew": "1"}).text
    assert last_evening(keep).planned == 16
    assert "Plan it anew" not in page


def test_other_answers_plan_anew(client: TestClient, keep: Keep) -> None:
    client.post("/tonight", data={"here": "15"})
    shown = words(client.post("/tonight", data={"minutes": "60", "starts": "18:00"}).text)
    assert last_evening(keep).planned == 15
    assert "Tuesday 3 June, 18:00 to 19:00" in shown
    assert "60 minutes" in shown


def test_what_was_answered_is_there_after_the_next_start(client: TestClient, keep: Keep, planner: Planner) -> None:
    client.post("/tonight", data={"here": "10", "balls": "9", "aim": "dribbling"})
    client.post("/light", data={"light": "sun", "back": "/tonight"})
    keep.close()
    again = open_keep(keep.path, make_folder=False)
    page = TestClient(make_app(again, planner, now=lambda: NOW), base_url=ADDRESS).get("/tonight").text
    assert counted(page) == 10
    assert "9 balls" in page
    assert "dribbling" in page
    assert '<html lang="en" data-mode="sun">' in page
    again.close()


def test_a_link_may_name_another_count_and_changes_nothing(client: TestClient, keep: Keep) -> None:
    assert counted(client.get("/tonight?here=9").text) == 9
    assert last_evening(keep).tonight.here == 13
    for nonsense in ("-1", "many", "9" * 50, ""):
        assert counted(client.get("/tonight", params={"here": nonsense}).text) == 13


def test_a_block_is_chosen_by_its_link(client: TestClient, session: Session) -> None:
    for number, block in enumerate(session.blocks, 1):
        page = client.get(f"/tonight?block={number}").text
        assert f'<h2 id="block-name">{block.exercise.name}</h2>' in page
        assert page.count('class="blk m') == len(session.blocks)
        current = re.findall(r'id="block-(\d+)"[^>]*aria-current="true"', page)
        assert current == [str(number)]
    for nonsense in ("0", "99", "x", "-1", "9" * 30):
        assert client.get("/tonight", params={"block": nonsense, "copy": nonsense}).status_code == 200


def test_a_rehearsed_block_has_its_strip_and_figures(client: TestClient, session: Session) -> None:
    shown = ""
    for number, block in enumerate(session.blocks, 1):
        page = client.get(f"/tonight?block={number}").text
        if 'data-strip="wide"' in page:
            shown = words(page)
            assert "Play the round" in page
            assert block.exercise.cues[0][1:] in page
    assert "if all goes cleanly" in shown
    assert "decides the pace" in shown
    assert "Where do these come from?" in shown
    assert "Grade C, an estimate" in shown


def test_what_is_left_to_the_children_is_called_an_estimate(client: TestClient, session: Session) -> None:
    number = next(n for n, block in enumerate(session.blocks, 1) if block.exercise.open_play)
    page = client.get(f"/tonight?block={number}").text
    assert "Bars are estimates" in page
    assert "Play the round" not in page
    assert 'class="rng"' in page


def test_the_other_copy_is_shown_by_its_link(client: TestClient, session: Session) -> None:
    number = next(
        n
        for n, block in enumerate(session.blocks, 1)
        if len(block.copies) > 1 and isinstance(block.copies[0].rehearsed, Rehearsal)
    )
    page = client.get(f"/tonight?block={number}").text
    links = [unescape(link) for link in re.findall(r'href="([^"]+copy=2[^"]*)"', page)]
    assert links
    other = client.get(links[0].split("#")[0]).text
    assert other != page
    assert "copy=1" in other


@pytest.mark.parametrize(
    ("answers", "field", "message"),
    [
        ({"here": "-3"}, "here", "-3 children cannot be planned for"),
        ({"width_m": "wide"}, "width_m", '"wide" is not a number of metres'),
        ({"starts": "noon"}, "starts", '"noon" is not an hour of the day'),
        ({"age": "grown up"}, "age", '"grown up" is not an age group'),
        ({"surface": "lava"}, "surface", '"lava" is not a surface'),
        ({"bibs_red": "x"}, "bibs_red", '"x" is not a whole number'),
        ({"aim": "<script>" * 30}, "aim", "the aim is longer than 120 letters"),
    ],
)
def test_a_wrong_answer_is_marked_where_it_stands(
    client: TestClient, keep: Keep, answers: dict[str, str], field: str, message: str
) -> None:
    answer = client.post("/tonight", data={"cones": "30", **answers})
    assert answer.status_code == 422
    tag = re.search(rf'<(?:input|select) id="answer-{field}"[^>]*>', answer.text)
    assert tag is not None
    assert 'aria-invalid="true"' in tag[0]
    assert f'aria-describedby="wrong-{field}"' in tag[0]
    told = re.search(rf'id="wrong-{field}">(.*?)</p>', answer.text, re.DOTALL)
    assert told is not None
    assert message.lower() in words(told[1]).lower()
    assert 'name="cones" value="30"' in answer.text
    assert unescape(answer.text).count(answers[field][:20]) >= 1
    assert "<script>" not in answer.text.replace('<script type="module"', "")
    assert last_evening(keep).tonight == TONIGHT


def test_the_fields_open_without_a_script(client: TestClient) -> None:
    page = client.get("/tonight?open=kit").text
    form = page.split('<form class="answers"', 1)[1].split("</form>", 1)[0]
    assert " hidden" not in form.split(">", 1)[0]
    assert re.search(r'<fieldset id="fields-kit">', form)
    assert re.search(r'<fieldset id="fields-time" hidden>', form)
    shut = client.get("/tonight").text.split('<form class="answers"', 1)[1]
    assert " hidden" in shut.split(">", 1)[0]


def test_nobody_is_counted(client: TestClient) -> None:
    page = client.post("/tonight", data={"here": "0"}).text
    assert "Nobody is counted yet. How many do you expect?" in words(page)
    assert "Print the sheet" not in page
    assert client.get("/tonight/sheet.pdf", follow_redirects=False).status_code == 303
    assert client.get("/tonight/round.json").status_code == 404


def test_where_nothing_fits_the_reason_stands_there(client: TestClient) -> None:
    page = client.post("/tonight", data={"here": "3", "width_m": "6", "depth_m": "5", "balls": "0"}).text
    assert "Nothing fits 3 children" in words(page)
    assert 'class="clock ' not in page


def test_the_sheet_is_a_pdf_of_this_evening(client: TestClient, session: Session) -> None:
    answer = client.get("/tonight/sheet.pdf?here=13")
    assert answer.headers["content-type"] == "application/pdf"
    assert "tonight-2025-06-03-13.pdf" in answer.headers["content-disposition"]
    text = "".join(page.extract_text() for page in pypdf.PdfReader(BytesIO(answer.content)).pages)
    for block in session.blocks:
        assert block.exercise.name in " ".join(text.split())
    assert "13 children" in text


def test_the_round_moves_everybody_on_the_picture(client: TestClient, session: Session) -> None:
    number = next(n for n, block in enumerate(session.blocks, 1) if isinstance(block.copies[0].rehearsed, Rehearsal))
    films = client.get(f"/tonight/round.json?block={number}").json()
    block = session.blocks[number - 1]
    wide = films["wide"]
    assert [len(copy["people"]) for copy in wide["copies"]] == [copy.size for copy in block.copies]
    assert len(films["phone"]["copies"]) == 1
    ox, oy, ax, ay, ux, uy = wide["ground"]
    for person in wide["copies"][0]["people"]:
        x, y = person["knots"][1:3]
        assert 0 <= ox + x * ax + y * ux <= 786
        assert 0 <= oy + x * ay + y * uy <= 700
        assert person["mark"].startswith("<g class=")
    seconds = wide["copies"][0]["seconds"]
    assert 5 < seconds <= 60
    assert all(person["knots"][-3] == pytest.approx(seconds, abs=0.02) for person in wide["copies"][0]["people"])


def test_light_is_remembered_and_only_own_pages_are_gone_back_to(client: TestClient) -> None:
    for back, where in (
        ("/tonight", "/tonight"),
        ("//example.org", "/"),
        ("https://example.org", "/"),
        ("/\\x.org", "/"),
    ):
        answer = client.post("/light", data={"light": "dark", "back": back}, follow_redirects=False)
        assert (answer.status_code, answer.headers["location"]) == (303, where)
    page = client.get("/tonight").text
    assert 'data-mode="dark"' in page
    assert 'value="dark" aria-pressed="true"' in page
    client.post("/light", data={"light": "glitter"})
    assert 'data-mode="dark"' in client.get("/tonight").text


def test_a_read_only_file_is_said_on_the_page(tmp_path: Path, planner: Planner) -> None:
    path = tmp_path / "club.db"
    open_keep(path, make_folder=False).close()
    path.chmod(0o444)
    keep = open_keep(path, make_folder=False)
    client = TestClient(make_app(keep, planner, now=lambda: NOW), base_url=ADDRESS)
    shown = words(client.post("/tonight", data={"here": "12"}).text)
    assert "Nothing is remembered after you close Conewright" in shown
    assert str(path) in shown
    keep.close()


def test_a_locked_file_costs_no_answer(client: TestClient, keep: Keep) -> None:
    keep.connection.execute("pragma busy_timeout = 20")
    other = sqlite3.connect(keep.path, isolation_level=None)
    other.execute("begin immediate")
    page = client.post("/tonight", data={"minutes": "80"}).text
    other.close()
    assert "80 minutes" in page
    assert "The data file is in use elsewhere" in page
    assert "in use elsewhere" not in client.post("/tonight", data={"here": "12"}).text
    assert last_evening(keep).tonight.minutes == 80


def test_a_failure_of_ours_is_told_calmly(keep: Keep, planner: Planner) -> None:
    app = make_app(keep, planner, now=lambda: NOW)
    client = TestClient(app, base_url=ADDRESS, raise_server_exceptions=False)
    keep.connection.execute("drop table squad")
    answer = client.get("/tonight")
    assert answer.status_code == 500
    assert "went wrong" in answer.text
    assert "Traceback" not in answer.text
