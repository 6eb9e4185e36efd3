"""A PDF of drawings, to scale, with creator, title, language and attachments."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence

from fpdf import FPDF, ViewerPreferences
from fpdf.output import OutputProducer, PDFInfo

from manipulatives.drawings.shapes import Drawing
from manipulatives.outputs.sheet.pdf.letters import kit_typeface
from manipulatives.outputs.sheet.pdf.painting import paint_page

CREATOR = "manipulatives"
"""The creator of a PDF, by which `shelf.replace` recognises the kit's own files."""

# fpdf2 makes the identifier of a file from its content and its date, so the date must not change.
_ANY_DATE = dt.datetime(2000, 1, 1, tzinfo=dt.UTC)


class _WithoutDate(OutputProducer):
    """Leaves out the date: the same lesson gives the same bytes on any day.

    fpdf2 has no setting for that; PDF does not require a date (ISO 32000-1, table 317).
    """

    def _add_info(self) -> PDFInfo:
        info = super()._add_info()
        info.creation_date = None
        return info


def pdf_of(
    pages: Sequence[Drawing],
    *,
    title: str,
    language: str,
    attachments: Mapping[str, bytes] | None = None,
) -> bytes:
    """Return a PDF with one drawing on each page, with the same bytes each time.

    The font is embedded, the file asks viewers to print without scaling, and it holds neither the
    time nor the place of its making.

    Args:
        pages: the drawings; each page is as large as its drawing.
        title: the title of the document.
        language: the language of its text, such as `"en-GB"`.
        attachments: JSON files that are stored in it, by name.

    Example:
        >>> pdf_of([Drawing(210, 297)], title="Empty", language="en-GB")[:4]
        b'%PDF'
    """
    document = FPDF(unit="mm")
    document.set_creation_date(_ANY_DATE)
    document.set_creator(CREATOR)
    document.set_title(title)
    document.set_lang(language)
    document.set_display_mode("default", "default")
    document.viewer_preferences = ViewerPreferences(display_doc_title=True, print_scaling="None")
    document.set_auto_page_break(False)
    document.set_margin(0)
    document.c_margin = 0
    document.set_text_shaping(use_shaping_engine=True)
    document.add_font(kit_typeface().family, fname=kit_typeface().file)
    for page in pages:
        document.add_page(format=(page.width, page.height))
        paint_page(document, page)
    for name, content in (attachments or {}).items():
        document.embed_file(
            bytes=content, basename=name, mime_type="application/json", compress=True
        )
    return bytes(document.output(output_producer_class=_WithoutDate))
