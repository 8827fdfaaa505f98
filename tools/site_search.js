// The site's search, for pages that are opened as files: they may start no worker and fetch nothing, so what is searched
// stands before these lines, as `gathered`: for each section of a page its location, its title and its text.
const MOST = 30;
const AROUND = 90; // letters of text shown on each side of what was found
const LEAST = 2; // letters that are searched for at least

function beginnings(words) {
  return words.map((word) => new RegExp("(^|[^\\p{L}\\p{N}])" + word.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"), "giu"));
}

function weight(section, wanted) {
  let sum = 0;
  for (const each of wanted) {
    const found = 10 * [...section.title.matchAll(each)].length + [...section.text.matchAll(each)].length;
    if (!found) return 0;
    sum += found;
  }
  return sum;
}

function sections(asked) {
  const words = asked.toLowerCase().split(/\s+/).filter((word) => word.length >= LEAST);
  if (!words.length) return [];
  const wanted = beginnings(words);
  return gathered
    .map((section) => ({ section, weight: weight(section, wanted), at: Math.max(0, section.text.search(wanted[0])) }))
    .filter((each) => each.weight)
    .sort((one, other) => other.weight - one.weight)
    .slice(0, MOST);
}

function shown({ section, at }) {
  const article = document.createElement("article");
  const link = document.createElement("a");
  link.href = base_url.replace(/\/$/, "") + "/" + section.location;
  link.textContent = section.title;
  const from = Math.max(0, at - AROUND);
  const said = document.createElement("p");
  said.textContent = (from ? "... " : "") + section.text.slice(from, at + AROUND) + " ...";
  article.append(Object.assign(document.createElement("h3"), { textContent: "" }), said);
  article.firstChild.append(link);
  return article;
}

function look() {
  const found = sections(document.getElementById("mkdocs-search-query").value);
  const place = document.getElementById("mkdocs-search-results");
  const nothing = Object.assign(document.createElement("p"), { textContent: "Nothing is found." });
  place.replaceChildren(...(found.length ? found.map(shown) : [nothing]));
}

document.addEventListener("DOMContentLoaded", () => {
  const field = document.getElementById("mkdocs-search-query");
  field.addEventListener("input", look);
  field.form.addEventListener("submit", (sent) => sent.preventDefault());
});
