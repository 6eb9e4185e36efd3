/**
 * A written sum, as the modules of maths/columns/ describe it: what is on it, which blocks
 * stand for it, what is true of it. All lists of columns begin with the ones. Sums are never
 * changed in place.
 *
 * @typedef {"answer" | "marks" | "parts"} Row a row that can be written to
 *
 * @typedef {object} Sum
 * @property {"+" | "-"} operation
 * @property {"columns" | "parts" | "line"} form
 * @property {number[]} numbers
 * @property {(number | null)[]} answer
 * @property {number[][]} marks
 * @property {(number | null)[]} parts
 * @property {number[]} jumps
 *
 * @typedef {Record<string, number[]>} Blocks counts by what they stand for
 *
 * @typedef {object} Step
 * @property {string} say
 * @property {string} class what everybody answers
 * @property {number | null} column where it happens
 * @property {any[][]} write what is written then
 * @property {Blocks} blocks after it
 */

import WORDS from "../../data/place_words.json" with { type: "json" };

const BASE = 10;
export const NAMES = WORDS.names;
const MOST_PLACES = NAMES.length;

/**
 * @param {number} number
 * @param {number} width
 * @returns {number[]} its digits, with zeros up to that width
 */
export function digitsOf(number, width) {
  const digits = [...String(number)].reverse().map(Number);
  return [...digits, ...Array(Math.max(0, width - digits.length)).fill(0)];
}

/**
 * @param {Sum} sum
 * @returns {number} what comes out
 */
export function resultOf({ operation, numbers }) {
  const [first, ...others] = numbers;
  const rest = others.reduce((total, number) => total + number, 0);
  return operation === "+" ? first + rest : first - rest;
}

/**
 * @param {Sum} sum
 * @returns {number} where jumps on the number line begin
 */
export function startOf({ operation, numbers }) {
  return operation === "+" ? Math.max(...numbers) : numbers[0];
}

/**
 * @param {Sum} sum
 * @returns {number} where the jumps have come to
 */
export function jumpedTo(sum) {
  const far = sum.jumps.reduce((total, jump) => total + jump, 0);
  return startOf(sum) + (sum.operation === "+" ? far : -far);
}

/**
 * @param {Sum} sum
 * @returns {number | null} what the digits of the answer say, if they are a number
 */
export function answerOf({ answer }) {
  const digits = [...answer];
  while (digits.at(-1) === null) {
    digits.pop();
  }
  return digits.length && !digits.includes(null) ? Number([...digits].reverse().join("")) : null;
}

/**
 * @param {Sum} sum
 * @returns {Sum} the same with nothing written to it
 */
export function blank({ operation, form, numbers, answer, parts }) {
  return {
    operation,
    form,
    numbers,
    answer: answer.map(() => null),
    marks: answer.map(() => []),
    parts: parts.map(() => null),
    jumps: [],
  };
}

/**
 * @param {Sum} sum
 * @param {Step[]} steps
 * @returns {Sum} the sum after what the steps write
 */
export function written(sum, steps) {
  const after = structuredClone(sum);
  for (const [row, ...rest] of steps.flatMap(({ write }) => write)) {
    if (row === "jumps") {
      after.jumps.push(rest[0]);
    } else if (row === "marks") {
      after.marks[rest[0]].push(rest[1]);
    } else {
      after[/** @type {"answer" | "parts"} */ (row)][rest[0]] = rest[1];
    }
  }
  return after;
}

/**
 * @param {Sum} sum
 * @returns {(number | null)[]} the mark that each column has in the end
 */
export function marksNeeded(sum) {
  const { operation, form, numbers, answer } = sum;
  const needed = /** @type {(number | null)[]} */ (answer.map(() => null));
  if (form === "line" || (form === "parts" && operation === "+")) {
    return needed;
  }
  const rows = numbers.map((number) => digitsOf(number, answer.length));
  if (operation === "+") {
    let carry = 0;
    for (let column = 1; column < answer.length; column += 1) {
      const total = rows.reduce((soFar, row) => soFar + row[column - 1], carry);
      carry = Math.floor(total / BASE);
      needed[column] = carry || null;
    }
    return needed;
  }
  const [upper, lower] = rows;
  const now = [...upper];
  lower.forEach((digit, column) => {
    if (now[column] >= digit) {
      return;
    }
    const source = now.findIndex((there, place) => place > column && there > 0);
    for (let place = source; place > column; place -= 1) {
      now[place] -= 1;
      now[place - 1] += BASE;
      needed[place] = now[place];
      needed[place - 1] = now[place - 1];
    }
  });
  return needed.map((mark, column) => (mark === null ? null : mark * unit(sum, column)));
}

/**
 * @param {Sum} sum
 * @param {number} column
 * @returns {number} what a number written there is counted in
 */
export function unit({ form }, column) {
  return form === "parts" ? BASE ** column : 1;
}

/**
 * What is true of a sum; Python's `sum_facts` gives the same.
 * @param {Sum} sum
 * @returns {Facts}
 */
export function facts(sum) {
  const answer = answerOf(sum);
  const result = resultOf(sum);
  const right = digitsOf(result, MOST_PLACES);
  const marks = sum.marks.map((each) => each.at(-1) ?? null);
  /** @type {Facts} */
  const known = {
    answer,
    number: answer,
    done: answer === result,
    written: sum.answer.filter((digit) => digit !== null).length,
    marked: marks.filter((mark) => mark !== null).length,
    marks_right: marksNeeded(sum).every((mark, column) => mark === marks[column]),
    jumped: sum.jumps.reduce((total, jump) => total + jump, 0),
  };
  NAMES.forEach((name, column) => {
    const key = name.replace(" ", "_");
    const digit = sum.answer[column] ?? null;
    known[key] = digit;
    known[`${key}_right`] = digit === null ? null : digit === right[column];
    known[`${key}_mark`] = marks[column] ?? null;
  });
  return known;
}

