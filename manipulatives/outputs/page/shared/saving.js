/** A button that saves a file, and its text to copy in case the browser refuses the download. */
import { button } from "../../../widgets/shared/controls.js";
import { html } from "../../../widgets/shared/svg.js";

// The download reads the address some time after the click.
const REVOKE_DELAY_MS = 60_000;

/**
 * @param {() => { name: string, text: string }} file returns what to save now
 * @param {{ signal: AbortSignal }} lifetime
 * @param {string} [what] what the file is called on the button
 * @param {() => void} [onSaved] called when it was saved, or its text shown
 * @returns {HTMLElement}
 */
export function makeSaving(file, lifetime, what = "session", onSaved = () => {}) {
  const text = html("textarea", {
    "readonly": "", "rows": 6, "aria-label": `The ${what} as text`,
  });
  const copy = button(["Copy the text"], copyText, lifetime);
  const status = html("p", { role: "status" });
  const save = button([`Save the ${what}`], saveFile, lifetime);
  const rest = html("div", { class: "script-text" }, status, text, copy);
  rest.hidden = true;

  function saveFile() {
    const { name, text: content } = file();
    text.value = content;
    rest.hidden = false;
    // No browser tells a page that a download was refused, so the text is there in any case.
    status.textContent = download(save.ownerDocument, name, content)
      ? `Saved as ${name}. If no file came, copy this text.`
      : "This browser saves no file. Copy this text.";
    onSaved();
  }

  async function copyText() {
    text.select();
    try {
      await text.ownerDocument.defaultView?.navigator.clipboard.writeText(text.value);
      status.textContent = "Copied.";
    } catch {
      status.textContent = "The text is marked. Press Ctrl and C to copy it.";
    }
  }

  return html("div", { class: "script-save" }, save, rest);
}

/**
 * @param {Document} page of the button
 * @param {string} name
 * @param {string} text
 * @returns {boolean} whether the browser allowed the attempt
 */
function download(page, name, text) {
  try {
    const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
    const link = page.createElement("a");
    link.href = address;
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(address), REVOKE_DELAY_MS);
    return true;
  } catch {
    return false;
  }
}
