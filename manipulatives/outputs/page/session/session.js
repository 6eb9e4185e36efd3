/**
 * A lesson one stage at a time: of the blocks in `main` only those of the current stage are
 * visible, with a bar at the top, controlled by buttons or by the four keys of a clicker. No
 * element is moved in the document, so this works for a page and for a notebook whose cells still
 * load.
 *
 * The session sends "kit:next", "kit:back", "kit:answers" and "kit:timer" to the root of a round,
 * which prevents the default where it handled them. A round sends "kit:onward" and "kit:backward"
 * when a press leads beyond its last or first step, and "kit:wipe" while the board is wiped, with
 * the number of parts done and of all parts.
 */
import { announce } from "../../../widgets/shared/announce.js";
import { html } from "../../../widgets/shared/svg.js";
import { makeFullScreen } from "./fullscreen.js";
import { makeTopBar, nameOf } from "./top_bar.js";
import { ROUND, blockInfo, mayChangeStages, within } from "../shared/blocks.js";
import { lessonStorage, permanentStore, tabStore } from "../../../widgets/shared/state/storage.js";
import { makePen } from "./pen.js";
import { stagesOf } from "../shared/stages.js";
import { makeTeacher } from "../teacher/teacher.js";
import { onPageKeys } from "./page_keys.js";

/**
 * @typedef {import("../shared/stages.js").Stage} Stage
 * @typedef {import("../../../widgets/shared/state/storage.js").Store} Store
 */

const WIDGETS = ".kit-round, .kit-manipulative";
const END = "This is the end of the lesson.";
// More than the steps of the longest round.
const MOST_PRESSES = 600;

/**
 * Begin to show a lesson stage by stage.
 * @param {{
 *   main: HTMLElement, key: string, kind: "page" | "board", signal?: AbortSignal,
 *   store?: Store | null,
 * }} given the lesson; the key under which the browser stores its state; whether it is a page or a
 *   served board; a signal that ends the session; and where the state is stored
 * @returns {{ next: () => void, back: () => void, show: (stage: number) => void }}
 */
