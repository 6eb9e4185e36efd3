/**
 * The teacher's side of a lesson: how long it takes against what was planned, how its rounds went,
 * and the script in a panel and in a window of its own.
 *
 * A round tells "kit:round" (its title, skill, options, seed, seconds and tasks) when it is there
 * and when its tasks are others, and "kit:place" whenever it moves.
 */
import { askedOf, recordOf, revised, sourceOf } from "../shared/record.js";
import { marksOf, sessionContents, sessionFile } from "./marks.js";
import { makePanel } from "./panel.js";
import { makeScript } from "./script.js";
import { inMinutes, passed, spentOf, total } from "./spent.js";
import { makeWindow } from "./window.js";

/**
 * @typedef {import("./marks.js").Mark} Mark
 * @typedef {{
 *   title: string, skill: string, options: object, seed: number, seconds: number, tasks: any[],
 * }} Detail
 * @typedef {{ name: string, id: string, root: HTMLElement | null }} Here a part of the lesson, by
 *   what name it is kept, and its round
 * @typedef {{ heading: string, count: string, parts: Here[], now: number }} Where now: -1 on the
 *   title
 */

/**
 * @param {{
 *   main: HTMLElement, lesson: { title: string, seed: number },
 *   storage: import("../../../widgets/shared/state/storage.js").LessonStorage,
 *   tab: import("../../../widgets/shared/state/storage.js").LessonStorage,
 *   where: () => Where,
 *   acts: Pick<import("./script.js").Acts,
 *     "next" | "back" | "answers" | "timer" | "again" | "show" | "fresh">,
 *   hear: (page: Document) => void,
 *   time: (words: string, over: boolean) => void,
 * }} given the lesson; what the browser keeps of it, for long and with the tab; where it stands;
 *   what it can be asked; who hears the keys of another window; and what shows the time
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   button: HTMLElement, panel: HTMLElement, begin: () => void, paint: () => void,
 *   comeBack: () => void,
 * }} begin() from when on time counts; comeBack() opens the window again when it was open
 */
export function makeTeacher({ main, lesson, storage, tab, where, acts, hear, time }, lifetime) {
  const page = main.ownerDocument;
  /** @type {WeakMap<EventTarget, Detail>} */
  const told = new WeakMap();
  /** @type {WeakMap<EventTarget, any>} */
  const places = new WeakMap();
  let spent = spentOf(storage.read("spent"));
  let marks = marksOf(storage.read("marks"));
  let record = recordOf(storage.read("record"));
  let begun = spent.day !== "";
  let apart = false;

  const all = { ...acts, mark, file };
  const beside = makeScript(all, lifetime);
  let own = beside;
  const child = makeWindow({
    page,
    title: `Teacher: ${lesson.title}`,
    make() {
      own = makeScript(all, lifetime);
      return own.el;
    },
    storage: tab,
    hear,
    turned(open) {
      apart = open;
      paint();
    },
  }, lifetime);
  const panel = makePanel({ script: beside, openWindow: child.open, opened: paint }, lifetime);

  /** @param {Here} part */
  function detail({ root }) {
    return root ? told.get(root) : undefined;
  }

  /** @returns {import("./script.js").Part[]} */
  function parts() {
    return where().parts.map((part) => ({
      name: part.name,
      round: part.root !== null,
      used: spent.used[part.id] ?? 0,
      planned: detail(part)?.seconds ?? 0,
      mark: marks[part.id] ?? null,
    }));
  }

  /** The round that is shown, as it is read. */
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
    const used = total(spent);
    time(inMinutes(used, planned, begun), planned > 0 && used > 1000 * planned);
    if (!apart && !panel.open) {
      return;
    }
    const view = { ...round(), parts: every };
    for (const script of [...(panel.open ? [beside] : []), ...(apart ? [own] : [])]) {
      script.paint(view);
    }
  }

  /** @param {Mark} given */
  function mark(given) {
    const { parts: every, now } = where();
    const { id, root } = every[now] ?? {};
    if (root) {
      const { [id]: was, ...rest } = marks;
      // The same one again takes it back.
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
      used: spent.used[part.id] ?? 0,
      mark: marks[part.id] ?? null,
      tasks: (detail(part)?.tasks ?? []).map((task) => (
        { prompt: task.prompt, asked: askedOf(task) }
      )),
    }));
    const contents = sessionContents({ ...lesson, date: spent.day, rounds });
    // Another tab of this browser may have saved it meanwhile.
    record = revised(recordOf(storage.read("record") ?? record), contents);
    storage.write("record", record);
    return sessionFile(sourceOf(page.documentElement), record, contents);
  }

  function begin() {
    if (!begun) {
      begun = true;
      tick();
    }
  }

  function tick() {
    const { parts: every, now } = where();
    if (!every[now]) {
      spent = { ...spent, at: null };
    } else if (begun) {
      spent = passed(spent, every[now].id, Date.now());
      storage.write("spent", spent);
    }
    child.look();
    paint();
  }

  /**
   * @param {string} name
   * @param {WeakMap<EventTarget, any>} kept
   */
  function note(name, kept) {
    main.addEventListener(name, (event) => {
      const { target, detail: given } = /** @type {CustomEvent} */ (event);
      if (target) {
        kept.set(target, given);
        paint();
      }
    }, lifetime);
  }
  note("kit:round", told);
  note("kit:place", places);
  main.addEventListener("kit:place", (event) => {
    if (/** @type {CustomEvent} */ (event).detail?.phase !== "ask") {
      begin();
    }
  }, lifetime);
  const ticking = setInterval(tick, 1000);
  lifetime.signal.addEventListener("abort", () => clearInterval(ticking), { once: true });

  return { button: panel.button, panel: panel.el, begin, paint, comeBack: child.comeBack };
}
