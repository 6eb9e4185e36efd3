"""Whose leaving the terminal hears of."""

from __future__ import annotations

import asyncio
import gc

import pytest
from tornado.iostream import StreamClosedError
from tornado.websocket import WebSocketClosedError

from manipulatives.serve.disconnects import ignore_disconnects
from support.loops import run


def logged(fault, caplog):
    """What the log says of a task that failed and that nobody waited for."""

    async def fail():
        raise fault

    async def leave():
        asyncio.get_running_loop().set_exception_handler(ignore_disconnects)
        task = asyncio.ensure_future(fail())
        await asyncio.sleep(0)
        assert task.done()
        del task
        gc.collect()

    caplog.clear()
    run(leave())
    return caplog.text


@pytest.mark.parametrize("fault", [WebSocketClosedError, StreamClosedError])
def test_a_browser_that_leaves_while_it_is_written_to_is_no_fault(fault, caplog):
    assert logged(fault(), caplog) == ""


def test_any_other_fault_is_logged_with_its_reason(caplog):
    assert "the ferry sank" in logged(ValueError("the ferry sank"), caplog)


def test_a_fault_without_an_exception_is_logged(caplog):
    loop = asyncio.new_event_loop()
    ignore_disconnects(loop, {"message": "the pier is closed"})
    loop.close()
    assert "the pier is closed" in caplog.text
