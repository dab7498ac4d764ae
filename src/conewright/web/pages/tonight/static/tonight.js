// Tonight with a script: the evening changes in place. Without it every link and form does the same by a new page.

import { Player } from "./player.js";
import { fetchParts } from "./swap.js";

/** @type {Player | null} */
let player = null;
const told = /** @type {HTMLElement} */ (document.getElementById("told"));

/**
 * Says something to those who do not see what changed; what went wrong is said to everybody.
 * @param {string} words
 * @param {boolean} [aloud]
 */
function tell(words, aloud = false) {
  told.className = aloud ? "notice" : "quiet";
  told.textContent = words;
}

/** Wakes what came with the page or was swapped in. */
function wake() {
  player?.leave();
  player = null;
  const section = document.getElementById("block");
  const bar = document.getElementById("play");
  if (section && bar) player = new Player(section, bar, tell);
  for (const word of document.querySelectorAll("[data-opens]")) {
    word.setAttribute("aria-controls", "answers");
    word.setAttribute("aria-expanded", String(word.hasAttribute("aria-current")));
  }
  keepWithin();
}

/** No fewer than none and no more than can be planned for. */
function keepWithin() {
  const here = Number(document.getElementById("here")?.textContent);
  for (const [id, past] of /** @type {const} */ ([["fewer", here <= limit("fewer", "least")], ["more", here >= limit("more", "most")]])) {
    const button = /** @type {HTMLButtonElement | null} */ (document.getElementById(id));
    if (button) button.disabled = past;
  }
}

/**
 * @param {string} id
 * @param {string} name
 */
function limit(id, name) {
  return Number(document.getElementById(id)?.dataset[name]);
}

/**
 * Asks the server, swaps the answer in, says what changed and writes the address.
 * @param {string} address
 * @param {{ body?: URLSearchParams, push?: boolean, kept?: string }} [how]
 * @returns {Promise<Response | null>}
 */
async function ask(address, { body, push = true, kept } = {}) {
  const main = document.getElementById("main");
  main?.setAttribute("aria-busy", "true");
  try {
    const answer = await fetchParts(address, body ? { method: "POST", body } : {}, kept);
    if (!answer) return null;
    main?.removeAttribute("aria-busy");
    if (push && answer.ok) history.pushState(null, "", new URL(answer.url).pathname + new URL(answer.url).search);
    wake();
    tell(document.querySelector("[data-told]")?.getAttribute("data-told") ?? "");
    return answer;
  } catch {
    main?.removeAttribute("aria-busy");
    if (body) tell("Conewright did not answer, so nothing was kept. Is it still running?", true);
    else location.assign(address);
    return null;
  }
}

document.addEventListener("submit", (event) => {
  const form = /** @type {HTMLFormElement} */ (event.target);
  const button = /** @type {HTMLButtonElement | null} */ (event.submitter);
  if (form.id === "count") {
    event.preventDefault();
    count(form, button?.value === "fewer" ? -1 : 1);
  } else if (form.getAttribute("action") === "/tonight") {
    event.preventDefault();
    const body = new URLSearchParams(/** @type {any} */ (new FormData(form)));
    if (button?.name) body.set(button.name, button.value);
    void answerWith(form, body);
  }
});

/**
 * The number on the page changes at once; the evening follows as soon as it is fitted.
 * @param {HTMLFormElement} form
 * @param {number} by
 */
function count(form, by) {
  const shown = /** @type {HTMLElement} */ (document.getElementById("here"));
  const here = Math.min(Math.max(Number(shown.textContent) + by, limit("fewer", "least")), limit("more", "most"));
  const body = new URLSearchParams(/** @type {any} */ (new FormData(form)));
  body.set("here", String(here));
  shown.textContent = String(here);
  keepWithin();
  const answers = /** @type {HTMLFormElement} */ (document.getElementById("answers"));
  const said = /** @type {HTMLInputElement} */ (document.getElementById("answer-here"));
  said.value = String(here);
  void ask("/tonight", { body, kept: answers.hidden ? "" : "answers" });
}

/**
 * @param {HTMLFormElement} form
 * @param {URLSearchParams} body
 */
async function answerWith(form, body) {
  const opened = document.querySelector("[data-opens][aria-expanded='true']")?.id ?? "";
  const answer = await ask("/tonight", { body });
  if (!answer || form.id !== "answers") return;
  const wrong = /** @type {HTMLElement | null} */ (document.querySelector("[aria-invalid]"));
  if (wrong) {
    wrong.focus();
    tell(document.getElementById(wrong.getAttribute("aria-describedby") ?? "")?.textContent ?? "");
  } else {
    document.getElementById(opened)?.focus({ preventScroll: true });
  }
}

document.addEventListener("click", (event) => {
  const link = event.target instanceof Element ? event.target.closest("a") : null;
  if (!link || event.defaultPrevented || event.ctrlKey || event.metaKey || event.shiftKey || event.button) return;
  if (link.dataset.opens) {
    event.preventDefault();
    open(link.getAttribute("aria-expanded") === "true" ? "" : link.dataset.opens);
  } else if (link.id === "leave") {
    event.preventDefault();
    void close();
  } else if (link.hasAttribute("data-swap")) {
    event.preventDefault();
    void choose(link);
  }
});

/** @param {HTMLAnchorElement} link */
async function choose(link) {
  const answer = await ask(link.href.split("#")[0]);
  const block = document.getElementById("block");
  if (answer && block && link.classList.contains("blk") && block.getBoundingClientRect().top > innerHeight - 80) {
    block.scrollIntoView();
  }
}

/**
 * Opens the fields behind a word of the sentence, "" for none.
 * @param {string} key
 */
function open(key) {
  const form = /** @type {HTMLFormElement} */ (document.getElementById("answers"));
  form.hidden = !key;
  for (const fields of form.querySelectorAll("fieldset")) fields.hidden = fields.id !== `fields-${key}`;
  for (const word of document.querySelectorAll("[data-opens]")) {
    const own = word.getAttribute("data-opens") === key;
    word.toggleAttribute("aria-current", own);
    if (own) word.setAttribute("aria-current", "true");
    word.setAttribute("aria-expanded", String(own));
  }
  const first = form.querySelector("fieldset:not([hidden]) input, fieldset:not([hidden]) select");
  if (first instanceof HTMLElement) first.focus({ preventScroll: true });
}

/** Shuts the fields as they were, with the focus back on their word. */
async function close() {
  const word = document.querySelector("[data-opens][aria-expanded='true']")?.id ?? "";
  const form = /** @type {HTMLFormElement} */ (document.getElementById("answers"));
  const marked = form.querySelector("[aria-invalid]") !== null; // what was wrong stands in it: only the server knows better
  form.reset();
  open("");
  if (marked) await ask(/** @type {HTMLAnchorElement} */ (document.getElementById("leave")).href, { push: false });
  document.getElementById(word)?.focus({ preventScroll: true });
}

document.addEventListener("keydown", (event) => {
  if (event.key === "Escape" && event.target instanceof Element && event.target.closest("#answers")) void close();
});
addEventListener("popstate", () => void ask(location.href, { push: false }));
wake();
