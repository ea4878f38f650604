"""Pack folder -> compiled pack."""

from pathlib import Path

from identify.reference import compiled as to
from identify.reference.check import checked_pack
from identify.reference.check_range import OF_THE_RANGE
from identify.reference.compiled import CompiledPack, pack_bytes, pack_schema, version_of
from identify.reference.completeness import COMPLETE
from identify.reference.mistakes import PackError
from identify.reference.records import Feature, MarkChange, MergedMark, Pack
from identify.reference.relatives import learn_relatives
from identify.reference.rows import Table, rows_of
from identify.reference.splitting import Splitter, kinds_of, may_be_none, said_of
from identify.reference.windows import NONE

__all__ = ["PackError", "compile_pack", "pack_bytes", "pack_schema"]

KIND = "kind"


def _kind_feature(pack: Pack) -> to.Feature:
    """What sort of piece it is: the feature that every pack has, first of all."""
    return to.Feature(
        id=KIND,
        name="Kind",
        title="What is it?",
        question="What sort of piece is it?",
        where="Look at the piece as a whole.",
        part=-1,
        seconds=2.0,
        needs="nothing",
        states=[
            to.State(id=k.id, name=k.name, caption=k.caption, drawing=f"{KIND}-{k.id}")
            for k in pack.kinds
        ],
        mistaken=[],
        kinds=list(range(len(pack.kinds))),
        none=-1,
    )


def _feature(feature: Feature, pack: Pack) -> to.Feature:
    states = [
        to.State(
            id=state.id,
            name=state.name,
            caption=state.caption,
            drawing=f"{feature.id}-{state.id}",
            look=state.look,
        )
        for state in feature.states
    ]
    ids = [state.id for state in states]
    added = NONE not in ids and may_be_none(feature, pack.kinds)
    if added:
        states.append(to.State(id=NONE, name="There is none", drawing=NONE))
        ids.append(NONE)
    parts = [part.id for part in pack.parts]
    having = kinds_of(feature, pack.kinds)
    return to.Feature(
        id=feature.id,
        name=feature.name,
        title=feature.title,
        question=feature.question,
        where=feature.where,
        part=parts.index(feature.part) if feature.part else -1,
        seconds=feature.seconds,
        needs=feature.needs,
        states=states,
        mistaken=[(ids.index(a), ids.index(b)) for a, b in feature.mistaken],
        kinds=[n for n, kind in enumerate(pack.kinds) if kind.id in having],
        none=ids.index(NONE) if added else -1,
        layer=feature.layer,
        unseen=feature.unseen,
        seen=feature.seen if isinstance(feature, MergedMark) else 0.0,
    )


class _Compiler:
    """Turns ids into indexes."""

    def __init__(self, pack: Pack, first: int, last: int) -> None:
        self.pack = pack
        self.first = first
        self.last = last
        self.splitter = Splitter(pack, first, last)
        self.features = [_kind_feature(pack), *(_feature(each, pack) for each in pack.features)]
        self.kinds = {kind.id: n for n, kind in enumerate(pack.kinds)}
        self.items = {item.number: n for n, item in enumerate(pack.items)}
        self.sources = {source.id: n for n, source in enumerate(pack.sources)}

    def said(self, pairs: list[tuple[str, str]]) -> list[tuple[int, str]]:
        return [(self.sources[source], years) for source, years in pairs]

    def item_list(self) -> list[to.Item]:
        return [
            to.Item(
                id=f"i{n}",
                number=item.number,
                name=item.name,
                kind=self.kinds[item.kind],
                years=item.years or self.pack.range.years,
                said=self.said(said_of(item)),
                formation=item.formation,
                contains=[self.items[number] for number in item.contains],
                carried=item.carried,
                note=item.note,
            )
            for n, item in enumerate(self.pack.items)
        ]

    def variant_list(self) -> list[to.Variant]:
        variants = []
        for variant in self.pack.variants:
            years, said = self.splitter.said(variant)
            variants.append(
                to.Variant(
                    id=variant.id,
                    name=variant.name,
                    item=self.items[variant.item],
                    years=years,
                    said=self.said(said),
                    note=variant.note,
                )
            )
        return variants

    def change_list(self) -> list[to.Change]:
        places = {feature.id: n for n, feature in enumerate(self.features)}
        declared = {feature.id: feature for feature in self.pack.features}
        changes = []
        for change in self.pack.changes:
            place = places[change.feature]
            states = [state.id for state in self.features[place].states]
            kinds = change.kinds or kinds_of(declared[change.feature], self.pack.kinds)
            main = [(change.source, change.came)] if change.source else []
            mark = change if isinstance(change, MarkChange) else None
            end = [(mark.to_source, mark.ended)] if mark and mark.to_source else []
            changes.append(
                to.Change(
                    feature=place,
                    state=states.index(change.state),
                    kinds=[self.kinds[kind] for kind in kinds],
                    items=[self.items[number] for number in change.items],
                    came=change.came,
                    ended=change.ended,
                    said=self.said([*main, *change.other_from]),
                    note=change.note,
                    said_to=self.said(end),
                    hard=[*mark.hard] if mark else [],
                )
            )
        return changes

    def range(self) -> to.Range:
        about = self.pack.range
        return to.Range(
            name=about.name,
            maker=about.maker,
            gauge_mm=about.gauge_mm,
            gauge=f"{about.gauge_mm:g} mm",
            material=about.material,
            scale=about.scale,
            country=about.country,
            first=self.first,
            last=self.last,
            about=about.about,
            invented=about.invented,
        )

    def drawn(self) -> list[str]:
        """The names of the drawings that are shown."""
        states = [state.drawing for feature in self.features for state in feature.states]
        return [*states, *OF_THE_RANGE]

    def table(self) -> Table:
        return rows_of(self.pack, self.splitter, self.features)

    def everything(self) -> CompiledPack:
        pack = self.pack
        table = self.table()
        every_kind = [kind.id for kind in pack.kinds]
        result = CompiledPack(
            format=1,
            id=pack.id,
            version="",
            range=self.range(),
            kinds=[
                to.Kind(
                    id=k.id,
                    name=k.name,
                    plural=k.plural,
                    caption=k.caption,
                    open=COMPLETE.get(k.complete),
                )
                for k in pack.kinds
            ],
            parts=[
                to.Part(id=p.id, name=p.name, swap=p.swap, replaced=p.replaced) for p in pack.parts
            ],
            cautions=[
                to.Caution(kinds=[self.kinds[k] for k in c.kinds or every_kind], text=c.text)
                for c in pack.cautions
            ],
            sources=[
                to.Source(id=s.id, what=s.what, year=s.year, trust=s.trust) for s in pack.sources
            ],
            features=self.features,
            items=self.item_list(),
            variants=self.variant_list(),
            changes=self.change_list(),
            rows=table.rows,
            spans=table.spans,
            cells=table.cells,
            backgrounds=table.backgrounds,
            drawings={name: pack.drawings[name] for name in self.drawn() if name in pack.drawings},
            moves=[to.Move(what=m.what, old=m.old, new=m.new, note=m.note) for m in pack.moves],
        )
        learn_relatives(result)
        result.version = version_of(result)
        return result


def compile_pack(folder: Path) -> CompiledPack:
    """The compiled pack of a folder. Raises PackError with every mistake in it."""
    pack, mistakes, life = checked_pack(folder)
    if mistakes or life is None:
        raise PackError(mistakes)
    return _Compiler(pack, *life).everything()
