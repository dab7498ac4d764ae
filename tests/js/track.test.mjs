// The arithmetic of play and strip, without a page.

import assert from "node:assert/strict";
import { test } from "node:test";

import {
  beside, firstTime, momentAt, onPicture, ownTime, placeAt, spotOf, underWay,
} from "../../src/conewright/web/pages/tonight/static/track.js";

const WALK = [0, 0, 0, 2, 4, 0, 2, 4, 0, 6, 4, 8];

test("a track is followed at its own speed and held at both ends", () => {
  assert.deepEqual(placeAt(WALK, -1), [0, 0]);
  assert.deepEqual(placeAt(WALK, 0.5), [1, 0]);
  assert.deepEqual(placeAt(WALK, 2), [4, 0]);
  assert.deepEqual(placeAt(WALK, 5), [4, 6]);
  assert.deepEqual(placeAt(WALK, 60), [4, 8]);
  assert.deepEqual(placeAt([], 1), [0, 0]);
  assert.deepEqual(placeAt([3, 7, 7], 1), [7, 7]);
});

test("between any two moments nobody moves faster than the fastest stretch", () => {
  for (let time = 0; time < 6; time += 0.01) {
    const [one, other] = [placeAt(WALK, time), placeAt(WALK, time + 0.01)];
    assert.ok(Math.hypot(other[0] - one[0], other[1] - one[1]) <= 0.02 + 1e-9);
  }
});

test("ground is laid on the picture as the server says, turned or not", () => {
  assert.deepEqual(onPicture([26, 560, 25, 0, 0, -25], [2, 4]), [76, 460]);
  assert.deepEqual(onPicture([0, 0, 0, 20, 20, 0], [2, 4]), [80, 40]);
});

test("a film that repeats runs round, another stops at its end", () => {
  assert.equal(ownTime(12, 10, true), 2);
  assert.equal(ownTime(12, 10, false), 10);
  assert.equal(ownTime(12, 0, true), 0);
});

const STEPS = [0, 2, 1, 0, 2, 5, 2, 1, 2.5, 4, 2, 2, 5, 7, 1, 0, 7, 9, 2, 1, 3, 6, 0, 9];

test("what is under way is named once, in order, and what has no number is not", () => {
  assert.deepEqual(underWay(STEPS, 3), [2]);
  assert.deepEqual(underWay(STEPS, 5), [1]);
  assert.deepEqual(underWay(STEPS, 100), []);
});

test("a sentence is played for the first time until each of its acts has ended once", () => {
  assert.deepEqual(firstTime(STEPS, 2), { start: 2, end: 5 });
  assert.deepEqual(firstTime(STEPS, 1), { start: 0, end: 2 });
  assert.equal(firstTime(STEPS, 8), null);
});

test("the strip's ruler reads the same both ways and holds at its ends", () => {
  const ruler = { left: 100, right: 700, seconds: 60 };
  for (const time of [0, 12.3, 60]) assert.ok(Math.abs(momentAt(ruler, spotOf(ruler, time)) - time) < 1e-9);
  assert.equal(momentAt(ruler, 20), 0);
  assert.equal(momentAt(ruler, 900), 60);
  assert.equal(spotOf(ruler, 75), 700);
});

test("a ball is never shown under a mark, and comes to the edge from its own side", () => {
  const people = [[100, 100], [300, 300]];
  const far = beside([200, 200], people, 12, [1, 0]);
  assert.deepEqual(far.shown, [200, 200]);
  const near = beside([104, 100], people, 12, [0, 1]);
  assert.ok(Math.hypot(near.shown[0] - 100, near.shown[1] - 100) > 12);
  assert.deepEqual(near.side, [1, 0]);
  const at = beside([100, 100], people, 12, [0, 1]);
  assert.equal(at.shown[0], 100);
  assert.ok(at.shown[1] > 112);
  assert.deepEqual(beside([5, 5], [], 12, [1, 0]).shown, [5, 5]);
});
