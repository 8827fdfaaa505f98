// Points on a picture of a plan: laid and moved by finger, mouse and keys. What is laid stands in the form's own
// fields, in pixels of the file; without this script it is typed there.
"use strict";
(() => {
  const NS = "http://www.w3.org/2000/svg", REACH = 22, TAP = 8, NEAREST = 12; // px on the screen; times enlarged
  const KNOWN = ["along", "across"];
  let chosen = -1, wide = 1, held = null;

  const place = () => document.getElementById("photograph");
  const form = () => document.getElementById("tracing");
  const svg = () => place().querySelector("svg");
  const shown = () => Number(place().dataset.shown);
  const lays = () => form().elements.lays.value;
  const field = () => form().elements[lays()];

  const read = (text) => text.split(/\s+/).filter(Boolean).map((each) => each.split(",").map(Number)).filter((each) => each.length > 1 && each.every(Number.isFinite)).map(([x, y, on]) => ({ x, y, on: on || 1 }));
  const points = () => read(field().value);
  const write = (all) => { field().value = all.map(({ x, y, on }) => `${x.toFixed(1)},${y.toFixed(1)}${on > 1 ? `,${on}` : ""}`).join(lays() === "points" ? "\n" : " "); draw(); };

  function at(event) {
    const seen = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg().getScreenCTM().inverse());
    const { width, height } = svg().viewBox.baseVal;
    return { x: Math.min(Math.max(seen.x, 0), width - 1), y: Math.min(Math.max(seen.y, 0), height - 1), on: shown() };
  }
  const scale = () => svg().viewBox.baseVal.width / svg().getBoundingClientRect().width; // file's pixels to one of the screen
  const apart = (one, other) => Math.hypot(one.x - other.x, one.y - other.y);

  function mark(name, of, kind) {
    const made = document.createElementNS(NS, name);
    for (const [key, value] of Object.entries(of)) made.setAttribute(key, value);
    made.setAttribute("class", kind);
    return made;
  }

  // A smooth closed curve through the points as they lie: what is followed is drawn when the bench has found it.
  function joined(all) {
    const at = (row) => all[(row + all.length) % all.length], to = (x, y) => `${x.toFixed(1)},${y.toFixed(1)}`;
    const arcs = all.map((one, row) => {
      const before = at(row - 1), next = at(row + 1), after = at(row + 2);
      return `C${to(one.x + (next.x - before.x) / 6, one.y + (next.y - before.y) / 6)} ${to(next.x - (after.x - one.x) / 6, next.y - (after.y - one.y) / 6)} ${to(next.x, next.y)}`;
    });
    return `M${to(all[0].x, all[0].y)} ${arcs.join(" ")}Z`;
  }

  function draw() {
    const layer = svg().querySelector(".laid"), drawn = [], size = scale();
    for (const kind of ["along", "across"]) {
      const ends = read(form().elements[kind].value).filter((each) => each.on === shown());
      if (ends.length === 2) drawn.push(mark("line", { x1: ends[0].x, y1: ends[0].y, x2: ends[1].x, y2: ends[1].y }, "known"));
      if (kind !== lays()) for (const { x, y } of ends) drawn.push(mark("circle", { cx: x, cy: y, r: 4 * size }, "known"));
    }
    for (const kind of ["points", "braces", "hole", "bridge", "head"]) {
      if (kind === lays()) continue;
      for (const { x, y, on } of read(form().elements[kind].value)) if (on === shown()) drawn.push(mark("circle", { cx: x, cy: y, r: 3 * size }, "known"));
    }
    const braced = read(form().elements.braces.value);
    for (let row = 0; row + 1 < braced.length; row += 2) if (braced[row].on === shown()) drawn.push(mark("line", { x1: braced[row].x, y1: braced[row].y, x2: braced[row + 1].x, y2: braced[row + 1].y }, "known"));
    const all = points();
    if (chosen >= all.length) chosen = all.length - 1;
    const outline = read(form().elements.points.value);
    if (outline.length > 3 && outline.every((each) => each.on === shown())) drawn.push(mark("path", { d: joined(outline) }, "joined"));
    all.forEach(({ x, y, on }, number) => {
      if (on !== shown()) return;
      drawn.push(mark("circle", { cx: x, cy: y, r: (number === chosen ? 9 : 6) * size }, number === chosen ? "point chosen" : "point"));
      drawn.push(mark("circle", { cx: x, cy: y, r: 1.2 * size }, "dot"));
    });
    layer.replaceChildren(...drawn);
    document.getElementById("counted").textContent = !KNOWN.includes(lays()) ? `${all.length} point${all.length === 1 ? "" : "s"} laid${chosen >= 0 ? `, number ${chosen + 1} chosen` : ""}` : `${all.length} of 2 ends laid`;
  }

  // A new point goes where it lengthens the ring least, so that one may be laid between two; else it is the last.
  function lay(point) {
    const all = points();
    if (lays() !== "points" && !KNOWN.includes(lays())) { chosen = all.length; write([...all, point]); return; }
    if (lays() !== "points") { chosen = all.length > 1 ? 0 : all.length; write([...all.slice(all.length > 1 ? 2 : 0), point]); return; }
    const dearer = (row) => { const one = all[row], other = all[(row + 1) % all.length]; return one.on !== point.on || other.on !== point.on ? Infinity : apart(one, point) + apart(point, other) - apart(one, other); };
    let after = all.length - 1;
    if (all.length > 2) for (let row = 0; row < all.length - 1; row += 1) if (dearer(row) < 0.6 * dearer(after)) after = row;
    chosen = after + 1;
    write([...all.slice(0, chosen), point, ...all.slice(chosen)]);
  }

  const near = (point) => {
    let best = -1, least = REACH * scale();
    points().forEach((each, number) => { if (each.on === shown() && apart(each, point) < least) { best = number; least = apart(each, point); } });
    return best;
  };

  function move(number, to) { const all = points(); all[number] = { ...all[number], x: to.x, y: to.y }; write(all); }

  function down(event) {
    if (event.button !== 0 || !event.isPrimary) { held = null; return; }
    const point = at(event), number = near(point);
    held = { number, start: event, moved: false, off: number >= 0 ? { x: points()[number].x - point.x, y: points()[number].y - point.y } : null };
    if (number < 0) return;
    chosen = number;
    place().setPointerCapture(event.pointerId);
    draw();
  }

  function moved(event) {
    if (!held) return;
    if (Math.hypot(event.clientX - held.start.clientX, event.clientY - held.start.clientY) >= TAP) held.moved = true;
    if (!held.moved || held.number < 0) return;
    const to = at(event);
    move(held.number, { x: to.x + held.off.x, y: to.y + held.off.y });
  }

  function up(event) {
    if (held && held.number < 0 && !held.moved) lay(at(event));
    held = null;
  }

  function shift(x, y) { const each = points()[chosen]; if (each) move(chosen, { x: each.x + x * scale(), y: each.y + y * scale() }); }

  function more() {
    const all = points(), one = all[chosen], other = all[(chosen + 1) % all.length], box = svg().viewBox.baseVal;
    const point = one ? (all.length > 1 && other.on === one.on ? { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2, on: one.on } : { ...one, x: one.x + 40 * scale() }) : { x: box.width / 2, y: box.height / 2, on: shown() };
    if (lays() !== "points") { lay(point); return; }
    chosen += 1;
    write([...all.slice(0, chosen), point, ...all.slice(chosen)]);
  }

  function away() { const all = points(); if (chosen < 0) return; all.splice(chosen, 1); chosen = Math.min(chosen, all.length - 1); write(all); }
  function choose(step) { const count = points().length; if (count) { chosen = (chosen + step + count) % count; draw(); intoView(); } }

  function intoView() {
    const circle = svg().querySelector(".chosen");
    if (circle) circle.scrollIntoView({ block: "nearest", inline: "nearest" });
  }

  function enlarge(by) {
    const box = place(), middle = { x: (box.scrollLeft + box.clientWidth / 2) / wide, y: (box.scrollTop + box.clientHeight / 2) / wide };
    wide = Math.min(Math.max(wide * by, 1), NEAREST);
    svg().style.width = `${wide * 100}%`;
    box.scrollTo(middle.x * wide - box.clientWidth / 2, middle.y * wide - box.clientHeight / 2);
    draw();
  }

  const DOES = { near: () => enlarge(1.6), far: () => enlarge(1 / 1.6), before: () => choose(-1), next: () => choose(1), more, away };
  const KEYS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

  function key(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const way = KEYS[event.key], does = { Enter: more, Delete: away, Backspace: away, n: DOES.next, p: DOES.before, "+": DOES.near, "-": DOES.far }[event.key];
    if (way && chosen >= 0) shift(way[0] * (event.shiftKey ? 10 : 1), way[1] * (event.shiftKey ? 10 : 1));
    else if (does) does();
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  function begin() {
    if (!place()) return;
    place().addEventListener("pointerdown", down);
    place().addEventListener("pointermove", moved);
    place().addEventListener("pointerup", up);
    place().addEventListener("pointercancel", () => { held = null; });
    // A finger on a point drags it; elsewhere it scrolls the picture.
    place().addEventListener("touchstart", (event) => { if (event.touches.length === 1 && near(at(event.touches[0])) >= 0) event.preventDefault(); }, { passive: false });
    place().addEventListener("dragstart", (event) => event.preventDefault());
    place().addEventListener("keydown", key);
    form().addEventListener("click", (event) => { const button = event.target.closest("[data-trace]"); if (button) DOES[button.dataset.trace](); });
    form().addEventListener("change", () => { if (chosen >= points().length) chosen = -1; draw(); });
    window.addEventListener("resize", draw);
    draw();
  }
  begin();
})();
