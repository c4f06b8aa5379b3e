import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Storey } from '#model/building.ts';
import { reshapeHouse } from '../../edits/house.ts';
import { cornerAfterSide } from '../../house/house-parts.ts';
import { cornerMoved } from '../../house/reshape.ts';
import type { RoomSide } from '../../house/room-sides.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { formCss } from '../as-found/form-styles.ts';
import { controlsCss } from '../shared-styles.ts';
import { houseFormCss } from './house-forms.ts';
import { choiceOf, lengthField } from './own-fields.ts';
import { sideName } from './side-name.ts';

/** Moves a corner of a room by so much across and up the plan: what the hand does on the plan, in figures. */
export class CornerForm extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    storey: { attribute: false },
    sides: { attribute: false },
    at: { state: true },
    acrossMm: { state: true },
    upMm: { state: true },
    why: { state: true },
  };
  static override styles = [controlsCss, formCss, houseFormCss];
  declare view: JobView;
  declare storey: Storey;
  /** Of the room, in order round it. */
  declare sides: readonly RoomSide[];
  declare private at: number;
  declare private acrossMm: number;
  declare private upMm: number;
  declare private why: string;

  constructor() {
    super();
    this.at = 0;
    this.acrossMm = 0;
    this.upMm = 0;
    this.why = '';
  }

  override render(): TemplateResult {
    const { sides } = this;
    const corners = sides.map((_, at) => {
      const next = sideName(sides, (at + 1) % sides.length).toLowerCase();
      return { value: String(at), label: `${sideName(sides, at)} and ${next}` };
    });
    return html`<div class="fields">
      ${this.why === '' ? nothing : html`<p class="why" role="alert">${this.why}</p>`}
      ${choiceOf({
        label: 'Where these meet',
        options: corners,
        value: String(this.at),
        took: (at) => {
          this.at = Number(at);
        },
      })}
      <div class="pair">
        ${lengthField({
          label: 'To the right on the plan',
          help: 'Less than nought: to the left',
          value: this.acrossMm,
          min: -50_000,
          took: (mm) => {
            this.acrossMm = mm ?? 0;
          },
        })}
        ${lengthField({
          label: 'Up the plan',
          help: 'Less than nought: down',
          value: this.upMm,
          min: -50_000,
          took: (mm) => {
            this.upMm = mm ?? 0;
          },
        })}
      </div>
      <div class="buttons"><button @click=${() => this.#move()}>Move the corner</button></div>
    </div>`;
  }

  #move(): void {
    const corner = cornerAfterSide(this.storey, this.sides, this.at);
    if (corner === null) {
      this.why = 'That corner is not there any more.';
      return;
    }
    const asked = cornerMoved(corner, [this.acrossMm, this.upMm]);
    const made = reshapeHouse(this.view.job, this.storey.id, asked);
    this.why = made.ok ? '' : made.why;
    if (!made.ok) return;
    this.acrossMm = 0;
    this.upMm = 0;
    send(this, 'job-edit', made.edit);
  }
}
customElements.define('corner-form', CornerForm);
declare global {
  interface HTMLElementTagNameMap {
    'corner-form': CornerForm;
  }
}
