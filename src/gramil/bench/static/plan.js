// Tables typed off a plan: each text of rows is shown as a grid, and follows what is typed there. Without this script
// the rows are typed as text.
"use strict";
(() => {
  const SPARE = 3;

  // A comma within a cell stays there, so that whoever typed 18,3 is told what to write.
  const quoted = (cell) => (/[,;]/.test(cell) ? `"${cell.replace(/"/g, "")}"` : cell);

  function grid(text) {
    const columns = text.dataset.columns.split(","), table = document.createElement("table"), body = document.createElement("tbody");
    const head = table.createTHead().insertRow();
    for (const each of columns) { const cell = document.createElement("th"); cell.scope = "col"; cell.textContent = each.replace(/_/g, " ").replace(/ 1$/, ", first point").replace(/ 2$/, ", second point"); head.append(cell); }
    table.append(body);

    function add(values) {
      const row = body.insertRow();
      columns.forEach((column, number) => {
        const input = document.createElement("input");
        input.value = values[number] || "";
        input.autocomplete = "off";
        input.setAttribute("aria-label", `${column.replace(/_/g, " ")}, row ${body.rows.length}`);
        if (/station|half|along|across|width|height/.test(column)) input.inputMode = "decimal";
        row.insertCell().append(input);
      });
    }

    const cells = (row) => [...row.querySelectorAll("input")];
    const filled = (row) => cells(row).some((each) => each.value.trim());
    function write() { text.value = [...body.rows].filter(filled).map((row) => cells(row).map((each) => quoted(each.value.trim())).join(", ").replace(/[, ]+$/, "")).join("\n"); }
    function spare() { while (body.rows.length < SPARE || filled(body.rows[body.rows.length - 1])) add([]); }
    function fill(rows) { body.replaceChildren(); for (const each of rows) add(each); spare(); }
    const parsed = (written) => written.split("\n").map((each) => each.trim()).filter(Boolean).map((each) => [...each.matchAll(/(?:^|[,\t;])("[^"]*"|[^,\t;]*)/g)].map((cell) => cell[1].trim().replace(/^"|"$/g, ""))).filter((each) => each[0].toLowerCase() !== columns[0]);

    function step(input, down, across) {
      const row = input.closest("tr"), number = cells(row).indexOf(input), next = body.rows[row.rowIndex - 1 + down];
      const to = next && cells(next)[across === null ? number : across];
      if (to) { to.focus(); to.select(); }
    }

    // The grid listens before the form does, so that what is sent is what stands there.
    table.addEventListener("input", () => { spare(); write(); });
    table.addEventListener("keydown", (event) => {
      if (event.key === "Enter") step(event.target, 1, 0);
      else if (event.key === "ArrowDown") step(event.target, 1, null);
      else if (event.key === "ArrowUp") step(event.target, -1, null);
      else return;
      event.preventDefault();
    });
    table.addEventListener("paste", (event) => {
      const pasted = event.clipboardData.getData("text");
      if (!/[\n\t]/.test(pasted.trim())) return;
      event.preventDefault();
      fill([...parsed(text.value), ...parsed(pasted)]);
      write();
      table.dispatchEvent(new Event("input", { bubbles: true }));
    });
    fill(parsed(text.value));
    const about = document.createElement("div");
    about.className = "grid";
    about.append(table);
    text.hidden = true;
    text.after(about);
  }

  // Answers of the bench come into the page that is there, also onto pages that had no table before.
  const all = () => document.querySelectorAll("textarea[data-columns]:not([hidden])").forEach(grid);
  new MutationObserver(all).observe(document.body, { childList: true, subtree: true });
  all();
})();
