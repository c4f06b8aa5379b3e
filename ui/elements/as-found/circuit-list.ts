import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { CircuitShapeName } from '#engine/circuit/shape.ts';
import type { Circuit } from '#model/installation.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import {
  addCircuit,
  type CircuitLoad,
  setCircuitCertainty,
  setCircuitFact,
  setCircuitLoads,
  setUpstreamRcd,
} from '../../edits/circuits.ts';
import { removeCircuit } from '../../edits/remove-things.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { newId } from '../../new-id.ts';
import { controlsCss } from '../shared-styles.ts';
import { deviceFields } from './device-fields.ts';
import { choiceFact, edits, mustChoice, mustText, numberFact, textFact } from './fact-fields.ts';
import { circuitFacts } from './facts-of.ts';
import { formCss } from './form-styles.ts';
import { circuitUses, claimedShapes, coreColours } from './found-words.ts';
import { removeButton, thingRow } from './thing-row.ts';

const shapeWords: Readonly<Record<CircuitShapeName, string>> = {
  ring: 'a ring',
  radial: 'a radial',
  'broken-ring': 'a ring that does not close',
  lollipop: 'a ring that hangs on one cable',
  interconnected: 'more than one ring, or joined to another circuit',
  unknown: 'nothing yet',
};

const orderChoices = [
  { value: 'measured', label: 'Proved by readings' },
  { value: 'seen', label: 'Seen' },
  { value: 'assumed', label: 'Assumed' },
];

