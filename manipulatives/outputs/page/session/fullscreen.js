/** The whole screen for the board, and back. */
import { button } from "../../../widgets/shared/controls.js";
import { html, icon, put } from "../../../widgets/shared/svg.js";

const CORNERS = "M4 9V4H9M15 4H20V9M20 15V20H15M9 20H4V15";

/**
 * @param {Document} page
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {HTMLElement} the button, hidden where the browser has no full screen to give
 */
export function makeFullScreen(page, lifetime) {
  const toggle = button([icon(CORNERS), html("span", {}, "Full screen")], turn, lifetime, {
    "class": "kit-button session-tool", "aria-pressed": "false",
  });
  toggle.hidden = !page.fullscreenEnabled;

  async function turn() {
    try {
      if (page.fullscreenElement) {
        await page.exitFullscreen();
      } else {
        await page.documentElement.requestFullscreen();
      }
    } catch {
      // Refused; the browser's own key may still do it.
      toggle.hidden = true;
    }
  }

  page.addEventListener("fullscreenchange", () => {
    put(toggle, { "aria-pressed": Boolean(page.fullscreenElement) });
  }, lifetime);
  return toggle;
}
