// The bench in the browser: the section line, cards in place, forms that outlive a lost connection. No page needs it
// to be read; without it every link and form still works, a page at a time.
"use strict";
(() => {
  const SETTLED = 140; // ms without a move before the section is drawn anew
  const TAP = 8; // px: less than this is a tap, not a drag
  let waiting = 0;
  let moving = false;
  let leaving = false;

  const plan = () => document.getElementById("plan");
  const slider = () => document.getElementById("slider");

  const xAt = (event) => drawing.placeOf(event).x;

  function bounded(x) {
    const { low, high } = plan().dataset;
    return Math.min(Math.max(x, Number(low)), Number(high));
  }

  function lineTo(x) {
    const line = plan().querySelector(".section-line");
    line.setAttribute("x1", x);
    line.setAttribute("x2", x);
    slider().setAttribute("aria-valuenow", x.toFixed(2));
    drawing.handle();
  }

  async function draw(x, tap) {
    clearTimeout(waiting);
    moving = false;
    const address = new URL(plan().dataset.cut, location.href);
    address.searchParams.set("x", x.toFixed(4));
    if (tap) address.searchParams.set("tap", "1");
    await htmx.ajax("GET", address.pathname + address.search, { target: "#cut", swap: "outerHTML", source: plan() });
  }

  function soon(x) {
    lineTo(x);
    moving = true;
    clearTimeout(waiting);
    waiting = setTimeout(() => draw(x, false), SETTLED);
  }

  function drawn() {
    const fresh = document.getElementById("over-new");
    if (!fresh) return;
    if (moving) { fresh.remove(); return; } // the line has gone on since: a late answer does not pull it back
    const over = fresh.querySelector("svg");
    document.querySelector("#plan .over").replaceWith(over);
    fresh.remove();
    drawing.refresh();
    const x = Number(over.querySelector(".section-line").getAttribute("x1"));
    slider().setAttribute("aria-valuenow", x.toFixed(2));
    drawing.handle();
    slider().setAttribute("aria-valuetext", document.getElementById("where").textContent.replace("Cut across ", ""));
    const here = new URL(location.href);
    here.searchParams.delete("fret");
    here.searchParams.set("x", x.toFixed(4));
    history.replaceState(history.state, "", here);
  }

  function dragged(start) {
    const off = xAt(start) - Number(slider().getAttribute("aria-valuenow"));
    const held = slider().classList.contains("beyond") ? 0 : off; // the handle stays where the finger took hold of it
    let moved = false;
    const move = (event) => {
      if (Math.hypot(event.clientX - start.clientX, event.clientY - start.clientY) >= TAP) moved = true;
      if (moved) soon(bounded(xAt(event) - held));
    };
    const end = (event) => {
      slider().removeEventListener("pointermove", move);
      if (moved) draw(bounded(xAt(event) - held), false);
    };
    slider().setPointerCapture(start.pointerId);
    slider().addEventListener("pointermove", move);
    slider().addEventListener("pointerup", end, { once: true });
    slider().addEventListener("pointercancel", () => slider().removeEventListener("pointermove", move), { once: true });
  }

  function stepped(event) {
    const stops = JSON.parse(plan().dataset.stops), x = Number(slider().getAttribute("aria-valuenow"));
    const down = drawing.upright() ? 1 : -1; // toward the tail, where the instrument stands
    const way = { ArrowLeft: -1, ArrowDown: down, ArrowRight: 1, ArrowUp: -down }[event.key];
    let to;
    if (event.key === "Home") to = Number(plan().dataset.low);
    else if (event.key === "End") to = Number(plan().dataset.high);
    else if (!way) return;
    else if (event.shiftKey) to = x + way * 0.1;
    else to = nextStop(stops, x, way);
    event.preventDefault();
    soon(bounded(to));
  }

  function nextStop(stops, x, way) {
    const beyond = stops.filter((stop) => (way > 0 ? stop > x + 0.05 : stop < x - 0.05));
    if (!beyond.length) return way > 0 ? Number(plan().dataset.high) : stops[0];
    return way > 0 ? beyond[0] : beyond[beyond.length - 1];
  }

  async function card(link) {
    const place = document.getElementById("card");
    if (!place) return false;
    await htmx.ajax("GET", link.getAttribute("href"), { target: "#card", swap: "innerHTML", source: place });
    return true;
  }

  // What was typed is kept on this device until the bench says that it has it.
  const kept = (form) => "typed:" + form.dataset.keep;
  const fields = (form) => [...form.elements].filter((field) => field.name && !["hidden", "file", "radio"].includes(field.type));

  function note(form) {
    const typed = Object.fromEntries(fields(form).filter((field) => field.value).map((field) => [field.name, field.value]));
    try { localStorage.setItem(kept(form), JSON.stringify(typed)); } catch { /* a full or closed shelf: the page still holds it */ }
  }

  function restore(root) {
    for (const form of root.querySelectorAll("form[data-keep]")) {
      let typed = {};
      try { typed = JSON.parse(localStorage.getItem(kept(form)) || "{}"); } catch { /* not ours */ }
      for (const field of fields(form)) {
        if (typed[field.name] && !field.value) {
          field.value = typed[field.name];
          field.dispatchEvent(new Event("input", { bubbles: true }));
        }
      }
    }
  }

  // What a number pad lacks, typed where the caret stands.
  function typeInto(field, text) {
    field.setRangeText(text, field.selectionStart ?? field.value.length, field.selectionEnd ?? field.value.length, "end");
    field.focus();
    field.dispatchEvent(new Event("input", { bubbles: true }));
  }

  function say(words, again) {
    const place = document.getElementById("trouble");
    place.textContent = words;
    if (!again) return;
    const button = document.createElement("button");
    button.textContent = "Send again";
    button.addEventListener("click", again);
    place.append(button);
  }

  // A pressed button says so at once and is not pressed twice; it is itself again when the answer is there.
  function busy(form, button, on) {
    form.toggleAttribute("aria-busy", on);
    if (on) form.setAttribute("aria-busy", "true");
    for (const each of form.querySelectorAll("button")) each.setAttribute("aria-disabled", String(on));
    if (!button) return;
    if (on) button.dataset.words = button.textContent;
    const words = on ? button.dataset.doing || "Sending" : button.dataset.words;
    if (button.dataset.words) button.textContent = on ? `${words} …` : words;
  }

  // What is wrong stands under the field that it is about, all of it at once; the first is where the keys are.
  const typed = (form) => [...form.elements].some((field) => field.name && field.type !== "hidden" && field.tagName !== "BUTTON");
  const fieldOf = (line, scope) => line.dataset.field && [...scope.querySelectorAll(`[name="${CSS.escape(line.dataset.field)}"]`)].find((field) => field.type !== "hidden");
  let faults = 0;

  function put(line, field) {
    const said = document.createElement("p");
    Object.assign(said, { className: "fault put", id: `fault-${++faults}`, textContent: line.dataset.said });
    field.setAttribute("aria-invalid", "true");
    field.setAttribute("aria-describedby", `${field.getAttribute("aria-describedby") || ""} ${said.id}`.trim());
    const folded = field.closest("details");
    if (folded) folded.open = true;
    (field.closest("label") || field).after(said);
  }

  function mended(form) {
    for (const each of form.querySelectorAll(".put, .to-mend")) each.remove();
    for (const field of form.querySelectorAll("[aria-invalid]")) {
      field.removeAttribute("aria-invalid");
      field.setAttribute("aria-describedby", (field.getAttribute("aria-describedby") || "").split(" ").filter((id) => !id.startsWith("fault-")).join(" "));
    }
  }

  function atFields(lines, scope, before) {
    const known = lines.map((line) => [line, fieldOf(line, scope)]).filter(([, field]) => field);
    for (const [line, field] of known) { put(line, field); line.remove(); }
    if (!known.length) return;
    const told = document.createElement("p");
    Object.assign(told, { className: "strip refused to-mend", role: "alert", textContent: known.length === 1 ? "One thing is to be mended, under its field." : `${known.length} things are to be mended, each under its field.` });
    before(told);
    known[0][1].focus();
  }

  const linesIn = (root) => [...root.querySelectorAll(".faults > li")];

  function settled(root) {
    const lines = linesIn(root), list = lines.length && lines[0].parentElement;
    if (!list) return;
    atFields(lines, root, (told) => list.before(told));
    if (!list.children.length) list.remove();
  }

  async function send(form, button) {
    if (form.dataset.sending) return; // tapped twice by a dusty finger: sent once
    const data = new FormData(form);
    if (button && button.name) data.append(button.name, button.value);
    let answer;
    form.dataset.sending = "yes";
    busy(form, button, true);
    leaving = false;
    try {
      answer = await fetch(form.action, { method: "POST", body: data, headers: { "X-Sent-By": "bench" } });
    } catch {
      say("No connection to the bench. What you typed is kept here.", () => send(form, button));
      window.addEventListener("online", () => send(form, button), { once: true });
      return;
    } finally {
      delete form.dataset.sending;
      busy(form, button, false);
    }
    if (answer.ok) localStorage.removeItem(kept(form));
    if (leaving) return; // a link was followed meanwhile: the answer does not pull the reader back
    if (answer.redirected && answer.ok) { location.assign(answer.url); return; }
    const page = new DOMParser().parseFromString(await answer.text(), "text/html").getElementById("main");
    if (!page) { say("The bench did not take it (" + answer.status + "). What you typed is kept here.", () => location.reload()); return; }
    const lines = linesIn(page);
    say("");
    if (answer.status === 422 && lines.length && lines.every((line) => fieldOf(line, form))) {
      mended(form);
      atFields(lines, form, (told) => form.prepend(told));
      return;
    }
    document.getElementById("main").replaceWith(page);
    ready(page);
  }

  function focusIn(root) {
    const place = root.querySelector("[data-focus]");
    if (place) place.focus({ preventScroll: false });
  }

  function ready(root) {
    restore(root);
    focusIn(root);
    settled(root);
    htmx.process(root);
  }

  document.addEventListener("pointerdown", (event) => {
    if (event.target.id === "slider" && event.button === 0) { slider().focus({ preventScroll: true }); dragged(event); }
  });
  document.addEventListener("tapped", (event) => {
    if (event.detail.cuts) draw(bounded(event.detail.x), true);
    if (event.detail.link) card(event.detail.link);
  });
  document.addEventListener("keydown", (event) => { if (event.target.id === "slider") stepped(event); });
  document.addEventListener("click", async (event) => {
    const link = event.target.closest("a[data-card]");
    if (link && document.getElementById("card") && !event.ctrlKey && !event.metaKey) {
      event.preventDefault();
      await card(link);
    }
    const step = event.target.closest("button[data-step]");
    if (step) {
      event.preventDefault();
      const x = Number(slider().getAttribute("aria-valuenow"));
      const to = bounded(nextStop(JSON.parse(plan().dataset.stops), x, Number(step.dataset.step)));
      lineTo(to);
      draw(to, false);
    }
    const key = event.target.closest("button[data-type]");
    if (key) typeInto(document.getElementById(key.dataset.into), key.dataset.type.replace("\u00a0", " "));
    const flicked = event.target.closest("[data-flick]");
    if (flicked) flick(flicked.getAttribute("aria-pressed") !== "true");
    const drop = event.target.closest("a[data-drop]");
    if (drop) localStorage.removeItem("typed:" + drop.dataset.drop);
  });
  // Keys: none of them while something is being typed.
  const typing = (target) => target.closest("input, select, textarea") && !["radio", "checkbox"].includes(target.type);
  const press = (selector) => { const found = document.querySelector(selector); if (found) found.click(); return found; };
  const goTo = (selector) => { const found = document.querySelector(selector); if (found) { found.focus(); found.scrollIntoView({ block: "nearest" }); } return found; };

  function closeCard() {
    const place = document.getElementById("card");
    if (document.querySelector("[data-measure][aria-pressed=true]")) return press("[data-measure]");
    if (!place || !place.querySelector("#card-of")) return null;
    place.replaceChildren();
    return goTo("#plan");
  }

  function backInDraft() {
    const sets = [...new URL(location.href).searchParams.keys()].some((key) => key === "set" || key === "key");
    if (sets) history.back();
    return sets;
  }

  const KEYS = {
    "/": () => { location.assign("/find"); return true; }, "?": () => { location.assign("/keys"); return true; },
    d: () => goTo("#plan"), s: () => goTo("#slider"), f: () => goTo(".parts summary"), m: () => press("[data-measure]"),
  };

  function flick(on) {
    const button = document.querySelector("[data-flick]");
    if (!button) return false;
    button.setAttribute("aria-pressed", String(on));
    plan().classList.toggle("flicked", on);
    return true;
  }

  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape") { if (closeCard()) event.preventDefault(); return; }
    if (typing(event.target)) return;
    if (event.ctrlKey && event.key === "z") { if (backInDraft()) event.preventDefault(); return; }
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === "o" && flick(true)) return;
    if (Object.hasOwn(KEYS, event.key) && KEYS[event.key]()) event.preventDefault();
  });
  document.addEventListener("keyup", (event) => { if (event.key === "o" && !typing(event.target)) flick(false); });
  document.addEventListener("input", (event) => { const form = event.target.form; if (form && form.dataset.keep) note(form); });
  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (form.dataset.keep || (form.method === "post" && typed(form))) { event.preventDefault(); send(form, event.submitter); return; }
    if (form.dataset.sending) { event.preventDefault(); return; }
    if (form.hasAttribute("data-hx-get")) return;
    form.dataset.sending = "yes";
    setTimeout(() => busy(form, event.submitter, true)); // after the form has gone with its button's value
  });
  window.addEventListener("pageshow", () => {
    for (const form of document.querySelectorAll("form[data-sending]")) { delete form.dataset.sending; busy(form, form.querySelector("button[data-words]"), false); }
  });
  document.addEventListener("htmx:after:swap", () => {
    drawing.begin();
    drawn();
    const main = document.getElementById("main");
    if (main.dataset.seen !== "yes") { main.dataset.seen = "yes"; restore(main); focusIn(main); }
    const fresh = document.querySelector(":is(#card, #making) [data-focus]:not([data-met])");
    if (fresh) { fresh.dataset.met = "yes"; fresh.focus({ preventScroll: false }); }
    say("");
  });
  for (const name of ["htmx:error", "htmx:response:error"]) {
    document.addEventListener(name, () => say("No answer from the bench. Nothing typed is lost; try again when it is back."));
  }
  window.addEventListener("beforeunload", () => { leaving = true; });
  document.addEventListener("DOMContentLoaded", () => { document.getElementById("main").dataset.seen = "yes"; restore(document); focusIn(document); settled(document); });
})();
