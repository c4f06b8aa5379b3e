/** Calls back after a while; what it gives back calls it off. */
export type Wait = (ms: number, then: () => void) => () => void;

/** The browser's timers. */
export const waitInBrowser: Wait = (ms, then) => {
  const timer = setTimeout(then, ms);
  return () => clearTimeout(timer);
};

/** How long the server may think before a person goes on with what the device has, ms. */
const PATIENCE_MS = 4000;

/** What comes of a request, or, where there is no answer for longer than a person would wait, what `late` gives; the request goes on. */
export async function patiently<T>(request: Promise<T>, wait: Wait, late: () => T): Promise<T> {
  let callOff = (): void => {};
  const waited = new Promise<T>((resolve) => {
    callOff = wait(PATIENCE_MS, () => resolve(late()));
  });
  return Promise.race([request, waited]).finally(() => callOff());
}
