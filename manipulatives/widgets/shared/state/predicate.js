// Goals and foreseen mistakes: small predicates on flat facts, as lessons/tasks/predicates.py
// describes them. Python is the reference; both give the same verdict.

/** @type {Readonly<Record<string, (fact: any, value: any) => boolean>>} */
const COMPARE = Object.freeze({
  "=": (fact, value) => fact === value,
  "!=": (fact, value) => fact !== value,
  "in": (fact, value) => value.includes(fact),
  "<": (fact, value) => whole(fact, value) && fact < value,
  "<=": (fact, value) => whole(fact, value) && fact <= value,
  ">": (fact, value) => whole(fact, value) && fact > value,
  ">=": (fact, value) => whole(fact, value) && fact >= value,
});

/**
 * Whether a predicate is true of the facts.
 *
 * @param {any} predicate a nested list such as ["and", ["=", "meant", 275], ["<=", "lag", 7]]
 * @param {Facts} facts what is true of a manipulative's state
 * @returns {boolean}
 */
export function holds(predicate, facts) {
  const [word, ...parts] = Array.isArray(predicate) ? predicate : [null];
  switch (word) {
    case "and":
      return parts.every((part) => holds(part, facts));
    case "or":
      return parts.some((part) => holds(part, facts));
    case "not":
      if (parts.length === 1) {
        return !holds(parts[0], facts);
      }
      break;
    default:
      if (comparison(word, parts)) {
        return COMPARE[word](known(facts, parts[0]), parts[1]);
      }
  }
  throw new Error(`This is no predicate: ${JSON.stringify(predicate)}`);
}

/**
 * @param {any} word
 * @param {any[]} parts
 * @returns {boolean}
 */
function comparison(word, parts) {
  return typeof word === "string" && Object.hasOwn(COMPARE, word) &&
    parts.length === 2 && typeof parts[0] === "string" &&
    (word !== "in" || Array.isArray(parts[1]));
}

/**
 * A fact, or null where there is none.
 *
 * @param {Facts} facts
 * @param {string} name
 * @returns {Fact}
 */
function known(facts, name) {
  // Only what the manipulative says: every object also has a "constructor".
  return Object.hasOwn(facts, name) ? facts[name] ?? null : null;
}

/**
 * @param {any[]} values
 * @returns {boolean}
 */
function whole(...values) {
  return values.every(Number.isInteger);
}
