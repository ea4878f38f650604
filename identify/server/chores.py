"""What the server does by itself while it runs: the backup of each night, its own certificate."""

import asyncio
from collections.abc import AsyncIterator, Awaitable, Callable, Mapping
from contextlib import AbstractAsyncContextManager, asynccontextmanager

from starlette.applications import Starlette

from identify.errors import UserError
from identify.keeping import backup as backups
from identify.keeping.away import Away, take_away
from identify.server.access import log
from identify.server.context import Context
from identify.server.tls import Tls

CHECKED = 600.0  # seconds from one look at whether something is due to the next

Chore = Callable[[], Awaitable[str]]  # what was done, or ""


def chores(context: Context, tls: Tls | None, away: Away) -> Mapping[str, Chore]:
    """What is to be done, by what it is called in the log."""

    async def backup() -> str:
        now = context.now().astimezone()
        if not await context.in_thread(backups.nightly_due, context.backups, now):
            return ""
        made = await context.in_thread(backups.nightly, context.store, context.backups, now)
        name = str(made["name"])
        log.info("backup: %s", name)
        if made["to_come"]:
            log.warning(
                "backups are dated in the future (%s): this machine's clock was wrong; they stay "
                "until you remove them",
                ", ".join(made["to_come"][:3]),
            )
        done = await context.in_thread(take_away, away, context.store, context.backups, name)
        return f"{name} {done}" if done else ""

    async def cut_off() -> str:
        folders, now = (context.backups, context.store.folder), context.now()
        cleared = [
            await context.in_thread(backups.clear_cut_off, folder, now) for folder in folders
        ]
        return f"{sum(cleared)} folders left by runs that were cut off" if any(cleared) else ""

    async def certificate() -> str:
        return await context.in_thread(tls.refresh, context.now()) if tls else ""

    return {"cleared": cut_off, "backup": backup, "certificate": certificate}


def lifespan(
    listed: Mapping[str, Chore],
) -> Callable[[Starlette], AbstractAsyncContextManager[None]]:
    """Has the chores done as long as the app runs, each by itself; after trouble, tried again."""

    @asynccontextmanager
    async def running(_: Starlette) -> AsyncIterator[None]:
        tasks = [asyncio.create_task(_again_and_again(*pair)) for pair in listed.items()]
        yield
        for task in tasks:
            task.cancel()
        await asyncio.gather(*tasks, return_exceptions=True)

    return running


async def _again_and_again(name: str, chore: Chore) -> None:
    while True:
        try:
            done = await chore()
            if done:
                log.info("%s: %s", name, done)
        except Exception as error:
            # whatever it is, the server goes on, and so do the nights to come
            log.error("%s failed: %s", name, error if isinstance(error, UserError) else type(error))
        await asyncio.sleep(CHECKED)
