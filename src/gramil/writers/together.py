"""Several PDFs as one, page after page, none of them changed."""

import io
from collections.abc import Sequence


def together(title: str, documents: Sequence[bytes]) -> bytes:
    """The pages of all documents in order, printed at true scale; the same input gives the same bytes."""
    import pikepdf  # needed only where sheets and templates share a paper

    with pikepdf.new() as whole:
        for each in documents:
            with pikepdf.open(io.BytesIO(each)) as document:
                whole.pages.extend(document.pages)
        whole.Root.ViewerPreferences = pikepdf.Dictionary(PrintScaling=pikepdf.Name("/None"))
        whole.docinfo["/Title"] = title
        made = io.BytesIO()
        whole.save(made, deterministic_id=True)
    return made.getvalue()
