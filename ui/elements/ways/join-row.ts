import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { connectionKindWords } from '#drawing/connection-kind-words.ts';
import type { Point } from '#model/installation.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { isFirstOfChain } from '../../edits/fuse-before.ts';
import { type FuseOffer, fuseOffer } from '../../edits/fuse-offer.ts';
import { type JoinHow, joinPoint } from '../../edits/join-point.ts';
import { whyNotRadial, whyNotRing } from '../../edits/join-sources.ts';
import { connectionOf, joinedBy } from '../../edits/joined-by.ts';
import { foundSpurs } from '../../edits/mend-spur.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import type { Choice } from '../fields/choice-field.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import { controlsCss } from '../shared-styles.ts';
import { cablesTo, cableWords } from './cable-words.ts';
import './connection-form.ts';
import { findingRows, findingRowsCss } from './finding-rows.ts';
import { findingsAt } from './findings-of.ts';
import './run-steps.ts';

/** How a point is joined now, as the choice's value. */
function joinedNow(connection: Connection | null, pointId: string): string {
  if (connection === null) return 'none';
  if (joinedBy(connection).length > 1) return `with ${connection.id}`;
  switch (connection.kind) {
    case 'spur':
    case 'fused-spur': {
      if (connection.kind === 'fused-spur' && connection.unit !== pointId) return 'fused';
      return 'leg' in connection.from ? 'joint' : 'spur';
    }
    case 'ring-extension':
      return 'ring';
    case 'radial':
      return 'radial';
    default:
      return `with ${connection.id}`;
  }
}

/** True where a spur hangs on another new point. */
const isBehindNew = (scheme: Scheme, connection: Connection): boolean => {
  if (connection.kind !== 'spur' || !('point' in connection.from)) return false;
  return connectionOf(scheme, connection.from.point) !== null;
};

