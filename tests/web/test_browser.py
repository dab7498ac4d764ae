"""The pages in a real browser: counting, playing, keys, less motion, no scripts, paper, and what axe finds."""

import os
import re
import shutil
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from io import BytesIO
from pathlib import Path

import pypdf
import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, BrowserContext, Locator, Page, sync_playwright

pytestmark = pytest.mark.browser

ROOT = Path(__file__).parents[2]
PICTURE = ROOT / "docs" / "images" / "tonight.png"
ARGUMENTS = (
    *("--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run"),
    *("--disable-background-networking", "--disable-component-update", "--disable-sync"),
)
WIDTHS = {"phone": 360, "tablet": 820, "desk": 1440}
LIGHTS = ("paper", "dark", "sun")
QUICK_MS = 300
PATIENCE_S = 10.0
EXPECTED = ("422", "ERR_FAILED")  # what the browser says of answers that tests ask for
LEAST_TARGET_PX = 48


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """The machine's own browser."""
    program = os.environ.get("CONEWRIGHT_BROWSER") or shutil.which("chromium")
    if not program:
        pytest.skip("no browser: name one by CONEWRIGHT_BROWSER")
    with sync_playwright() as playing:
        running = playing.chromium.launch(executable_path=program, args=list(ARGUMENTS))
        yield running
        running.close()


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """A server of its own process, as a coach starts it."""
    data = tmp_path_factory.mktemp("data") / "club.db"
    words = ("serve", "--no-browser", "--port", "0", "--data", str(data))
    running = subprocess.Popen(
        [sys.executable, "-m", "conewright", *words],
        env={**os.environ, "PYTHONPATH": str(ROOT / "src"), "PYTHONUNBUFFERED": "1"},
        stdout=subprocess.PIPE,
        text=True,
    )
    assert running.stdout is not None
    found = re.search(r"http://127\.0\.0\.1:\d+", running.stdout.readline())
    assert found is not None
    yield found[0]
    running.terminate()
    running.wait(timeout=20)
    running.stdout.close()


@pytest.fixture
def opened(browser: Browser, address: str) -> Iterator[Callable[..., Page]]:
    """Opens the page for eleven children; everything the browser complains of fails the test."""
    contexts: list[BrowserContext] = []
    complaints: list[str] = []

    def open_page(path: str = "/tonight?here=11", *, width: str = "desk", **how: object) -> Page:
        context = browser.new_context(viewport={"width": WIDTHS[width], "height": 900}, **how)  # type: ignore[arg-type]
        contexts.append(context)
        page = context.new_page()
        page.on("pageerror", lambda error: complaints.append(str(error)))
        page.on("console", lambda said: complaints.append(said.text) if said.type == "error" else None)
        page.goto(address)
        page.request.post(f"{address}/tonight", form={"here": "11", "anew": "1", "minutes": "70", "adults": "2"})
        page.goto(f"{address}{path}")
        return page

    yield open_page
    for context in contexts:
        context.close()
    assert [one for one in complaints if not any(sign in one for sign in EXPECTED)] == []


def until(page: Page, condition: str, arg: object = None) -> None:
    """Wait for a condition; the pages forbid what the driver's own waiting does."""
    ends = time.monotonic() + PATIENCE_S
    while not page.evaluate(condition, arg):
        assert time.monotonic() < ends, condition
        page.wait_for_timeout(20)


def evening(page: Page) -> list[str]:
    return page.locator(".blk").all_inner_texts()


def choose(page: Page, number: int) -> None:
    page.locator(f"#block-{number}").click()
    until(page, "id => document.getElementById(id).hasAttribute('aria-current')", arg=f"block-{number}")
    until(
        page,
        "id => document.querySelector(`#${id} b`).textContent === document.getElementById('block-name').textContent",
        arg=f"block-{number}",
    )


def block_that_plays(page: Page) -> Page:
    for number in range(1, page.locator(".blk").count() + 1):
        choose(page, number)
        if page.locator("#play").count():
            return page
    raise AssertionError("no block of the evening can be played")


def places(page: Page) -> list[str]:
    return page.eval_on_selector_all(
        '[data-picture="wide"] .movers > g', "marks => marks.map(mark => mark.style.transform)"
    )


