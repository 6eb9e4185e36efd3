/** Widgets side by side or one below the other: how the page shows a box that a notebook made. */

/** @param {RenderProps & { signal: AbortSignal }} given */
async function render({ model, el, signal, host }) {
  const box = document.createElement("div");
  box.className = "kit-box";
  box.dataset.kitBox = model.get("direction");
  el.append(box);
  await Promise.all(model.get("children").map(place));

  /** @param {string} reference */
  async function place(reference) {
    const part = document.createElement("div");
    box.append(part);
    try {
      const widget = await host.getWidget(reference);
      await widget.render({ el: part, signal });
    } catch {
      part.className = "kit-sorry";
      part.textContent = "This part works only in the notebook.";
      // The page removes repetitions of this sentence.
      part.dataset.kitNotebookOnly = "";
    }
  }
}

export default { render };