export function startSession({ main, key, kind, signal, store = permanentStore() }) {
  const lifetime = { signal: signal ?? new AbortController().signal };
  const page = main.ownerDocument;
  const documentElement = page.documentElement;
  documentElement.dataset.kitSession = kind;
  documentElement.dataset.kitLesson = key;

  const storage = lessonStorage(store, key);
  if (storage.read("fresh")) {
    storage.forget();
  }
  /** @type {HTMLElement[]} */
  let blocks = [];
  /** @type {Stage[]} */
  let stages = [];
  let staged = false;
  let wanted = Number(storage.read("stage")) || 0;
  let shown = -1;

  const pen = makePen({ storage, go: { back, next } }, lifetime);
  const teacher = makeTeacher({
    main,
    // The key is title and seed.
    lesson: { title: lessonTitle(), seed: Number(/ (\d+)$/.exec(key)?.[1] ?? 0) },
    storage,
    tab: lessonStorage(tabStore(), key),
    where,
    acts: {
      next,
      back,
      repeatRound,
      answers: () => askRound("kit:answers"),
      timer: () => askRound("kit:timer"),
      show: (part) => show(part + titleStages()),
      restart,
    },
    listenTo: (other) => onPageKeys(other, (way) => onPageKey(way) || true, lifetime),
    showTime,
  }, lifetime);
  const topBar = makeTopBar(
    choose, [pen.button, pen.tools, teacher.button, makeFullScreen(page, lifetime)], lifetime,
  );
  const { bar, contents, list, mark } = topBar;
  const before = makeButton("Back", back);
  const after = makeButton("Begin", next);
  after.dataset.kitNext = "";
  const foot = html("div", { class: "session-foot" }, before, after);
  const top = html("div", { class: "kit kit-session session-top" }, bar, teacher.panel);
  const under = html("div", { class: "kit kit-session session-under" }, contents, foot);
  // Above everything, the title too.
  (main.parentElement ?? page.body).prepend(top);
  main.after(under, pen.sheet);

  /** Divide the blocks into stages again after the document changed. */
  function arrange() {
    const known = JSON.stringify(stages);
    blocks = /** @type {HTMLElement[]} */ ([...main.children]);
    const infos = blocks.map(blockInfo);
    // A block that still loads may hold a round.
    staged = infos.some((each) => each.round) || main.getAttribute("aria-busy") === "true";
    stages = stagesOf(infos, staged);
    if (JSON.stringify(stages) !== known) {
      list(stages, lessonTitle());
    }
    showStage();
  }

  /** Show the stage that is wanted, or until it has loaded the last one before it. */
  function showStage() {
    const previous = shown;
    shown = Math.max(0, Math.min(wanted, stages.length - 1));
    for (const [index, stage] of stages.entries()) {
      for (const block of stage.blocks.map((number) => blocks[number])) {
        block.toggleAttribute("data-kit-away", index !== shown);
        block.toggleAttribute("data-kit-first", index === 0);
        block.toggleAttribute("data-kit-last", index === stages.length - 1);
      }
    }
    const here = stages[shown];
    documentElement.toggleAttribute("data-kit-staged", staged);
    documentElement.toggleAttribute("data-kit-led", staged && Boolean(here?.round));
    documentElement.toggleAttribute("data-kit-titled", staged && Boolean(here?.title));
    top.hidden = !staged;
    pen.sheet.hidden = !staged;
    under.hidden = !staged || Boolean(here?.round);
    contents.hidden = !here?.title;
    before.hidden = shown === 0;
    after.hidden = shown >= stages.length - 1;
    after.textContent = here?.title ? "Begin" : "Next";
    mark(stages, shown);
    pen.turnTo(idOf(shown));
    teacher.paint();
    measure();
    if (staged && previous !== shown && previous >= 0) {
      announce(main, here.heading);
    }
  }

  /** Tell the style sheet how much of the screen is used above and below a widget, which fills the
   * rest. */
  function measure() {
    const here = findOn(shown, WIDGETS);
    if (here) {
      const above = here.getBoundingClientRect().top + (page.scrollingElement?.scrollTop ?? 0);
      main.style.setProperty("--kit-above", `${Math.round(above)}px`);
      main.style.setProperty("--kit-below", `${under.offsetHeight}px`);
    }
    const lowest = main.offsetTop + main.offsetHeight + under.offsetHeight;
    pen.fit(documentElement.clientWidth, Math.max(lowest, documentElement.clientHeight));
  }

  /** @returns {string} the title of the lesson */
  function lessonTitle() {
    return page.querySelector("h1")?.textContent ?? page.title;
  }

  /** @returns {number} the number of stages before the first part */
  function titleStages() {
    return stages[0]?.title ? 1 : 0;
  }

  /** The key under which a stage is stored: that of its round, which stays when stages move.
   * @param {number} stage
   * @returns {string}
   */
  function idOf(stage) {
    return findOn(stage, ROUND)?.dataset.kitRound || `part ${stage - titleStages() + 1}`;
  }

  /** The place in the lesson, for the script of the teacher.
   * @returns {import("../teacher/teacher.js").Where}
   */
  function where() {
    const parts = stages.map((stage, index) => ({
      name: nameOf(stage, index), id: idOf(index), root: findOn(index, ROUND),
    })).slice(titleStages());
    const now = shown - titleStages();
    return {
      heading: stages[shown]?.heading ?? "",
      count: now >= 0 ? `${now + 1} of ${parts.length}` : "",
      parts,
      now,
    };
  }

  /**
   * @param {number} stage
   * @param {string} selector
   * @returns {HTMLElement | null} the first element on a stage that matches
   */
  function findOn(stage, selector) {
    const found = (stages[stage]?.blocks ?? []).map((number) => within(blocks[number], selector));
    return found.find(Boolean) ?? null;
  }

  /** @returns {HTMLElement | null} the round of the stage that is shown */
  function round() {
    return findOn(shown, ROUND);
  }

  /**
   * Send an event to the current round.
   * @param {string} event
   * @returns {boolean} whether the round handled it
   */
  function askRound(event) {
    return round()?.dispatchEvent(new CustomEvent(event, { cancelable: true })) === false;
  }

  /** @param {number} stage */
  function show(stage) {
    if (stage < 0 || stage >= stages.length) {
      announce(main, stage < 0 ? stages[0]?.heading ?? "" : END);
      return;
    }
    const hadFocus = [main, under].some((part) => part.contains(page.activeElement));
    wanted = stage;
    storage.write("stage", wanted);
    showStage();
    if (!stages[shown].title) {
      teacher.begin();
    }
    page.scrollingElement?.scrollTo(0, 0);
    if (hadFocus) {
      // The button that was pressed is hidden with its stage: move the focus, so that Enter goes
      // on.
      const go = (round() ?? under).querySelector("[data-kit-next]");
      if (go instanceof HTMLElement) {
        go.focus({ preventScroll: true });
      }
    }
  }

  function next() {
    if (!askRound("kit:next")) {
      show(shown + 1);
    }
  }

  function back() {
    if (!askRound("kit:back")) {
      show(shown - 1);
    }
  }

  /**
   * @param {string} words
   * @param {boolean} over
   */
  function showTime(words, over) {
    topBar.time(words, over);
  }

  /** A part was pressed in the bar: the one that is shown starts again.
   * @param {number} stage
   */
  function choose(stage) {
    if (stage === shown) {
      repeatRound();
    } else {
      show(stage);
    }
  }

  /** Go back to the beginning of the round. */
  function repeatRound() {
    for (let presses = 0; presses < MOST_PRESSES && askRound("kit:back"); presses += 1);
  }

  /** Start the lesson again. Its rounds store their state until the page closes, so the storage is
   * cleared when the page opens again. */
  function restart() {
    storage.write("fresh", true);
    page.defaultView?.location.reload();
  }

  /** Scroll a long text before leaving its stage.
   * @param {1 | -1} way
   * @returns {boolean} whether it scrolled
   */
  function scrollText(way) {
    const paper = page.scrollingElement;
    if (!paper || round()) {
      return false;
    }
    const was = paper.scrollTop;
    paper.scrollBy({ top: way * 0.8 * paper.clientHeight, behavior: "instant" });
    return Math.abs(paper.scrollTop - was) > 1;
  }

  /** Handle a key of the lesson.
   * @param {import("./page_keys.js").PageKey} way
   * @returns {boolean} whether it was handled
   */
  function onPageKey(way) {
    if (!staged) {
      return false;
    }
    if (way === "next") {
      return scrollText(1) || (next(), true);
    }
    if (way === "back") {
      return scrollText(-1) || (back(), true);
    }
    // On a board F5 never reloads, because a clicker sends it; on a page it may.
    return askRound(`kit:${way}`) || (way === "timer" && kind === "board");
  }
  onPageKeys(page, onPageKey, lifetime);

  main.addEventListener("kit:onward", () => show(shown + 1), lifetime);
  main.addEventListener("kit:backward", () => show(shown - 1), lifetime);

  main.addEventListener("kit:wipe", (event) => {
    const { done, of } = /** @type {CustomEvent} */ (event).detail;
    if (event.target === round()) {
      pen.clear(done, of);
    }
  }, lifetime);

  const watcher = new MutationObserver((changes) => {
    if (changes.some(mayChangeStages)) {
      arrange();
    }
  });
  watcher.observe(main, {
    childList: true, subtree: true, attributes: true, attributeFilter: ["aria-busy"],
  });
  const sizes = new ResizeObserver(measure);
  sizes.observe(top);
  sizes.observe(main);
  lifetime.signal.addEventListener("abort", () => {
    watcher.disconnect();
    sizes.disconnect();
    for (const part of [top, under, pen.sheet]) {
      part.remove();
    }
  }, { once: true });
  arrange();
  teacher.reopen();
  return { next, back, show };

  /**
   * @param {string} words
   * @param {() => void} press
   */
  function makeButton(words, press) {
    const button = html("button", { type: "button", class: "kit-button" }, words);
    button.addEventListener("click", press, lifetime);
    return button;
  }
}
