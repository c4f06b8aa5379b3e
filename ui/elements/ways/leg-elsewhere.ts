import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { type LabelOf, labelsOf } from '#drawing/label-of.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { type LegWay, legWays, setLegWay } from '../../edits/leg-ways.ts';
import { whatIfWords } from '../../found-ways/what-if-words.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { runOf, whyNotDrawn } from '../../way-drawing/way-draft.ts';
import { listed } from '../../written.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import { controlsCss } from '../shared-styles.ts';
import { laneLine } from './lane-line.ts';
import { wayOne } from './way-one.ts';

/** What would change if a leg whose way nobody has seen ran elsewhere. @fires ways-asked, way-drawn, job-edit */
export class LegElsewhere extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    legId: { state: true },
    key: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: grid;
        gap: 10px;
      }
      .lane:empty {
        display: none;
      }
      .tools {
        display: flex;
        flex-wrap: wrap;
        gap: 6px;
      }
      p {
        margin: 0 0 6px;
      }
    `,
  ];
  declare view: JobView;
  declare private legId: string | null;
  declare private key: LegWay['key'] | null;

  constructor() {
    super();
    this.legId = null;
    this.key = null;
  }

  get #worked(): Worked {
    return { ...this.view.estimate.asFound.worked, job: this.view.job };
  }

  /** Legs whose way is only assumed. */
  get #legIds(): readonly string[] {
    const { foundRuns } = this.#worked;
    return this.view.job.legs
      .filter(({ id }) => {
        const segments = foundRuns.get(id)?.segments ?? [];
        return segments.length === 0 || segments.some(({ certainty }) => certainty === 'assumed');
      })
      .map(({ id }) => id);
  }

  override render(): TemplateResult {
    const legIds = this.#legIds;
    const labelOf = labelsOf(this.#worked);
    const [first] = legIds;
    if (first === undefined)
      return html`<p class="hint">
        ${
          this.view.job.legs.length === 0
            ? 'No leg is recorded yet: record the order of the circuit in As found.'
            : 'The way of every recorded leg was seen.'
        }
      </p>`;
    const chosen = this.view.chosen;
    const legId =
      [this.legId, chosen, first].find((id): id is string => id !== null && legIds.includes(id)) ?? first;
    return this.#form(legId, legIds, labelOf);
  }

  #form(legId: string, legIds: readonly string[], labelOf: LabelOf): TemplateResult {
    const ways = legWays(this.#worked, legId);
    const possible = ways.filter(({ via }) => via !== null);
    const way = possible.find(({ key }) => key === this.key) ?? possible[0] ?? null;
    const ask = (): void => {
      if (way?.via != null) send(this, 'ways-asked', { do: 'what-if', legId, via: way.via });
    };
    return html`<choice-field
        label="Leg of unknown way"
        .value=${legId}
        .options=${legIds.map((id) => ({ value: id, label: labelOf(id) }))}
        .empty=${null}
        @field-change=${(event: CustomEvent<FieldChange<string>>) => {
          event.stopPropagation();
          this.legId = event.detail.value;
          send(this, 'ways-asked', { do: 'no-question' });
          send(this, 'things-lit', { subjectIds: [event.detail.value] });
        }}
      ></choice-field>
      ${
        way === null
          ? html`<p class="hint">No other way can be offered: ${listed([...new Set(ways.map(({ whyNot }) => whyNot ?? ''))])}.</p>
              ${this.#drawn(legId)}`
          : html`<choice-field
                label="It might run"
                .value=${way.key}
                .options=${ways.map(({ key, words, whyNot }) => ({
                  value: key,
                  label: words,
                  ...(whyNot === null ? {} : { notPossible: whyNot }),
                }))}
                .empty=${null}
                @field-change=${(event: CustomEvent<FieldChange<LegWay['key']>>) => {
                  event.stopPropagation();
                  this.key = event.detail.value;
                  send(this, 'ways-asked', { do: 'no-question' });
                }}
              ></choice-field>
              <button @click=${ask}>What would that change?</button>
              ${this.#drawn(legId)}
              ${
                this.view.ways.asks === 'what-if' && this.view.drawing === null
                  ? laneLine(this.view.ways.question, { slow: 'Searching both ways…', again: ask })
                  : nothing
              }
              ${this.#answered(legId, way, labelOf)}`
      }`;
  }

  /** A way of one's own, drawn on the plan. */
  #drawn(legId: string): TemplateResult | typeof nothing {
    if (whyNotDrawn(runOf(this.#worked, { what: 'leg', legId })) !== null) return nothing;
    return html`<button
      @click=${() => send(this, 'way-drawn', { do: 'begin', target: { what: 'leg', legId } })}
    >
      Draw another way on the plan
    </button>`;
  }

  #answered(legId: string, way: LegWay, labelOf: LabelOf): TemplateResult | typeof nothing {
    const { status, answer } = this.view.ways.question;
    // An answer about a drawn way stands beside the drawing.
    if (this.view.drawing !== null) return nothing;
    if (status !== 'done' || answer?.what !== 'what-if' || answer.legId !== legId) return nothing;
    const { via } = way;
    if (via === null) return nothing;
    const write = (certainty: 'seen' | 'assumed'): void =>
      send(this, 'job-edit', setLegWay(legId, labelOf(legId), { via, certainty }));
    return html`<div role="status">
        ${whatIfWords(answer.answer, labelOf, wayOne(this.view)).map((words) => html`<p>${words}</p>`)}
      </div>
      <div class="tools">
        <button @click=${() => write('seen')}>It does run there: I saw it</button>
        <button @click=${() => write('assumed')}>Take it to run there, assumed</button>
      </div>`;
  }
}

customElements.define('leg-elsewhere', LegElsewhere);
declare global {
  interface HTMLElementTagNameMap {
    'leg-elsewhere': LegElsewhere;
  }
}
