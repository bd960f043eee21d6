"""All that is made of each case: its page, what the page says to programs, the files beside it."""

from __future__ import annotations

import functools
from collections.abc import Iterator

from casebook.compute.likeness import Like
from casebook.model.archive import Case
from casebook.output.case_contexts import CasePage
from casebook.output.case_page import Told, case_page
from casebook.output.case_text import case_text
from casebook.output.citing import citation
from casebook.output.contexts import Link
from casebook.output.downloads import downloads
from casebook.output.glossary import told_once
from casebook.output.linked_data import case_data, picture_addresses
from casebook.output.lists import Lists
from casebook.output.pictures import case_pictures
from casebook.output.site import Asset
from casebook.output.whole import Whole

UP = "../../"
"""The way from a case's page to the top of the site."""


class CaseMaker:
    """Makes what there is of each case, from what the pages of the site share."""

    def __init__(self, whole: Whole, lists: Lists) -> None:
        self.of = whole
        self.lists = lists
        self._texts: dict[str, str] = {}

    def page(self, case: Case, root: str) -> CasePage:
        """The context of a case's page; its text is made along with it, and kept for its file."""
        of = self.of
        made = case_page(case, of.archive, of.pictures, of.wording(root), self._told(case, root))
        self._texts[case.id] = case_text(made)
        return told_once(made)

    def data(self, case: Case) -> str:
        """What a case's page says to programs."""
        of = self.of
        images = picture_addresses(
            of.wishes.site_url, case_pictures(case, of.archive, of.pictures, "")
        )
        return case_data(case, of.archive, of.lexicon, self._address(case), images)

    def files(self) -> Iterator[Asset]:
        """The files beside the pages of the cases."""
        for case in self.of.cases:
            cited = citation(case, self.of.archive, self._address(case))
            data, text = (functools.partial(one, case) for one in (self.data, self._text))
            yield from downloads(case, cited, data, text)

    def _text(self, case: Case) -> str:
        if case.id not in self._texts:
            self.page(case, UP)
        return self._texts[case.id]

    def _address(self, case: Case) -> str:
        """Where a case's page stands on the web; "" if nobody said."""
        url = self.of.wishes.site_url
        return f"{url}cases/{case.id}/index.html" if url else ""

    def _told(self, case: Case, root: str) -> Told:
        of, like = self.of, self._like(case)
        cards = self.lists.cards([of.by_id[one.case] for one in like], root)
        return Told(
            summary=of.summaries[case.id],
            kin=of.kin[case.id],
            gaps=of.wishes.gaps.get(case.id, ()),
            faults=of.wishes.faults.get(case.id, ()),
            ways=tuple(Link(way.title, root + way.address) for way in of.leading_to[case.id]),
            withheld=case.id in of.shown.withheld,
            structure=of.structure(case),
            like=tuple(zip(like, cards, strict=True)),
            address=self._address(case),
        )

    def _like(self, case: Case) -> tuple[Like, ...]:
        """Cases like this one that are not named on its page already."""
        kin = [one.case for one in self.of.kin[case.id]]
        return self.of.likeness.to(case.id, without=kin)
