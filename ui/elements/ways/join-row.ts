import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { outcomeWords } from '#drawing/marks.ts';
import type { Point } from '#model/installation.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import { connectionOf, joinedBy } from '../../edits/detach-point.ts';
import { fuseBefore, isFirstOfChain } from '../../edits/fuse-before.ts';
import { type JoinHow, joinPoint } from '../../edits/join-point.ts';
import { sourceLegs, sourcePoints, whyNotRadial, whyNotRing } from '../../edits/join-sources.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { metres } from '../../written.ts';
import type { Choice } from '../fields/choice-field.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../outcome-mark.ts';
import { controlsCss } from '../shared-styles.ts';
import './connection-form.ts';
import { findingsOf } from './findings-of.ts';

const kindWords: Readonly<Record<Connection['kind'], string>> = {
  spur: 'a spur',
  'fused-spur': 'a fused spur',
  'ring-extension': 'the ring',
  radial: 'a radial',
  'fuse-down': 'a fused-down spur',
  'close-spur': 'a closed spur',
};

/** How a point is joined now, as the choice's value. */
function joinedNow(connection: Connection | null, pointId: string): string {
  if (connection === null) return 'none';
  if (joinedBy(connection).length > 1) return `with ${connection.id}`;
  switch (connection.kind) {
    case 'spur':
    case 'fused-spur': {
      if ('leg' in connection.from && connection.kind === 'spur') return 'joint';
      return connection.kind === 'spur' || connection.unit === pointId ? 'spur' : 'fused';
    }
    case 'ring-extension':
      return 'ring';
    case 'radial':
      return 'radial';
    default:
      return `with ${connection.id}`;
  }
}

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
      .findings {
        display: grid;
        gap: 4px;
        margin: 8px 0 0;
        padding: 0;
        list-style: none;
      }
      .findings button {
        width: 100%;
        padding: 6px 8px;
        font-size: 14px;
        font-weight: 400;
        text-align: left;
        justify-content: flex-start;
      }
      .fuse {
        width: 100%;
        margin-top: 6px;
      }
      details {
        margin-top: 6px;
      }
      connection-form {
        margin: 4px 0 2px;
      }
    `,
  ];
  declare view: JobView;
  declare point: Point;
  declare scheme: Scheme;
  declare private open: boolean;

  constructor() {
    super();
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
      ${connection === null ? nothing : this.#details(connection)}`;
  }

  /** Cable that leads to the point in this scheme. */
  #length(connection: Connection | null): string {
    if (connection === null) return 'not joined';
    const run = this.view.scheme?.runs.find(
      ({ connectionId, to, from }) =>
        connectionId === connection.id && (to.pointId === this.point.id || from.pointId === this.point.id),
    );
    if (run === undefined) return '';
    return run.lengthMm === null ? 'length not known' : `${metres(run.lengthMm)} of cable`;
  }

  #choices(connection: Connection | null): readonly Choice[] {
    const { worked } = this.view.estimate.asFound;
    const unit = this.point.kind === 'fused-unit';
    const noPoint =
      sourcePoints(worked, this.scheme, this.point.id).length === 0 ? 'no point is recorded' : undefined;
    const noLeg = sourceLegs(worked, this.point.id).length === 0 ? 'no cable is recorded' : undefined;
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
    const label = (id: string): string => this.view.job.points.find((one) => one.id === id)?.label ?? id;
    return this.scheme.connections.flatMap((connection): Choice[] => {
      const others = joinedBy(connection).filter((id) => id !== this.point.id);
      const takes = connection.kind !== 'spur' && connection.kind !== 'close-spur';
      if (others.length === 0 || (!takes && connection !== own)) return [];
      const words = `${kindWords[connection.kind]}, together with ${others.map(label).join(', ')}`;
      return [{ value: `with ${connection.id}`, label: words }];
    });
  }

  #join(value: string): void {
    const [by = 'none', connectionId = ''] = value.split(' ');
    const how = (by === 'with' ? { by, connectionId } : { by }) as JoinHow;
    const worked = { ...this.view.estimate.asFound.worked, job: this.view.job };
    send(this, 'job-edit', joinPoint({ worked, scheme: this.scheme }, this.point.id, how));
  }

  #details(connection: Connection): TemplateResult {
    const findings = this.view.scheme === null ? [] : findingsOf(this.view.scheme, connection);
    return html`${
      findings.length === 0
        ? nothing
        : html`<ul class="findings">
            ${findings.map(
              ({ outcome, title, subject }) =>
                html`<li>
                  <button
                    @click=${() => {
                      send(this, 'things-lit', { subjectIds: [subject] });
                      send(this, 'thing-chosen', { subjectId: subject });
                    }}
                  >
                    <outcome-mark .outcome=${outcome}></outcome-mark> ${outcomeWords[outcome]}: ${title}
                  </button>
                </li>`,
            )}
          </ul>`
    }
      ${
        isFirstOfChain(this.scheme, connection)
          ? html`<button
            class="fuse main"
            @click=${() => send(this, 'job-edit', fuseBefore(this.scheme, connection.id, this.point.label))}
          >
            Put a fused unit before ${this.point.label} and what hangs on it
          </button>`
          : nothing
      }
      <details ?open=${this.open} @toggle=${(event: Event) => this.#toggled(event)}>
        <summary>How exactly</summary>
        ${
          this.open
            ? html`<connection-form .view=${this.view} .connection=${connection}></connection-form>`
            : nothing
        }
      </details>`;
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
