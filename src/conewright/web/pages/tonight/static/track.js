// Where something is at a moment, and what is under way: plain arithmetic on lists of numbers, no page.

/**
 * @typedef {number[]} Knots time, x, y, and so on
 * @typedef {number[]} Steps start, end, sentence, act, and so on
 * @typedef {{ start: number, end: number }} Span
 */

const EDGE = 1.15; // in radii: where a ball is shown beside its owner

/**
 * Where a track is at a moment; before its first and after its last knot it stands there.
 * @param {Knots} knots
 * @param {number} time seconds
 * @returns {[number, number]}
 */
export function placeAt(knots, time) {
  const count = knots.length / 3;
  if (count === 0) return [0, 0];
  if (time <= knots[0]) return [knots[1], knots[2]];
  let low = 0;
  let high = count - 1;
  if (time >= knots[high * 3]) return [knots[high * 3 + 1], knots[high * 3 + 2]];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (knots[middle * 3] <= time) low = middle;
    else high = middle;
  }
  const [before, after] = [low * 3, high * 3];
  const share = (time - knots[before]) / (knots[after] - knots[before] || 1);
  return [
    knots[before + 1] + (knots[after + 1] - knots[before + 1]) * share,
    knots[before + 2] + (knots[after + 2] - knots[before + 2]) * share,
  ];
}

/**
 * A point of the ground, in metres, on the picture, in px.
 * @param {number[]} ground origin x, y; what a metre across adds to x, y; what a metre up adds to x, y
 * @param {[number, number]} point
 * @returns {[number, number]}
 */
export function onPicture(ground, [x, y]) {
  return [ground[0] + x * ground[2] + y * ground[4], ground[1] + x * ground[3] + y * ground[5]];
}

/**
 * A ball never lies under its owner's mark: where it would, it is shown at the edge, on the side it came from.
 * @param {[number, number]} ball px
 * @param {[number, number][]} people px
 * @param {number} radius of a mark, px
 * @param {[number, number]} side where it was shown last, seen from its owner; of length 1
 * @returns {{ shown: [number, number], side: [number, number] }}
 */
export function beside(ball, people, radius, side) {
  const from = (/** @type {[number, number]} */ [x, y]) => Math.hypot(ball[0] - x, ball[1] - y);
  const owner = people.reduce((/** @type {[number, number] | null} */ near, one) => (near && from(near) <= from(one) ? near : one), null);
  if (!owner || from(owner) >= radius * EDGE) return { shown: ball, side };
  const gap = from(owner);
  const kept = gap < 1 ? side : /** @type {[number, number]} */ ([(ball[0] - owner[0]) / gap, (ball[1] - owner[1]) / gap]);
  const edge = radius * EDGE;
  return { shown: [owner[0] + kept[0] * edge, owner[1] + kept[1] * edge], side: kept };
}

/**
 * The moment of one copy's own film: round again where it repeats, its end where it does not.
 * @param {number} time
 * @param {number} seconds how long the film is
 * @param {boolean} repeats
 */
export function ownTime(time, seconds, repeats) {
  if (seconds <= 0) return 0;
  return repeats ? time % seconds : Math.min(time, seconds);
}

/**
 * The sentences under way at a moment, each once, in order.
 * @param {Steps} steps
 * @param {number} time
 */
export function underWay(steps, time) {
  /** @type {Set<number>} */
  const found = new Set();
  for (let at = 0; at < steps.length; at += 4) {
    if (steps[at] <= time && time < steps[at + 1] && steps[at + 2] > 0) found.add(steps[at + 2]);
  }
  return [...found].sort((one, other) => one - other);
}

/**
 * When a sentence is played for the first time: from the start of its first act until every act of it has ended once.
 * @param {Steps} steps
 * @param {number} step
 * @returns {Span | null}
 */
export function firstTime(steps, step) {
  /** @type {Map<number, Span>} */
  const acts = new Map();
  for (let at = 0; at < steps.length; at += 4) {
    if (steps[at + 2] !== step) continue;
    const known = acts.get(steps[at + 3]);
    if (!known || steps[at] < known.start) acts.set(steps[at + 3], { start: steps[at], end: steps[at + 1] });
  }
  if (acts.size === 0) return null;
  const spans = [...acts.values()];
  return { start: Math.min(...spans.map((span) => span.start)), end: Math.max(...spans.map((span) => span.end)) };
}

/**
 * The moment under a spot of the strip, and back; both ends hold.
 * @param {{ left: number, right: number, seconds: number }} ruler
 * @param {number} x
 */
export function momentAt(ruler, x) {
  const share = (x - ruler.left) / (ruler.right - ruler.left || 1);
  return Math.min(Math.max(share, 0), 1) * ruler.seconds;
}

/**
 * @param {{ left: number, right: number, seconds: number }} ruler
 * @param {number} time
 */
export function spotOf(ruler, time) {
  const share = Math.min(Math.max(time, 0), ruler.seconds) / (ruler.seconds || 1);
  return ruler.left + (ruler.right - ruler.left) * share;
}
