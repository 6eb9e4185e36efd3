/**
 * Divides the blocks of a lesson into stages, of which one is shown at a time. It works on plain
 * data about each block, without the DOM.
 *
 * @typedef {object} BlockInfo
 * @property {string} heading the text of its second-level heading, "" for none
 * @property {boolean} round whether a round is in it
 * @property {boolean} empty whether nothing in it is visible
 *
 * @typedef {object} Stage
 * @property {string} heading
 * @property {boolean} title whether it is the title, before the first part
 * @property {boolean} round
 * @property {number[]} blocks the indexes of its blocks
 */

/**
 * The stages of a lesson. A heading begins one, and so does a round where the stage has one
 * already. What comes before the first heading is the title, if any of it is visible.
 * A lesson without any round is one stage.
 * @param {BlockInfo[]} infos
 * @param {boolean} staged whether the lesson has rounds, or may still load some
 * @returns {Stage[]}
 */
export function stagesOf(infos, staged) {
  /** @type {Stage[]} */
  const stages = [];
  for (const [number, { heading, round }] of infos.entries()) {
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
    if (first.blocks.some((number) => !infos[number].empty)) {
      first.title = true;
    } else {
      second.blocks.unshift(...first.blocks);
      stages.shift();
    }
  }
  return stages;
}
