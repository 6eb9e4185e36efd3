// The strokes of a pen, as plain data.
import assert from "node:assert/strict";
import test from "node:test";
import {
  withPoint, linesOf, pointOf, strokesOf, afterWiping, withStroke,
} from "../../manipulatives/outputs/page/session/strokes.js";

const BOARD = { width: 1920, height: 1080 };
const LINE = [1000, 5000, 100, 9000, 5000, 100];

/** Where each of a path's commands ends. */
function ends(d) {
  return d.match(/[A-Z][^A-Z]*/g).map((part) => part.match(/-?[\d.]+/g).map(Number).slice(-2));
}

test("a point is where it is on the board, however large the board", () => {
  const middle = { x: 960, y: 540, pressure: 0.5, kind: "mouse" };
  assert.deepEqual(pointOf(middle, BOARD), [5000, 5000, 100]);
  const small = { x: 180, y: 370, pressure: 0.5, kind: "mouse" };
  assert.deepEqual(pointOf(small, { width: 360, height: 740 }), [5000, 5000, 100]);
});

test("only a pen reports its pressure", () => {
  const weight = (kind, pressure) => pointOf({ x: 0, y: 0, pressure, kind }, BOARD)[2];
  assert.ok(weight("pen", 0.1) < weight("pen", 0.5));
  assert.ok(weight("pen", 0.5) < weight("pen", 1));
  assert.equal(weight("pen", 0.5), 100);
  assert.equal(weight("touch", 1), 100);
  assert.equal(weight("mouse", 0.5), 100);
  // A pen that cannot measure pressure reports 0.
  assert.equal(weight("pen", 0), 100);
});

test("a trembling hand adds nothing, a moving one does", () => {
  const stroke = withPoint([], [1000, 1000, 100]);
  assert.equal(withPoint(stroke, [1003, 1003, 100]), stroke);
  assert.deepEqual(withPoint(stroke, [1020, 1000, 100]), [1000, 1000, 100, 1020, 1000, 100]);
});

test("neither a stroke nor a board grows without end", () => {
  let stroke = [];
  for (let at = 0; at < 5000; at += 1) {
    stroke = withPoint(stroke, [at * 20, 0, 100]);
  }
  assert.equal(stroke.length, 9000);
  let strokes = [];
  for (let at = 0; at < 700; at += 1) {
    strokes = withStroke(strokes, [at, at, 100]);
  }
  assert.equal(strokes.length, 600);
  assert.deepEqual(strokes[599], [699, 699, 100]);
});

test("wiping takes its share, from the first stroke on, and in the end all", () => {
  const ten = Array.from({ length: 10 }, (_, at) => [at, 0, 100]);
  assert.deepEqual(afterWiping(ten, 0, 5), ten);
  assert.deepEqual(afterWiping(ten, 1, 5), ten.slice(2));
  assert.deepEqual(afterWiping(ten, 5, 5), []);
  assert.deepEqual(afterWiping(ten, 9, 5), []);
  assert.deepEqual(afterWiping(ten, -1, 5), ten);
  assert.deepEqual(afterWiping(ten, 0, 0), []);
  for (const of of [1, 3, 7, 10, 12, 50]) {
    const left = Array.from({ length: of + 1 }, (_, done) => afterWiping(ten, done, of).length);
    assert.deepEqual([...left].sort((one, other) => other - one), left);
    assert.equal(left[0], 10);
    assert.equal(left[of], 0);
  }
});

test("stored data that are no stroke are left out", () => {
  const data = [LINE, [1, 2], "x", [], [1, NaN, 100], null, [1, 2, null], [5, 5, 100]];
  assert.deepEqual(strokesOf(data), [LINE, [5, 5, 100]]);
  for (const broken of [null, undefined, 7, "[]", { 0: LINE }]) {
    assert.deepEqual(strokesOf(broken), []);
  }
});

test("a line grows with the board and stays at the same place", () => {
  const [big] = linesOf(LINE, { width: 1000, height: 1000 });
  const [small] = linesOf(LINE, { width: 500, height: 400 });
  assert.equal(big.d, "M100 500L900 500");
  assert.equal(small.d, "M50 200L450 200");
  // Three quarters of a hundredth of the shorter side, but never too thin to be seen.
  assert.equal(big.width, 7.5);
  assert.equal(small.width, 3);
});

test("a harder press is a broader line", () => {
  const broad = (weight) => linesOf([0, 5000, weight, 9999, 5000, weight], BOARD)[0].width;
  assert.ok(broad(160) > 1.5 * broad(100));
  assert.ok(broad(100) > 2 * broad(40));
});

test("a stroke that swells is one line after the other, each from where the last one ended", () => {
  const swelling = Array.from({ length: 50 }, (_, at) => [at * 200, 5000, 40 + 2 * at]).flat();
  const made = linesOf(swelling, BOARD);
  assert.ok(made.length > 8);
  const widths = made.map(({ width }) => width);
  assert.deepEqual([...widths].sort((one, other) => one - other), widths);
  for (const [index, { d }] of made.slice(1).entries()) {
    assert.deepEqual(ends(d)[0], ends(made[index].d).at(-1));
  }
});

test("a long stroke is made of short linesOf, of which only the last changes as it grows", () => {
  let stroke = [];
  let before = [];
  for (let at = 0; at < 400; at += 1) {
    stroke = withPoint(stroke, [at * 20, 3000 + 1000 * Math.sin(at / 9), 100]);
    const now = linesOf(stroke, BOARD);
    const same = now.filter(({ d }, index) => d === before[index]?.d).length;
    assert.ok(same >= before.length - 2, `${same} of ${before.length}`);
    assert.ok(now.every(({ d }) => d.length < 2500));
    before = now;
  }
  assert.ok(before.length >= 6);
  const last = [(399 * 20 * 1920) / 10_000, ((3000 + 1000 * Math.sin(399 / 9)) * 1080) / 10_000];
  const reached = ends(before.at(-1).d).at(-1);
  assert.ok(Math.hypot(reached[0] - last[0], reached[1] - last[1]) < 0.2);
});

test("a tap is a dot", () => {
  assert.equal(linesOf([5000, 5000, 100], BOARD)[0].d, "M960 540L960 540");
});

test("a quick hand's few points are joined by a bend", () => {
  const corner = [1000, 1000, 100, 5000, 1000, 100, 5000, 5000, 100];
  const [{ d }] = linesOf(corner, { width: 1000, height: 1000 });
  assert.equal(d, "M100 100Q500 100 500 300L500 500");
});
