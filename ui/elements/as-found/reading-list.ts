import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { type LabelOf, labelsOf } from '#drawing/label-of.ts';
import type { Circuit, Reading } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { type Conductor, endToEnd, setConductorC, setEndToEnd } from '../../edits/readings.ts';
import type { JobView } from '../../job-view.ts';
import { newId } from '../../new-id.ts';
import { controlsCss } from '../shared-styles.ts';
import { numberFact } from './fact-fields.ts';
import { formCss } from './form-styles.ts';
import './reading-form.ts';
import './readings-say.ts';
import { readingName, readingValue } from './reading-words.ts';
import { thingRow } from './thing-row.ts';

const conductors: readonly { readonly conductor: Conductor; readonly label: string }[] = [
  { conductor: 'L', label: 'Line, r1' },
  { conductor: 'N', label: 'Neutral, rn' },
  { conductor: 'cpc', label: 'Earth, r2' },
];

/** The readings: those of a ring end to end first, then all of them, circuit by circuit. */
export class ReadingList extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    opened: { state: true },
  };
  static override styles = [controlsCss, formCss];
  declare view: JobView;
  /** The reading whose form is open: a reading is nothing that the plan could look at. */
  declare private opened: string | null;

  constructor() {
    super();
    keepFocus(this);
    this.opened = null;
  }

  override render(): TemplateResult {
    const { job, estimate } = this.view;
    const labelOf = labelsOf(estimate.asFound.worked);
    const rings = job.circuits.filter(({ shape }) => shape !== 'radial');
    return html`<readings-say .view=${this.view}></readings-say>
      ${rings.map((circuit) => this.#endToEnd(circuit))}
      ${readingGroups(job).map(([name, readings]) => this.#group(name, readings, labelOf))}
      ${numberFact(
        { thing: job.site, set: (_: 'conductorC', conductorC: number | null) => setConductorC(conductorC) },
        'conductorC',
        {
          label: 'Conductors when tested',
          unit: '°C',
          min: -40,
          max: 120,
          help: 'Empty: 20. Counts for every reading that names no temperature of its own, and for what is expected.',
        },
      )}
      <h4>A new reading</h4>
      <reading-form .view=${this.view}></reading-form>`;
  }

  #endToEnd(circuit: Circuit): TemplateResult {
    const { readings, circuits } = this.view.job;
    const of = circuits.length > 1 ? `: ${circuit.name}` : '';
    return html`<h4>End to end, before the work${of}</h4>
      <div class="fields three">
        ${conductors.map(({ conductor, label }) =>
          numberFact(
            {
              thing: { ohm: endToEnd(readings, circuit.id, conductor)?.ohm },
              set: (_: 'ohm', ohm: number | null) => setEndToEnd(circuit, { conductor, ohm, newId: newId() }),
            },
            'ohm',
            { label, unit: 'Ω', max: 1e7 },
          ),
        )}
      </div>`;
  }

  #group(name: string, readings: readonly Reading[], labelOf: LabelOf): TemplateResult | typeof nothing {
    if (readings.length === 0) return nothing;
    return html`<details class="less">
      <summary>${name}: ${readings.length}</summary>
      <ul
        class="list"
        @thing-chosen=${(event: HTMLElementEventMap['thing-chosen']) => {
          event.stopPropagation();
          this.opened = event.detail.subjectId;
        }}
      >
        ${readings.map((reading) => {
          const words = readingName(reading, labelOf);
          return thingRow(
            { chosen: this.opened },
            {
              id: reading.id,
              name: words,
              facts: `${readingValue(reading)}${reading.phase === 'after' ? ', after the work' : ''}`,
              wide: true,
              form: () =>
                html`<reading-form .view=${this.view} .reading=${reading} .name=${words}></reading-form>`,
            },
          );
        })}
      </ul>
    </details>`;
  }
}

/** The readings of each circuit, then those of none, in the order in which they were written. */
function readingGroups({ circuits, readings }: Job): readonly (readonly [string, readonly Reading[]])[] {
  return [
    ...circuits.map(({ id, name }) => [name, readings.filter(({ circuit }) => circuit === id)] as const),
    ['Of the supply, or of no circuit', readings.filter(({ circuit }) => circuit === undefined)],
  ];
}
customElements.define('reading-list', ReadingList);
declare global {
  interface HTMLElementTagNameMap {
    'reading-list': ReadingList;
  }
}
