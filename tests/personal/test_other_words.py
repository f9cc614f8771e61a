"""Faces whose words change are set quickly, and come out as composing each of them whole would."""

from functools import lru_cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from kit import PLAIN, apply, pad, picture

from padspec.compose.compose import compose
from padspec.compose.other_words import Faces
from padspec.draw.operators import layer_operators
from padspec.scene.nodes import LAYERS, Layer, Scene

DESIGNS = {
    "one heading": PLAIN,
    "two lines": apply(PLAIN, {"heading.lines": 2, "heading.align": "left", "heading.tracking": 40}),
    "filling": apply(PLAIN, {"heading.fit": "width"}),
    "edge": apply(PLAIN, {"heading.outline": "0.6 mm"}),
    "arc": apply(PLAIN, {"heading.arc": 40}),
    "sections": apply(PLAIN, {"layout": "two-columns"}),
}
LETTERS = st.text(st.sampled_from("Aglÿ Wi-’.لیאב"), max_size=30)


@lru_cache(maxsize=8)
def faces(name: str) -> Faces:
    design = pad(DESIGNS[name]).design
    return Faces(design, (heading_of(name),))


def heading_of(name: str) -> str:
    from padspec.resolve.blocks.heading import Heading
    from padspec.resolve.design import blocks

    return next(b.id for b in blocks(pad(DESIGNS[name]).design) if isinstance(b, Heading) and b.text)


def operators(scene: Scene) -> dict[str, list[str]]:
    """What each layer draws, lettering as a set: other words may stand before or behind those that stay."""
    return {layer.name: [*layer_operators(layer)] for layer in scene.layers}


@pytest.mark.parametrize("name", DESIGNS)
@settings(max_examples=12, deadline=None)
@given(st.lists(LETTERS, min_size=1, max_size=3))
def test_words_in_a_template_lie_as_in_a_face_composed_whole(name, texts):
    made = faces(name)
    for text in texts:
        words = {heading_of(name): " ".join(text.split())}
        reset, whole = made.reset(words), compose(made.design(words)).scene
        under, over = reset.template.under, reset.template.over
        nodes = tuple(node for lettering in reset.lettering for node in lettering.nodes)
        mine = {layer.name: layer.nodes for layer in (*under.layers, *over.layers)}
        mine["lettering"] = (*mine.get("lettering", ()), *nodes)
        theirs = {layer.name: layer.nodes for layer in whole.layers}
        for layer in LAYERS:
            drawn = [[*layer_operators(Layer(layer, (node,)))] for node in mine.get(layer, ())]
            composed = [[*layer_operators(Layer(layer, (node,)))] for node in theirs.get(layer, ())]
            assert sorted(drawn) == sorted(composed)


def test_texts_that_need_the_same_height_share_a_template():
    made, heading = faces("one heading"), heading_of("one heading")
    templates = {id(made.reset({heading: text}).template) for text in ("Ada", "Bo", "Cleo", "Ada")}
    assert len(templates) == 1
    assert id(made.reset({heading: "A heading that has to shrink and break"}).template) not in templates


def test_a_picture_is_part_of_the_template():
    text = apply(PLAIN, {"art.file": "moth.png"})
    design = pad(text, files={"moth.png": picture(600, 500)}).design
    reset = Faces(design, ("heading",)).reset({"heading": "Ada"})
    assert "art" in [layer.name for layer in reset.template.under.layers]