/** One wanted point in the shown scheme: how it is joined, in which other ways it could be, and what the checks say. */
export class JoinRow extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    point: { attribute: false },
    scheme: { attribute: false },
    open: { state: true },
  };
  static override styles = [
    controlsCss,
    findingRowsCss,
    css`
      :host {
        display: block;
        padding: 10px 12px;
        background: var(--sheet);
        border: 1px solid var(--line);
        border-radius: var(--corner);
      }
      :host([chosen]) {
        border-color: var(--copper);
      }
      .head {
        display: flex;
        gap: 8px;
        align-items: baseline;
        justify-content: space-between;
        margin-bottom: 6px;
      }
      .head button {
        min-height: 32px;
        padding: 0 4px;
        font-weight: 600;
        background: none;
        border: 0;
      }
      .fuse {
        width: 100%;
        margin-top: 6px;
      }
      details {
        margin-top: 6px;
      }
      p {
        margin: 8px 0 0;
      }
      connection-form {
        margin: 4px 0 2px;
      }
      @media (max-width: 700px) {
        .head button {
          min-width: 44px;
          min-height: 44px;
        }
      }
    `,
  ];
  declare view: JobView;
  declare point: Point;
  declare scheme: Scheme;
  declare private open: boolean;

  constructor() {
    super();
    keepFocus(this);
    this.open = false;
  }

  override willUpdate(): void {
    this.toggleAttribute('chosen', this.view.chosen === this.point.id);
  }

  override render(): TemplateResult {
    const { point, scheme } = this;
    const connection = connectionOf(scheme, point.id);
    return html`<div class="head">
        <button @click=${() => send(this, 'thing-chosen', { subjectId: point.id })}>${point.label}</button>
        <span class="hint">${this.#length(connection)}</span>
      </div>
      <choice-field
        .label=${`${point.label} is joined by`}
        .value=${joinedNow(connection, point.id)}
        .options=${this.#choices(connection)}
        .empty=${null}
        @field-change=${(event: CustomEvent<FieldChange<string>>) => {
          event.stopPropagation();
          this.#join(event.detail.value);
        }}
      ></choice-field>
      ${this.view.scheme === null ? nothing : findingRows(this, findingsAt(this.view.scheme, point.id, connection))}
      ${connection === null ? html`<p class="hint">Choose one here, or have all ways searched: <em>Find ways</em> above.</p>` : this.#details(connection)}`;
  }

  /** Cable that leads to the point in this scheme. */
  #length(connection: Connection | null): string {
    if (connection === null) return 'not joined';
    const held = this.scheme.locks.includes(connection.id) ? 'held fast · ' : '';
    return held + cableWords(this.view.scheme?.runs ?? [], connection, this.point.id);
  }

  #choices(connection: Connection | null): readonly Choice[] {
    const { worked } = this.view.estimate.asFound;
    const unit = this.point.kind === 'fused-unit';
    const { points, legs } = this.view.job;
    const isSource = ({ status, circuit }: Point): boolean => status === 'existing' && circuit !== undefined;
    const noPoint = points.some(isSource) ? undefined : 'no existing point is recorded with its circuit';
    const noLeg = legs.length > 0 ? undefined : 'no cable is recorded';
    const noRing = whyNotRing(worked) ?? undefined;
    const noRadial = whyNotRadial(this.view.job) ?? undefined;
    const choice = (value: string, label: string, notPossible?: string): Choice =>
      notPossible === undefined ? { value, label } : { value, label, notPossible };
    return [
      choice('none', 'nothing yet'),
      choice('spur', unit ? 'a fused spur from a point (it is the unit)' : 'a spur from a point', noPoint),
      choice('joint', unit ? 'a fused spur from a joint' : 'a spur from a joint in a leg', noLeg),
      ...(unit ? [] : [choice('fused', 'a fused spur: a unit before it', noPoint)]),
      choice('ring', 'the ring, carried out and back', noRing),
      choice('radial', 'a new radial from the board', noRadial),
      ...this.#together(connection),
    ];
  }

  /** Other connections that could take the point along, and the one that it shares now. */
  #together(own: Connection | null): readonly Choice[] {
    const label = this.#label;
    return this.scheme.connections.flatMap((connection): Choice[] => {
      const others = joinedBy(connection).filter((id) => id !== this.point.id);
      const takes = connection.kind !== 'spur' && connection.kind !== 'close-spur';
      if (!takes && connection !== own) return [];
      const old = connection.kind === 'fuse-down' ? this.#pointsOfLeg(connection.leg) : [];
      const company = [...old, ...others];
      if (company.length === 0) return [];
      const words = `a ${connectionKindWords[connection.kind].toLowerCase()}, together with ${company.map(label).join(', ')}`;
      return [{ value: `with ${connection.id}`, label: words }];
    });
  }

  #pointsOfLeg(legId: string): readonly string[] {
    const spurs = foundSpurs(this.view.estimate.asFound.worked);
    return spurs.find((spur) => spur.legId === legId)?.pointIds ?? [];
  }

  #join(value: string): void {
    const [by = 'none', connectionId = ''] = value.split(' ');
    const how = (by === 'with' ? { by, connectionId } : { by }) as JoinHow;
    const worked = { ...this.view.estimate.asFound.worked, job: this.view.job };
    send(this, 'job-edit', joinPoint({ worked, scheme: this.scheme }, this.point.id, how));
  }

  #details(connection: Connection): TemplateResult {
    const offer = this.#fuseOffer(connection);
    const runs = cablesTo(this.view.scheme?.runs ?? [], connection, this.point.id);
    return html`${offer === null ? nothing : this.#fuseButton(connection, offer)}
      ${this.view.scheme === null ? nothing : html`<run-steps .worked=${this.view.scheme.worked} .runs=${runs}></run-steps>`}
      <details ?open=${this.open} @toggle=${(event: Event) => this.#toggled(event)}>
        <summary>How exactly</summary>
        ${
          this.open
            ? html`<connection-form .view=${this.view} .connection=${connection}></connection-form>`
            : nothing
        }
      </details>`;
  }

  /** A fused unit before what fails here for having too much on one spur. */
  #fuseOffer(connection: Connection): FuseOffer | null {
    const { scheme, estimate } = this.view;
    const fails = scheme?.findings.some(
      ({ outcome, subject }) => outcome === 'fails' && subject === this.point.id,
    );
    if (fails !== true && !isFirstOfChain(this.scheme, connection)) return null;
    const { worked } = estimate.asFound;
    return fuseOffer(this.scheme, connection, { spurs: foundSpurs(worked), labelOf: this.#label });
  }

  readonly #label = (id: string): string => this.view.job.points.find((one) => one.id === id)?.label ?? id;

  #fuseButton(connection: Connection, { pointIds, edit }: FuseOffer): TemplateResult {
    const [first = '', ...others] = pointIds.map(this.#label);
    // The first outlet's row has the button by its name; in the others' it says what it comes to for them.
    const isHead = pointIds[0] === this.point.id || !isBehindNew(this.scheme, connection);
    const words = isHead
      ? `Put a fused unit before ${first} and ${others.join(', ')}`
      : `Put ${pointIds.map(this.#label).join(', ')} behind one fused unit`;
    return html`<button class="fuse main" @click=${() => send(this, 'job-edit', edit)}>${words}</button>`;
  }

  #toggled(event: Event): void {
    if (event.target instanceof HTMLDetailsElement) this.open = event.target.open;
  }
}
customElements.define('join-row', JoinRow);
declare global {
  interface HTMLElementTagNameMap {
    'join-row': JoinRow;
  }
}
