/**
 * A lesson that each pupil works through alone. It opens with start fresh or carry on, shows one
 * round after the other, and ends with the results. The page sends "kit:begin" to a round when its
 * turn comes, with the state that was saved of it. A round sends "kit:work" after every change,
 * with the state to save and the results, and "kit:onward" at its end.
 */
import { button } from "../../../widgets/shared/controls.js";
import { html } from "../../../widgets/shared/svg.js";
import { listenButton } from "../../../widgets/shared/voice.js";
import { ROUND, blockInfo, within } from "../shared/blocks.js";
import { lessonStorage, permanentStore, tabStore } from "../../../widgets/shared/state/storage.js";
import { makeEnd } from "./end.js";
import { recordOf, revised, sourceOf } from "../shared/record.js";
import { resultsFile } from "./results.js";
import { makeStart } from "./start.js";
import { canStore, openWork } from "./storage.js";
import { stagesOf } from "../shared/stages.js";

/** @typedef {import("./storage.js").Work} Work */

/**
 * Begin to show a lesson to pupils.
 * @param {{
 *   main: HTMLElement, key: string, signal?: AbortSignal,
 *   store?: import("../../../widgets/shared/state/storage.js").Store | null,
 * }} given the lesson, its key, a signal that ends the page, and where work is stored
 * @returns {void}
 */
