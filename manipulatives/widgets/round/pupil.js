/**
 * A round as a pupil works through it alone: one question at a time, two tries, hints, and the
 * steps where they are needed. The page around it keeps the work: it says when to begin
 * ("kit:begin", with what was kept) and hears of every change ("kit:work") and of the end
 * ("kit:onward").
 */
import { announce } from "../shared/announce.js";
import { html } from "../shared/svg.js";
import { OUT, makeBar } from "./bar.js";
import { makeDemo } from "./pupil_demo.js";
import { PupilDesk } from "./pupil_desk.js";
import { makePupilFoot } from "./pupil_foot.js";
import { makePupilHead, spokenAsk } from "./pupil_head.js";
import { makeSteps } from "./pupil_steps.js";
import { makeReply } from "./reply.js";
import { makeTelling } from "./telling.js";
import { makeVerdict } from "./verdict.js";
import { listenButton } from "./voice.js";

const MISSING = "What belongs here cannot be shown. The rest works.";

/**
 * @param {RenderProps & { signal: AbortSignal }} given
 * @returns {Promise<void>}
 */
export async function renderPupil({ model, el, signal, host }) {
  const setup = model.get("setup");
  const life = { signal };
  const root = html("div", {
    "class": "kit kit-round is-pupil",
    "role": "group",
    "aria-label": setup.title || "Round",
    "data-kit-round": setup.key ?? "",
    "data-layout": "one",
  });
  const hands = html("div", { class: "round-hands" });
  const desk = new PupilDesk({ model, now: Date.now, changed });
  const tell = makeTelling(root, model, life);
  const ear = (/** @type {() => string} */ words) => (
    listenButton({ vocabulary: setup.vocabulary ?? "us", words }, life)
  );
  const { head, ask, paint: paintHead, focus } = makePupilHead(ear(() => spokenAsk(desk)));
  const verdict = makeVerdict();
  const told = html("div", { class: "round-heard" }, verdict.el, ear(() => desk.item.say));
  const steps = makeSteps(ear(newestStep));
  const reply = makeReply({ type: (text) => desk.type(text), check }, life);
  const demo = makeDemo((step) => desk.show(step), life);
  const bar = makeBar((press) => {
    if (press === "hidden" || press === "shown" || press === "off") {
      desk.pace.show(press);
    }
  }, life);
  const foot = makePupilFoot((act) => ({
    start: () => desk.start(),
    resume: () => desk.resume(),
    step: () => desk.step(),
    hint: () => desk.hint(),
    next: () => desk.next() || tell.leave("kit:onward"),
    skip: () => tell.leave("kit:onward"),
  })[act](), demo.button, bar.el, life);
  const words = html("div", { class: "round-words" }, demo.el, steps.el, reply.el, told);
  root.append(html("div", { class: "round-fit" },
    html("div", { class: "round-table" }, head, ask, hands, words, foot.el)));
  el.append(root);
  let begun = false;

  /** @returns {number} how many worked steps are in sight */
  function seen() {
    const { item } = desk;
    return item.stage === "steps" ? item.step : item.stage === "try" ? item.hints : 0;
  }

  function newestStep() {
    const { steps: all, spoken } = desk.task;
    const end = desk.item.stage === "steps" && desk.done;
    return [all[seen() - 1]?.say, end ? spoken : ""].filter(Boolean).join(" ");
  }

  function check() {
    const made = /** @type {HTMLElement | null} */ (hands.querySelector(".kit-manipulative"));
    desk.check(made?.facts?.() ?? {});
  }

  /** @type {Record<import("./pupil_desk.js").News, () => void>} */
  const news = {
    item() {
      if (begun) {
        const { item } = desk;
        if (item.stage === "watch") {
          demo.open(desk.example);
        } else {
          demo.close();
        }
        announce(root, spokenAsk(desk));
      }
    },
    stage: () => announce(root, newestStep()),
    verdict: () => announce(root, desk.item.say),
    text() {},
    timer() {},
  };

  /** @param {import("./pupil_desk.js").News} what */
  function changed(what) {
    const page = /** @type {Document | ShadowRoot} */ (root.getRootNode());
    const held = begun && root.contains(page.activeElement);
    paint();
    news[what]();
    paintTimer();
    if (begun && what !== "timer") {
      root.dispatchEvent(new CustomEvent("kit:work", {
        bubbles: true, detail: { kept: desk.kept, results: desk.results },
      }));
    }
    // A new question is read first; where the focus went with its button, Enter goes on.
    if (what === "item" && held) {
      focus();
    } else if (held && !page.activeElement?.checkVisibility()) {
      if (desk.open && !desk.item.peek) {
        focus();
      } else {
        foot.focus();
      }
    }
  }

  function paint() {
    const { item, task, done, open } = desk;
    root.dataset.phase = item.stage === "steps" || item.peek || item.stage === "watch"
      ? "show" : "work";
    root.dataset.stage = item.stage;
    paintHead(desk);
    demo.el.hidden = item.stage !== "watch";
    // One sentence at a time: what was said to an answer takes the place of the hint before it.
    const spoke = item.stage === "try" && item.say !== "";
    steps.paint(task, spoke ? 0 : seen(), item.stage === "steps" && done);
    reply.ask(task.ask);
    reply.el.hidden = !open || item.peek;
    reply.paint(item.text);
    told.hidden = !spoke;
    verdict.paint(spoke ? {
      counts: true, right: item.right, say: item.say, rule: null, given: item.given.at(-1) ?? null,
    } : null);
    foot.paint(desk);
    paintBar();
  }

  function paintBar() {
    const { pace } = desk;
    bar.paint({
      timer: pace.timer, left: pace.left, timed: pace.timed, turn: "end",
      place: { task: 0, step: 0, phase: "work" }, taste: { apart: false, tone: false, beat: 60 },
    });
  }

  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let second;

  function paintTimer() {
    clearTimeout(second);
    paintBar();
    if (desk.pace.running && !signal.aborted) {
      second = setTimeout(() => {
        desk.tick();
        if (!desk.pace.running) {
          announce(root, OUT);
        }
        paintTimer();
      }, (desk.pace.left % 1000) + 20);
    }
  }

  root.addEventListener("kit:begin", (event) => {
    begun = true;
    desk.begin(/** @type {CustomEvent} */ (event).detail.kept);
  }, life);
  hands.addEventListener("kit:change", () => desk.moved(), life);

  // Digits go to the answer wherever the focus is, but for the manipulative.
  document.addEventListener("keydown", (event) => {
    const { target, key, defaultPrevented, ctrlKey, altKey, metaKey } = event;
    const inside = target === document.body ||
      (target instanceof Node && root.contains(target) && !hands.contains(target));
    const plain = key.length === 1 && !(defaultPrevented || ctrlKey || altKey || metaKey);
    if (inside && plain && !(target instanceof HTMLInputElement) && root.checkVisibility() &&
      reply.el.checkVisibility()) {
      reply.take(key);
    }
  }, life);
  signal.addEventListener("abort", () => {
    clearTimeout(second);
    root.remove();
  }, { once: true });

  paint();
  tell.round();

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
