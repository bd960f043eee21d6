"""Tables of hand-written pages: each in its box, aligned without a style."""

from __future__ import annotations

from markdown import markdown

from casebook.output.own_page import titled, within_reach


def test_each_table_gets_a_box_and_its_columns_a_class() -> None:
    one = "|a|b|\n|:-:|--:|\n|c|d|\n"
    made = within_reach(markdown(f"{one}\nwords\n\n{one}", extensions=["tables"]))
    assert made.count('<div class="across" tabindex="0"><table>') == 2
    assert made.count("</table></div>") == 2
    assert '<td class="to-center">c</td>' in made
    assert '<td class="to-right">d</td>' in made
    assert "style=" not in made


def test_a_page_without_a_heading_gets_its_title() -> None:
    assert titled("<p>words</p>", "Bread & glue") == "<h1>Bread &amp; glue</h1>\n<p>words</p>"
    assert titled('<h1 id="a">Own</h1>', "Other") == '<h1 id="a">Own</h1>'


def test_a_page_without_a_table_stays_as_it_is() -> None:
    assert within_reach("<p>text-align: left</p>") == "<p>text-align: left</p>"
