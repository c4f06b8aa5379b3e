import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { type LabelOf, labelsOf } from '#drawing/label-of.ts';
import { openedCircuit } from '#engine/circuit/opened-circuit.ts';
import type { Connection, Cut } from '#model/scheme.ts';
import {
  type ConnectionAt,
  changeConnection,
  orderOfFeeds,
  reorderPoints,
  setConnectionCable,
  setLock,
} from '../../edits/connections.ts';
import { hiddenJoint } from '../../edits/join-point.ts';
import { sourceLegs } from '../../edits/join-sources.ts';
import { joinedBy } from '../../edits/joined-by.ts';
import { foundSpurs, spurWith } from '../../edits/mend-spur.ts';
import { type JobEdit, send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import '../fields/tick-field.ts';
import { controlsCss, pairsCss } from '../shared-styles.ts';
import { cableChoices, cableKey, cableOfKey } from './cable-choices.ts';
import { cutFields } from './cut-fields.ts';
import { legChoice } from './leg-words.ts';
import './order-list.ts';
import './run-way.ts';
import { legStart, type TapContext, tapFields } from './tap-fields.ts';
import './unit-fields.ts';

const ratings = ['6', '10', '16', '20', '25', '32', '40'].map((value) => ({ value, label: `${value} A` }));
const curves = ['B', 'C', 'D'].map((value) => ({ value, label: `Type ${value}` }));

type Of<K extends Connection['kind']> = Extract<Connection, { kind: K }>;

/** How one connection of the shown scheme is made: where it is joined on, its cable, its unit, its order, its cuts. */
export class ConnectionForm extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    connection: { attribute: false },
  };
  static override styles = [
    controlsCss,
    pairsCss,
    css`
      order-list {
        grid-column: 1 / -1;
      }
    `,
  ];
  declare view: JobView;
  declare connection: Connection;

  override render(): TemplateResult {
    const { connection } = this;
    return html`${this.#ofKind(connection)} ${this.#order(connection)}
      <choice-field
        class="wide"
        label="Cable"
        .empty=${'The usual one'}
        .value=${cableKey(connection.cable)}
        .options=${cableChoices(connection.cable)}
        @field-change=${this.#on<string | null>((key) => setConnectionCable(this.#at, cableOfKey(key)))}
      ></choice-field>
      ${this.#runs(connection)}
      <tick-field
        class="wide"
        label="Leave this one alone (locked)"
        .value=${this.view.scheme?.worked.scheme?.locks.includes(connection.id) === true}
        @field-change=${this.#on<boolean>((locked) => setLock(this.#at, locked))}
      ></tick-field>`;
  }

  /** How its cables run, and drawing their ways by hand. */
  #runs({ id }: Connection): TemplateResult | typeof nothing {
    const { scheme } = this.view;
    const runs = scheme?.runs.filter(({ connectionId }) => connectionId === id) ?? [];
    if (scheme === null || runs.length === 0) return nothing;
    return html`<div class="wide">${runs.map((run) => html`<run-way .worked=${scheme.worked} .library=${this.view.library} .run=${run}></run-way>`)}</div>`;
  }

  get #at(): ConnectionAt {
    return { schemeId: this.view.scheme?.id ?? '', connectionId: this.connection.id };
  }

  get #labelOf(): LabelOf {
    return labelsOf(this.view.scheme?.worked ?? this.view.estimate.asFound.worked);
  }

  /** A handler of a field that sends the edit which its value makes. */
  #on<V>(editOf: (value: V) => JobEdit) {
    return (event: CustomEvent<FieldChange<V>>): void => {
      event.stopPropagation();
      send(this, 'job-edit', editOf(event.detail.value));
    };
  }

  #ofKind(connection: Connection): TemplateResult | typeof nothing {
    switch (connection.kind) {
      case 'spur':
        return html`${tapFields(this.#tapContext(connection.to, 'spur'), connection.from)}`;
      case 'fused-spur':
        return this.#fusedSpur(connection);
      case 'ring-extension':
        return this.#ringExtension(connection);
      case 'radial':
        return this.#radial(connection);
      case 'fuse-down':
        return this.#unitOf(connection);
      case 'close-spur':
        return this.#closeSpur(connection);
    }
  }

  #tapContext(pointId: string, kind: 'spur' | 'fused-spur'): TapContext {
    const worked = this.view.estimate.asFound.worked;
    const scheme = this.view.job.schemes.find(({ id }) => id === this.view.scheme?.id);
    return {
      worked: { ...worked, job: this.view.job },
      scheme: scheme ?? { id: '', name: '', connections: [], remedies: [], locks: [] },
      pointId,
      labelOf: this.#labelOf,
      changed: (tap) =>
        send(
          this,
          'job-edit',
          changeConnection(this.#at, kind, { label: 'Join on elsewhere', ends: true }, (draft) => {
            draft.from = tap;
          }),
        ),
    };
  }

  #fusedSpur(connection: Of<'fused-spur'>): TemplateResult {
    const [first = ''] = joinedBy(connection);
    return html`${tapFields(this.#tapContext(first, 'fused-spur'), connection.from)} ${this.#unitOf(connection)}`;
  }

  #unitOf(connection: Of<'fused-spur'> | Of<'fuse-down'>): TemplateResult {
    return html`<unit-fields class="wide" .view=${this.view} .connection=${connection}></unit-fields>`;
  }

  #ringExtension(connection: Of<'ring-extension'>): TemplateResult {
    const worked = this.view.estimate.asFound.worked;
    const [first = ''] = connection.through;
    const legs = sourceLegs(worked, first).filter(({ circuitId }) => circuitId === connection.circuit);
    const usualMm = legs.find(({ legId }) => legId === connection.leg)?.alongMm ?? 0;
    const from =
      connection.leg === undefined ? '' : legStart({ worked, labelOf: this.#labelOf }, connection.leg);
    const set = (which: 'out' | 'back', cut: Cut): void =>
      send(
        this,
        'job-edit',
        changeConnection(
          this.#at,
          'ring-extension',
          { label: 'Change how the ring is opened', ends: true },
          (draft) => {
            draft[which] = cut;
          },
        ),
      );
    return html`<choice-field
        class="wide"
        label=${`The ${openedCircuit(worked.foundShapes, connection.circuit)} is opened at`}
        .empty=${'Between two neighbours; the leg is not known'}
        .value=${connection.leg ?? null}
        .options=${legs.map((leg) => legChoice(leg, this.#labelOf))}
        @field-change=${this.#on<string | null>((legId) => this.#openAt(legId))}
      ></choice-field>
      ${cutFields(connection.out, { label: 'Out', from, usualMm }, (cut) => set('out', cut))}
      ${cutFields(connection.back, { label: 'Back', from, usualMm }, (cut) => set('back', cut))}`;
  }

  #openAt(legId: string | null): JobEdit {
    const worked = this.view.estimate.asFound.worked;
    const leg = this.view.job.legs.find(({ id }) => id === legId);
    const [first = ''] = joinedBy(this.connection);
    const spot = sourceLegs(worked, first).find((source) => source.legId === legId);
    return changeConnection(
      this.#at,
      'ring-extension',
      { label: 'Open the ring elsewhere', ends: true },
      (draft) => {
        if (leg === undefined || spot === undefined) {
          delete draft.leg;
          draft.out = { how: 'terminals' };
          draft.back = { how: 'terminals' };
          return;
        }
        draft.leg = leg.id;
        draft.circuit = leg.circuit;
        draft.between = [leg.from, leg.to];
        draft.out = { how: 'joint', alongMm: spot.alongMm, joint: hiddenJoint };
        draft.back = { how: 'joint', alongMm: spot.alongMm, joint: hiddenJoint };
      },
    );
  }

  #radial(connection: Of<'radial'>): TemplateResult {
    const { device } = connection;
    const change = (label: string, then: (device: Of<'radial'>['device']) => void): JobEdit =>
      changeConnection(this.#at, 'radial', { label }, (draft) => then(draft.device));
    return html`<choice-field
        class="wide"
        label="From the board"
        .value=${connection.board}
        .options=${this.view.job.boards.map(({ id, label }) => ({ value: id, label }))}
        .empty=${null}
        @field-change=${this.#on<string>((board) =>
          changeConnection(this.#at, 'radial', { label: 'Take another board', ends: true }, (draft) => {
            draft.board = board;
          }),
        )}
      ></choice-field>
      <choice-field
        label="Protective device"
        .value=${String(device.ratingA)}
        .options=${ratings}
        .empty=${null}
        @field-change=${this.#on<string>((rating) =>
          change('Change the protective device', (draft) => {
            draft.ratingA = Number(rating);
          }),
        )}
      ></choice-field>
      <choice-field
        label="Curve"
        .value=${device.curve ?? null}
        .options=${curves}
        @field-change=${this.#on<'B' | 'C' | 'D' | null>((curve) =>
          change('Change the curve', (draft) => {
            if (curve === null) delete draft.curve;
            else draft.curve = curve;
          }),
        )}
      ></choice-field>
      <tick-field
        class="wide"
        label="With a 30 mA RCD of type A in it (RCBO)"
        .value=${device.rcd !== undefined}
        @field-change=${this.#on<boolean>((rcd) =>
          change(rcd ? 'Make it an RCBO' : 'Make it a circuit-breaker', (draft) => {
            draft.standard = rcd ? 'BS-EN-61009' : 'BS-EN-60898';
            if (rcd) draft.rcd = { type: 'A', mA: 30 };
            else delete draft.rcd;
          }),
        )}
      ></tick-field>`;
  }

  #closeSpur(connection: Of<'close-spur'>): TemplateResult {
    const worked = this.view.estimate.asFound.worked;
    const legs = spurWith(foundSpurs(worked), connection.point)?.closingLegs ?? [];
    const usualMm = legs.find(({ legId }) => legId === connection.leg)?.alongMm ?? 0;
    const from = legStart({ worked, labelOf: this.#labelOf }, connection.leg);
    const change = (label: string, then: (draft: Of<'close-spur'>) => void): JobEdit =>
      changeConnection(this.#at, 'close-spur', { label, ends: true }, then);
    return html`<choice-field
        class="wide"
        .label=${`${this.#labelOf(connection.point)} is carried on into`}
        .value=${connection.leg}
        .options=${legs.map((leg) => legChoice(leg, this.#labelOf))}
        .empty=${null}
        @field-change=${this.#on<string>((legId) =>
          change('Close the spur elsewhere', (draft) => {
            const alongMm = legs.find((leg) => leg.legId === legId)?.alongMm ?? 0;
            draft.leg = legId;
            draft.back = { how: 'joint', alongMm, joint: hiddenJoint };
          }),
        )}
      ></choice-field>
      ${cutFields(connection.back, { label: 'Back into the ring', from, usualMm }, (cut) =>
        send(
          this,
          'job-edit',
          change('Change how it closes', (draft) => {
            draft.back = cut;
          }),
        ),
      )}`;
  }

  #order(connection: Connection): TemplateResult | typeof nothing {
    const order = orderOfFeeds(connection);
    if (order.length < 2) return nothing;
    return html`<order-list
      label="The cable goes to"
      .things=${order.map((id) => ({ id, label: this.#labelOf(id) }))}
      @order-change=${(event: CustomEvent<{ order: readonly string[] }>) => {
        event.stopPropagation();
        send(this, 'job-edit', reorderPoints(this.#at, event.detail.order));
      }}
    ></order-list>`;
  }
}
customElements.define('connection-form', ConnectionForm);
declare global {
  interface HTMLElementTagNameMap {
    'connection-form': ConnectionForm;
  }
}
