/** What a tap is for by itself; what lies between is nothing. */
const actedOn =
  'a, button, input, select, textarea, label, summary, dialog, [role=button], chosen-card, plan-view, proof-view';

/** Whether a tap is on something that has its own use for it, inside whatever shadow roots. */
export const isOnSomething = (event: Event): boolean =>
  event.composedPath().some((one) => one instanceof Element && one.matches(actedOn));
