import { LitElement } from 'lit';

/**
 * Enter in a line of a form does what the form's button does, with what was just typed there; a line that cannot be read keeps
 * the focus.
 */
export async function onEnter(event: KeyboardEvent, then: () => void): Promise<void> {
  const [input] = event.composedPath();
  if (event.key !== 'Enter' || event.isComposing || !(input instanceof HTMLInputElement)) return;
  event.preventDefault();
  // Leaving the line tells its field what was typed; the field then says whether that can be.
  input.blur();
  // The line may be rows deep: its own field, not what of those stands at the listener.
  const root = input.getRootNode();
  const field = root instanceof ShadowRoot ? root.host : null;
  if (field instanceof LitElement) await field.updateComplete;
  if (input.getAttribute('aria-invalid') === 'true') input.focus();
  else then();
}
