// Lines of a drawing pointed at: a tap takes a line for the part that is chosen, another tap lets it go. What is taken
// stands in the form's own field; without this script layers are chosen from their lists.
"use strict";
(() => {
  function read(field) {
    const taken = new Map();
    for (const group of field.value.split(";")) {
      const [part, numbers] = group.split(":");
      for (const each of (numbers || "").split(/\s+/).filter(Boolean)) taken.set(each, part.trim());
    }
    return taken;
  }

  function write(form, taken) {
    const groups = new Map();
    for (const [number, part] of taken) groups.set(part, [...(groups.get(part) || []), number]);
    form.elements.pointed.value = [...groups].map(([part, numbers]) => `${part}: ${numbers.join(" ")}`).join("; ");
    for (const each of form.querySelectorAll("[data-line]")) each.setAttribute("class", (taken.get(each.dataset.line) || "").replace(/ /g, "-"));
    // Layers as they were sent would put back what was pointed at.
    for (const each of form.querySelectorAll("select[name=layer]")) each.disabled = true;
  }

  document.addEventListener("click", (event) => {
    const line = event.target.closest("#lines [data-line]");
    if (!line) return;
    const form = line.closest("form"), taken = read(form.elements.pointed), part = form.elements.as.value, number = line.dataset.line;
    if (!part || taken.get(number) === part) taken.delete(number); else taken.set(number, part);
    write(form, taken);
  });
})();
