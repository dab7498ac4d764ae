// The marks and balls that move in a picture; must not know buttons, strips or time.

import { onPicture, ownTime, placeAt } from "./track.js";

/**
 * @typedef {{ mark: string, name: string, knots: number[] }} MovingPerson
 * @typedef {{ seconds: number, repeats: boolean, people: MovingPerson[], balls: number[][], steps: number[], rounds: number[] }} MovingCopy
 * @typedef {{ seconds: number, ground: number[], ball: string, copies: MovingCopy[] }} Film
 * @typedef {{ copy: number, wide: Film, phone: Film }} Films
 */

const SVG = "http://www.w3.org/2000/svg";

/** Puts the moving marks of a film into a picture and takes them out again. */
export class Cast {
  /**
   * @param {SVGSVGElement} picture
   * @param {Film} film
   */
  constructor(picture, film) {
    this.picture = picture;
    this.film = film;
    this.layer = document.createElementNS(SVG, "g");
    this.layer.setAttribute("class", "movers");
    /** @type {{ mark: SVGElement, knots: number[], copy: MovingCopy }[]} */
    this.movers = [];
    for (const copy of film.copies) {
      for (const person of copy.people) this.add(person.mark, person.knots, copy);
      for (const ball of copy.balls) this.add(film.ball, ball, copy);
    }
    const above = picture.querySelector(".l-step, .l-label, .l-warn");
    picture.insertBefore(this.layer, above);
    picture.classList.add("moving");
  }

  /**
   * @param {string} markup
   * @param {number[]} knots
   * @param {MovingCopy} copy
   */
  add(markup, knots, copy) {
    const mark = document.createElementNS(SVG, "g");
    mark.innerHTML = markup;
    this.layer.append(mark);
    this.movers.push({ mark, knots, copy });
  }

  /** @param {number} time */
  show(time) {
    for (const { mark, knots, copy } of this.movers) {
      const [x, y] = onPicture(this.film.ground, placeAt(knots, ownTime(time, copy.seconds, copy.repeats)));
      mark.style.transform = `translate(${x.toFixed(2)}px, ${y.toFixed(2)}px)`;
    }
  }

  leave() {
    this.layer.remove();
    this.picture.classList.remove("moving");
  }
}

/**
 * Brings the lines of one sentence forward and lets the others stand back; 0 shows all alike.
 * @param {SVGSVGElement} picture
 * @param {number} step
 */
export function light(picture, step) {
  for (const shape of picture.querySelectorAll(".act, .stepmark")) {
    const own = shape.getAttribute("data-step") === String(step);
    shape.classList.toggle("lit", step > 0 && own);
    shape.classList.toggle("dim", step > 0 && !own);
  }
}
