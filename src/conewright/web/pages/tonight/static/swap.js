// Puts the parts of a page that came from the server into the page that is open; focus and scroll stay.

/** @type {AbortController | null} */
let underWay = null;

/**
 * Fetches a page and swaps its parts in; of several at once only the last counts.
 * @param {string} address
 * @param {RequestInit} [request]
 * @param {string} [kept] a part that stays as it is
 * @returns {Promise<Response | null>} null where a later one has taken over
 */
export async function fetchParts(address, request = {}, kept = "") {
  underWay?.abort();
  const own = new AbortController();
  underWay = own;
  try {
    const answer = await fetch(address, { ...request, signal: own.signal });
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    if (own.signal.aborted) return null;
    if (!page.querySelector("[data-part]")) throw new Error(`the server answered ${answer.status}`);
    putIn(page, kept);
    return answer;
  } catch (error) {
    if (own.signal.aborted) return null;
    throw error;
  }
}

/**
 * @param {Document} page
 * @param {string} kept
 */
function putIn(page, kept) {
  const focused = document.activeElement?.id ?? "";
  for (const old of document.querySelectorAll("[data-part]")) {
    const name = old.getAttribute("data-part");
    const fresh = name === kept ? null : page.querySelector(`[data-part="${name}"]`);
    if (fresh && fresh.outerHTML !== old.outerHTML) old.replaceWith(document.adoptNode(fresh));
  }
  if (focused && document.activeElement?.id !== focused) document.getElementById(focused)?.focus({ preventScroll: true });
}
