"""Photographs: a file name is enough, and only the lab ever sees it."""

from __future__ import annotations

from casebook.model import photos
from casebook.model.base import Audience, schema
from casebook.model.condition import Stage
from casebook.model.marks import Scale
from casebook.model.photos import Image, Photo
from tests.model.reads import holds, reads


def test_every_field_is_documented_and_no_key_is_a_trap():
    holds(photos)


def test_a_file_name_alone_is_a_photo():
    assert reads(Photo, "spine-before.jpg") == Photo(file="spine-before.jpg")


def test_a_photo_says_when_and_in_what_light():
    found = reads(Photo, "{file: a.jpg, stage: before, light: raking from the left, scale: yes}")
    assert (found.stage, found.light) == (Stage.BEFORE, "raking from the left")
    assert (found.scale, found.target) == (Scale(in_frame=True), None)


def test_only_the_lab_sees_file_names():
    assert schema(Photo)["file"].seen is Audience.LAB


def test_an_image_is_known_by_its_bytes():
    assert Image("ab", 3, 2) == Image(digest="ab", width=3, height=2)
