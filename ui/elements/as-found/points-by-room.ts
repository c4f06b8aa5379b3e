import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { PointKind } from '#model/installation.ts';
import { addFoundPoints } from '../../edits/points.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { newId } from '../../new-id.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import { onEnter } from '../fields/on-enter.ts';
import '../fields/text-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { formCss } from './form-styles.ts';
import { pointKinds } from './found-words.ts';

/** Lists points room by room before any plan is drawn: a room, what stands there, how many. */
export class PointsByRoom extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    room: { state: true },
    kind: { state: true },
    count: { state: true },
    wantsRoom: { state: true },
    said: { state: true },
  };
  static override styles = [
    controlsCss,
    formCss,
    css`
      :host {
        display: block;
      }
    `,
  ];
  declare view: JobView;
  declare private room: string;
  declare private kind: PointKind;
  declare private count: number;
  /** True after points were asked for without a room. */
  declare private wantsRoom: boolean;
  /** What was added last, in words. */
  declare private said: string;

  constructor() {
    super();
    this.room = '';
    this.kind = 'socket-twin';
    this.count = 1;
    this.wantsRoom = false;
    this.said = '';
  }

  override render(): TemplateResult {
    return html`<div class="fields" @keydown=${(event: KeyboardEvent) => void onEnter(event, () => this.#add())}>
      <p class="hint">
        The points are labelled by their room and need no place: cables between points without a place are priced at
        typical lengths.
      </p>
      <text-field
        label="Room"
        .help=${this.wantsRoom ? 'Name the room first: the points are labelled by it.' : ''}
        .value=${this.room}
        @field-change=${(event: CustomEvent<FieldChange<string>>) => {
          event.stopPropagation();
          this.room = event.detail.value.trim();
        }}
      ></text-field>
      <div class="pair">
        <choice-field
          label="What stands there"
          .empty=${null}
          .options=${pointKinds}
          .value=${this.kind}
          @field-change=${(event: CustomEvent<FieldChange<PointKind>>) => {
            event.stopPropagation();
            this.kind = event.detail.value;
          }}
        ></choice-field>
        <number-field
          label="How many"
          .min=${1}
          .max=${30}
          .whole=${true}
          .value=${this.count}
          @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
            event.stopPropagation();
            this.count = event.detail.value ?? 1;
          }}
        ></number-field>
      </div>
      <div class="buttons">
        <button @click=${() => this.#add()}>Add ${this.count === 1 ? 'it' : `these ${this.count}`}</button>
        <span class="hint" role="status">${this.said}</span>
      </div>
    </div>`;
  }

  #add(): void {
    const field = this.renderRoot.querySelector('text-field');
    if (this.room === '') {
      this.wantsRoom = true;
      field?.focus();
      return;
    }
    const { points, circuits } = this.view.job;
    const circuit = circuits.length === 1 ? circuits[0] : undefined;
    const labels = new Set(points.map(({ label }) => label));
    const made = [];
    for (let number = 1; made.length < this.count; number += 1) {
      const label = `${this.room} ${number}`;
      if (labels.has(label)) continue;
      const point = { id: newId(), label, status: 'existing', kind: this.kind } as const;
      made.push(circuit === undefined ? point : { ...point, circuit: circuit.id });
    }
    send(this, 'job-edit', addFoundPoints(made));
    this.said = addedWords(made.map(({ label }) => label));
    this.room = '';
    this.count = 1;
    // Not before: a line that goes at the first letter would move the button from under the hand.
    this.wantsRoom = false;
    // The next room follows at once.
    field?.focus();
  }
}
/** "Added: Kitchen 1 to Kitchen 4." */
function addedWords(labels: readonly string[]): string {
  const [first = '', last = first] = [labels[0], labels.at(-1)];
  return first === last ? `Added: ${first}.` : `Added: ${first} to ${last}, ${labels.length} points.`;
}
customElements.define('points-by-room', PointsByRoom);
declare global {
  interface HTMLElementTagNameMap {
    'points-by-room': PointsByRoom;
  }
}