def test_one_more_changes_the_evening_quickly_and_keeps_focus_and_scroll(opened: Callable[..., Page]) -> None:
    page = opened()
    page.wait_for_timeout(1500)  # what may come next is made ready
    before = evening(page)
    page.locator("#more").focus()
    page.evaluate("scrollTo(0, 120)")
    took = page.evaluate(
        """() => new Promise(done => {
            const started = performance.now();
            new MutationObserver((_, seen) => {
                if (document.querySelector('[data-told]').dataset.told.includes('12')) {
                    seen.disconnect();
                    done(performance.now() - started);
                }
            }).observe(document.body, { subtree: true, childList: true });
            document.getElementById('more').click();
        })"""
    )
    assert took < QUICK_MS
    assert page.locator("#here").inner_text() == "12"
    assert evening(page) != before or "Planned for 11, fitted again to 12" in page.inner_text("main")
    assert page.evaluate("document.activeElement.id") == "more"
    assert page.evaluate("scrollY") == 120
    assert "here=12" in page.url
    until(page, "document.getElementById('told').textContent.startsWith('Fitted to 12')")
    page.go_back()
    until(page, "document.getElementById('here').textContent === '11'")
    assert evening(page) == before


def test_pressing_quickly_ends_where_it_was_pressed_to(opened: Callable[..., Page]) -> None:
    page = opened()
    for _ in range(5):
        page.locator("#more").click()
    for _ in range(2):
        page.locator("#fewer").click()
    until(page, "document.querySelector('[data-told]').dataset.told.startsWith('Fitted to 14')")
    assert page.locator("#here").inner_text() == "14"
    assert "here=14" in page.url
    page.reload()
    assert page.locator("#here").inner_text() == "14"


def test_a_block_is_chosen_in_place(opened: Callable[..., Page]) -> None:
    page = opened()
    page.locator("#block-3").click()
    until(page, "document.getElementById('block-3').getAttribute('aria-current') === 'true'")
    assert page.locator("#block-name").inner_text() == page.locator("#block-3 b").inner_text()
    assert "block=3" in page.url
    assert page.evaluate("document.activeElement.id") == "block-3"


def test_a_round_is_played_held_and_stopped(opened: Callable[..., Page]) -> None:
    page = block_that_plays(opened())
    page.locator("#play-round").click()
    until(page, "document.querySelectorAll('[data-picture=wide] .movers > g').length > 0")
    first = places(page)
    page.wait_for_timeout(1500)
    later = places(page)
    assert len(first) == len(later) > 4
    assert first != later
    assert page.locator(".moment").first.is_visible()
    assert float(page.locator(".scrub").first.get_attribute("aria-valuenow") or 0) > 1
    page.locator("#play-round").click()
    held = places(page)
    page.wait_for_timeout(300)
    assert places(page) == held
    assert page.locator("#play-round").inner_text() == "Play on"
    page.locator("#play-stop").click()
    assert page.locator(".movers").count() == 0
    assert not page.locator(".moment").first.is_visible()


def test_half_speed_is_half_as_fast(opened: Callable[..., Page]) -> None:
    page = block_that_plays(opened())
    now = "Number(document.querySelector('.scrub').getAttribute('aria-valuenow'))"
    page.locator("#play-round").click()
    until(page, f"{now} > 0.5")
    gained = f"""() => new Promise(done => {{
        const [from, time] = [{now}, performance.now()];
        setTimeout(() => done(({now} - from) / (performance.now() - time) * 1000), 1200);
    }})"""
    assert page.evaluate(gained) == pytest.approx(1.0, abs=0.15)
    page.locator("#play-slow").click()
    assert page.evaluate(gained) == pytest.approx(0.5, abs=0.1)


def test_sentences_are_stepped_through(opened: Callable[..., Page]) -> None:
    page = block_that_plays(opened())
    steps = page.locator(".sen li[data-step]")
    for number in range(steps.count()):
        page.locator("#play-step").click()
        until(page, "at => document.querySelectorAll('.sen li[data-step]')[at].classList.contains('on')", arg=number)
        step = steps.nth(number).get_attribute("data-step")
        assert page.locator(f'[data-picture="wide"] .stepmark.lit:not([data-step="{step}"])').count() == 0
        assert page.locator(f'[data-picture="wide"] .stepmark.lit[data-step="{step}"]').count() > 0
        assert (steps.nth(number).inner_text().split("\n")[-1])[:12] in page.locator("#told").inner_text()
    page.locator("#play-step").click()
    until(page, "!document.querySelector('.stepmark.lit, .sen li.on')")


