/** Opens a page for the board: the lesson stage by stage. */
import { openPage } from "../host/opening.js";
import { startSession } from "./session.js";

/**
 * @param {Document} page
 * @param {(code: string) => Promise<any>} load makes a module of its text
 */
async function open(page, load) {
  await openPage(page, load, (main, key) => startSession({ main, key, kind: "page" }));
}

export default { open };
