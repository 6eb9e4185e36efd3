/**
 * A lesson one stage at a time: what stands in `main` one below the other is shown a round at a
 * time, with a line at the top that says where we are, by hand or by the four keys of a clicker.
 * Nothing is moved in the document, so this serves a page and a notebook whose cells still come.
 *
 * A round is asked by events on its root, "kit:next", "kit:back", "kit:answers" and "kit:timer";
 * one that is prevented was done there. It sends "kit:onward" and "kit:backward" when a press
 * leads beyond it, and "kit:wipe" while the board is wiped: so many of so many parts are done.
 */
import { announce } from "../../../widgets/shared/announce.js";
import { html } from "../../../widgets/shared/svg.js";
import { makeFullScreen } from "./fullscreen.js";
import { makeLine, nameOf } from "./line.js";
import { ROUND, isNews, toldOf, within } from "../shared/looking.js";
import { lessonStorage, permanentStore, tabStore } from "../../../widgets/shared/state/storage.js";
import { makePen } from "./pen.js";
import { stagesOf } from "../shared/stages.js";
import { makeTeacher } from "../teacher/teacher.js";
import { onTurns } from "./turning.js";

/**
 * @typedef {import("../shared/stages.js").Stage} Stage
 * @typedef {import("../../../widgets/shared/state/storage.js").Store} Store
 */

const TALL = ".kit-round, .kit-manipulative";
const END = "This is the end of the lesson.";
// More presses than the longest round can be gone back.
const LONGEST = 600;

/**
 * Begin to show a lesson stage by stage.
 * @param {{
 *   main: HTMLElement, key: string, kind: "page" | "board", signal?: AbortSignal,
 *   store?: Store | null,
 * }} given the lesson; the key under which the browser keeps where it is; whether it is a page or
 *   a served board; how long it lasts; and where that is kept
 * @returns {{ next: () => void, back: () => void, show: (stage: number) => void }}
 */
