/**
 * A lesson one stage at a time: what stands in `main` one below the other is shown a round at a
 * time, with a line at the top that says where we are, by hand or by the four keys of a clicker.
 * Nothing is moved in the document, so this serves a page and a notebook whose cells still come.
 *
 * A round is asked by events on its root, "kit:next", "kit:back", "kit:answers" and "kit:timer";
 * one that is prevented was done there. It sends "kit:onward" and "kit:backward" when a press
 * leads beyond it.
 */
import { announce } from "../../widgets/shared/announce.js";
import { html } from "../../widgets/shared/svg.js";
import { makeProgress } from "./progress.js";
import { stagesOf } from "./stages.js";
import { onTurns } from "./turning.js";

/**
 * @typedef {import("./stages.js").Stage} Stage
 * @typedef {Pick<Storage, "getItem" | "setItem">} Store
 */

const ROUND = ".kit-round";
const TALL = ".kit-round, .kit-manipulative";
// What can be seen without any text in it.
const PICTURES = "svg, img, canvas, video, iframe, [data-kit-view]";
const END = "This is the end of the lesson.";

/**
 * Begin to show a lesson stage by stage.
 * @param {{
 *   main: HTMLElement, key: string, kind: "page" | "board", signal?: AbortSignal,
 *   storage?: Store | null,
 * }} given the lesson; the key under which the browser keeps where it is; whether it is a page or
 *   a served board; how long it lasts; and where that is kept
 * @returns {{ next: () => void, back: () => void, show: (stage: number) => void }}
 */
export function startSession({ main, key, kind, signal, storage = store() }) {
  const life = { signal: signal ?? new AbortController().signal };
  const page = main.ownerDocument;
  const whole = page.documentElement;
  whole.dataset.kitSession = kind;
  whole.dataset.kitLesson = key;

  const { bar, contents, list, mark } = makeProgress(show, life);
  const before = turner("Back", back);
  const after = turner("Begin", next);
  after.dataset.kitNext = "";
  const foot = html("div", { class: "session-foot" }, before, after);
  const top = html("div", { class: "kit kit-session" }, bar);
  const under = html("div", { class: "kit kit-session session-under" }, contents, foot);
  main.before(top);
  main.after(under);

  /** @type {HTMLElement[]} */
  let blocks = [];
  /** @type {Stage[]} */
  let stages = [];
  let staged = false;
  let wanted = kept();
  let shown = -1;

  /** Look at what there is, now that it may be more. */
  function arrange() {
    const known = JSON.stringify(stages);
    blocks = /** @type {HTMLElement[]} */ ([...main.children]);
    const told = blocks.map((block) => ({
      heading: headingIn(block),
      round: within(block, ROUND) !== null,
      empty: !block.textContent?.trim() && within(block, PICTURES) === null,
    }));
    // What is still coming may hold a round.
    staged = told.some((each) => each.round) || main.getAttribute("aria-busy") === "true";
    stages = stagesOf(told, staged);
    if (JSON.stringify(stages) !== known) {
      list(stages, page.querySelector("h1")?.textContent ?? page.title);
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
    under.hidden = !staged || Boolean(here?.round);
    contents.hidden = !here?.title;
    before.hidden = shown === 0;
    after.hidden = shown >= stages.length - 1;
    after.textContent = here?.title ? "Begin" : "Next";
    mark(stages, shown);
    measure();
    if (staged && came !== shown && came >= 0) {
      announce(main, here.heading);
    }
  }

  /** How much of the screen is taken above and below a widget: the rest is its own. */
  function measure() {
    const here = first(TALL);
    if (here) {
      const above = here.getBoundingClientRect().top + (page.scrollingElement?.scrollTop ?? 0);
      main.style.setProperty("--kit-above", `${Math.round(above)}px`);
      main.style.setProperty("--kit-below", `${under.offsetHeight}px`);
    }
  }

  /**
   * @param {string} what
   * @returns {HTMLElement | null} the first of its kind on the stage that is shown
   */
  function first(what) {
    const found = (stages[shown]?.blocks ?? []).map((number) => within(blocks[number], what));
    return found.find(Boolean) ?? null;
  }

  /** @returns {HTMLElement | null} the round of the stage that is shown */
  function round() {
    return first(ROUND);
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
    keep();
    settle();
    page.scrollingElement?.scrollTo(0, 0);
    if (held) {
      // The button under the finger is gone with its stage; Enter still goes on.
      const on = (round() ?? under).querySelector("[data-kit-next]");
      if (on instanceof HTMLElement) {
        on.focus({ preventScroll: true });
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

  onTurns(page, (turn) => {
    if (!staged) {
      return false;
    }
    if (turn === "next") {
      return read(1) || (next(), true);
    }
    if (turn === "back") {
      return read(-1) || (back(), true);
    }
    // On a board nothing may be lost by a clicker's key; a page may be loaded anew by F5.
    return ask(`kit:${turn}`) || (turn === "timer" && kind === "board");
  }, life);

  main.addEventListener("kit:onward", () => show(shown + 1), life);
  main.addEventListener("kit:backward", () => show(shown - 1), life);

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
  life.signal.addEventListener("abort", () => {
    watcher.disconnect();
    sizes.disconnect();
    top.remove();
    under.remove();
  }, { once: true });
  arrange();
  return { next, back, show };

  /**
   * @param {string} words
   * @param {() => void} act
   */
  function turner(words, act) {
    const button = html("button", { type: "button", class: "kit-button" }, words);
    button.addEventListener("click", act, life);
    return button;
  }

  /** @returns {number} */
  function kept() {
    try {
      return Number(storage?.getItem(`${key}/stage`)) || 0;
    } catch {
      return 0;
    }
  }

  function keep() {
    try {
      storage?.setItem(`${key}/stage`, String(wanted));
    } catch {
      // Refused or full. The lesson itself goes on.
    }
  }
}

/**
 * The first of its kind in a block, or the block itself.
 * @param {HTMLElement} block
 * @param {string} kind
 * @returns {HTMLElement | null}
 */
function within(block, kind) {
  return block.matches(kind) ? block : block.querySelector(kind);
}

/**
 * The second-level heading of a block; one inside a widget is the widget's own.
 * @param {HTMLElement} block
 * @returns {string}
 */
function headingIn(block) {
  const heading = within(block, "h2");
  return heading && !heading.closest("[data-kit-view], .kit-round, .kit-manipulative")
    ? heading.textContent?.trim() ?? "" : "";
}

/**
 * Whether something came or went that may change the stages. What widgets do inside is not news.
 * @param {MutationRecord} change
 * @returns {boolean}
 */
function isNews({ type, target, addedNodes, removedNodes }) {
  if (target instanceof Element && target.closest(`${ROUND}, .kit-manipulative`)) {
    return false;
  }
  return type === "attributes" ||
    [...addedNodes, ...removedNodes].some((node) => node instanceof Element);
}

/** @returns {Store | null} what the browser keeps, or null where it refuses even to be asked */
function store() {
  try {
    return localStorage;
  } catch {
    return null;
  }
}
