// The drawing as a working surface: enlarged, moved, tapped and measured on. It is moved by a transform while fingers
// move and by its view box when they rest, so that nothing is drawn anew in between. The page is read without it.
"use strict";
window.drawing = (() => {
  const REST = 160; // ms without a move before the drawing is set sharp
  const TAP = 8; // px: less than this is a tap, not a drag
  const TWICE = 260; // ms within which two taps are one double tap
  const CLOSEST = 12; // mm across at the most enlarged
  const GRIP = 52; // px that the section's handle has for itself beside an upright drawing shown whole
  const pointers = new Map();
  // How the drawing stands at rest is a rule of its own, so that a picture that comes later stands likewise. Each change
  // of it makes the browser look at every line of the drawing again: while fingers move, only the pictures are told.
  // The page's policy allows no style in an element that is written out, so none stays in a picture at rest, which may be
  // kept or exchanged; the slider, which is exchanged while it moves, has its place in a sheet that tells of it alone.
  const [onPlan, onPictures] = rules("#plan { --mm: 1; } #plan > svg { transform: none; }");
  const [onSlider] = rules("#slider { left: auto; }");
  let whole = null; // the box of the whole drawing, as wide and tall as the page shows it
  let box = null; // what is shown
  let sharp = null; // what the view box says, while a transform shows another
  let resting = 0;
  let painting = 0;
  let seen = null; // the frame's size and its edge on the screen, asked for once: asking lays the page out
  let edge = null;
  let moved = 0;
  let last = { at: 0, x: 0, y: 0 };
  let waiting = 0;

  function rules(written) {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(written);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
    return [...sheet.cssRules].map((rule) => rule.style);
  }

  const plan = () => document.getElementById("plan");
  const pictures = () => [...plan().querySelectorAll(":scope > svg")];
  // On an upright phone the instrument stands head up: drawn as it lies, then turned by a quarter. The frame is what is
  // seen in the drawing's own directions, in px: along from head to tail, and across.
  const upright = () => plan().classList.contains("head-up");
  const frame = () => (upright() ? { wide: seen.tall, tall: seen.wide } : seen);
  const sized = () => { seen = { wide: plan().clientWidth, tall: plan().clientHeight }; };
  const perPixel = () => box.wide / frame().wide;

  function inFrame({ clientX, clientY }) {
    const { left, top } = pointers.size ? edge : edgeNow(), x = clientX - left, y = clientY - top;
    return upright() ? { x: y, y: seen.wide - x } : { x, y };
  }

  function edgeNow() {
    const { left, top } = plan().getBoundingClientRect();
    return { left: left + plan().clientLeft, top: top + plan().clientTop };
  }

  function held() {
    const stands = innerHeight > innerWidth || (window.screen.orientation || { type: "" }).type.startsWith("portrait"); // a keyboard on the glass makes no phone lie
    plan().classList.toggle("head-up", stands && matchMedia("(max-width: 40rem)").matches);
    document.getElementById("slider").setAttribute("aria-orientation", upright() ? "vertical" : "horizontal");
    sized();
    onPictures.width = upright() ? `${frame().wide}px` : "";
    onPictures.height = upright() ? `${frame().tall}px` : "";
  }

  const turned = () => (upright() ? `translate(${frame().tall}px, 0px) rotate(90deg) ` : "");

  function read(svg) {
    const [left, top, wide, tall] = svg.getAttribute("viewBox").split(" ").map(Number);
    return { left, top, wide, tall };
  }

  function begin() {
    if (!plan() || plan().dataset.met) return;
    plan().dataset.met = "yes";
    const given = read(pictures()[0]);
    plan().dataset.given = JSON.stringify(given);
    plan().classList.add("live");
    held();
    const before = box && whole ? { ...box, share: box.wide / whole.wide } : null;
    fitted(given);
    if (before && before.share < 0.999 && sessionStorage.getItem("drawing") === location.pathname) box = bounded(before);
    sessionStorage.setItem("drawing", location.pathname);
    sharpen();
    switches();
  }

  function fitted(given) {
    const { wide: across, tall: down } = frame(), strip = upright() ? GRIP : 0; // the handle's own: the drawing's top is on the right there
    const scale = Math.max(given.wide / across, given.tall / (down - strip));
    const wide = across * scale, tall = down * scale, left = given.left - (wide - given.wide) / 2;
    whole = { left, top: given.top - strip * scale - (tall - strip * scale - given.tall) / 2, wide, tall };
    box = whole;
  }

  function bounded(next) {
    const wide = Math.min(Math.max(next.wide, CLOSEST), whole.wide), tall = (wide * whole.tall) / whole.wide;
    const left = Math.min(Math.max(next.left, whole.left), whole.left + whole.wide - wide);
    const top = Math.min(Math.max(next.top, whole.top), whole.top + whole.tall - tall);
    return { left, top, wide, tall };
  }

  function show(next) {
    box = bounded(next);
    painting = painting || requestAnimationFrame(paint);
    clearTimeout(resting);
    resting = setTimeout(sharpen, REST);
  }

  function paint() {
    painting = 0;
    const scale = sharp.wide / box.wide, pixel = sharp.wide / frame().wide;
    const moveX = ((sharp.left - box.left) / pixel) * scale, moveY = ((sharp.top - box.top) / pixel) * scale;
    for (const svg of pictures()) {
      svg.style.willChange = "transform"; // drawn once and moved as a picture until the fingers rest
      svg.style.transform = `${turned()}translate(${moveX}px, ${moveY}px) scale(${scale})`;
    }
    handle();
  }

  function sharpen() {
    cancelAnimationFrame(painting);
    painting = 0;
    sharp = box;
    sized();
    for (const svg of pictures()) {
      svg.setAttribute("viewBox", `${box.left} ${box.top} ${box.wide} ${box.tall}`);
      svg.removeAttribute("style");
    }
    onPictures.transform = turned() || "none";
    const pixel = perPixel();
    onPlan.setProperty("--mm", pixel);
    plan().dataset.reading = pixel > 1.5 ? "whole" : pixel > 0.7 ? "wide" : pixel > 0.25 ? "near" : "close";
    plan().classList.toggle("enlarged", box.wide < whole.wide * 0.999);
    handle();
  }

  function handle() {
    const slider = document.getElementById("slider");
    const at = (Number(slider.getAttribute("aria-valuenow")) - box.left) / perPixel();
    const shown = `${Math.min(Math.max(at, 0), frame().wide)}px`;
    onSlider.left = upright() ? "auto" : shown;
    onSlider.top = upright() ? shown : "auto";
    slider.classList.toggle("beyond", at < 0 || at > frame().wide);
  }

  const onDrawing = ({ x, y }) => ({ x: box.left + x * perPixel(), y: box.top + y * perPixel() });
  const placeOf = (event) => onDrawing(inFrame(event));
  const middleOfFrame = () => ({ x: frame().wide / 2, y: frame().tall / 2 });

  function enlarge(by, place) {
    const at = onDrawing(place), wide = Math.min(Math.max(box.wide / by, CLOSEST), whole.wide), share = wide / box.wide;
    show({ left: at.x - (at.x - box.left) * share, top: at.y - (at.y - box.top) * share, wide, tall: box.tall * share });
  }

  function shift(x, y) { show({ ...box, left: box.left - x * perPixel(), top: box.top - y * perPixel() }); }

  const middle = () => {
    const all = [...pointers.values()];
    return { x: all.reduce((sum, each) => sum + each.x, 0) / all.length, y: all.reduce((sum, each) => sum + each.y, 0) / all.length };
  };
  const spread = () => {
    const [one, other] = [...pointers.values()];
    return other ? Math.hypot(one.x - other.x, one.y - other.y) : 0;
  };

  function down(event) {
    if (event.target.id === "slider" || !event.target.closest("#plan") || event.button > 0) return;
    if (!pointers.size) { moved = 0; sized(); edge = edgeNow(); }
    pointers.set(event.pointerId, inFrame(event));
  }

  function move(event) {
    if (!pointers.has(event.pointerId)) return;
    const from = middle(), apart = spread();
    pointers.set(event.pointerId, inFrame(event));
    const to = middle();
    moved += Math.hypot(to.x - from.x, to.y - from.y) + Math.abs(spread() - apart);
    if (moved < TAP) return;
    if (!plan().hasPointerCapture(event.pointerId)) plan().setPointerCapture(event.pointerId);
    if (apart) enlarge(spread() / apart, to);
    shift(to.x - from.x, to.y - from.y);
  }

  function up(event) {
    if (!pointers.delete(event.pointerId) || pointers.size || event.type === "pointercancel" || moved >= TAP) return;
    const twice = event.timeStamp - last.at < TWICE && Math.hypot(event.clientX - last.x, event.clientY - last.y) < 24;
    last = { at: twice ? 0 : event.timeStamp, x: event.clientX, y: event.clientY };
    clearTimeout(waiting);
    if (twice) { enlarge(2.5, inFrame(event)); return; }
    const { clientX, clientY, pointerType } = event;
    const target = document.elementFromPoint(clientX, clientY);
    const now = () => tapped(target, { clientX, clientY }, pointerType === "mouse" ? 9 : 18);
    if (measuring()) now(); else waiting = setTimeout(now, TWICE);
  }

  function tapped(target, at, reach) {
    const place = placeOf(at);
    if (measuring()) { measure(place, reach); return; }
    const link = target && target.closest("#plan a[data-card]");
    outline(link && link.dataset.part);
    const mark = link && link.classList.contains("mark");
    plan().dispatchEvent(new CustomEvent("tapped", { bubbles: true, detail: { x: place.x, link, cuts: !mark } }));
  }

  function outline(name) {
    for (const each of plan().querySelectorAll(".part-shape")) each.classList.toggle("touched", each.dataset.part === name);
  }

  // Measuring: the places tapped go to the bench, which catches what is drawn there and answers with the dimension.
  const button = () => document.querySelector("[data-measure]");
  const measuring = () => Boolean(button()) && button().getAttribute("aria-pressed") === "true";

  function measure(place, reach) {
    const query = document.getElementById("measured").dataset.query;
    const near = (reach * perPixel()).toFixed(3);
    ask(`${query}&measure=${place.x.toFixed(4)},${place.y.toFixed(4)},${near}`);
  }

  async function ask(query) {
    await htmx.ajax("GET", plan().dataset.between + query, { target: "#measured", swap: "outerHTML", source: button() });
    const fresh = document.getElementById("measures-new");
    document.getElementById("measures").replaceChildren(...fresh.childNodes);
    const here = new URL(location.href);
    here.searchParams.delete("measure");
    for (const each of new URLSearchParams(document.getElementById("measured").dataset.query).getAll("measure")) here.searchParams.append("measure", each);
    history.replaceState(history.state, "", here);
  }

  // What is shown and what is not, kept on this device.
  function switches() {
    for (const each of document.querySelectorAll("[data-show]")) {
      try { const known = localStorage.getItem("show:" + each.dataset.show); if (known) each.checked = known === "yes"; } catch { /* a closed shelf */ }
      switched(each);
    }
  }

  function switched(each) { plan().classList.toggle("no-" + each.dataset.show, !each.checked); }

  function keys(event) {
    if (event.target.id !== "plan" || event.ctrlKey || event.metaKey || event.altKey) return;
    const step = 60, ways = { ArrowLeft: [step, 0], ArrowRight: [-step, 0], ArrowUp: [0, step], ArrowDown: [0, -step] };
    const way = ways[event.key];
    if (event.key === "+" || event.key === "=") enlarge(1.5, middleOfFrame());
    else if (event.key === "-") enlarge(1 / 1.5, middleOfFrame());
    else if (event.key === "0") show(whole);
    else if (way && box.wide < whole.wide) shift(...(upright() ? [way[1], -way[0]] : way));
    else return;
    event.preventDefault();
  }

  function wheel(event) {
    if (!event.target.closest("#plan") || (event.deltaY > 0 && box.wide >= whole.wide * 0.999)) return;
    event.preventDefault();
    enlarge(Math.exp(-event.deltaY * 0.002), inFrame(event));
  }

  document.addEventListener("pointerdown", down);
  document.addEventListener("pointermove", move);
  document.addEventListener("pointerup", up);
  document.addEventListener("pointercancel", up);
  document.addEventListener("keydown", keys);
  document.addEventListener("wheel", wheel, { passive: false });
  document.addEventListener("click", (event) => {
    if (event.target.closest("#plan a") && event.detail) { event.preventDefault(); event.stopPropagation(); return; } // a pointer's tap is ours
    const by = event.target.closest("[data-enlarge]");
    if (by) enlarge(by.dataset.enlarge === "1" ? 1.6 : 1 / 1.6, middleOfFrame());
    if (event.target.closest("[data-whole]")) show(whole);
    const pressed = event.target.closest("[data-measure]");
    if (pressed) { pressed.setAttribute("aria-pressed", String(!measuring())); plan().classList.toggle("measuring", measuring()); }
    const away = event.target.closest("[data-measures]");
    if (away) { event.preventDefault(); ask(away.dataset.measures); }
  }, true);
  document.addEventListener("change", (event) => {
    if (!event.target.dataset.show) return;
    try { localStorage.setItem("show:" + event.target.dataset.show, event.target.checked ? "yes" : "no"); } catch { /* a closed shelf */ }
    switched(event.target);
  });
  window.addEventListener("resize", () => { if (plan() && plan().dataset.given) { held(); fitted(JSON.parse(plan().dataset.given)); sharpen(); } });
  document.addEventListener("DOMContentLoaded", begin);
  return { begin, handle, placeOf, upright, refresh: () => { if (sharp) sharpen(); } };
})();
