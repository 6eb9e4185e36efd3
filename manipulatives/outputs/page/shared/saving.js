/** A file that is saved by one press; where the browser refuses, its text is there to copy. */
import { button } from "../../../widgets/shared/controls.js";
import { html } from "../../../widgets/shared/svg.js";

// A download begins a little after the press.
const KEPT_MS = 60_000;

/**
 * @param {() => { name: string, text: string }} file what there is to save just now
 * @param {{ signal: AbortSignal }} lifetime
 * @param {string} [what] what it holds
 * @param {() => void} [saved] hears that it was saved, or at least shown
 * @returns {HTMLElement}
 */
export function makeSaving(file, lifetime, what = "session", saved = () => {}) {
  const text = html("textarea", {
    "readonly": "", "rows": 6, "aria-label": `The ${what} as text`,
  });
  const copy = button(["Copy the text"], copyText, lifetime);
  const said = html("p", { role: "status" });
  const save = button([`Save the ${what}`], saveFile, lifetime);
  const rest = html("div", { class: "script-text" }, said, text, copy);
  rest.hidden = true;

  function saveFile() {
    const { name, text: content } = file();
    text.value = content;
    rest.hidden = false;
    // No browser tells a page that a download was refused, so the text is there in any case.
    said.textContent = download(save.ownerDocument, name, content)
      ? `Saved as ${name}. If no file came, copy this text.`
      : "This browser saves no file. Copy this text.";
    saved();
  }

  async function copyText() {
    text.select();
    try {
      await text.ownerDocument.defaultView?.navigator.clipboard.writeText(text.value);
      said.textContent = "Copied.";
    } catch {
      said.textContent = "The text is marked. Press Ctrl and C to copy it.";
    }
  }

  return html("div", { class: "script-save" }, save, rest);
}

/**
 * @param {Document} page where the press was
 * @param {string} name
 * @param {string} text
 * @returns {boolean} whether the browser let it be tried
 */
function download(page, name, text) {
  try {
    const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
    const link = page.createElement("a");
    link.href = address;
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(address), KEPT_MS);
    return true;
  } catch {
    return false;
  }
}
