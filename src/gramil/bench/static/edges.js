// What scrolls sideways fades at an edge that hides something: no number cut there reads as another.
"use strict";
(() => {
  const FLUSH = 1; // px: less than this hides nothing

  function edged(each) {
    const hidden = each.scrollWidth - each.clientWidth;
    const left = getComputedStyle(each).direction === "rtl" ? hidden + each.scrollLeft : each.scrollLeft;
    each.classList.toggle("before", left > FLUSH);
    each.classList.toggle("more", hidden - left > FLUSH);
  }

  function all() { for (const each of document.querySelectorAll(".scroll")) edged(each); }

  document.addEventListener("scroll", (event) => { if (event.target.classList && event.target.classList.contains("scroll")) edged(event.target); }, true);
  for (const name of ["toggle", "change", "htmx:after:swap"]) document.addEventListener(name, all, true);
  for (const name of ["load", "resize"]) window.addEventListener(name, all);
  document.addEventListener("DOMContentLoaded", all);
})();
