"""Checks what a range says of its portraits: layers, and how states look in them."""

from identify.core.looks import LAYERS, look_fits
from identify.reference.check_names import Checker
from identify.reference.mistakes import instead
from identify.reference.records import Feature
from identify.reference.toml_files import FEATURES


def check_looks(check: Checker) -> None:
    """Layers and looks in features.toml."""
    for feature in check.pack.features:
        _check_layer(check, feature)
        for state in feature.states:
            if state.look and not feature.layer:
                text = f'"{feature.id}" has no layer, so its states have no look. Give it one.'
                check.wrong(FEATURES, state, "states", text)
            elif (
                state.look and feature.layer in LAYERS and not look_fits(feature.layer, state.look)
            ):
                text = (
                    f'"{state.look}" is no look of "{feature.layer}": {_right(feature, state.look)}'
                )
                check.wrong(FEATURES, state, "states", text)


def _check_layer(check: Checker, feature: Feature) -> None:
    if feature.layer and feature.layer not in LAYERS:
        text = f'"{feature.layer}" is no layer of a portrait: {instead(feature.layer, LAYERS)}'
        check.wrong(FEATURES, feature, "layer", text)
    if feature.layer and feature.unseen:
        text = "a portrait either shows it (layer) or does not (unseen). Leave one out."
        check.wrong(FEATURES, feature, "unseen", text)


def _right(feature: Feature, look: str) -> str:
    """What would be right, in a sentence."""
    known = [each for each in LAYERS[feature.layer] if each != "letters"]
    near = instead(look, known)
    if "letters" in LAYERS[feature.layer]:
        return f'{near} Or a text of up to 24 letters: "letters: Northfell".'
    return f'{near} Or a colour such as "#2f6b3c".' if "maroon" in known else near
