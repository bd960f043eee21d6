"""The English names of months and seasons, in which a record may write its dates."""

from __future__ import annotations

MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)
SEASONS = ("spring", "summer", "autumn", "winter")
