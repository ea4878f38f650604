"""Checks what a range says of its portraits: layers, and how states look in them."""

from identify.core.looks import LAYERS, look_fits
from identify.reference.entries import Entry, Feature
from identify.reference.mistakes import Mistake, instead
from identify.reference.toml_files import FEATURES


def check_looks(features: list[Feature]) -> list[Mistake]:
    """What is wrong with layers and looks in features.toml."""
    mistakes: list[Mistake] = []
    for feature in features:
        _check_layer(mistakes, feature)
        for state in feature.states:
            if state.look and not feature.layer:
                text = f'"{feature.id}" has no layer, so its states have no look. Give it one.'
                mistakes.append(Mistake(FEATURES, state.line, "states", text))
            elif (
                state.look and feature.layer in LAYERS and not look_fits(feature.layer, state.look)
            ):
                right = _right(feature, state.look)
                text = f'"{state.look}" is not a look of "{feature.layer}": {right}'
                mistakes.append(Mistake(FEATURES, state.line, "states", text))
    return mistakes


def _wrong(mistakes: list[Mistake], entry: Entry, column: str, text: str) -> None:
    mistakes.append(Mistake(FEATURES, entry.lines.get(column, entry.line), column, text))


def _check_layer(mistakes: list[Mistake], feature: Feature) -> None:
    if feature.layer and feature.layer not in LAYERS:
        text = f'"{feature.layer}" is not a layer of a portrait: {instead(feature.layer, LAYERS)}'
        _wrong(mistakes, feature, "layer", text)
    if feature.layer and feature.unseen:
        text = "a portrait either shows it (layer) or does not (unseen). Leave one out."
        _wrong(mistakes, feature, "unseen", text)


def _right(feature: Feature, look: str) -> str:
    """What would be right, in a sentence."""
    known = [each for each in LAYERS[feature.layer] if each != "letters"]
    near = instead(look, known)
    if "letters" in LAYERS[feature.layer]:
        return f'{near} Or a text of up to 24 letters: "letters: Northfell".'
    return f'{near} Or a colour such as "#2f6b3c".' if "maroon" in known else near
