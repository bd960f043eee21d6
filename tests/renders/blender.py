"""The one module that speaks to Blender: meshes, materials, light, lens, and taking the picture.

Offered under the GPL, version 3 or later, as Blender's own module is; see LICENSE for the rest.
Places are in mm here and metres there.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

import bpy
import numpy as np
from mathutils import Matrix, Vector

from tests.renders.paint import Array, Field

MM = 0.001
Thing = Any
"""A thing of Blender's, which comes without types."""


def clear() -> None:
    """Start from an empty scene."""
    bpy.ops.wm.read_factory_settings(use_empty=True)


def _linked(name: str, data: Thing) -> Thing:
    thing = bpy.data.objects.new(name, data)
    bpy.context.collection.objects.link(thing)
    return thing


def _image(name: str, values: Array, srgb: bool) -> Thing:
    if values.ndim == 2:
        values = np.repeat(values[..., None], 3, 2)
    h, w = values.shape[:2]
    image = bpy.data.images.new(name, w, h, alpha=False, float_buffer=False)
    image.colorspace_settings.name = "sRGB" if srgb else "Non-Color"
    filled = np.concatenate([np.clip(values, 0, 1), np.ones((h, w, 1))], -1)
    image.pixels.foreach_set(filled.astype(np.float32).ravel())
    image.pack()
    return image


class _Nodes:
    """The node tree of a new material, with the few calls that are needed."""

    def __init__(self, name: str) -> None:
        self.material = bpy.data.materials.new(name)
        self.material.use_nodes = True
        self.tree = self.material.node_tree
        self.surface = self.tree.nodes["Principled BSDF"]
        self.place = self.tree.nodes.new("ShaderNodeTexCoord").outputs["Object"]

    def new(self, kind: str, **settings: Thing) -> Thing:
        node = self.tree.nodes.new(kind)
        for name, value in settings.items():
            setattr(node, name, value)
        return node

    def link(self, out: Thing, into: Thing) -> None:
        self.tree.links.new(out, into)

    def texture(self, name: str, values: Array, srgb: bool = False) -> Thing:
        node = self.new("ShaderNodeTexImage", interpolation="Cubic", extension="EXTEND")
        node.image = _image(name, values, srgb)
        return node.outputs[0]

    def noise(self, mm: float, detail: float = 2, rough: float = 0.5) -> Thing:
        node = self.new("ShaderNodeTexNoise")
        node.inputs["Scale"].default_value = 1 / (mm * MM)
        node.inputs["Detail"].default_value = detail
        node.inputs["Roughness"].default_value = rough
        self.link(self.place, node.inputs["Vector"])
        return node.outputs[0]

    def sum(self, first: Thing, factor: float | Thing, plus: Thing | float) -> Thing:
        """first × factor + plus."""
        node = self.new("ShaderNodeMath", operation="MULTIPLY_ADD")
        for at, value in enumerate((first, factor, plus)):
            if isinstance(value, (int, float)):
                node.inputs[at].default_value = value
            else:
                self.link(value, node.inputs[at])
        return node.outputs[0]

    def bump(self, height: Thing, mm: float, strength: float, under: Thing | None) -> Thing:
        node = self.new("ShaderNodeBump")
        node.inputs["Distance"].default_value = mm * MM
        node.inputs["Strength"].default_value = strength
        self.link(height, node.inputs["Height"])
        if under is not None:
            self.link(under, node.inputs["Normal"])
        return node.outputs[0]


def painted(
    name: str,
    field: Field,
    *,
    relief_mm: float = 0.35,
    gloss: float = 0.35,
    glow: Array | None = None,
) -> Thing:
    """The material of a painted field: its maps, with grain and a fine roughness of its own.

    `glow`: light of its own, as the sRGB colour in which it would be seen in the dark.
    """
    nodes = _Nodes(name)
    put = nodes.surface.inputs
    nodes.link(nodes.texture(name, field.colour, srgb=True), put["Base Color"])
    maps = nodes.texture(name, np.stack([field.rough, field.metal, field.grain], -1))
    split = nodes.new("ShaderNodeSeparateColor")
    nodes.link(maps, split.inputs[0])
    cells = nodes.new("ShaderNodeTexVoronoi", feature="F1")
    cells.inputs["Scale"].default_value = 1 / (0.55 * MM)
    nodes.link(nodes.place, cells.inputs["Vector"])
    fine = nodes.noise(0.30)
    grain = nodes.sum(cells.outputs["Distance"], split.outputs[2], 0.0)
    relief = nodes.texture(name, 0.5 + field.relief * 0.5)
    under = nodes.bump(relief, relief_mm, 1.0, None)
    nodes.link(nodes.bump(nodes.sum(fine, 0.45, grain), 0.11, 0.8, under), put["Normal"])
    rough = nodes.sum(split.outputs[0], 1.0, -0.11)
    nodes.link(nodes.sum(fine, 0.22, rough), put["Roughness"])
    nodes.link(split.outputs[1], put["Metallic"])
    put["Specular IOR Level"].default_value = gloss
    if glow is not None:
        nodes.link(nodes.texture(name, glow, srgb=True), put["Emission Color"])
        put["Emission Strength"].default_value = 1.0
    return nodes.material


