/** One round: a question at a time with its manipulative, for a board and for a pupil's tablet. */
import { announce } from "../shared/announce.js";
import { html } from "../shared/svg.js";
import { OUT, makeBar } from "./bar.js";
import { button } from "./button.js";
import { Desk } from "./desk.js";
import { makeFoot } from "./foot.js";
import { makeHead } from "./head.js";
import { openKeep } from "./keep.js";
import { makeReply } from "./reply.js";
import { makeShowing } from "./showing.js";
import { makeVerdict } from "./verdict.js";
import { listenButton } from "./voice.js";

const MISSING = "What belongs here cannot be shown. The rest works.";

/** @param {RenderProps} given */
async function render({ model, el, signal = new AbortController().signal, host }) {
  const setup = model.get("setup");
  const life = { signal };
  const hands = html("div", { class: "round-hands" });
  const verdict = makeVerdict();
  const showing = makeShowing();
  const explain = button("explain", {}, "See the steps");
  const desk = new Desk({ model, keep: openKeep(setup.key ?? ""), now: Date.now, changed });
  const listen = listenButton({ vocabulary: setup.vocabulary ?? "us", words: standing }, life);
  const reply = makeReply({ type: (text) => desk.type(text), check }, life);
  const bar = makeBar((press) => desk.press(press), life);
  const { head, ask, paint: paintHead } = makeHead(setup.title ?? "", listen);
  const foot = makeFoot({
    next: () => desk.next() || leave("kit:onward"),
    back: () => desk.back() || leave("kit:backward"),
  }, bar.el, life);
  const root = html("div", {
    "class": "kit kit-round",
    "role": "group",
    "aria-label": setup.title || "Round",
    "data-kit-round": setup.key ?? "",
    "data-lm-suppress-shortcuts": "true",
  });
  const words = html("div", { class: "round-words" }, showing.el, reply.el, verdict.el, explain);
  root.append(html("div", { class: "round-fit" },
    html("div", { class: "round-table" }, head, ask, hands, words, foot.el)));
  el.append(root);

  /** What stands there beside the question, as it is said aloud. */
  function said() {
    const { task, work, place } = desk;
    const step = task?.steps[place.step - 1];
    return {
      ask: work.verdict?.say,
      work: work.verdict?.say,
      show: [step?.say, step?.class].filter(Boolean).join(" "),
      check: task?.spoken,
    }[place.phase];
  }

  /** Everything that stands there, to be read aloud. */
  function standing() {
    return [desk.task?.prompt, said()].filter(Boolean).join(" ");
  }

  function check() {
    const made = /** @type {HTMLElement | null} */ (hands.querySelector(".kit-manipulative"));
    desk.check(made?.facts?.() ?? {});
  }

  /** @param {import("./desk.js").Change} what */
  function changed(what) {
    if (what === "place") {
      paintPlace();
      announce(root, desk.place.phase === "ask" ? standing() : said() ?? "");
    } else if (what === "begun") {
      tellPlace();
    } else if (what === "timer") {
      paintTimer();
    } else if (what === "out") {
      announce(root, OUT);
    }
    paintWork();
    if (what === "verdict") {
      announce(root, said() ?? "");
    }
    // What had the focus may be gone; then Enter goes on.
    const { activeElement } = /** @type {Document | ShadowRoot} */ (root.getRootNode());
    if (root.contains(activeElement) && !activeElement?.checkVisibility()) {
      foot.focus();
    }
  }

  function paintPlace() {
    const { place, task, tasks, working } = desk;
    paintHead(place, tasks);
    showing.el.hidden = working || !task;
    if (task) {
      reply.ask(task.ask);
      showing.paint(task, place);
    }
    tellPlace();
  }

  function tellPlace() {
    const { place, task, tasks } = desk;
    root.dataset.phase = place.phase;
    root.dispatchEvent(new CustomEvent("kit:place", {
      bubbles: true,
      detail: { ...place, tasks: tasks.length, steps: task?.steps.length ?? 0 },
    }));
  }

  function paintWork() {
    const { work, solved, working, steps } = desk;
    // Once it is right there is nothing to add.
    reply.el.hidden = !working || solved;
    reply.paint(work.text);
    verdict.paint(working ? work.verdict : null);
    explain.hidden = !(solved && steps);
    foot.paint(desk);
    bar.paint(desk);
    // Where something stands before and after the round, the style sheet lets the buttons lead
    // there.
    root.dataset.turn = desk.turn;
    root.toggleAttribute("data-first", desk.first);
  }

  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let second;

  function paintTimer() {
    bar.paint(desk);
    clearTimeout(second);
    if (desk.timer.since !== null && !signal.aborted) {
      // Just after the digits change.
      second = setTimeout(() => {
        desk.tick();
        // Another round has taken its place.
        if (!root.checkVisibility()) {
          desk.rest();
        }
        paintTimer();
      }, (desk.left % 1000) + 20);
    }
  }

  /** @param {string} event */
  function leave(event) {
    root.dispatchEvent(new CustomEvent(event, { bubbles: true }));
  }

  /** What the page around may ask; prevented means that it was done here.
   * @param {string} event
   * @param {() => boolean} act
   */
  function obey(event, act) {
    root.addEventListener(event, (asked) => {
      if (asked.target === root && act()) {
        asked.preventDefault();
      }
    }, { signal });
  }
  obey("kit:next", () => desk.next());
  obey("kit:back", () => desk.back());
  obey("kit:answers", () => desk.turnAnswer());
  obey("kit:timer", () => desk.turnTimer());

  // Digits go to the answer wherever the focus is, but for the manipulative. On a page that
  // teaches that holds for the whole page; a notebook has other uses for them.
  document.addEventListener("keydown", (event) => {
    const { target, key, defaultPrevented, ctrlKey, altKey, metaKey } = event;
    const inside = target instanceof Node && root.contains(target)
      ? !hands.contains(target) && !(target instanceof HTMLInputElement)
      : target === document.body && "kitSession" in document.documentElement.dataset;
    const plain = key.length === 1 && !(defaultPrevented || ctrlKey || altKey || metaKey);
    if (inside && plain && !reply.el.hidden && root.checkVisibility()) {
      reply.take(key);
    }
  }, { signal });
  document.addEventListener("visibilitychange", () => desk.save(), { signal });
  hands.addEventListener("kit:change", () => desk.moved(), { signal });
  explain.addEventListener("click", () => desk.explain(), { signal });
  signal.addEventListener("abort", () => {
    clearTimeout(second);
    root.remove();
  }, { once: true });

  paintPlace();
  paintTimer();
  paintWork();

  const child = model.get("manipulative");
  hands.hidden = !child;
  if (child) {
    try {
      await (await host.getWidget(child)).render({ el: hands, signal });
      desk.join(await host.getModel(child));
    } catch (error) {
      reportError(error);
      hands.replaceChildren(html("p", { class: "round-sorry" }, MISSING));
    }
  }
}

export default { render };
