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

  const xAt = (event) => drawing.placeOf(event.clientX, event.clientY).x;

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
    history.replaceState(null, "", here);
  }

  function dragged(start) {
    const from = start.clientX, off = xAt(start) - Number(slider().getAttribute("aria-valuenow"));
    const held = slider().classList.contains("beyond") ? 0 : off; // the handle stays where the finger took hold of it
    let moved = false;
    const move = (event) => {
      if (Math.abs(event.clientX - from) >= TAP) moved = true;
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
    const way = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1 }[event.key];
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
  const fields = (form) => [...form.elements].filter((field) => field.name && field.type !== "hidden" && field.type !== "file");

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

  function say(words, again) {
    const place = document.getElementById("trouble");
    place.textContent = words;
    if (!again) return;
    const button = document.createElement("button");
    button.textContent = "Send again";
    button.addEventListener("click", again);
    place.append(button);
  }

  async function send(form, button) {
    if (form.dataset.sending) return; // tapped twice by a dusty finger: sent once
    const data = new FormData(form);
    if (button && button.name) data.append(button.name, button.value);
    let answer;
    form.dataset.sending = "yes";
    leaving = false;
    try {
      answer = await fetch(form.action, { method: "POST", body: data, headers: { "X-Sent-By": "bench" } });
    } catch {
      say("No connection to the bench. What you typed is kept here.", () => send(form, button));
      window.addEventListener("online", () => send(form, button), { once: true });
      return;
    } finally {
      delete form.dataset.sending;
    }
    if (answer.ok) localStorage.removeItem(kept(form));
    if (leaving) return; // a link was followed meanwhile: the answer does not pull the reader back
    if (answer.redirected && answer.ok) { location.assign(answer.url); return; }
    const page = new DOMParser().parseFromString(await answer.text(), "text/html").getElementById("main");
    if (!page) { say("The bench did not take it (" + answer.status + "). What you typed is kept here.", () => location.reload()); return; }
    document.getElementById("main").replaceWith(page);
    say("");
    ready(page);
  }

  function focusIn(root) {
    const place = root.querySelector("[data-focus]");
    if (place) place.focus({ preventScroll: false });
  }

  function ready(root) {
    restore(root);
    focusIn(root);
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
    const drop = event.target.closest("a[data-drop]");
    if (drop) localStorage.removeItem("typed:" + drop.dataset.drop);
  });
  document.addEventListener("input", (event) => { const form = event.target.form; if (form && form.dataset.keep) note(form); });
  document.addEventListener("submit", (event) => {
    if (!event.target.dataset.keep) return;
    event.preventDefault();
    send(event.target, event.submitter);
  });
  document.addEventListener("htmx:after:swap", () => {
    drawing.begin();
    drawn();
    const main = document.getElementById("main");
    if (main.dataset.seen !== "yes") { main.dataset.seen = "yes"; restore(main); focusIn(main.querySelector(".strip") || document.createElement("p")); }
    const fresh = document.querySelector("#card [data-focus]:not([data-met])");
    if (fresh) { fresh.dataset.met = "yes"; fresh.focus({ preventScroll: false }); }
    say("");
  });
  for (const name of ["htmx:error", "htmx:response:error"]) {
    document.addEventListener(name, () => say("No answer from the bench. Nothing typed is lost; try again when it is back."));
  }
  window.addEventListener("beforeunload", () => { leaving = true; });
  document.addEventListener("DOMContentLoaded", () => { document.getElementById("main").dataset.seen = "yes"; restore(document); focusIn(document); });
})();
