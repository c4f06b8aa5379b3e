import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { labelsOf } from '#drawing/label-of.ts';
import type { Place } from '#model/installation.ts';
import type { Connection } from '#model/scheme.ts';
import { askPlan, whenPlanGivenUp } from '../../controllers/plan-given-up.ts';
import { type ConnectionAt, changeConnection, setUnitPlace } from '../../edits/connections.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import '../as-found/place-fields.ts';
import type { PlaceChange } from '../as-found/place-fields.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { legStart } from './tap-fields.ts';

const fuses = ['1', '2', '3', '5', '7', '10', '13'].map((value) => ({ value, label: `${value} A` }));

/** Where a unit goes that nothing tells the height of. Common practice, no source. */
const USUAL_HEIGHT_MM = 450;

type WithUnit = Extract<Connection, { kind: 'fused-spur' | 'fuse-down' }>;

/** The fused unit of a connection: its fuse, its place, and where in the old spur's cable it is set. */
export class UnitFields extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    connection: { attribute: false },
    waiting: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: grid;
        gap: 10px;
      }
      fieldset {
        min-width: 0;
        margin: 0;
        padding: 8px 10px 10px;
        border: 1px solid var(--rule);
        border-radius: var(--corner);
      }
      legend {
        padding: 0 4px;
        font: 500 0.875rem/1.35 var(--text-font);
        color: var(--ink-soft);
      }
    `,
  ];
  declare view: JobView;
  declare connection: WithUnit;
  /** True while the plan waits for the unit's place. */
  declare private waiting: boolean;
  #root: EventTarget = this;

  constructor() {
    super();
    this.waiting = false;
    whenPlanGivenUp(this, () => {
      this.waiting = false;
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    // The plan stands beside this form, not around it: its taps are heard where they end up.
    document.addEventListener('place-tapped', this.#heard);
    this.#root = this.getRootNode();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    document.removeEventListener('place-tapped', this.#heard);
    // Gone itself, it is heard from where it was.
    if (this.waiting) askPlan(this.#root, null);
    this.waiting = false;
  }

  override render(): TemplateResult {
    const { connection } = this;
    const { unit } = connection;
    return html`${typeof unit === 'string' ? this.#pointAsUnit(unit) : this.#ownUnit(unit)}
      ${connection.kind === 'fuse-down' ? this.#spot(connection.leg, connection.alongMm) : nothing}`;
  }

  #pointAsUnit(pointId: string): TemplateResult {
    const labelOf = labelsOf(this.view.scheme?.worked ?? this.view.estimate.asFound.worked);
    return html`<p class="hint">The unit is ${labelOf(pointId)}: its fuse and its place are set in Wanted.</p>`;
  }

  #ownUnit({ fuseA, place }: Exclude<WithUnit['unit'], string>): TemplateResult {
    return html`<choice-field
        label="Fuse of the unit"
        .empty=${'By the load'}
        .value=${fuseA === undefined ? null : String(fuseA)}
        .options=${fuses}
        @field-change=${(event: CustomEvent<FieldChange<string | null>>) => {
          event.stopPropagation();
          this.#setFuse(event.detail.value);
        }}
      ></choice-field>
      <fieldset>
        <legend>Place of the unit</legend>
        ${place === undefined ? html`<p class="hint">Beside what feeds it, until a wall is chosen.</p>` : nothing}
        <place-fields
          .job=${this.view.job}
          .place=${place}
          .name=${'the unit'}
          .newHeightMm=${this.#heightMm()}
          .waiting=${this.waiting}
          @place-change=${(event: CustomEvent<PlaceChange>) => {
            event.stopPropagation();
            this.#setPlace(event.detail.place);
          }}
          @place-wanted=${(event: Event) => {
            event.stopPropagation();
            this.#wait(!this.waiting);
          }}
        ></place-fields>
      </fieldset>`;
  }

  #spot(legId: string, alongMm: number | undefined): TemplateResult {
    const worked = this.view.estimate.asFound.worked;
    const from = legStart({ worked, labelOf: labelsOf(worked) }, legId);
    return html`<number-field
      .label=${`Set into the old cable, from ${from}`}
      help="Empty: beside the point that the spur starts from."
      unit="mm"
      .value=${alongMm ?? null}
      .min=${0}
      .max=${1_000_000}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
        event.stopPropagation();
        const { value } = event.detail;
        send(
          this,
          'job-edit',
          changeConnection(
            this.#at,
            'fuse-down',
            { label: 'Set the unit elsewhere', ends: true },
            (draft) => {
              if (value === null) delete draft.alongMm;
              else draft.alongMm = value;
            },
          ),
        );
      }}
    ></number-field>`;
  }

  get #at(): ConnectionAt {
    return { schemeId: this.view.scheme?.id ?? '', connectionId: this.connection.id };
  }

  #setFuse(fuse: string | null): void {
    const edit = changeConnection(
      this.#at,
      this.connection.kind,
      { label: 'Change the fuse' },
      ({ unit }) => {
        if (typeof unit === 'string') return;
        if (fuse === null) delete unit.fuseA;
        else unit.fuseA = Number(fuse);
      },
    );
    send(this, 'job-edit', edit);
  }

  #setPlace(place: Place | null): void {
    send(this, 'job-edit', setUnitPlace(this.#at, this.connection.kind, place));
  }

  /** The height that the unit has where nobody placed it. */
  #heightMm(): number {
    const ends = this.view.scheme?.runs.flatMap(({ from, to }) => [from, to]) ?? [];
    const unit = ends.find(({ nodeId }) => nodeId === `${this.connection.id}/unit`);
    return Math.round(unit?.position?.heightMm ?? USUAL_HEIGHT_MM);
  }

  /** Has the plan wait for the unit's place, or wait no more. */
  #wait(waiting: boolean): void {
    this.waiting = waiting;
    askPlan(this, waiting ? { tool: 'place', symbol: 'fused-unit', heightMm: this.#heightMm() } : null);
  }

  readonly #heard = (event: Event): void => {
    const { unit } = this.connection;
    if (!this.waiting || typeof unit === 'string') return;
    const { place } = (event as HTMLElementEventMap['place-tapped']).detail;
    this.#setPlace({ ...place, heightMm: unit.place?.heightMm ?? this.#heightMm() });
    this.#wait(false);
  };
}
customElements.define('unit-fields', UnitFields);
declare global {
  interface HTMLElementTagNameMap {
    'unit-fields': UnitFields;
  }
}
