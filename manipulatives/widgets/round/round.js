/** One round: questions with their manipulative, for a board and for a pupil's tablet. */
import { announce } from "../shared/announce.js";
import { html } from "../shared/svg.js";
import { makeAsking } from "./asking.js";
import { OUT, makeBar } from "./bar.js";
import { makeCards } from "./cards.js";
import { Desk } from "./desk.js";
import { makeFoot } from "./foot.js";
import { asks, makeHead } from "./head.js";
import { openKeep } from "./keep.js";
import { makeMore } from "./more.js";
import { renderPupil } from "./pupil.js";
import { makeReply } from "./reply.js";
import { makeShowing } from "./showing.js";
import { makeTelling } from "./telling.js";
import { signed } from "../shared/signs.js";
import { softTone } from "./tone.js";
import { makeVerdict } from "./verdict.js";
import { listenButton } from "./voice.js";
import { makeWiping } from "./wiping.js";
import { makeWish } from "./wish.js";

const SHORT = 14;
const MISSING = "What belongs here cannot be shown. The rest works.";

/** @param {RenderProps} given */
async function render({ model, el, signal = new AbortController().signal, host }) {
  // A page for pupils says so; there everyone works alone.
  if (document.documentElement.dataset.kitSession === "pupils") {
    await renderPupil({ model, el, signal, host });
    return;
  }
  const setup = model.get("setup");
  const life = { signal };
  const root = html("div", {
    "class": "kit kit-round",
    "role": "group",
    "aria-label": setup.title || "Round",
    "data-kit-round": setup.key ?? "",
    "data-lm-suppress-shortcuts": "true",
  });
  const hands = html("div", { class: "round-hands" });
  const tell = makeTelling(root, model, life);
  const desk = new Desk({ model, keep: openKeep(setup.key ?? ""), now: Date.now, changed });
  const verdict = makeVerdict();
  const showing = makeShowing();
  const listen = listenButton({ vocabulary: setup.vocabulary ?? "us", words: standing }, life);
  const reply = makeReply({ type: (text) => desk.type(text), check }, life);
  const bar = makeBar((press) => desk.press(press), life);
  const { head, ask, paint: paintHead } = makeHead(setup.title ?? "", listen);
  const cards = makeCards((task) => desk.choose(task), life);
  const wiping = makeWiping({
    count: () => desk.next() && desk.turn === "count",
    like: (taste) => desk.like(taste),
  }, life);
  const foot = makeFoot({
    next: () => desk.next() || tell.leave("kit:onward"),
    back: () => desk.back() || tell.leave("kit:backward"),
  }, bar.el, life);
  const wish = makeWish({
    ask: makeAsking(model, life),
    put: (task) => desk.put(task),
    example: () => example(desk.task),
    left: () => foot.focus(),
  }, life);
  const more = makeMore((what) => ({
    explain: () => desk.explain(),
    reveal: () => desk.reveal(),
    twin: () => desk.twin(),
    wish: () => wish.turn(),
    apart: () => desk.like({ apart: !desk.taste.apart }),
  })[what](), life);
  const words = html(
    "div", { class: "round-words" }, showing.el, reply.el, verdict.el, more.el, wish.el,
  );
  root.append(html("div", { class: "round-fit" },
    html("div", { class: "round-table" }, cards.el, head, ask, hands, words, wiping.el, foot.el)));
  el.append(root);

  /** What stands there beside the question, as it is said aloud. */
  function said() {
    const { task, work, place, counts } = desk;
    const step = task?.steps[place.step - 1];
    return {
      ask: work.verdict?.say,
      work: work.verdict?.say,
      show: [step?.say, step?.class].filter(Boolean).join(" "),
      check: task?.spoken,
      wipe: counts[place.step - 1]?.toString(),
    }[place.phase];
  }

  /** What is asked, with all its parts and all that stand side by side. */
  function asking() {
    const { together, working, group, tasks, task } = desk;
    const prompts = together && working ? group.map((each) => tasks[each].prompt) : [asks(desk)];
    return [...prompts, ...(working ? task?.parts ?? [] : [])].filter(Boolean).join(" ");
  }

  /** Everything that stands there, to be read aloud. */
  function standing() {
    return [asking(), said()].filter(Boolean).join(" ");
  }

  function check() {
    const made = /** @type {HTMLElement | null} */ (hands.querySelector(".kit-manipulative"));
    desk.check(made?.facts?.() ?? {});
  }

  /** @type {Partial<Record<import("./desk.js").Change, () => void>>} */
  const news = {
    place() {
      wish.close();
      paintPlace();
      const begins = desk.place.phase === "ask" || desk.turn === "count" && !desk.place.step;
      announce(root, begins ? standing() : said() ?? "");
    },
    tasks: () => tell.round(),
    begun: tellPlace,
    timer: paintTimer,
    out() {
      announce(root, OUT);
      if (desk.taste.tone) {
        softTone();
      }
    },
    counted: () => tell.wipe(desk),
  };

  /** @param {import("./desk.js").Change} what */
  function changed(what) {
    news[what]?.();
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
    const { place, task, working, together } = desk;
    const wipes = place.phase === "wipe";
    paintHead(desk);
    root.dataset.layout = wipes ? "wipe" : !together ? "one" : working ? "cards" : "strip";
    hands.hidden = !model.get("manipulative") || wipes || (together && working);
    showing.el.hidden = working || wipes || !task;
    if (task) {
      reply.ask(task.ask);
      showing.paint(task, place);
    }
    tellPlace();
  }

  function tellPlace() {
    root.dataset.phase = desk.place.phase;
    tell.place(desk);
  }

  function paintWork() {
    const { work, solved, working, together } = desk;
    // Once it is right there is nothing to add; and several are answered on paper.
    reply.el.hidden = !working || solved || together;
    reply.paint(work.text);
    verdict.paint(working && !together ? work.verdict : null);
    cards.paint(desk);
    wiping.paint(desk);
    more.paint(desk);
    words.hidden = desk.place.phase === "wipe";
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
  obey("kit:again", () => desk.again());

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
  signal.addEventListener("abort", () => {
    clearTimeout(second);
    root.remove();
  }, { once: true });

  paintPlace();
  paintTimer();
  paintWork();
  tell.round(root.isConnected ? null : () => tell.place(desk));

  const child = model.get("manipulative");
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

/**
 * What may be typed: a sum where sums are asked, else something like the answer.
 * @param {import("./flow.js").Task | undefined} task
 * @returns {string}
 */
function example(task) {
  const prompt = task?.prompt ?? "";
  return prompt.length <= SHORT && /\d/.test(prompt) ? signed(prompt) : task?.answer ?? "";
}

export default { render };
