/// <reference lib="webworker" />
/** Beats evenly; a worker's timer is not slowed down when the page is hidden. The first message is the interval in ms. */
self.onmessage = (message: MessageEvent<number>) => {
  setInterval(() => self.postMessage(null), message.data);
};