/**
 * The blocks that stand for what is written, right or wrong.
 * @param {Sum} sum
 * @returns {Blocks}
 */
export function blocksOf(sum) {
  const width = sum.answer.length;
  const begun = sum.answer.some((digit) => digit !== null);
  const answer = sum.answer.map((digit) => digit ?? 0);
  if (sum.form === "line") {
    const here = begun ? answer : digitsOf(jumpedTo(sum), width);
    const far = sum.jumps.reduce((total, jump) => total + jump, 0);
    return sum.operation === "+"
      ? { here, rest: digitsOf(resultOf(sum) - startOf(sum) - far, width) }
      : { left: here, taken: digitsOf(far, width) };
  }
  const parts = sum.form === "parts" ? sum.parts : answer.map(() => null);
  const rows = sum.numbers.map((number) => digitsOf(number, width));
  return sum.operation === "+" ? adding(sum, rows, parts, begun) : takingAway(sum, rows, parts);
}

/**
 * @param {Sum} sum
 * @param {number[][]} rows
 * @param {(number | null)[]} parts
 * @param {boolean} begun
 * @returns {Blocks}
 */
function adding(sum, rows, parts, begun) {
  const { answer, marks } = sum;
  const over = answer.map((digit, column) => digit !== null || parts[column] !== null);
  /** @type {Blocks} */
  const blocks = {};
  rows.forEach((row, index) => {
    blocks[index + 1] = row.map((count, column) => (over[column] ? 0 : count));
  });
  blocks.carried = answer.map(() => 0);
  marks.forEach((each, column) => {
    if (each.length && answer[column] === null) {
      lay(blocks.carried, column, each[each.length - 1], sum.form);
    }
  });
  if (sum.form === "parts") {
    blocks.parts = answer.map(() => 0);
    parts.forEach((part, column) => begun || lay(blocks.parts, column, part ?? 0, sum.form));
  }
  blocks.answer = answer.map((digit) => digit ?? 0);
  return blocks;
}

/**
 * @param {Sum} sum
 * @param {number[][]} rows
 * @param {(number | null)[]} parts
 * @returns {Blocks}
 */
function takingAway(sum, [upper, lower], parts) {
  // In front of an answer that is right nothing is left, whether a 0 is written there or not.
  const done = answerOf(sum) === resultOf(sum);
  const left = upper.map(() => 0);
  const taken = upper.map(() => 0);
  sum.answer.forEach((digit, column) => {
    const mark = sum.marks[column].at(-1);
    const part = parts[column];
    taken[column] = done || digit !== null || part !== null ? lower[column] : 0;
    if (done || digit !== null) {
      left[column] += digit ?? 0;
    } else if (part !== null || mark !== undefined) {
      lay(left, column, part ?? Number(mark), sum.form);
    } else {
      left[column] += upper[column];
    }
  });
  return { left, taken };
}

/**
 * Add the blocks of a number that stands in a column. As a part it says what they are worth; one
 * that no blocks of the column can show is shown by its own digits.
 * @param {number[]} row
 * @param {number} column
 * @param {number} number
 * @param {string} form
 */
function lay(row, column, number, form) {
  const worth = form === "parts" ? BASE ** column : 1;
  if (number % worth === 0) {
    row[column] += number / worth;
    return;
  }
  digitsOf(number, 0).forEach((digit, place) => {
    const last = row.length - 1;
    row[Math.min(place, last)] += digit * BASE ** Math.max(0, place - last);
  });
}

/**
 * @param {Sum} sum
 * @param {Row} row
 * @param {number} column
 * @returns {number | null} what is written there now
 */
export function readAt(sum, row, column) {
  return row === "marks" ? sum.marks[column]?.at(-1) ?? null : sum[row][column] ?? null;
}

/**
 * @param {Sum} sum
 * @param {Row} row
 * @param {number} column
 * @returns {boolean} whether a pupil may write there
 */
export function isOpen(sum, row, column) {
  if (row === "marks") {
    const carries = sum.operation === "+";
    return sum.form !== "line" && (!carries || (column > 0 && sum.form === "columns"));
  }
  return row === "answer" || sum.form === "parts";
}

/**
 * What a key does to a square. A digit goes behind those that are there, and begins anew where no
 * more fit.
 * @param {Sum} sum
 * @param {Row} row
 * @param {number} column
 * @param {string} key a digit, or "back"
 * @returns {Sum}
 */
export function typed(sum, row, column, key) {
  if (!isOpen(sum, row, column)) {
    return sum;
  }
  const was = readAt(sum, row, column);
  const single = row === "answer" || (row === "marks" && sum.operation === "+");
  const longest = single ? 1 : sum.form === "parts" ? column + 2 : 2;
  /** @type {number | null} */
  let now = null;
  if (key !== "back") {
    now = was === null || String(was).length >= longest ? Number(key) : was * BASE + Number(key);
  } else if (was !== null && was >= BASE) {
    now = Math.floor(was / BASE);
  }
  const after = structuredClone(sum);
  if (row === "marks") {
    after.marks[column] = now === null ? [] : [now];
  } else {
    after[row][column] = now;
  }
  return after;
}
