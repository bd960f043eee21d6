"""Steps read as a conservator would say them."""

from __future__ import annotations

from casebook.model.treatment import Step
from casebook.output.sentences import step_sentence, verb_of
from casebook.output.wording import text_of
from tests.builders import WORDING, record

STEPS = """
{removes: old-glue, agent: {is: water, carrier: methyl-cellulose 4 %, applied: poultice, lasts: 20 min, times: 3, until: softened}, leaves: {layer: old-glue, where: in the folds}, fate: discarded}
{do: line, adds: release-lining, onto: spine, material: {is: tengujo, weight: 5 g/m², lot: 24-7}, adhesive: wheat-starch-paste, grain: along, cut: {height: 390 mm}}
{do: line-spine, adds: first-lining, onto: spine, material: tengujo 5 g/m², adhesive: wheat-starch-paste, grain: along}
{do: line, adds: cloth-lining, onto: release-lining, spans: {spine: 68 mm, board 1: 40 mm, board 2: 40 mm}, material: {is: linen, damped: yes}, adhesive: polyvinyl-acetate}
{puts-back: endband head, onto: cloth-lining, adhesive: polyvinyl-acetate, allowed-by: red-bleeds, except: "the silk, kept dry"}
{do: reattach, puts-back: [endband head, title-label], onto: spine, adhesive: wheat-starch-paste}
{do: attach, joins: cloth-lining, to: [board 1, board 2], adhesive: polyvinyl-acetate, face: outer}
{do: wash, treats: section, scope: {done: 40, of: 52, rest: not recorded}, bath: {liquid: deionised-water, conditioned: calcium-hydroxide, ph: 8.0, each: 15 min, or-until: discoloured, times: 5, until: no more colour}}
{do: dry-clean, treats: text-block, agent: rubber-sponge, scope: {done: 96, of: 416, rest: clean enough to leave, where: "margins only"}}
{do: remove-spine-linings, treats: spine}
{do: remove-spine-linings, removes: old-lining, agent: water}
{do: remove-tape, treats: sheet/recto, agent: acetone}
{do: make-box}
{do: make-hollow, adds: hollow, onto: spine, material: kozo-paper, adhesive: wheat-starch-paste, grain: along}
{do: dress-leather, treats: cover, material: leather-dressing}
{do: tip-on, adds: new-flyleaf, onto: flyleaf, material: kozo-paper, adhesive: wheat-starch-paste}
{do: hinge, joins: sheet, to: mount, adhesive: wheat-starch-paste}
{do: infill, adds: fill-1, in-thickness-of: sheet, material: kozo-paper, adhesive: methyl-cellulose 4 %, scope: {pieces: [{count: 3, height: 20 mm, width: 10 mm}]}}
{do: sew, joins: last-section, to: text-block, held: sewn, material: linen-thread}
{takes-off: title-label, fate: returned}
{do: lift, opens: [board 1/sides, board 2/sides]}
{adds: tube, onto: spine, material: kozo-paper, adhesive: unnamed, temporary: yes}
{do: lace-in, joins: board front, to: text-block, held: laced}
{do: solvent-clean, treats: sheet/verso, agent: {mix: {ethanol: 1, water: 1}, applied: swab}}
{do: consolidate, treats: leather, adhesive: methyl-cellulose 2 %}
{do: reduce-stain, treats: sheet, agent: water}
{do: make, adds: new-spine-piece, is: part, material: calf, cut: {height: 398 mm, width: 90 mm}}
{do: make, adds: chart-folder, is: part, over: sheet, material: museum-board}
{do: make-box, adds: book-box, is: part, over: text-block, material: corrugated-board}
{do: retouch, treats: fills, agent: none, material: watercolour}
{do: attach, adds: hinge-cloth, material: linen, bonds: [{onto: spine, adhesive: wheat-starch-paste}, {onto: first-section, held: sewn, cuts: first-section}]}
{do: consolidate, adds: consolidant, soaks-in: leather, material: hydroxypropyl-cellulose 2 % in ethanol}
{adds: wrapper, over: [board 1, board 2], material: polyester-film, beside: yes}
{adds: dressing, soaks-in: cover, material: leather-dressing}
{do: make-hollow, adds: tube, onto: spine, material: kozo-paper, adhesive: unknown, walls: "1 on, 2 off"}
{removes: chart, agent: none, leaves: none, fate: {is: own-case, case: 2025-032}}
{words: made a box label, beside: yes}
{do: wash, treats: each, bath: {liquid: water, times: 1}}
{do: guard, adds: fold-guards, onto: section, material: kozo-paper 11 g/m², adhesive: wheat-starch-paste, grain: along}
""".strip().splitlines()


def said(text: str) -> str:
    return text_of(step_sentence(record(Step, text), WORDING))


def test_steps_read_as_sentences(golden) -> None:
    golden("sentences.txt", "".join(f"{one}\n  {said(one)}\n" for one in STEPS))


def test_a_step_in_words_only_is_those_words() -> None:
    assert text_of(step_sentence(Step(words="looked at it"), WORDING)) == "Looked at it."


def test_every_operation_alone_ends_in_no_preposition() -> None:
    for name in WORDING.lexicon.terms["operations"]:
        text = text_of(step_sentence(Step(do=name), WORDING))
        assert text.rstrip(".").split()[-1] not in {"of", "from", "for"}, text


def test_the_verb_is_the_structural_key_that_is_told() -> None:
    assert verb_of(Step(opens=("board 1",))) == "opens"
    assert verb_of(Step(words="washed")) == ""
