import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { connectionWords } from '#drawing/connection-words.ts';
import { type LabelOf, labelsOf } from '#drawing/label-of.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { Point } from '#model/installation.ts';
import type { Connection, Tap } from '#model/scheme.ts';
import { type AskedHow, askedConnection } from '../../edits/asked-connection.ts';
import { bestSource } from '../../edits/join-point.ts';
import { sourceLegs, whyNotRadial, whyNotRing } from '../../edits/join-sources.ts';
import { lockedBeside } from '../../edits/keep-found.ts';
import { madeOf } from '../../found-ways/made-of.ts';
import { isSameConnection } from '../../found-ways/same-ways.ts';
import type { WhyNotAnswer } from '../../found-ways/search-asks.ts';
import { askedFor } from '../../found-ways/why-not-words.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { listed } from '../../written.ts';
import type { Choice } from '../fields/choice-field.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import '../fields/tick-field.ts';
import '../finding-card.ts';
import { controlsCss, pairsCss } from '../shared-styles.ts';
import { laneLine } from './lane-line.ts';
import { legChoice } from './leg-words.ts';
import { tapFields } from './tap-fields.ts';

const noScheme = { id: '', name: '', connections: [], remedies: [], locks: [] };

/** Why a point is not joined in a way that somebody has in mind: the rule, the money, or that it was not looked at. */
export class WhyNot extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    pointId: { state: true },
    how: { state: true },
    tap: { state: true },
    legId: { state: true },
    also: { state: true },
  };
  static override styles = [
    controlsCss,
    pairsCss,
    css`
      .lane,
      .trouble,
      .answer {
        grid-column: 1 / -1;
      }
      .lane,
      .trouble {
        margin: 0;
      }
      fieldset {
        display: flex;
        flex-wrap: wrap;
        gap: 4px 16px;
        margin: 0;
        padding: 4px 12px 8px;
        border: 1px solid var(--line);
      }
      .lane:empty {
        display: none;
      }
      ul {
        display: grid;
        gap: 6px;
        margin: 8px 0 0;
        padding: 0;
        list-style: none;
      }
    `,
  ];
  declare view: JobView;
  declare private pointId: string | null;
  declare private how: AskedHow;
  declare private tap: Tap | null;
  declare private legId: string | null;
  /** Points that the same connection joins after the first. */
  declare private also: ReadonlySet<string>;

  constructor() {
    super();
    this.pointId = null;
    this.how = 'spur';
    this.tap = null;
    this.legId = null;
    this.also = new Set();
  }

  get #worked(): Worked {
    return { ...this.view.estimate.asFound.worked, job: this.view.job };
  }

  get #point(): Point | null {
    const wanted = this.view.job.points.filter(({ status }) => status === 'wanted');
    return wanted.find(({ id }) => id === this.pointId) ?? wanted[0] ?? null;
  }

  /** Where the spur begins: as told, or at the point where it usually would. */
  #tapOf(point: Point): Tap | null {
    if (this.tap !== null) return this.tap;
    const source = bestSource({ worked: this.#worked, scheme: noScheme }, point.id);
    return source === null ? null : { point: source };
  }

  #legOf(point: Point): string | null {
    return this.legId ?? sourceLegs(this.#worked, point.id).find(({ onRing }) => onRing)?.legId ?? null;
  }

  #connection(point: Point): Connection | null {
    const also = this.#others(point).filter(({ id }) => this.also.has(id));
    const asked = { point, how: this.how, tap: this.#tapOf(point), legId: this.#legOf(point) };
    return askedConnection(this.#worked, { ...asked, also: also.map(({ id }) => id) });
  }

  /** What one connection may join besides the point: other outlets, where it joins more than one. */
  #others({ id: own, kind }: Point): readonly Point[] {
    if (this.how === 'spur' || kind === 'fused-unit') return [];
    return this.view.job.points.filter(
      ({ id, status, kind: other }) => id !== own && status === 'wanted' && other !== 'fused-unit',
    );
  }

  override render(): TemplateResult | typeof nothing {
    const point = this.#point;
    if (point === null) return nothing;
    const labelOf = labelsOf(this.#worked);
    const connection = this.#connection(point);
    return html`${this.#choice('Point', point.id, this.#points(), (id) => {
      this.pointId = id;
      this.tap = null;
      this.legId = null;
    })}
      ${this.#choice('Joined by', this.how, this.#hows(point), (how) => {
        this.how = how as AskedHow;
      })}
      ${this.#where(point, labelOf)} ${this.#with(point)}
      <button class="wide" ?disabled=${connection === null} @click=${() => this.#ask(connection)}>Why not so?</button>
      ${
        this.view.ways.asks === 'why-not'
          ? laneLine(this.view.ways.question, {
              slow: 'Searching with that kept…',
              again: () => this.#ask(connection),
            })
          : nothing
      }
      ${this.#answered(labelOf)}`;
  }

  #points(): readonly Choice[] {
    return this.view.job.points
      .filter(({ status }) => status === 'wanted')
      .map(({ id, label }) => ({ value: id, label }));
  }

  #hows({ kind }: Point): readonly Choice[] {
    const isUnit = kind === 'fused-unit';
    const ringWhy = isUnit ? 'it is a fused unit' : whyNotRing(this.#worked);
    const radialWhy = isUnit ? 'it is a fused unit' : whyNotRadial(this.view.job);
    const choice = (value: AskedHow, label: string, why: string | null): Choice =>
      why === null ? { value, label } : { value, label, notPossible: why };
    return [
      choice('spur', isUnit ? 'a fused spur' : 'a spur', null),
      ...(isUnit ? [] : [choice('fused', 'a fused spur', null)]),
      choice('ring', 'the ring, out and back', ringWhy),
      choice('radial', 'a new radial', radialWhy),
    ];
  }

  #choice(
    label: string,
    value: string | null,
    options: readonly Choice[],
    changed: (value: string) => void,
    wide = false,
  ): TemplateResult {
    return html`<choice-field
      class=${wide ? 'wide' : ''}
      .label=${label}
      .value=${value}
      .options=${options}
      .empty=${null}
      @field-change=${(event: CustomEvent<FieldChange<string>>) => {
        event.stopPropagation();
        changed(event.detail.value);
      }}
    ></choice-field>`;
  }

  #where(point: Point, labelOf: LabelOf): TemplateResult | typeof nothing {
    if (this.how === 'radial') return nothing;
    const worked = this.#worked;
    if (this.how === 'ring') {
      const legs = sourceLegs(worked, point.id).map((leg) => legChoice(leg, labelOf));
      return this.#choice(
        'Opened at',
        this.#legOf(point),
        legs,
        (id) => {
          this.legId = id;
        },
        true,
      );
    }
    const tap = this.#tapOf(point);
    if (tap === null) return nothing;
    const changed = (told: Tap): void => {
      this.tap = told;
    };
    return tapFields({ worked, scheme: noScheme, pointId: point.id, labelOf, changed }, tap);
  }

  #with(point: Point): TemplateResult | typeof nothing {
    const others = this.#others(point);
    if (others.length === 0) return nothing;
    return html`<fieldset class="wide">
      <legend>Joined on after it</legend>
      ${others.map(
        ({ id, label }) => html`<tick-field
          .label=${label}
          .value=${this.also.has(id)}
          @field-change=${(event: CustomEvent<FieldChange<boolean>>) => {
            event.stopPropagation();
            const also = new Set(this.also);
            if (event.detail.value) also.add(id);
            else also.delete(id);
            this.also = also;
          }}
        ></tick-field>`,
      )}
    </fieldset>`;
  }

  #ask(connection: Connection | null): void {
    if (connection !== null) send(this, 'ways-asked', { do: 'why-not', connection });
  }

  #answered(labelOf: LabelOf): TemplateResult | typeof nothing {
    const { status, answer } = this.view.ways.question;
    if (status !== 'done' || answer?.what !== 'why-not') return nothing;
    return html`<div class="answer" role="status">
      <p><strong>${connectionWords(answer.ask, labelOf)}</strong></p>
      ${this.#letGo(answer.ask, labelOf)} ${this.#because(answer.ask, answer.answer, labelOf)}
    </div>`;
  }

  /** What is held fast of the same points, and was not for this answer. */
  #letGo(ask: Connection, labelOf: LabelOf): TemplateResult | typeof nothing {
    const { locked } = this.view.ways;
    const beside = new Set(lockedBeside(locked, ask));
    const letGo = locked.filter((one) => !beside.has(one) && !isSameConnection(one, ask));
    if (letGo.length === 0) return nothing;
    const names = listed(letGo.map((one) => connectionWords(one, labelOf)));
    return html`<p class="hint">${names} ${letGo.length === 1 ? 'is' : 'are'} held fast, but not for this answer.</p>`;
  }

  #because(ask: Connection, answer: WhyNotAnswer, labelOf: LabelOf): TemplateResult {
    if (answer.answer === 'left-out') return html`<p>It was not looked at: ${answer.words}</p>`;
    if (answer.answer === 'rule')
      return html`<p>A rule forbids it:</p>
        <ul>
          ${answer.findings.map(
            (finding) =>
              html`<li><finding-card .finding=${finding} .subject=${labelOf(finding.subject)}></finding-card></li>`,
          )}
        </ul>`;
    const { search, isOfNow } = this.view.ways;
    const { best, way, words } = askedFor(ask, answer, isOfNow ? (search.answer?.candidates ?? []) : []);
    const { scheme } = best;
    const name = way === null || way === 1 ? '' : `, way ${way}`;
    return html`<p>${words} The best with it${name}: ${madeOf(scheme, labelOf)}.</p>
      <button @click=${() => send(this, 'ways-asked', { do: 'try', scheme })}>Show it on the plan</button>`;
  }
}
customElements.define('why-not', WhyNot);
declare global {
  interface HTMLElementTagNameMap {
    'why-not': WhyNot;
  }
}
