/** The button for full screen. */
import { button } from "../../../widgets/shared/controls.js";
import { html, icon, put } from "../../../widgets/shared/svg.js";

const CORNERS = "M4 9V4H9M15 4H20V9M20 15V20H15M9 20H4V15";

/**
 * @param {Document} page
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {HTMLElement} the button, hidden where the browser does not allow full screen
 */
export function makeFullScreen(page, lifetime) {
  const content = [icon(CORNERS), html("span", {}, "Full screen")];
  const toggleButton = button(content, toggle, lifetime, {
    "class": "kit-button session-tool", "aria-pressed": "false",
  });
  toggleButton.hidden = !page.fullscreenEnabled;

  async function toggle() {
    try {
      if (page.fullscreenElement) {
        await page.exitFullscreen();
      } else {
        await page.documentElement.requestFullscreen();
      }
    } catch {
      // Refused; the browser's own key may still work.
      toggleButton.hidden = true;
    }
  }

  page.addEventListener("fullscreenchange", () => {
    put(toggleButton, { "aria-pressed": Boolean(page.fullscreenElement) });
  }, lifetime);
  return toggleButton;
}
