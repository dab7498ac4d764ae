// The marks and balls that move in a picture; must not know buttons, strips or time.

import { beside, onPicture, ownTime, placeAt } from "./track.js";

/**
 * @typedef {{ mark: string, name: string, knots: number[] }} MovingPerson
 * @typedef {{ seconds: number, repeats: boolean, people: MovingPerson[], balls: number[][], steps: number[], rounds: number[] }} MovingCopy
 * @typedef {{ seconds: number, ground: number[], ball: string, radius: number, copies: MovingCopy[] }} Film
 * @typedef {{ copy: number, wide: Film, phone: Film }} Films
 */

const SVG = "http://www.w3.org/2000/svg";

/**
 * @param {SVGElement} mark
 * @param {[number, number]} spot
 */
function put(mark, [x, y]) {
  mark.style.transform = `translate(${x.toFixed(2)}px, ${y.toFixed(2)}px)`;
}

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
    this.copies = film.copies.map((copy) => ({
      copy,
      people: copy.people.map((person) => this.add(person.mark)),
      balls: copy.balls.map(() => this.add(film.ball)),
      sides: copy.balls.map(() => /** @type {[number, number]} */ ([0.8, 0.6])),
    }));
    const above = picture.querySelector(".l-step, .l-label, .l-warn");
    picture.insertBefore(this.layer, above);
    picture.classList.add("moving");
  }

  /** @param {string} markup */
  add(markup) {
    const mark = document.createElementNS(SVG, "g");
    mark.innerHTML = markup;
    this.layer.append(mark);
    return mark;
  }

  /** @param {number} time */
  show(time) {
    for (const { copy, people, balls, sides } of this.copies) {
      const own = ownTime(time, copy.seconds, copy.repeats);
      const spots = copy.people.map((person) => onPicture(this.film.ground, placeAt(person.knots, own)));
      people.forEach((mark, at) => put(mark, spots[at]));
      balls.forEach((mark, at) => {
        const spot = onPicture(this.film.ground, placeAt(copy.balls[at], own));
        const { shown, side } = beside(spot, spots, this.film.radius, sides[at]);
        sides[at] = side;
        put(mark, shown);
      });
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
