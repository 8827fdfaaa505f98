"""Several PDFs as one, page after page, none of them changed, with the bookmarks of them all."""

import io
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import pikepdf


def together(title: str, documents: Sequence[bytes]) -> bytes:
    """The pages of all documents in order, printed at true scale; the same input gives the same bytes."""
    import pikepdf  # needed only where sheets and templates share a paper

    with pikepdf.new() as whole:
        marks: list[tuple[str, int]] = []
        for each in documents:
            with pikepdf.open(io.BytesIO(each)) as document:
                marks += [(words, len(whole.pages) + page) for words, page in _bookmarks(document)]
                whole.pages.extend(document.pages)
        with whole.open_outline() as outline:
            outline.root.extend(pikepdf.OutlineItem(words, page) for words, page in marks)
        whole.Root.ViewerPreferences = pikepdf.Dictionary(PrintScaling=pikepdf.Name("/None"))
        whole.Root.Lang = "en"
        whole.docinfo["/Title"] = title
        made = io.BytesIO()
        whole.save(made, deterministic_id=True)
    return made.getvalue()


def _bookmarks(document: "pikepdf.Pdf") -> Iterator[tuple[str, int]]:
    """The words of each bookmark at the top, and the page that it leads to, counted from 0."""
    import pikepdf

    numbers = {page.obj.objgen: number for number, page in enumerate(document.pages)}
    with document.open_outline() as outline:
        for item in outline.root:
            place = item.destination if item.action is None else item.action.get("/D")
            if isinstance(place, pikepdf.Array) and place[0].objgen in numbers:
                yield item.title, numbers[place[0].objgen]
