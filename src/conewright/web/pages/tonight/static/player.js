// Plays a round in the picture, steps through it by sentence, and keeps the strip's moment with it.

import { Cast, light } from "./film.js";
import { Moment } from "./moment.js";
import { firstTime, underWay } from "./track.js";

/** @typedef {import("./film.js").Films} Films */

const still = matchMedia("(prefers-reduced-motion: reduce)");
const phone = matchMedia("(max-width: 520px)");

/** Everything that plays in the block in hand. */
export class Player {
  /**
   * @param {HTMLElement} section the block
   * @param {HTMLElement} bar its buttons
   * @param {(words: string) => void} tell says something to those who do not see the picture
   */
  constructor(section, bar, tell) {
    const button = (/** @type {string} */ id) => /** @type {HTMLButtonElement} */ (bar.querySelector(`#play-${id}`));
    this.section = section;
    this.bar = bar;
    this.tell = tell;
    this.buttons = { round: button("round"), step: button("step"), slow: button("slow"), stop: button("stop") };
    this.leaving = new AbortController();
    /** @type {Films | null} */ this.films = null;
    /** @type {Cast | null} */ this.cast = null;
    this.time = 0;
    this.until = 0;
    this.speed = 1;
    this.frame = 0;
    this.last = 0;
    this.step = 0;
    this.lines = /** @type {HTMLElement[]} */ ([...section.querySelectorAll(".sen li[data-step]")]);
    this.moments = /** @type {HTMLElement[]} */ ([...section.querySelectorAll("[data-strip]")]).map(
      (box) => new Moment(box, (time) => void this.scrub(time)),
    );
    this.listen();
  }

  listen() {
    const { signal } = this.leaving;
    const on = (/** @type {HTMLElement} */ one, /** @type {() => void} */ act) =>
      one.addEventListener("click", act, { signal });
    on(this.buttons.round, () => void this.play());
    on(this.buttons.step, () => void this.nextSentence());
    on(this.buttons.slow, () => this.slow());
    on(this.buttons.stop, () => this.stop());
    still.addEventListener("change", () => this.fit(), { signal });
    phone.addEventListener("change", () => this.stop(), { signal });
    this.fit();
    this.bar.hidden = false;
  }

  /** Who asked for less motion steps by sentence and is not offered play. */
  fit() {
    this.buttons.round.hidden = still.matches;
    this.buttons.slow.hidden = still.matches;
    if (still.matches) this.hold();
  }

  get playing() {
    return this.frame !== 0;
  }

  /** The picture that is on the page now. */
  get picture() {
    const which = phone.matches ? "phone" : "wide";
    return /** @type {SVGSVGElement} */ (this.section.querySelector(`[data-picture="${which}"] svg.pic`));
  }

  get film() {
    return this.films && (phone.matches ? this.films.phone : this.films.wide);
  }

  /** The copy whose strip is shown. */
  get copy() {
    const film = this.film;
    return film && film.copies[phone.matches ? 0 : (this.films?.copy ?? 0)];
  }

  /** Loads the film when it is first wanted, and puts the moving marks into the picture. */
  async ready() {
    if (!this.films) {
      const answer = await fetch(this.bar.dataset.film ?? "", { signal: this.leaving.signal });
      if (!answer.ok) throw new Error(`no film: ${answer.status}`);
      this.films = await answer.json();
    }
    if (!this.cast && this.film) this.cast = new Cast(this.picture, this.film);
    this.buttons.stop.disabled = false;
  }

  async play() {
    if (this.playing) {
      this.hold();
      return;
    }
    await this.ready();
    if (!this.film || this.playing) return;
    this.forgetSentence();
    if (this.time >= this.film.seconds) this.time = 0;
    this.run(this.film.seconds);
  }

  /** @param {number} until */
  run(until) {
    this.until = until;
    this.last = performance.now();
    this.buttons.round.textContent = "Hold it there";
    const tick = (/** @type {number} */ now) => {
      this.time = Math.min(this.time + ((now - this.last) / 1000) * this.speed, this.until);
      this.last = now;
      this.show();
      if (this.time < this.until) this.frame = requestAnimationFrame(tick);
      else this.hold();
    };
    this.frame = requestAnimationFrame(tick);
  }

  hold() {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.buttons.round.textContent = this.time > 0 && this.film && this.time < this.film.seconds ? "Play on" : "Play the round";
  }

  show() {
    this.cast?.show(this.time);
    for (const moment of this.moments) moment.show(this.time);
    const now = this.step ? [this.step] : underWay(this.copy?.steps ?? [], this.time);
    for (const line of this.lines) line.classList.toggle("on", now.includes(Number(line.dataset.step)));
  }

  slow() {
    this.speed = this.speed === 1 ? 0.5 : 1;
    this.buttons.slow.setAttribute("aria-pressed", String(this.speed !== 1));
  }

  stop() {
    this.hold();
    this.forgetSentence();
    this.cast?.leave();
    this.cast = null;
    this.time = 0;
    for (const moment of this.moments) moment.hide();
    for (const line of this.lines) line.classList.remove("on");
    this.buttons.round.textContent = "Play the round";
    this.buttons.stop.disabled = true;
  }

  /** @param {number} time */
  async scrub(time) {
    this.hold();
    await this.ready();
    this.forgetSentence();
    this.time = Math.min(time, this.film?.seconds ?? time);
    this.show();
    this.hold();
  }

  /** One sentence after the other: its lines come forward and it is played, or shown at its start and its end. */
  async nextSentence() {
    await this.ready();
    this.hold();
    const steps = this.lines.map((line) => Number(line.dataset.step));
    const span = this.step ? firstTime(this.copy?.steps ?? [], this.step) : null;
    if (still.matches && span && this.time < span.end) {
      this.time = span.end;
      this.show();
      this.tell(`Sentence ${this.step} is done.`);
      return;
    }
    const next = steps[steps.indexOf(this.step) + 1];
    if (next === undefined) {
      this.stop();
      return;
    }
    this.begin(next);
  }

  /** @param {number} step */
  begin(step) {
    const span = firstTime(this.copy?.steps ?? [], step);
    this.step = step;
    light(this.picture, step);
    const line = this.lines.find((one) => Number(one.dataset.step) === step);
    this.tell(line?.textContent?.trim().replace(/\s+/g, " ") ?? "");
    if (!span) {
      this.show();
      return;
    }
    this.time = span.start;
    this.show();
    if (!still.matches) this.run(span.end);
  }

  forgetSentence() {
    this.step = 0;
    for (const picture of this.section.querySelectorAll("[data-picture] > svg.pic")) {
      light(/** @type {SVGSVGElement} */ (picture), 0);
    }
  }

  leave() {
    this.leaving.abort();
    this.stop();
    for (const moment of this.moments) moment.leave();
  }
}
