/** What the paper, the line below it and the readings show. */
import { html, put } from "../shared/svg.js";
import { makeReadings, write } from "./readings.js";
import { called, facts } from "./state/facts.js";
import { looked } from "./state/look.js";
import { NOTHING } from "./state/moves.js";
import { pictureOf, placeName, pointName, whatNext } from "./state/tell.js";
import { remark } from "./state/words.js";

/**
 * @typedef {object} Seen what is looked at
 * @property {import("../shared/frame.js").Frame} frame
 * @property {import("./actions.js").Hand} hand
 * @property {import("./drawing.js").Sheet} sheet
 * @property {import("./cutting.js").Cutting} cutting
 * @property {() => import("./state/paper.js").Shape} shape
 * @property {() => import("./polygon.js").Traits} traits
 * @property {() => boolean} isCutting
 * @property {(look: import("./state/look.js").Look) => void} painted what else follows from a look
 * @property {() => void} paintTools
 *
 * @typedef {ReturnType<typeof makeView>} View
 */

/** @param {Seen} seen */
export function makeView({
  frame, hand, sheet, cutting, shape, traits, isCutting, painted, paintTools,
}) {
  // One look at the shape, what is true of it, and which readings have just changed.
  let look = looked(NOTHING, "plain");
  /** @type {Facts} */
  let found = {};
  let changes = "";
  const { readings, read } = makeReadings();
  const hint = html("p", { class: "polygon-hint" });

  /** @param {boolean} movable */
  function paintPoints(movable) {
    const elements = sheet.points();
    const { grid } = traits();
    hand.stop = Math.min(hand.stop, Math.max(0, elements.length - 1));
    elements.forEach((element, index) => {
      const now = movable ? {
        "role": "button",
        "tabindex": index === hand.stop ? 0 : -1,
        "aria-label": `${pointName(shape(), index)}, ${placeName(shape().points[index], grid)}`,
        "aria-pressed": index === hand.picked,
      } : { "role": null, "tabindex": null, "aria-label": null, "aria-pressed": null };
      if (element.dataset.is !== JSON.stringify(now)) {
        element.dataset.is = JSON.stringify(now);
        put(element, now);
      }
    });
    put(sheet.handles, { "aria-hidden": movable ? null : true });
    put(sheet.drawing, { "aria-label": pictureOf(shape(), grid) });
  }

  /** @returns {string} what stands below the paper: the newest first, what is wrong, what to do */
  function hinted() {
    const now = traits();
    if (hand.said || hand.picked !== null) {
      return hand.said || "Now tap where the point goes.";
    }
    const remarked = remark(shape(), now.grid, now, look);
    if (remarked || !now.movable) {
      return remarked ?? "";
    }
    if (isCutting()) {
      return cutting.points().length ? "Tap an edge where a cut begins." : "Draw a shape to cut.";
    }
    return found.traced ? "Traced: it is the guide." : whatNext(shape());
  }

  return {
    hint,
    readings,
    say: frame.say,
    paintPoints,
    paintTools,

    /** Show the shape. */
    paint() {
      const now = traits();
      const { points } = shape();
      const movable = now.movable && !isCutting();
      look = looked(shape(), now.grid);
      const { picked } = hand;
      hand.picked = picked !== null && picked < points.length ? picked : null;
      sheet.paint({
        shape: shape(),
        grid: now.grid,
        guide: now.guide,
        show: now.show,
        count: now.count,
        look,
        movable,
        pointed: now.show_points && !isCutting(),
        picked: hand.picked,
      });
      found = facts(shape(), now.grid, now, now.guide, look);
      changes = read(now.show, found, called(shape(), now.grid, now, look));
      write(hint, hinted());
      paintPoints(movable);
      painted(look);
    },

    /**
     * Say what was done, what is wrong, and which readings that are shown have changed.
     * @param {string} sentence
     */
    tell(sentence) {
      const now = traits();
      const more = now.hints && !hand.said ? remark(shape(), now.grid, now, look) : null;
      frame.say([sentence, more, changes].filter(Boolean).join(" "));
    },

    /**
     * Show and say why nothing was done.
     * @param {string} sentence
     */
    refuse(sentence) {
      hand.said = sentence;
      write(hint, sentence);
      frame.say(sentence);
    },
  };
}
