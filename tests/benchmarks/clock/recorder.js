// Notes when the pointer came to each minute, and when a frame was painted that shows it.
// A frame counts as painted when the browser's main thread has done its part of it: at the first
// task after the animation frame.
globalThis.recorder = {
  begin(centre, shown) {
    this.moves = [];
    this.frames = [];
    this.going = true;
    addEventListener("pointermove", (event) => {
      const angle = Math.atan2(event.clientX - centre.x, centre.y - event.clientY);
      const minute = Math.round((angle * 30) / Math.PI + 60) % 60;
      this.moves.push({ at: event.timeStamp, heard: performance.now(), minute });
    }, { capture: true });
    let last = shown();
    const look = () => {
      const minute = shown();
      if (minute !== null && minute !== last) {
        last = minute;
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => this.frames.push({ at: performance.now(), minute });
        port2.postMessage(null);
      }
      if (this.going) requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  },
  end() {
    this.going = false;
    return { moves: this.moves, frames: this.frames };
  },
};
