"""The layers: over what was found, step by step, what lies on what and how it holds."""

from casebook.compute.layers.faults import Fault, Kind
from casebook.compute.layers.replay import Moment, Replay, replay

__all__ = ["Fault", "Kind", "Moment", "Replay", "replay"]