def linear(colour: Sequence[float]) -> tuple[float, ...]:
    """A colour of sRGB as the light it stands for."""
    return tuple(((v + 0.055) / 1.055) ** 2.4 if v > 0.04 else v / 12.92 for v in colour)


def plain(
    name: str,
    colour: Sequence[float],
    *,
    rough: float = 0.85,
    gloss: float = 0.2,
    bumps_mm: float | None = None,
    uneven: float = 0.05,
    metal: float = 0.0,
    glow: Sequence[float] | None = None,
) -> Thing:
    """A material of one colour, with fine bumps, a little unevenness or light of its own."""
    nodes = _Nodes(name)
    put = nodes.surface.inputs
    put["Base Color"].default_value = (*linear(colour), 1)
    put["Roughness"].default_value, put["Metallic"].default_value = rough, metal
    put["Specular IOR Level"].default_value = gloss
    if glow is not None:
        put["Emission Color"].default_value = (*linear(glow), 1)
        put["Emission Strength"].default_value = 1.0
    if bumps_mm:
        bump = nodes.bump(nodes.noise(bumps_mm, 3), 0.12, 0.6, None)
        nodes.link(bump, put["Normal"])
        spread = nodes.new("ShaderNodeMapRange")
        for at, value in ((1, 0.3), (2, 0.7), (3, 1 - uneven), (4, 1 + uneven)):
            spread.inputs[at].default_value = value
        nodes.link(nodes.noise(35, 5, 0.68), spread.inputs[0])
        blend = nodes.new("ShaderNodeMix", data_type="RGBA", blend_type="MULTIPLY")
        blend.inputs[0].default_value = 1
        blend.inputs[6].default_value = (*linear(colour), 1)
        nodes.link(spread.outputs[0], blend.inputs[7])
        nodes.link(blend.outputs[2], put["Base Color"])
    return nodes.material


def film(name: str) -> Thing:
    """Clear polyester film: it lets through, and shows itself by what it mirrors."""
    nodes = _Nodes(name)
    put = nodes.surface.inputs
    put["Alpha"].default_value, put["Roughness"].default_value = 0.06, 0.07
    put["Base Color"].default_value = (0.9, 0.93, 0.95, 1)
    put["Specular IOR Level"].default_value = 1.0
    return nodes.material


def mesh(
    name: str,
    points: Array,
    material: Thing,
    *,
    there: Array | None = None,
    flip: bool = False,
    corners: bool = False,
) -> Thing:
    """A grid of points (rows, columns, xyz in mm) as a smooth surface.

    `corners`: the picture runs from corner to corner of the grid, not from pixel centre to centre.
    """
    h, w = points.shape[:2]
    index = np.arange(h * w).reshape(h, w)
    faces = np.stack([index[:-1, :-1], index[:-1, 1:], index[1:, 1:], index[1:, :-1]], -1)
    if flip:
        faces = faces[..., ::-1]
    if there is not None:
        faces = faces[there[:-1, :-1] & there[:-1, 1:] & there[1:, 1:] & there[1:, :-1]]
    faces = faces.reshape(-1, 4)
    data = bpy.data.meshes.new(name)
    data.vertices.add(h * w)
    data.vertices.foreach_set("co", (points.reshape(-1, 3) * MM).astype(np.float32).ravel())
    data.loops.add(faces.size)
    data.loops.foreach_set("vertex_index", faces.ravel().astype(np.int32))
    data.polygons.add(len(faces))
    data.polygons.foreach_set("loop_start", np.arange(0, faces.size, 4, dtype=np.int32))
    data.polygons.foreach_set("use_smooth", np.ones(len(faces), bool))
    data.update()
    data.validate()
    data.uv_layers.new(name="UV").data.foreach_set("uv", _uv(h, w, corners)[faces.ravel()].ravel())
    data.materials.append(material)
    return _linked(name, data)


def _uv(h: int, w: int, corners: bool) -> Array:
    def spread(n: int) -> Array:
        return np.linspace(0, 1, n) if corners else (np.arange(n) + 0.5) / n

    u, v = np.meshgrid(spread(w), spread(h))
    return np.stack([u, v], -1).reshape(-1, 2).astype(np.float32)


def faceted(name: str, corners: list, faces: list, material: Thing) -> Thing:
    """A mesh from single corners (mm) and faces, with hard edges."""
    data = bpy.data.meshes.new(name)
    data.from_pydata([tuple(v * MM for v in corner) for corner in corners], [], faces)
    data.materials.append(material)
    return _linked(name, data)


def box(
    name: str, x: tuple, y: tuple, z: tuple, material: Thing, *, round_mm: float = 0.25
) -> Thing:
    """A box between two places on each axis, its edges rounded."""
    import bmesh  # found only once Blender's own module is there

    built = bmesh.new()
    bmesh.ops.create_cube(built, size=1)
    for vertex in built.verts:
        vertex.co = Vector(
            [(a + b) / 2 + c * (b - a) for c, (a, b) in zip(vertex.co, (x, y, z), strict=True)]
        )
        vertex.co *= MM
    if round_mm:
        bmesh.ops.bevel(
            built,
            geom=built.edges[:],
            offset=round_mm * MM,
            segments=3,
            affect="EDGES",
            profile=0.5,
        )
    data = bpy.data.meshes.new(name)
    built.to_mesh(data)
    data.materials.append(material)
    return _linked(name, data)


