/**
 * How the blocks of a lesson fall into stages, of which one is shown at a time. Plain data: what
 * is a heading or a round is told, not looked up.
 *
 * @typedef {object} Told
 * @property {string} heading the text of its second-level heading, "" for none
 * @property {boolean} round whether a round is in it
 * @property {boolean} empty whether there is nothing in it to see
 *
 * @typedef {object} Stage
 * @property {string} heading
 * @property {boolean} title whether it stands before everything that is taught
 * @property {boolean} round
 * @property {number[]} blocks which ones, by their number
 */

/**
 * The stages of a lesson. A heading begins one, and so does a round where the stage has one
 * already. What stands before the first heading is the title, if there is something to see in it.
 * A lesson without any round is one stage.
 * @param {Told[]} told
 * @param {boolean} staged whether it has rounds, or may still get some
 * @returns {Stage[]}
 */
export function stagesOf(told, staged) {
  /** @type {Stage[]} */
  const stages = [];
  for (const [number, { heading, round }] of told.entries()) {
    const last = stages[stages.length - 1];
    if (!last || (staged && (heading || (round && last.round)))) {
      const name = heading || last?.heading || "";
      stages.push({ heading: name, title: false, round, blocks: [number] });
    } else {
      last.blocks.push(number);
      last.round ||= round;
    }
  }
  const [first, second] = stages;
  if (second && !first.heading && !first.round) {
    if (first.blocks.some((number) => !told[number].empty)) {
      first.title = true;
    } else {
      second.blocks.unshift(...first.blocks);
      stages.shift();
    }
  }
  return stages;
}
