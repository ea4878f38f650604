"""python -m tests.soak --images N --seed S: more power cuts than the tests have time for."""

import argparse
import itertools
import sys

from tests.keeping.power import Backups, History, Lost, Upgrade, cut_one

PER_HISTORY = 100
KINDS: dict[str, type[History]] = {kind.KIND: kind for kind in (History, Upgrade, Backups)}
TURNS = (*[History] * 6, Upgrade, Backups)


def main() -> int:
    """Looks at so many images; 1, and how to replay it, if one of them is not whole."""
    args = argparse.ArgumentParser(prog="tests.soak", description=__doc__)
    args.add_argument("--images", type=int, default=100_000, help="how many to look at (100000)")
    args.add_argument("--seed", default="1", help="start of the chance (1)")
    args.add_argument("--history", default="", help="only this one, as a failure names it")
    args.add_argument("--kind", choices=KINDS, default="work", help="with --history: of what kind")
    told = args.parse_args()
    try:
        if told.history:
            print(cut_one(told.history, told.images, history=KINDS[told.kind]), "images, all whole")
            return 0
        count = 0
        for number in itertools.count():
            if count >= told.images:
                return 0
            kind = TURNS[number % len(TURNS)]
            count += cut_one(f"{told.seed}/{number}", PER_HISTORY, history=kind)
            print(f"\r{count} of {told.images} images, all whole", end="", flush=True)
    except Lost as lost:
        print(f"\n{lost}", file=sys.stderr)
        return 1
    finally:
        print()


if __name__ == "__main__":
    sys.exit(main())
