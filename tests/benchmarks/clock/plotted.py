"""A clock as one would plot it; the cell before it chooses ipympl."""

from __future__ import annotations

import math

import matplotlib.pyplot as plt

figure = plt.figure(figsize=(5, 5))
for part in ("header", "toolbar", "footer"):
    setattr(figure.canvas, f"{part}_visible", False)
axes = figure.add_axes((0, 0, 1, 1), xlim=(-1.05, 1.05), ylim=(-1.05, 1.05))
axes.set_axis_off()
axes.add_patch(plt.Circle((0, 0), 0.98, fill=False, lw=2))
for mark in range(60):
    x, y = math.sin(mark * math.pi / 30), math.cos(mark * math.pi / 30)
    inner = 0.92 if mark % 5 else 0.88
    axes.plot([0.96 * x, inner * x], [0.96 * y, inner * y], color="black", lw=1)
    if mark % 5 == 0:
        axes.text(0.78 * x, 0.78 * y, mark // 5 or 12, ha="center", va="center")
(hour_hand,) = axes.plot([], [], color="#0000ff", lw=6)
(minute_hand,) = axes.plot([], [], color="#ff0000", lw=6)
state = {"reading": 240}


def paint():
    reading = state["reading"]
    for hand, angle, length in (
        (hour_hand, reading * math.pi / 360, 0.5),
        (minute_hand, reading % 60 * math.pi / 30, 0.7),
    ):
        hand.set_data([0, length * math.sin(angle)], [0, length * math.cos(angle)])
    figure.canvas.draw_idle()


def drag(event):
    if event.button and event.xdata is not None:
        minute = round(math.atan2(event.xdata, event.ydata) * 30 / math.pi) % 60
        step = (minute - state["reading"] % 60 + 30) % 60 - 30
        state["reading"] = (state["reading"] + step) % 720
        paint()


figure.canvas.mpl_connect("motion_notify_event", drag)
paint()
plt.show()