def threads(name: str, paths: list, radius: float, material: Thing) -> Thing:
    """Paths of points (mm) as round threads."""
    curve = bpy.data.curves.new(name, "CURVE")
    curve.dimensions, curve.bevel_depth, curve.bevel_resolution = "3D", radius * MM, 2
    curve.materials.append(material)
    for path in paths:
        spline = curve.splines.new("POLY")
        spline.points.add(len(path) - 1)
        for point, place in zip(spline.points, path, strict=True):
            point.co = (*(float(v) * MM for v in place), 1)
    return _linked(name, curve)


def twisted(name: str, paths: list, radius: float, apart: float, material: Thing) -> None:
    """Twine: two strands that wind round one another along each path."""
    for side in (-apart, apart):
        strands = [
            [
                (x + side * math.sin(i * 1.3), y + side * math.cos(i * 1.3), z)
                for i, (x, y, z) in enumerate(path)
            ]
            for path in paths
        ]
        threads(name, strands, radius, material)


def holder(name: str) -> Thing:
    """An empty thing to which others are tied, so that they move together."""
    return _linked(name, None)


def move(thing: Thing, x: float, y: float, z: float) -> None:
    """Put a thing at a place in mm."""
    thing.location = Vector((x, y, z)) * MM


def things() -> list:
    """All that is in the scene."""
    return list(bpy.data.objects)


def shift(thing: Thing, x: float, y: float, z: float) -> None:
    """Move a thing from where it is, in mm."""
    thing.location = thing.location + Vector((x, y, z)) * MM


def turn(thing: Thing, x: float = 0, y: float = 0, z: float = 0) -> None:
    """Turn a thing by degrees about the axes."""
    thing.rotation_euler = tuple(math.radians(v) for v in (x, y, z))


def lamp(
    name: str, at: Sequence, to: Sequence, size: Sequence, power: float, colour: Sequence
) -> None:
    """A lit rectangle (m) that the lens does not see."""
    data = bpy.data.lights.new(name, "AREA")
    data.shape, data.energy, data.color = "RECTANGLE", power, colour
    data.size, data.size_y = size
    thing = _linked(name, data)
    thing.location = at
    look = Vector(to) - Vector(at)
    thing.rotation_euler = look.to_track_quat("-Z", "Y").to_euler()
    thing.visible_camera = False


def surroundings(strength: float) -> None:
    """The dim, bluish light of the room."""
    world = bpy.data.worlds.new("room")
    bpy.context.scene.world = world
    world.use_nodes = True
    back = world.node_tree.nodes["Background"].inputs
    back[0].default_value, back[1].default_value = (0.94, 0.97, 1, 1), strength


def camera(
    at: Sequence, to: Sequence, focus: Sequence, *, lens: float, stop: float, roll: float = 0
) -> None:
    """A camera with a 36 mm wide sensor; `focus` is the place that is sharp."""
    data = bpy.data.cameras.new("camera")
    thing = _linked("camera", data)
    place, aim = Vector(at) * MM, Vector(to) * MM
    thing.location = place
    level = (aim - place).to_track_quat("-Z", "Y").to_matrix()
    thing.rotation_euler = (level @ Matrix.Rotation(math.radians(roll), 3, "Z")).to_euler()
    data.lens, data.sensor_width, data.clip_start = lens, 36, 0.01
    data.dof.use_dof, data.dof.aperture_fstop, data.dof.aperture_blades = True, stop, 9
    data.dof.focus_distance = (Vector(focus) * MM - place).length
    bpy.context.scene.camera = thing


def shoot(
    path: str, *, width: int, height: int, samples: int, seed: int, threads_used: int
) -> None:
    """Take the picture and write it as a PNG."""
    scene = bpy.context.scene
    scene.render.engine = "CYCLES"
    for name, value in {
        "device": "CPU", "samples": samples, "seed": seed, "use_adaptive_sampling": True,
        "adaptive_threshold": 0.05, "use_denoising": True, "denoiser": "OPENIMAGEDENOISE",
        "max_bounces": 4, "diffuse_bounces": 2, "glossy_bounces": 2,
        "caustics_reflective": False, "caustics_refractive": False, "sample_clamp_indirect": 4,
    }.items():  # fmt: skip
        setattr(scene.cycles, name, value)
    for name, value in {
        "resolution_x": width, "resolution_y": height, "resolution_percentage": 100,
        "threads_mode": "FIXED", "threads": threads_used, "filepath": path, "filter_size": 1.6,
    }.items():  # fmt: skip
        setattr(scene.render, name, value)
    scene.render.image_settings.file_format = "PNG"
    scene.view_settings.view_transform, scene.view_settings.look = "Standard", "None"
    scene.view_settings.exposure = 0.02
    bpy.ops.render.render(write_still=True)
