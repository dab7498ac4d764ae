// Paper, Dark and Sun at once, and remembered; without this script the same buttons send a form.

const root = document.documentElement;
const form = /** @type {HTMLFormElement | null} */ (document.querySelector("form.modes"));
const dark = matchMedia("(prefers-color-scheme: dark)");

/** The light that is on: the one chosen, else the machine's own. */
function lightNow() {
  return root.dataset.mode || (dark.matches ? "dark" : "paper");
}

function press() {
  for (const button of form?.querySelectorAll("button") ?? []) {
    button.setAttribute("aria-pressed", String(button.value === lightNow()));
  }
}

form?.addEventListener("submit", (event) => {
  const button = /** @type {HTMLButtonElement | null} */ (event.submitter);
  if (!button) return;
  event.preventDefault();
  root.dataset.mode = button.value;
  press();
  const body = new URLSearchParams({ light: button.value, back: location.pathname });
  fetch(form.action, { method: "POST", body, keepalive: true, redirect: "manual" }).catch(() => {});
});
dark.addEventListener("change", press);
press();
