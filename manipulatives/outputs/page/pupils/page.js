/** Opens a page for pupils: the lesson to work through alone. */
import { openPage } from "../host/opening.js";
import { startPupils } from "./pupils.js";

/**
 * @param {Document} page
 * @param {(code: string) => Promise<any>} load makes a module of its text
 */
async function open(page, load) {
  await openPage(page, load, (main, key) => startPupils({ main, key }));
}

export default { open };
