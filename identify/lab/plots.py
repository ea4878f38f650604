"""Plots as inline SVG: no script, colours from the page, everything in them said in words too."""

from collections.abc import Sequence
from html import escape

WIDTH, HEIGHT = 560, 240
LEFT, TOP, RIGHT, BOTTOM = 48, 12, 12, 40


def _svg(title: str, said: str, body: list[str], height: int = HEIGHT) -> str:
    """A picture with its title and its text equivalent."""
    return (
        f'<svg viewBox="0 0 {WIDTH} {height}" role="img" aria-label="{escape(f"{title}. {said}")}">'
        f"<title>{escape(title)}</title><desc>{escape(said)}</desc>{''.join(body)}</svg>"
    )


def _text(x: float, y: float, text: str, anchor: str = "middle") -> str:
    return f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}">{escape(text)}</text>'


def _line(x1: float, y1: float, x2: float, y2: float, kind: str = "grid") -> str:
    return f'<line class="{kind}" x1="{x1:.1f}" y1="{y1:.1f}" x2="{x2:.1f}" y2="{y2:.1f}"/>'


def _frame(across: str) -> list[str]:
    """Lines and figures for shares from 0 to 100 %, and what runs along the bottom."""
    out = []
    for share in (0.0, 0.25, 0.5, 0.75, 1.0):
        y = _up(share)
        out.append(_line(LEFT, y, WIDTH - RIGHT, y))
        out.append(_text(LEFT - 6, y + 4, f"{share:.0%}", "end"))
    return [*out, _text((LEFT + WIDTH - RIGHT) / 2, HEIGHT - 4, across)]


def _up(share: float) -> float:
    """How far down a share stands."""
    return TOP + (1 - share) * (HEIGHT - TOP - BOTTOM)


def steps(title: str, across: str, series: Sequence[tuple[str, Sequence[int]]]) -> str:
    """For each series, the share of sessions that had stopped after so many questions.

    series: (name, questions of each session); the first is drawn in full, the second in dashes.
    """
    most = max(max(counts) for _, counts in series)
    room = (WIDTH - RIGHT - LEFT) / max(most, 1)
    body = _frame(across)
    said = []
    for count in range(0, most + 1, max(1, most // 12)):
        body.append(_text(LEFT + count * room, HEIGHT - BOTTOM + 16, str(count)))
    for place, (name, counts) in enumerate(series):
        shares = [sum(c <= n for c in counts) / len(counts) for n in range(most + 1)]
        path = f"M{LEFT} {_up(shares[0]):.1f}"
        for n in range(1, most + 1):
            path += f"H{LEFT + n * room:.1f}V{_up(shares[n]):.1f}"
        body.append(f'<path class="series{place}" d="{path}"/>')
        key = TOP + 100 + 20 * place
        body.append(_line(WIDTH - 190, key, WIDTH - 160, key, f"series{place}"))
        body.append(_text(WIDTH - 152, key + 4, name, "start"))
        half = next(n for n, share in enumerate(shares) if share >= 0.5)
        nearly = next(n for n, share in enumerate(shares) if share >= 0.95)
        said.append(f"{name}: half are done by {half} questions, 95 % by {nearly}.")
    return _svg(title, " ".join(said), body)


def reliability(title: str, table: Sequence[Sequence[float]]) -> str:
    """Stated chances against the share that came true; a perfect scale follows the diagonal."""
    wide = WIDTH - RIGHT - LEFT
    body = _frame("stated chance")
    body.append(_line(LEFT, _up(0), LEFT + wide, _up(1), "ideal"))
    for share in (0.0, 0.25, 0.5, 0.75, 1.0):
        body.append(_text(LEFT + share * wide, HEIGHT - BOTTOM + 16, f"{share:.0%}"))
    said = []
    for _, _, count, stated, true in table:
        x, y = LEFT + stated * wide, _up(true)
        spread = (true * (1 - true) / count) ** 0.5
        body.append(_line(x, _up(min(1, true + spread)), x, _up(max(0, true - spread)), "spread"))
        body.append(f'<circle class="dot" cx="{x:.1f}" cy="{y:.1f}" r="4"/>')
        said.append(f"stated {stated:.0%}, true {true:.0%}")
    return _svg(title, "; ".join(said) + ".", body)


def bars(title: str, values: Sequence[tuple[str, float]], unit: str) -> str:
    """One bar for each value, in order."""
    most = max(value for _, value in values) or 1.0
    start, high = 200, 20
    body = []
    for place, (name, value) in enumerate(values):
        y = TOP + place * high
        wide = (WIDTH - RIGHT - start - 48) * value / most
        body.append(_text(start - 8, y + 13, name, "end"))
        body.append(
            f'<rect class="bar" x="{start}" y="{y + 2}" width="{wide:.1f}" height="{high - 5}"/>'
        )
        body.append(_text(start + wide + 6, y + 13, f"{value:.2f}", "start"))
    said = "; ".join(f"{name} {value:.2f} {unit}" for name, value in values)
    return _svg(title, said + ".", body, TOP * 2 + high * len(values))
