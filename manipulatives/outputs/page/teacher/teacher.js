/**
 * What a lesson shows to the teacher: time used and planned, how its rounds went, and the script in
 * a panel and in a separate window.
 *
 * A round sends "kit:round" (title, skill, options, seed, seconds and tasks) when it loads and when
 * its tasks change, and "kit:place" whenever its step changes.
 */
import { askedOf, recordOf, revised, sourceOf } from "../shared/record.js";
import { marksOf, sessionContents, sessionFile } from "./marks.js";
import { makePanel } from "./panel.js";
import { makeScript } from "./script.js";
import { inMinutes, withTime, timeUsedOf, total } from "./time_used.js";
import { makeWindow } from "./window.js";

/**
 * @typedef {import("./marks.js").Mark} Mark
 * @typedef {{
 *   title: string, skill: string, options: object, seed: number, seconds: number, tasks: any[],
 * }} Detail
 * @typedef {{ name: string, id: string, root: HTMLElement | null }} Here name of a part of the
 *   lesson, the key under which it is stored, and its round
 * @typedef {{ heading: string, count: string, parts: Here[], now: number }} Where the place in the
 *   lesson; now is the index of the part, -1 on the title
 */

/**
 * @param {{
 *   main: HTMLElement, lesson: { title: string, seed: number },
 *   storage: import("../../../widgets/shared/state/storage.js").LessonStorage,
 *   tab: import("../../../widgets/shared/state/storage.js").LessonStorage,
 *   where: () => Where,
 *   acts: Pick<import("./script.js").Acts,
 *     "next" | "back" | "answers" | "timer" | "repeatRound" | "show" | "restart">,
 *   listenTo: (page: Document) => void,
 *   showTime: (words: string, over: boolean) => void,
 * }} given the lesson; its permanent storage and that of the tab; the place in the lesson; what the
 *   script can do; what listens to the keys of another window; and what shows the time
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   button: HTMLElement, panel: HTMLElement, begin: () => void, paint: () => void,
 *   reopen: () => void,
 * }} begin() starts counting time; reopen() opens the window again if it was open before a reload
 */
export function makeTeacher(
  { main, lesson, storage, tab, where, acts, listenTo, showTime }, lifetime,
) {
  const page = main.ownerDocument;
  /** @type {WeakMap<EventTarget, Detail>} */
  const details = new WeakMap();
  /** @type {WeakMap<EventTarget, any>} */
  const places = new WeakMap();
  let timeUsed = timeUsedOf(storage.read("spent"));
  let marks = marksOf(storage.read("marks"));
  let record = recordOf(storage.read("record"));
  let started = timeUsed.day !== "";
  let windowOpen = false;

  const all = { ...acts, mark, file };
  const panelScript = makeScript(all, lifetime);
  let windowScript = panelScript;
  const child = makeWindow({
    page,
    title: `Teacher: ${lesson.title}`,
    make() {
      windowScript = makeScript(all, lifetime);
      return windowScript.el;
    },
    storage: tab,
    listenTo,
    onToggle(open) {
      windowOpen = open;
      paint();
    },
  }, lifetime);
  const panel = makePanel({ script: panelScript, openWindow: child.open, onOpen: paint }, lifetime);

  /** @param {Here} part */
  function detail({ root }) {
    return root ? details.get(root) : undefined;
  }

  /** @returns {import("./script.js").Part[]} */
  function parts() {
    return where().parts.map((part) => ({
      name: part.name,
      round: part.root !== null,
      used: timeUsed.used[part.id] ?? 0,
      planned: detail(part)?.seconds ?? 0,
      mark: marks[part.id] ?? null,
    }));
  }

  /** The current round, as the script shows it. */
  function round() {
    const { heading, count, parts: every, now } = where();
    const here = every[now] ?? { name: "", id: "", root: null };
    const clock = here.root?.querySelector("[role='timer']");
    return {
      heading: heading || lesson.title,
      count,
      now,
      timer: clock?.checkVisibility() ? clock.getAttribute("aria-label") ?? "" : "",
      tasks: detail(here)?.tasks ?? [],
      place: here.root ? places.get(here.root) ?? null : null,
    };
  }

  function paint() {
    const every = parts();
    const planned = every.reduce((sum, part) => sum + part.planned, 0);
    const used = total(timeUsed);
    showTime(inMinutes(used, planned, started), planned > 0 && used > 1000 * planned);
    if (!windowOpen && !panel.open) {
      return;
    }
    const view = { ...round(), parts: every };
    if (panel.open) {
      panelScript.paint(view);
    }
    if (windowOpen) {
      windowScript.paint(view);
    }
  }

  /** @param {Mark} given */
  function mark(given) {
    const { parts: every, now } = where();
    const { id, root } = every[now] ?? {};
    if (root) {
      const { [id]: was, ...rest } = marks;
      // Pressing the current mark removes it.
      marks = was === given ? rest : { ...rest, [id]: given };
      storage.write("marks", marks);
      paint();
    }
  }

  function file() {
    const rounds = where().parts.filter(({ root }) => root).map((part, index) => ({
      round: index + 1,
      title: detail(part)?.title || part.name,
      skill: detail(part)?.skill ?? "",
      options: detail(part)?.options ?? {},
      seed: detail(part)?.seed ?? null,
      planned: detail(part)?.seconds ?? null,
      used: timeUsed.used[part.id] ?? 0,
      mark: marks[part.id] ?? null,
      tasks: (detail(part)?.tasks ?? []).map((task) => (
        { prompt: task.prompt, asked: askedOf(task) }
      )),
    }));
    const contents = sessionContents({ ...lesson, date: timeUsed.day, rounds });
    // Another tab of this browser may have saved it meanwhile.
    record = revised(recordOf(storage.read("record") ?? record), contents);
    storage.write("record", record);
    return sessionFile(sourceOf(page.documentElement), record, contents);
  }

  function begin() {
    if (!started) {
      started = true;
      tick();
    }
  }

  function tick() {
    const { parts: every, now } = where();
    if (!every[now]) {
      timeUsed = { ...timeUsed, at: null };
    } else if (started) {
      timeUsed = withTime(timeUsed, every[now].id, Date.now());
      storage.write("spent", timeUsed);
    }
    child.check();
    paint();
  }

  /**
   * @param {string} name
   * @param {WeakMap<EventTarget, any>} byRoot
   */
  function recordEvents(name, byRoot) {
    main.addEventListener(name, (event) => {
      const { target, detail: given } = /** @type {CustomEvent} */ (event);
      if (target) {
        byRoot.set(target, given);
        paint();
      }
    }, lifetime);
  }
  recordEvents("kit:round", details);
  recordEvents("kit:place", places);
  main.addEventListener("kit:place", (event) => {
    if (/** @type {CustomEvent} */ (event).detail?.phase !== "ask") {
      begin();
    }
  }, lifetime);
  const ticking = setInterval(tick, 1000);
  lifetime.signal.addEventListener("abort", () => clearInterval(ticking), { once: true });

  return { button: panel.button, panel: panel.el, begin, paint, reopen: child.reopen };
}