def test_the_strip_is_scrubbed_by_pointer_and_by_keys(opened: Callable[..., Page]) -> None:
    page = block_that_plays(opened())
    handle = page.locator('[data-strip="wide"] .scrub')
    handle.scroll_into_view_if_needed()
    box = handle.bounding_box()
    assert box is not None
    page.mouse.click(box["x"] + box["width"] / 4, box["y"] + box["height"] / 2)
    until(page, "document.querySelectorAll('[data-picture=wide] .movers > g').length > 0")
    assert float(handle.get_attribute("aria-valuenow") or 0) == pytest.approx(15, abs=0.3)
    quarter = places(page)
    page.mouse.move(box["x"] + box["width"] / 4, box["y"] + 10)
    page.mouse.down()
    page.mouse.move(box["x"] + box["width"] / 2, box["y"] + 10, steps=4)
    page.mouse.up()
    assert float(handle.get_attribute("aria-valuenow") or 0) == pytest.approx(30, abs=0.5)
    assert places(page) != quarter
    page.keyboard.press("Home")
    page.keyboard.press("ArrowRight")
    page.keyboard.press("PageUp")
    assert handle.get_attribute("aria-valuetext") == "5.5 seconds"
    page.keyboard.press("ArrowLeft")
    assert handle.get_attribute("aria-valuetext") == "5.0 seconds"


def test_less_motion_steps_and_does_not_play(opened: Callable[..., Page]) -> None:
    page = block_that_plays(opened(reduced_motion="reduce"))
    assert not page.locator("#play-round").is_visible()
    assert not page.locator("#play-slow").is_visible()
    page.locator("#play-step").click()
    until(page, "document.querySelectorAll('[data-picture=wide] .movers > g').length > 0")
    start = places(page)
    page.wait_for_timeout(400)
    assert places(page) == start
    page.locator("#play-step").click()
    until(page, "document.getElementById('told').textContent.includes('is done')")


def test_everything_is_done_by_keys(opened: Callable[..., Page]) -> None:
    page = opened()
    reached: list[str] = []
    for _ in range(60):
        page.keyboard.press("Tab")
        name, ring = page.evaluate(
            """() => {
                const one = document.activeElement;
                const name = one === document.body ? '' : one.id || one.value || one.className || one.textContent;
                return [name, getComputedStyle(one).outlineStyle];
            }"""
        )
        if not name:
            break
        assert ring == "solid", name
        reached.append(name)
    wanted = ["skip", "paper", "dark", "sun", "sheet", "fewer", "more", "word-who", "word-time", "word-kit", "block-1"]
    assert [one for one in wanted if one not in reached] == []
    assert [reached.index(one) for one in wanted] == sorted(reached.index(one) for one in wanted)
    page.locator("#word-time").focus()
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "answer-minutes"
    page.keyboard.press("Control+a")
    page.keyboard.type("60")
    page.keyboard.press("Enter")
    until(page, "document.getElementById('word-time').textContent === '60 minutes'")
    assert page.evaluate("document.activeElement.id") == "word-time"
    assert not page.locator("#answers").is_visible()
    page.keyboard.press("Enter")
    page.keyboard.press("Escape")
    assert page.evaluate("document.activeElement.id") == "word-time"


def test_a_wrong_answer_is_marked_and_gets_the_focus(opened: Callable[..., Page]) -> None:
    page = opened()
    page.locator("#word-ground").click()
    page.locator("#answer-depth_m").fill("deep")
    page.locator("#answer-width_m").fill("28")
    page.locator("#fit").click()
    until(page, "document.activeElement.id === 'answer-depth_m'")
    assert page.locator("#answer-depth_m").get_attribute("aria-invalid") == "true"
    assert page.locator("#answer-width_m").input_value() == "28"
    assert "is not a number" in page.locator("#told").inner_text()
    assert "30 by 22 m" in page.locator("#word-ground").inner_text()
    page.locator("#leave").click()
    until(page, "document.activeElement.id === 'word-ground'")
    page.locator("#word-ground").click()
    assert page.locator("#answer-depth_m").input_value() == "22"
    assert page.locator("[aria-invalid]").count() == 0


