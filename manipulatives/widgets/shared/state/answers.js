// What a pupil typed, made the one way it is compared, as lessons/tasks/answers.py does it.

const TIME = /^ *(?:(0?[1-9]|1[0-2]) ?[:. ] ?|(0?[1-9]|1[0-2]))([0-5][0-9]) *$/;
const NUMBER = /^ *0*([0-9]+) *$/;
const SUM = /^ *[0-9]+ *(?:\+ *[0-9]+ *)*$/;

/**
 * An answer as it is compared, or null when it is no answer of that form.
 *
 * @param {string} form "time", a 12-hour clock time; "number", a whole number from 0; or "sum",
 *   whole numbers with plus signs between them
 * @param {string} text what was typed
 * @returns {string | null}
 */
export function tidy(form, text) {
  if (form === "time") {
    const match = TIME.exec(text);
    return match && `${Number(match[1] || match[2])}:${match[3]}`;
  }
  if (form === "number") {
    const match = NUMBER.exec(text);
    return match && match[1];
  }
  if (form === "sum") {
    return SUM.test(text)
      ? text.split("+").map((part) => part.replace(NUMBER, "$1")).join(" + ")
      : null;
  }
  const given = JSON.stringify(form);
  throw new Error(`The form of an answer is "time", "number" or "sum", not ${given}.`);
}
