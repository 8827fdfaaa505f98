"""Every form of the bench that its pages lead to, and forms sent with whatever values."""

import re
from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cache
from html.parser import HTMLParser
from urllib.parse import parse_qs, urldefrag, urljoin, urlsplit

import httpx

from gramil.bench.application import GETS, POSTS

FILES = re.compile(r"\.(pdf|zip|ics|toml|jpg|png)$|/print/|/record/(copy|files)$|/static/")
"""Addresses at which there are files: no forms stand there."""
LONGEST_QUERY = 50_000
"""Letters of an address that the client sends; one typed takes nine of them at most, as it is written there."""


@dataclass
class Form:
    """A form on a page: where it goes, how, its fields with their kinds, and what they hold as the page comes."""

    action: str
    method: str
    fields: dict[str, str] = field(default_factory=dict)
    held: dict[str, str] = field(default_factory=dict)

    @property
    def hides(self) -> bool:
        """Whether it carries what the maker does not see, beside what proves that the bench made it."""
        return any(kind == "hidden" for name, kind in self.fields.items() if name != "token")


class Page(HTMLParser):
    """The forms of a page, and where its links lead."""

    def __init__(self, path: str) -> None:
        super().__init__()
        self.path = path
        self.forms: list[Form] = []
        self.links: list[str] = []
        self._choice = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {key: value or "" for key, value in attrs}
        if tag == "a" and given.get("href", "").startswith(("/", "?")):
            self.links.append(urldefrag(urljoin(self.path, given["href"]))[0])
        elif tag == "form":
            action = urldefrag(urljoin(self.path, given.get("action", "")))[0]
            self.forms.append(Form(action, given.get("method", "get").lower()))
        elif tag == "option" and self.forms:
            self.forms[-1].held.setdefault(self._choice, given.get("value", ""))
        elif tag in ("input", "textarea", "select", "button") and self.forms and given.get("name"):
            self._choice = given["name"]
            self.forms[-1].fields[given["name"]] = given.get("type", "text") if tag == "input" else tag
            if tag in ("input", "button"):
                self.forms[-1].held.setdefault(given["name"], given.get("value", ""))


def forms_of_the_bench(client: httpx.Client, beginning: Iterable[str]) -> list[Form]:
    """One form of each kind, from one page of each kind that links lead to from those to begin with."""
    waiting, pages, found = list(beginning), set[object](), dict[object, Form]()
    while waiting:
        path = waiting.pop(0)
        if (kind := kind_of(path)) in pages or FILES.search(urlsplit(path).path):
            continue
        pages.add(kind)
        page = Page(path)
        page.feed(client.get(path).text)
        waiting += dict.fromkeys(page.links)
        for form in page.forms:
            found.setdefault((form.method, pattern(form.action), frozenset(form.fields)), form)
    return list(found.values())


@cache
def kind_of(path: str) -> tuple[str, frozenset[str]]:
    """What pages are alike by: the pattern of their address, and what is asked for in it, but for the view."""
    return pattern(path), frozenset(parse_qs(urlsplit(path).query, keep_blank_values=True).keys() - {"view", "x"})


@cache
def pattern(path: str) -> str:
    """The application's own pattern of an address; the address where it has none."""
    plain = urlsplit(path).path
    return next((each for each in _PATTERNS if _PATTERNS[each].fullmatch(plain)), plain)


_PATTERNS = {each: re.compile(re.sub(r"\{\w+\}", "[^/]+", each)) for each, _ in (*GETS, *POSTS)}


def sent(client: httpx.Client, form: Form, token: str, value: str, upload: bytes, kept: bool) -> httpx.Response:
    """A form with one value in every field and one content in every file; `kept`: only in those that are typed into."""
    typed = {name: value for name, kind in form.fields.items() if kind in ("text", "textarea", "number", "search")}
    every = {name: value for name, kind in form.fields.items() if kind != "file"}
    texts = {**form.held, **typed} if kept else every
    if form.method == "get":
        room = LONGEST_QUERY // (9 * max(len(texts), 1))
        params = {name: text[:room] for name, text in texts.items()}
        return client.get(urlsplit(form.action).path, params=params)
    files = {name: ("x.toml", upload) for name, kind in form.fields.items() if kind == "file"}
    head = {"origin": str(client.base_url).rstrip("/")}
    return client.post(
        form.action, data={**texts, "token": token}, files=files or None, headers=head, follow_redirects=False
    )