export function startSession({ main, key, kind, signal, store = permanentStore() }) {
  const lifetime = { signal: signal ?? new AbortController().signal };
  const page = main.ownerDocument;
  const whole = page.documentElement;
  whole.dataset.kitSession = kind;
  whole.dataset.kitLesson = key;

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
    // A lesson is kept under its title and its seed.
    lesson: { title: titled(), seed: Number(/ (\d+)$/.exec(key)?.[1] ?? 0) },
    storage,
    tab: lessonStorage(tabStore(), key),
    where,
    acts: {
      next,
      back,
      again,
      answers: () => ask("kit:answers"),
      timer: () => ask("kit:timer"),
      show: (part) => show(part + leading()),
      fresh,
    },
    hear: (other) => onTurns(other, (way) => turn(way) || true, lifetime),
    time: clock,
  }, lifetime);
  const line = makeLine(
    choose, [pen.button, pen.tools, teacher.button, makeFullScreen(page, lifetime)], lifetime,
  );
  const { bar, contents, list, mark } = line;
  const before = turner("Back", back);
  const after = turner("Begin", next);
  after.dataset.kitNext = "";
  const foot = html("div", { class: "session-foot" }, before, after);
  const top = html("div", { class: "kit kit-session session-top" }, bar, teacher.panel);
  const under = html("div", { class: "kit kit-session session-under" }, contents, foot);
  // Above everything, the title too.
  (main.parentElement ?? page.body).prepend(top);
  main.after(under, pen.sheet);

  /** Look at what there is, now that it may be more. */
  function arrange() {
    const known = JSON.stringify(stages);
    blocks = /** @type {HTMLElement[]} */ ([...main.children]);
    const told = blocks.map(toldOf);
    // What is still coming may hold a round.
    staged = told.some((each) => each.round) || main.getAttribute("aria-busy") === "true";
    stages = stagesOf(told, staged);
    if (JSON.stringify(stages) !== known) {
      list(stages, titled());
    }
    settle();
  }

  /** Show the stage that is wanted, or, as long as it is not there, the last before it. */
  function settle() {
    const came = shown;
    shown = Math.max(0, Math.min(wanted, stages.length - 1));
    for (const [index, stage] of stages.entries()) {
      for (const block of stage.blocks.map((number) => blocks[number])) {
        block.toggleAttribute("data-kit-away", index !== shown);
        block.toggleAttribute("data-kit-first", index === 0);
        block.toggleAttribute("data-kit-last", index === stages.length - 1);
      }
    }
    const here = stages[shown];
    whole.toggleAttribute("data-kit-staged", staged);
    whole.toggleAttribute("data-kit-led", staged && Boolean(here?.round));
    whole.toggleAttribute("data-kit-titled", staged && Boolean(here?.title));
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
    if (staged && came !== shown && came >= 0) {
      announce(main, here.heading);
    }
  }

  /** How much of the screen is taken above and below a widget: the rest is its own. */
  function measure() {
    const here = on(shown, TALL);
    if (here) {
      const above = here.getBoundingClientRect().top + (page.scrollingElement?.scrollTop ?? 0);
      main.style.setProperty("--kit-above", `${Math.round(above)}px`);
      main.style.setProperty("--kit-below", `${under.offsetHeight}px`);
    }
    const lowest = main.offsetTop + main.offsetHeight + under.offsetHeight;
    pen.fit(whole.clientWidth, Math.max(lowest, whole.clientHeight));
  }

  /** @returns {string} what the lesson is called */
  function titled() {
    return page.querySelector("h1")?.textContent ?? page.title;
  }

  /** @returns {number} how many stages stand before what is taught */
  function leading() {
    return stages[0]?.title ? 1 : 0;
  }

  /** The name under which a stage is kept: its round's, which stays when stages are moved.
   * @param {number} stage
   * @returns {string}
   */
  function idOf(stage) {
    return on(stage, ROUND)?.dataset.kitRound || `part ${stage - leading() + 1}`;
  }

  /** Where the lesson stands, for whoever teaches it.
   * @returns {import("../teacher/teacher.js").Where}
   */
  function where() {
    const parts = stages.map((stage, index) => ({
      name: nameOf(stage, index), id: idOf(index), root: on(index, ROUND),
    })).slice(leading());
    const now = shown - leading();
    return {
      heading: stages[shown]?.heading ?? "",
      count: now >= 0 ? `${now + 1} of ${parts.length}` : "",
      parts,
      now,
    };
  }

  /**
   * @param {number} stage
   * @param {string} what
   * @returns {HTMLElement | null} the first of its kind on a stage
   */
  function on(stage, what) {
    const found = (stages[stage]?.blocks ?? []).map((number) => within(blocks[number], what));
    return found.find(Boolean) ?? null;
  }

  /** @returns {HTMLElement | null} the round of the stage that is shown */
  function round() {
    return on(shown, ROUND);
  }

  /**
   * Ask the round.
   * @param {string} event
   * @returns {boolean} whether it did it
   */
  function ask(event) {
    return round()?.dispatchEvent(new CustomEvent(event, { cancelable: true })) === false;
  }

  /** @param {number} stage */
  function show(stage) {
    if (stage < 0 || stage >= stages.length) {
      announce(main, stage < 0 ? stages[0]?.heading ?? "" : END);
      return;
    }
    const held = [main, under].some((part) => part.contains(page.activeElement));
    wanted = stage;
    storage.write("stage", wanted);
    settle();
    if (!stages[shown].title) {
      teacher.begin();
    }
    page.scrollingElement?.scrollTo(0, 0);
    if (held) {
      // The button under the finger is gone with its stage; Enter still goes on.
      const go = (round() ?? under).querySelector("[data-kit-next]");
      if (go instanceof HTMLElement) {
        go.focus({ preventScroll: true });
      }
    }
  }

  function next() {
    if (!ask("kit:next")) {
      show(shown + 1);
    }
  }

  function back() {
    if (!ask("kit:back")) {
      show(shown - 1);
    }
  }

  /**
   * @param {string} words
   * @param {boolean} over
   */
  function clock(words, over) {
    line.time(words, over);
  }

  /** A part of the line was pressed: the one that is shown begins again.
   * @param {number} stage
   */
  function choose(stage) {
    if (stage === shown) {
      again();
    } else {
      show(stage);
    }
  }

  /** Go back to the beginning of the round. */
  function again() {
    for (let presses = 0; presses < LONGEST && ask("kit:back"); presses += 1);
  }

  /** Begin the lesson anew. Its rounds keep their place until they are gone, so what is kept is
   * forgotten when the page opens again. */
  function fresh() {
    storage.write("fresh", true);
    page.defaultView?.location.reload();
  }

  /** A press on, where a long text is first read to its end.
   * @param {1 | -1} way
   * @returns {boolean} whether there was more to read
   */
  function read(way) {
    const paper = page.scrollingElement;
    if (!paper || round()) {
      return false;
    }
    const was = paper.scrollTop;
    paper.scrollBy({ top: way * 0.8 * paper.clientHeight, behavior: "instant" });
    return Math.abs(paper.scrollTop - was) > 1;
  }

  /** A key that turns the page.
   * @param {import("./turning.js").Turn} way
   * @returns {boolean} whether it was of use
   */
  function turn(way) {
    if (!staged) {
      return false;
    }
    if (way === "next") {
      return read(1) || (next(), true);
    }
    if (way === "back") {
      return read(-1) || (back(), true);
    }
    // On a board nothing may be lost by a clicker's key; a page may be loaded anew by F5.
    return ask(`kit:${way}`) || (way === "timer" && kind === "board");
  }
  onTurns(page, turn, lifetime);

  main.addEventListener("kit:onward", () => show(shown + 1), lifetime);
  main.addEventListener("kit:backward", () => show(shown - 1), lifetime);

  main.addEventListener("kit:wipe", (event) => {
    const { done, of } = /** @type {CustomEvent} */ (event).detail;
    if (event.target === round()) {
      pen.clear(done, of);
    }
  }, lifetime);

  const watcher = new MutationObserver((changes) => {
    if (changes.some(isNews)) {
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
  teacher.comeBack();
  return { next, back, show };

  /**
   * @param {string} words
   * @param {() => void} act
   */
  function turner(words, act) {
    const button = html("button", { type: "button", class: "kit-button" }, words);
    button.addEventListener("click", act, lifetime);
    return button;
  }
}
