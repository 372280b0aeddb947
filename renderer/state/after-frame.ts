/** Does something when the next frame has been painted; a page that is hidden paints none, so not later than a while. */
export function afterFrame(act: () => void): void {
  let done = false;
  const once = () => {
    if (done) return;
    done = true;
    act();
  };
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = () => {
    port1.close();
    once();
  };
  requestAnimationFrame(() => port2.postMessage(null));
  setTimeout(once, HIDDEN_MS);
}

const HIDDEN_MS = 250;
