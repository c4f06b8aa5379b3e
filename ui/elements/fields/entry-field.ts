import type { PropertyDeclarations, PropertyValues } from 'lit';
import { FieldElement } from './field-element.ts';
import { holdUnread, releaseUnread } from './unread-entries.ts';

/**
 * A field in which something is typed that may not be readable: it is kept as typed, with the reason, and nothing is sent until it is
 * put right or another value comes from outside.
 *
 * @fires entry-unread - detail: { unread }; an entry cannot be read, or no longer is one that cannot
 */
export abstract class EntryField extends FieldElement {
  static override properties: PropertyDeclarations = { typed: { state: true } };
  /** A faulty entry as typed, until it is mended; else null. */
  declare protected typed: string | null;

  constructor() {
    super();
    this.typed = null;
  }

  /** Another value came from the job: what was typed and could not be is of the past. */
  override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    if (!changed.has('value') || !this.hasUpdated) return;
    this.hold(null, '');
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.typed !== null) this.#tellUnread(this.typed);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    releaseUnread(this);
  }

  /** True while it holds an entry that cannot be read. */
  get isUnread(): boolean {
    return this.typed !== null;
  }

  /** Keeps a faulty entry with its reason, or (null) has none any more. */
  protected hold(typed: string | null, error: string): void {
    const changed = (typed === null) !== (this.typed === null);
    this.typed = typed;
    this.error = error;
    if (typed !== null) this.#tellUnread(typed);
    else releaseUnread(this);
    if (changed)
      this.dispatchEvent(
        new CustomEvent('entry-unread', {
          detail: { unread: typed !== null },
          bubbles: true,
          composed: true,
        }),
      );
  }

  #tellUnread(typed: string): void {
    holdUnread({ field: this, label: this.label, typed });
  }
}
declare global {
  interface HTMLElementEventMap {
    'entry-unread': CustomEvent<{ readonly unread: boolean }>;
  }
}