export function startPupils({ main, key, signal, store = permanentStore() }) {
  const lifetime = { signal: signal ?? new AbortController().signal };
  const page = main.ownerDocument;
  const documentElement = page.documentElement;
  const tab = lessonStorage(tabStore(), `pupils/${key}`);
  const title = page.querySelector("h1")?.textContent ?? page.title;
  const seed = Number(/ (\d+)$/.exec(key)?.[1] ?? 0);
  const source = sourceOf(documentElement);
  const stores = canStore(store);
  let code = "";
  let storage = openWork(store, key, code);
  /** @type {Work} */
  let work = { stage: 0, parts: {}, record: null };
  /** @type {Set<HTMLElement>} the rounds that were sent "kit:begin" */
  const started = new Set();

  const heading = html("span", { class: "pupils-heading" });
  const count = html("span", { class: "pupils-count" });
  const stop = button(["Finish"], () => show("end"), lifetime);
  const bar = html("div", { class: "kit kit-pupils pupils-bar" }, heading, count, stop);
  const onward = button(["Next"], next, lifetime);
  onward.classList.add("is-go");
  const foot = html("div", { class: "kit kit-pupils pupils-foot" }, onward);
  const start = makeStart({
    begin, stores, code: tab.read("code") ?? "",
    hasWork: (other) => openWork(store, key, other).read() !== null,
  }, listen, lifetime);
  const end = makeEnd({ summary, carryOn: () => show("work"), finish, stores }, listen, lifetime);
  const screens = html("div", { class: "kit kit-pupils pupils-screens" }, start.el, end.el);
  main.before(bar);
  main.after(foot, screens);

  /** @param {() => string} words */
  function listen(words) {
    const vocabulary = documentElement.lang === "en-GB" ? "uk" : "us";
    return listenButton({ vocabulary, words }, lifetime);
  }

  /** The stages to work through, without the title. */
  function stages() {
    const blocks = /** @type {HTMLElement[]} */ ([...main.children]);
    const taught = stagesOf(blocks.map(blockInfo), true).filter((stage) => !stage.title);
    return taught.map((stage, index) => {
      const parts = stage.blocks.map((number) => blocks[number]);
      const root = parts.map((part) => within(part, ROUND)).find(Boolean) ?? null;
      return { parts, root, id: `${index + 1} ${root?.dataset.kitRound ?? ""}`, ...stage };
    });
  }

  /**
   * @param {string} given the pupil's code
   * @param {boolean} fresh
   */
  function begin(given, fresh) {
    code = given;
    tab.write("code", code);
    storage = openWork(store, key, code);
    work = (fresh ? null : storage.read()) ?? { stage: 0, parts: {}, record: null };
    if (fresh) {
      storage.forget();
    }
    started.clear();
    show("work");
  }

  /** @param {"start" | "work" | "end"} screen */
  function show(screen) {
    documentElement.dataset.kitScreen = screen;
    start.el.hidden = screen !== "start";
    end.el.hidden = screen !== "end";
    main.hidden = screen !== "work";
    bar.hidden = screen !== "work";
    foot.hidden = true;
    page.scrollingElement?.scrollTo(0, 0);
    if (screen === "end") {
      end.paint();
    } else if (screen === "work") {
      showStage();
    }
  }

  /** Show the current stage and focus what comes first in it. */
  function showStage() {
    const all = stages();
    if (main.hasAttribute("aria-busy") || !all.length) {
      return;
    }
    const here = all[work.stage];
    if (!here) {
      show("end");
      return;
    }
    for (const block of main.children) {
      block.toggleAttribute("data-kit-away", !here.parts.includes(/** @type {any} */ (block)));
    }
    heading.textContent = here.heading || title;
    count.textContent = all.length > 1 ? `${work.stage + 1} of ${all.length}` : "";
    documentElement.toggleAttribute("data-kit-led", Boolean(here.root));
    foot.hidden = Boolean(here.root);
    measure();
    if (here.root && !started.has(here.root)) {
      started.add(here.root);
      here.root.dispatchEvent(new CustomEvent("kit:begin", {
        detail: { saved: work.parts[here.id]?.saved ?? null },
      }));
    }
    /** @type {HTMLElement} */
    const first = here.root?.querySelector("[role=heading]") ?? onward;
    first.focus({ preventScroll: true });
  }

  /** Tell the style sheet how far down a round begins, as it fills the rest of the screen. */
  function measure() {
    const { root } = stages()[work.stage] ?? {};
    if (root && !main.hidden) {
      const above = root.getBoundingClientRect().top + (page.scrollingElement?.scrollTop ?? 0);
      main.style.setProperty("--kit-above", `${Math.round(above)}px`);
    }
  }

  function next() {
    work = { ...work, stage: work.stage + 1 };
    storage.write(work);
    show("work");
  }

  main.addEventListener("kit:onward", next, lifetime);
  main.addEventListener("kit:work", (event) => {
    const here = stages()[work.stage];
    if (here?.root === event.target) {
      const { saved, results } = /** @type {CustomEvent} */ (event).detail;
      work = { ...work, parts: { ...work.parts, [here.id]: { saved, results } } };
      storage.write(work);
    }
  }, lifetime);

  /** What the last screen shows, and the results file. */
  function summary() {
    const all = stages();
    const rounds = all.filter(({ root }) => root);
    const rows = all.map((stage) => ({
      heading: stage.heading,
      results: (work.parts[stage.id]?.results ?? []).filter(Boolean)
        .map((result) => ({ ...result, round: rounds.indexOf(stage) + 1 })),
    })).filter(({ results }) => results.length);
    // The date in the time zone of the pupil.
    const now = new Date();
    const date = [now.getFullYear(), now.getMonth() + 1, now.getDate()]
      .map((part) => String(part).padStart(2, "0")).join("-");
    const tasks = rows.flatMap(({ results }) => results);
    const contents = { title, seed, code: code || null, date, tasks };
    // Another tab of this browser may have saved it meanwhile.
    const record = revised(recordOf(storage.read()?.record ?? work.record), contents);
    work = { ...work, record };
    storage.write(work);
    return {
      rows,
      done: work.stage >= all.length,
      file: resultsFile(source, record, contents),
      headline: [title, code && `code ${code}`, date].filter(Boolean).join(" \u00b7 "),
    };
  }

  /** Delete what is stored of this pupil; the reload deletes the state of the rounds. */
  function finish() {
    storage.forget();
    tab.write("code", "");
    page.defaultView?.location.reload();
  }

  const watcher = new MutationObserver(() => {
    if (documentElement.dataset.kitScreen === "work") {
      showStage();
    }
  });
  watcher.observe(main, { attributes: true, attributeFilter: ["aria-busy"] });
  const sizes = new ResizeObserver(measure);
  sizes.observe(bar);
  sizes.observe(main);
  lifetime.signal.addEventListener("abort", () => {
    watcher.disconnect();
    sizes.disconnect();
    for (const part of [bar, foot, screens]) {
      part.remove();
    }
  }, { once: true });
  show("start");
}
