"""What was just worked out of a case is not worked out again: the last few are remembered."""

from __future__ import annotations

import functools
from collections import OrderedDict
from collections.abc import Callable
from typing import ParamSpec, TypeVar

P = ParamSpec("P")
T = TypeVar("T")

LATEST = 4
"""How many are remembered: one case is looked at from many sides before the next one is."""


def once(function: Callable[P, T]) -> Callable[P, T]:
    """The function, answering at once for the very same arguments as a moment ago.

    Arguments are the same if they are the same objects, since a case is dear to compare; they are
    kept as long as their answer, so that no other object can take their place.
    """
    latest: OrderedDict[tuple[int, ...], tuple[object, T]] = OrderedDict()

    @functools.wraps(function)
    def answer(*args: P.args, **kwargs: P.kwargs) -> T:
        held = (*args, *kwargs.values())
        key = tuple(id(one) for one in held)
        if key in latest:
            return latest[key][1]
        found = function(*args, **kwargs)
        latest[key] = (held, found)
        if len(latest) > LATEST:
            latest.popitem(last=False)
        return found

    return answer
