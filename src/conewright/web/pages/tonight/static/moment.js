// The moment on the strip: a line that follows the play, and a handle to move it by pointer and by keys.

import { momentAt, spotOf } from "./track.js";

const SVG = "http://www.w3.org/2000/svg";
const HIDES = 38; // px: figures on the ruler nearer than this make room
const KEYS = new Map([
  ["ArrowRight", 0.5], ["ArrowUp", 0.5], ["ArrowLeft", -0.5], ["ArrowDown", -0.5], ["PageUp", 5], ["PageDown", -5],
]);

/** The moment of one strip. */
export class Moment {
  /**
   * @param {HTMLElement} box
   * @param {(time: number) => void} moved is told where the moment was put by hand
   */
  constructor(box, moved) {
    const number = (/** @type {string} */ name) => Number(box.dataset[name]);
    this.box = box;
    this.moved = moved;
    this.time = 0;
    this.ruler = { left: number("left"), right: number("right"), seconds: number("seconds") };
    this.size = { width: number("width"), top: number("top"), bottom: number("bottom") };
    this.picture = /** @type {SVGSVGElement} */ (box.querySelector("svg"));
    this.mark = this.draw();
    this.words = /** @type {SVGTextElement} */ (this.mark.querySelector("text"));
    this.figures = [...this.picture.querySelectorAll("text")].filter(
      (text) => Number(text.getAttribute("y")) > this.size.bottom && text.getAttribute("text-anchor") === "middle",
    );
    this.handle = this.makeHandle();
  }

  draw() {
    const mark = document.createElementNS(SVG, "g");
    const { top, bottom } = this.size;
    mark.setAttribute("class", "moment");
    mark.innerHTML =
      `<path class="now" d="M0 ${top}V${bottom + 4}"/>` +
      `<rect class="now-box" x="-26" y="${bottom + 4}" width="52" height="20"/>` +
      `<text class="now-time" x="0" y="${bottom + 18.4}" text-anchor="middle" font-size="12"></text>`;
    mark.style.visibility = "hidden";
    this.picture.append(mark);
    return mark;
  }

  makeHandle() {
    const handle = document.createElement("div");
    const { left, right, seconds } = this.ruler;
    const { width, top, bottom } = this.size;
    const height = Number(this.picture.getAttribute("height")) || bottom;
    handle.className = "scrub";
    handle.tabIndex = 0;
    handle.setAttribute("role", "slider");
    handle.setAttribute("aria-label", "The moment");
    handle.setAttribute("aria-valuemin", "0");
    handle.setAttribute("aria-valuemax", String(seconds));
    handle.style.left = `${(100 * left) / width}%`;
    handle.style.width = `${(100 * (right - left)) / width}%`;
    handle.style.top = `${(100 * top) / height}%`;
    handle.style.height = `${(100 * (bottom - top)) / height}%`;
    handle.addEventListener("pointerdown", (event) => this.take(event));
    handle.addEventListener("pointermove", (event) => {
      if (handle.hasPointerCapture(event.pointerId)) this.put(this.under(event));
    });
    handle.addEventListener("keydown", (event) => this.key(event));
    this.box.append(handle);
    this.say(handle);
    return handle;
  }

  /** @param {PointerEvent} event */
  take(event) {
    if (event.button !== 0) return;
    event.preventDefault();
    this.handle.focus({ preventScroll: true });
    this.handle.setPointerCapture(event.pointerId);
    this.put(this.under(event));
  }

  /** @param {PointerEvent} event */
  under(event) {
    const frame = this.picture.getBoundingClientRect();
    return momentAt(this.ruler, ((event.clientX - frame.left) * this.size.width) / frame.width);
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    const by = KEYS.get(event.key);
    const to = event.key === "Home" ? 0 : event.key === "End" ? this.ruler.seconds : by && this.time + by;
    if (to === undefined) return;
    event.preventDefault();
    this.put(Math.min(Math.max(to, 0), this.ruler.seconds));
  }

  /** @param {number} time */
  put(time) {
    this.show(time);
    this.moved(time);
  }

  /** @param {number} time */
  show(time) {
    this.time = Math.min(time, this.ruler.seconds);
    const x = spotOf(this.ruler, time);
    this.mark.style.visibility = "visible";
    this.mark.style.transform = `translate(${x.toFixed(1)}px, 0)`;
    this.words.textContent = `${this.time.toFixed(1)} s`;
    for (const figure of this.figures) {
      figure.style.visibility = Math.abs(Number(figure.getAttribute("x")) - x) < HIDES ? "hidden" : "";
    }
    this.say(this.handle);
  }

  /** @param {HTMLElement} handle */
  say(handle) {
    handle.setAttribute("aria-valuenow", this.time.toFixed(1));
    handle.setAttribute("aria-valuetext", `${this.time.toFixed(1)} seconds`);
  }

  hide() {
    this.mark.style.visibility = "hidden";
    for (const figure of this.figures) figure.style.visibility = "";
    this.time = 0;
    this.say(this.handle);
  }

  leave() {
    this.hide();
    this.mark.remove();
    this.handle.remove();
  }
}