/** The circuits, each with its form: use, shape, device, RCD before it, colours, area, loads. */
export class CircuitList extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [controlsCss, formCss];
  declare view: JobView;

  constructor() {
    super();
    keepFocus(this);
  }

  override render(): TemplateResult {
    const { circuits, boards } = this.view.job;
    return html`<ul class="list">
        ${circuits.map((circuit) =>
          thingRow(this.view, {
            id: circuit.id,
            name: circuit.name,
            facts: circuitWords(circuit),
            state: circuit.device === undefined ? 'MCB or fuse?' : '',
            wide: true,
            form: () => this.#form(circuit),
          }),
        )}
      </ul>
      <div class="buttons">
        <button class="small" ?disabled=${boards.length === 0} @click=${() => this.#add()}>Add a circuit</button>
        ${boards.length === 0 ? html`<span class="hint">Add the board first, under Supply and board.</span>` : nothing}
      </div>`;
  }

  #add(): void {
    const board = this.view.job.boards[0];
    if (board === undefined) return;
    const id = newId();
    send(this, 'job-edit', addCircuit(id, `Circuit ${this.view.job.circuits.length + 1}`, board.id));
    send(this, 'thing-chosen', { subjectId: id });
  }

  #form(circuit: Circuit): TemplateResult {
    const facts = circuitFacts(circuit);
    const { boards } = this.view.job;
    return html`<div class="fields">
      ${choiceFact(facts, 'shape', { label: 'Shape', options: claimedShapes, help: this.#toldByCables(circuit) })}
      ${this.#order(circuit)} ${deviceFields(circuit)} ${this.#upstreamRcd(circuit)}
      ${choiceFact(facts, 'colours', { label: 'Colours of the cores', options: coreColours })}
      ${numberFact(facts, 'areaServedM2', { label: 'Floor area served', unit: 'm²', min: 0.1, max: 100_000 })}
      ${mustText('Name', circuit.name, (text) => setCircuitFact(circuit, 'name', text))}
      ${mustChoice(facts, 'use', { label: 'Use', options: circuitUses })}
      <div class="pair">
        ${mustChoice({ thing: circuit, set: facts.set }, 'board', { label: 'Board', options: boards.map(({ id, label }) => ({ value: id, label })) })}
        ${textFact({ thing: circuit, set: facts.set }, 'way', { label: 'Way' })}
      </div>
      ${this.#loads(circuit)}
      ${removeButton(circuit.name, (from) => send(from, 'job-edit', removeCircuit(circuit)))}
    </div>`;
  }

  #toldByCables({ id }: Circuit): string {
    const shape = this.view.estimate.asFound.worked.foundShapes.get(id);
    if (shape === undefined || shape.evidence === 'none' || shape.evidence === 'claimed') return '';
    return `Its cables as recorded make ${shapeWords[shape.shape]}.`;
  }

  #order(circuit: Circuit): TemplateResult {
    return html`<choice-field
      label="How the order of its points is known"
      .empty=${'By the label only'}
      .options=${orderChoices}
      .value=${circuit.certainty?.order ?? null}
      @field-change=${edits<'measured' | 'seen' | 'assumed' | null>((value) => setCircuitCertainty(circuit, 'order', value))}
    ></choice-field>`;
  }

  #upstreamRcd(circuit: Circuit): TemplateResult {
    const rcds = this.view.job.boards.flatMap(({ label, rcds }) =>
      rcds.map(({ id, type, mA }, index) => ({
        value: id,
        label: `${label}, RCD ${index + 1}: type ${type}, ${mA} mA`,
      })),
    );
    const now = circuit.upstreamRcd ?? (circuit.certainty?.upstreamRcd === undefined ? undefined : 'none');
    return choiceFact(
      {
        thing: { upstreamRcd: now },
        certainty: circuit.certainty,
        set: (_: 'upstreamRcd', word: string | null) =>
          setUpstreamRcd(circuit, word === null || word === 'none' ? word : { id: word }),
        sure: (_: 'upstreamRcd', certainty) => setCircuitCertainty(circuit, 'upstreamRcd', certainty),
      },
      'upstreamRcd',
      {
        label: 'Behind an RCD of the board',
        options: [{ value: 'none', label: 'None of them' }, ...rcds],
        help: rcds.length === 0 ? 'RCDs are recorded at the board, under Supply and board.' : '',
      },
    );
  }

  #loads(circuit: Circuit): TemplateResult {
    const loads = circuit.loads ?? [];
    const put = (index: number, facts: Partial<CircuitLoad>) =>
      setCircuitLoads(
        circuit,
        loads.map((load, at) => (at === index ? { ...load, ...facts } : load)),
      );
    const add = (): void =>
      send(this, 'job-edit', setCircuitLoads(circuit, [...loads, { watts: 0, use: '' }]));
    const drop = (index: number): void =>
      send(
        this,
        'job-edit',
        setCircuitLoads(
          circuit,
          loads.filter((_, at) => at !== index),
        ),
      );
    return html`<h4>Other loads on this circuit</h4>
      ${loads.map(
        (load, index) =>
          html`<div class="pair">
              <text-field
                .label=${`Load ${index + 1}`}
                .value=${load.use}
                @field-change=${edits<string>((use) => put(index, { use }))}
              ></text-field>
              <number-field
                .label=${`Watts of load ${index + 1}`}
                unit="W"
                .min=${0}
                .max=${1e6}
                .value=${load.watts}
                @field-change=${edits<number | null>((watts) => (watts === null ? null : put(index, { watts })))}
              ></number-field>
            </div>
            <div class="buttons"><button class="small" @click=${() => drop(index)}>Remove load ${index + 1}</button></div>`,
      )}
      <div class="buttons"><button class="small" @click=${add}>Add a load</button></div>`;
  }
}

function circuitWords({ device, shape, use }: Circuit): string {
  const rating = device === undefined ? 'device not known' : `${device.ratingA} A`;
  const useWords = circuitUses.find(({ value }) => value === use)?.label ?? use;
  const claimed = claimedShapes.find(({ value }) => value === shape)?.label;
  return [claimed ?? 'Shape not known', rating, useWords.toLowerCase()].join(', ');
}
customElements.define('circuit-list', CircuitList);
declare global {
  interface HTMLElementTagNameMap {
    'circuit-list': CircuitList;
  }
}
