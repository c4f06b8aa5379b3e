/** Calls back after a while; what it gives back calls it off. */
export type Wait = (ms: number, then: () => void) => () => void;

/** The browser's timers. */
export const waitInBrowser: Wait = (ms, then) => {
  const timer = setTimeout(then, ms);
  return () => clearTimeout(timer);
};
