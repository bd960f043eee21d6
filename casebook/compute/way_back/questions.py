"""The three questions: bare a part, free it, take a layer off; opening again and again."""

from __future__ import annotations

from collections.abc import Set

from casebook.compute.way_back import ties
from casebook.compute.way_back.graph import Node
from casebook.compute.way_back.instructions import Answer, Question, Rest
from casebook.compute.way_back.options import Options
from casebook.compute.way_back.work import Work


def bare(options: Options, part: str) -> Answer:
    """Take off all that was put on a part, from the outermost inwards, until it is bare."""
    graph = options.graph
    work = Work(options, graph.nodes)
    goals = ties.put_on(graph, part)
    sources = frozenset(graph.pieces(part))
    _until(work, goals, sources, uncover=False)
    soaked = tuple(Rest(name, part, for_good=True) for name in ties.soaked_into(graph, part))
    return _answer(Question.BARE, part, work, goals, soaked)


def free(options: Options, part: str) -> Answer:
    """Part an original from what it lies on, or from what its own layers tie it to.

    A part that is an original piece of another goes with that: it is not taken off its own.
    """
    graph = options.graph
    targets = ties.ties(graph, part, graph.nodes)
    name = part if targets else ties.carrier(graph, part) or part
    targets = targets or ties.ties(graph, name, graph.nodes)
    work = Work(options, graph.nodes, parting=True, frees=name)
    _free(work, name, targets)
    goals = frozenset(graph.pieces(name)) if targets else frozenset[Node]()
    return _answer(Question.FREE, part, work, goals, ())


def _free(work: Work, part: str, targets: frozenset[Node]) -> None:
    """Free a part, or first what keeps the agent from it."""
    goals = frozenset({work.graph.lowest(part)}) if targets else frozenset[Node]()
    _until(work, goals, targets, uncover=True)


def take_off(options: Options, layer: str) -> Answer:
    """Take off a layer with what must come with it, or first what keeps the agent from it."""
    graph = options.graph
    pieces = (one for name in graph.named(layer) for one in graph.pieces(name))
    goals = frozenset(one for one in pieces if one in graph.nodes and not graph.original(one))
    sources = ties.ground(graph, goals)
    work = Work(options, graph.nodes, sparing=goals | ties.above(graph, goals))
    _until(work, goals, sources, uncover=True)
    hosts = {host for name in graph.named(layer) for host in graph.soaked.get(name, ())}
    soaked = tuple(Rest(layer, host, for_good=True) for host in sorted(hosts))
    return _answer(Question.TAKE_OFF, layer, work, goals, soaked)


def _answer(
    question: Question, of: str, work: Work, goals: Set[Node], soaked: tuple[Rest, ...]
) -> Answer:
    """The openings, with those that free the originals that rode along, and where it stopped."""
    if question is not Question.FREE:
        for number, piece in enumerate(tuple(work.pieces)):
            for name in work.openings[number].riders:
                _free_rider(work, piece, name, number + 1)
    left = sorted({node.name for node in goals & work.there})
    stops = (*(work.stops[name] for name in left if name in work.stops), *work.unfreed)
    return Answer(question, of, tuple(work.openings), tuple(dict.fromkeys(stops)), soaked)


def _free_rider(work: Work, piece: frozenset[Node], name: str, number: int) -> None:
    """Free an original from the piece in which it came off."""
    targets = ties.ties(work.graph, name, piece)
    inner = Work(work.options, piece, True, True, frees=name, in_piece=number)
    inner.openings = work.openings
    _free(inner, name, targets)
    if name in inner.stops and work.graph.lowest(name) in inner.there:
        work.unfreed.append(inner.stops[name])


def _until(work: Work, goals: Set[Node], sources: Set[Node], *, uncover: bool) -> None:
    """Open again and again, the outermost first, as long as anything comes off.

    With `uncover`, what lies over the goals is opened where that brings an agent to them.
    """
    more = True
    while more:
        passed = [
            work.open(sources, sink)
            for sink in ties.outermost(work.graph, goals & work.there)
            if sink in work.there
        ]
        more = any(passed) or (uncover and _uncover(work, goals & work.there, sources))


def _uncover(work: Work, goals: Set[Node], sources: Set[Node]) -> bool:
    """Open what lies over the goals, our own work before originals; whether anything came off."""
    left = ties.outermost(work.graph, goals)
    if not any(work.hopes(sources, one) for one in left):
        return False
    covering = (ties.above(work.graph, left) & work.there) - goals - sources
    ours = frozenset(node for node in covering if not work.graph.original(node))
    return any(
        work.open(sources, sink)
        for among in (ours, covering - ours)
        for sink in ties.outermost(work.graph, among)
    )
