import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Room, Storey } from '#model/building.ts';
import { traceRoom } from '../../edits/house.ts';
import { hasShell } from '../../house/free-walls.ts';
import { nextRoomName, roomUseWords } from '../../house/room-uses.ts';
import type { Vector } from '../../house/vector.ts';
import { usualInner, usualOuter } from '../../house/wall-kinds.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { formCss } from '../as-found/form-styles.ts';
import { choicesOf } from '../as-found/found-words.ts';
import { controlsCss } from '../shared-styles.ts';
import { houseFormCss } from './house-forms.ts';
import { choiceOf, nameField } from './own-fields.ts';
import { SpotsTapping } from './spots-tapping.ts';

const uses = choicesOf(roomUseWords);

/** Draws a room by tapping its inner corners over the picture that is traced. */
export class TraceRoom extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    storey: { attribute: false },
    use: { state: true },
    name: { state: true },
    why: { state: true },
  };
  static override styles = [controlsCss, formCss, houseFormCss];
  declare view: JobView;
  declare storey: Storey;
  declare private use: Room['use'];
  /** Null: as its use says. */
  declare private name: string | null;
  declare private why: string;
  readonly #tapping = new SpotsTapping(this);

  constructor() {
    super();
    this.use = 'living';
    this.name = null;
    this.why = '';
  }

  get #name(): string {
    return this.name ?? nextRoomName(this.view.job.storeys, this.use);
  }

  override render(): TemplateResult {
    const { isOn } = this.#tapping;
    return html`<div class="fields">
      <div class="pair">
        ${choiceOf({
          label: 'What room',
          options: uses,
          value: this.use,
          took: (use) => {
            this.use = use;
          },
        })}
        ${nameField('Its name', this.#name, (text) => {
          this.name = text.trim() === '' ? null : text.trim();
        })}
      </div>
      ${this.why === '' ? nothing : html`<p class="why" role="alert">${this.why}</p>`}
      <div class="buttons">
        <button aria-pressed=${isOn} @click=${() => (isOn ? this.#tapping.letGo() : this.#begin())}>
          ${isOn ? 'Tap its corners; press here to give up' : `Trace ${this.#name}: tap its inner corners`}
        </button>
      </div>
    </div>`;
  }

  #begin(): void {
    this.why = '';
    this.#tapping.begin({
      hint: (count) =>
        count < 3
          ? `Tap the inner corners of ${this.#name} in turn${count === 0 ? '' : `: ${count} so far`}.`
          : `${count} corners: tap the next, or draw it.`,
      closes: true,
      enough: null,
      done: { least: 3, words: 'Draw it' },
      took: (spots) => this.#trace(spots),
    });
  }

  #trace(corners: readonly Vector[]): void {
    const made = traceRoom(this.view.job, this.storey.id, {
      name: this.#name,
      use: this.use,
      corners,
      walls: hasShell(this.storey) ? usualInner : usualOuter,
    });
    this.why = made.ok ? '' : made.why;
    if (!made.ok) return;
    send(this, 'job-edit', made.edit);
    this.name = null;
  }
}
customElements.define('trace-room', TraceRoom);
declare global {
  interface HTMLElementTagNameMap {
    'trace-room': TraceRoom;
  }
}