def test_a_server_that_does_not_answer_is_told_to_everybody(opened: Callable[..., Page]) -> None:
    page = opened()
    page.route("**/tonight", lambda route: route.abort())
    page.locator("#more").click()
    until(page, "document.getElementById('told').textContent.includes('did not answer')")
    assert page.locator("#told").is_visible()


def test_the_page_works_without_scripts(opened: Callable[..., Page]) -> None:
    page = opened(java_script_enabled=False)
    page.locator("#more").click()
    assert page.locator("#here").inner_text() == "12"
    page.locator("#word-adults").click()
    page.locator("#answer-adults").fill("3")
    page.locator("#fit").click()
    assert page.locator("#word-adults").inner_text() == "3 adults"
    page.locator("#block-3").click()
    assert page.locator("#block-3").get_attribute("aria-current") == "true"
    assert not page.locator("#play").is_visible()
    page.locator("button[value=sun]").click()
    assert page.locator("html").get_attribute("data-mode") == "sun"
    page.locator("button[value=paper]").click()


def test_light_is_changed_at_once_and_remembered(opened: Callable[..., Page]) -> None:
    page = opened()
    with page.expect_response("**/light"):
        page.locator("button[value=dark]").click()
    assert page.locator("html").get_attribute("data-mode") == "dark"
    page.reload()
    assert page.locator("html").get_attribute("data-mode") == "dark"
    with page.expect_response("**/light"):
        page.locator("button[value=paper]").click()
    assert page.locator("button[value=paper]").get_attribute("aria-pressed") == "true"


def test_the_page_prints_in_words_and_without_buttons(opened: Callable[..., Page]) -> None:
    page = opened()
    names = page.locator(".blk b").all_inner_texts()
    sheets = pypdf.PdfReader(BytesIO(page.pdf(format="A4"))).pages
    text = " ".join(" ".join(sheet.extract_text().split()) for sheet in sheets)
    assert len(sheets) <= 2
    for words in (*names, page.locator(".cues li").first.inner_text(), "Local rules"):
        assert words in text
    for words in ("one more", "Play the round", "Print the sheet", "Dark"):
        assert words not in text


@pytest.mark.parametrize("width", WIDTHS)
def test_nothing_is_wider_than_the_page(opened: Callable[..., Page], width: str) -> None:
    page = opened(width=width)
    for number in range(1, page.locator(".blk").count() + 1):
        choose(page, number)
        assert page.evaluate("document.documentElement.scrollWidth - innerWidth") == 0


@pytest.mark.parametrize("width", ["phone", "tablet"])
def test_everything_that_is_touched_is_large_enough(opened: Callable[..., Page], width: str) -> None:
    page = opened(width=width, has_touch=True)
    page.locator("#word-kit").click()
    touched = page.locator(
        "main a:visible, main button:visible, main input:visible, main summary:visible, header a:visible"
    )
    assert touched.count() > 15
    small = [_called(one) for one in touched.all() if not _is_large(one)]
    assert small == []


def _is_large(one: Locator) -> bool:
    box = one.bounding_box()
    assert box is not None
    lines = one.evaluate("one => [...one.getClientRects()].every(line => line.height >= 47.5)")
    return box["height"] >= LEAST_TARGET_PX - 0.5 and lines and box["width"] >= 40


def _called(one: Locator) -> str:
    return f"{one.get_attribute('id')} {one.bounding_box()}"


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("light", LIGHTS)
def test_axe_finds_nothing(opened: Callable[..., Page], width: str, light: str) -> None:
    page = block_that_plays(opened(width=width))
    page.evaluate("light => { document.documentElement.dataset.mode = light; }", light)
    page.locator("#word-kit").click()
    page.locator("#origins").click()
    found = Axe().run(
        page, options={"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}
    )
    told = [(one["id"], [node["html"][:120] for node in one["nodes"]][:3]) for one in found.response["violations"]]
    assert told == []


def test_the_picture_in_the_readme(opened: Callable[..., Page], rewrite: bool) -> None:
    page = block_that_plays(opened())
    if rewrite:
        PICTURE.parent.mkdir(parents=True, exist_ok=True)
        page.evaluate("document.activeElement.blur(); scrollTo(0, 0)")
        page.screenshot(path=str(PICTURE), full_page=True)
    assert PICTURE.read_bytes().startswith(b"\x89PNG")
