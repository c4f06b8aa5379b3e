import { produce } from 'immer';
import {
  css,
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { type LabelOf, labelsOf } from '#drawing/label-of.ts';
import { runName } from '#drawing/ways/run-name.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { cutsOf } from '#engine/ways/run-cuts.ts';
import { stepsOf } from '#engine/ways/steps.ts';
import type { Job } from '#model/job.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { forgetLegWay, setLegWay } from '../../edits/leg-ways.ts';
import { pinRun } from '../../edits/pin-run.ts';
import { whatIfWords } from '../../found-ways/what-if-words.ts';
import { type JobEdit, send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { levelWords, type MoveKey, movesFrom } from '../../way-drawing/levels.ts';
import { pinnedChanges } from '../../way-drawing/pinned-changes.ts';
import type { DrawAsk, DrawnWay } from '../../way-drawing/way-draft.ts';
import { counted, metres } from '../../written.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import '../finding-card.ts';
import { controlsCss } from '../shared-styles.ts';
import { laneLine } from './lane-line.ts';
import { wayOne } from './way-one.ts';

const moveKeys: readonly MoveKey[] = ['up', 'down', 'through'];

/** A way that is drawn on the plan by hand: how far it has got, up and down, back, what it would change, and keeping it. @fires way-drawn, ways-asked, job-edit */
export class DrawWay extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    asked: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        padding: 10px 12px;
        margin: 8px 0 14px;
        background: var(--copper-wash);
        border: 1px solid var(--copper);
        border-radius: var(--corner);
      }
      h3 {
        margin: 0 0 6px;
        scroll-margin-top: 12px;
      }
      .tools {
        display: flex;
        flex-wrap: wrap;
        gap: 6px;
        margin: 8px 0;
      }
      .tools button {
        text-align: left;
      }
      ol {
        margin: 0 0 8px;
        padding-left: 20px;
        font-size: 0.875rem;
      }
      ul {
        display: grid;
        gap: 6px;
        margin: 8px 0;
        padding: 0;
        list-style: none;
      }
      .lane:empty {
        display: none;
      }
      .sum {
        font-weight: 600;
      }
    `,
  ];
  declare view: JobView;
  /** The corners for which it was asked what they would change; null before. */
  declare private asked: DrawnWay['steps'] | null;

  constructor() {
    super();
    keepFocus(this);
    this.asked = null;
  }

  /** A drawing that begins comes into sight; the plan has the focus by then, where it was begun by keyboard. */
  override firstUpdated(_changed: PropertyValues<this>): void {
    this.scrollIntoView({ block: 'start' });
  }

  /** The house that the cable is in: as found, or with the shown scheme. */
  #worked(drawing: DrawnWay): Worked {
    const { estimate, scheme } = this.view;
    return drawing.target.what === 'run' && scheme !== null ? scheme.worked : estimate.asFound.worked;
  }

  #name(drawing: DrawnWay): string {
    const worked = this.#worked(drawing);
    const { target, run } = drawing;
    return target.what === 'leg' ? labelsOf(worked)(target.legId) : runName(worked, run);
  }

  readonly #do = (ask: DrawAsk) => (): void => {
    send(this, 'way-drawn', ask);
  };

  override render(): TemplateResult | typeof nothing {
    const { drawing } = this.view;
    if (drawing === null) return nothing;
    const { steps, dropped, isDrawing } = drawing;
    return html`<h3>The way of ${this.#name(drawing)}, drawn by hand</h3>
      <p class="hint">
        Tap the plan where the cable turns, corner after corner, from ${this.#beginning(drawing)}. It holds to walls, to the way
        joists run, and to its end; what you leave undrawn is led to the end as any way is found.
      </p>
      <p class="sum" role="status">${lengthWords(drawing, this.#recordedMm(drawing))}</p>
      <p class="hint">It has got to here: ${levelWords(this.#worked(drawing).plan, drawing.here)}.</p>
      ${this.#moves(drawing)}
      <div class="tools">
        <button class="small" ?disabled=${steps.length === 0} @click=${this.#do({ do: 'take-back' })}>
          Take the last one back
        </button>
        ${
          dropped.length > 0 && steps.length === 0
            ? html`<button class="small" @click=${this.#do({ do: 'bring-back' })}>Bring it back</button>`
            : html`<button class="small" ?disabled=${steps.length === 0} @click=${this.#do({ do: 'drop' })}>Drop it all</button>`
        }
        <button class="small" @click=${this.#do({ do: 'draw', on: !isDrawing })}>
          ${isDrawing ? 'Stop drawing' : 'Draw on'}
        </button>
        <button class="small quiet" @click=${this.#do({ do: 'end' })}>Put it away</button>
      </div>
      ${steps.length === 0 ? this.#recorded(drawing) : this.#kept(drawing)}`;
  }

  #beginning({ run }: DrawnWay): string {
    const worked = this.#worked(this.view.drawing as DrawnWay);
    return runName(worked, run).split(' to ')[0] ?? '';
  }

  #recordedMm({ target }: DrawnWay): number | null {
    if (target.what !== 'leg') return null;
    return this.view.job.legs.find(({ id }) => id === target.legId)?.lengthMm ?? null;
  }

  /** Up, down and through the wall at the last corner; to another height on the wall. */
  #moves(drawing: DrawnWay): TemplateResult {
    const { plan } = this.#worked(drawing);
    const moves = movesFrom(plan, drawing.here, drawing.to);
    const { here } = drawing;
    return html`<div class="tools" role="group" aria-label="At the last corner">
        ${moveKeys.map((by) => {
          const { words, whyNot } = moves[by];
          return html`<button class="small" ?disabled=${whyNot !== null} @click=${this.#do({ do: 'move', by })}>
            <span>${words}${whyNot === null ? nothing : html`<span class="hint">: ${whyNot}</span>`}</span>
          </button>`;
        })}
      </div>
      ${
        here.onWall === undefined
          ? nothing
          : html`<number-field
              label="Height on the wall from here on, above the floor"
              unit="mm"
              .min=${0}
              .max=${plan.storeyById.get(here.storeyId)?.storey.heightMm ?? null}
              .whole=${true}
              .needed=${true}
              .value=${Math.round(here.heightMm)}
              @field-change=${(event: CustomEvent<FieldChange<number>>) => {
                event.stopPropagation();
                send(this, 'way-drawn', { do: 'height', heightMm: event.detail.value });
              }}
            ></number-field>`
      }`;
  }

  /** The whole way in words, what it would change, and keeping it. */
  #kept(drawing: DrawnWay): TemplateResult {
    const worked = this.#worked(drawing);
    const { segments, run, target } = drawing;
    // Of cable that is there already nobody asks what it cuts.
    const cutBy = target.what === 'leg' ? null : { cuts: cutsOf(worked.plan, segments), cable: run.cable };
    return html`<details>
        <summary>The whole way in words</summary>
        <ol>
          ${stepsOf(worked.plan, segments, cutBy).map((words) => html`<li>${words}</li>`)}
        </ol>
      </details>
      <div class="tools"><button @click=${() => this.#ask(drawing)}>What would that change?</button></div>
      ${drawing.target.what === 'leg' ? this.#legAnswer(labelsOf(worked)) : this.#runAnswer(drawing)}
      <div class="tools">
        ${
          drawing.target.what === 'leg'
            ? html`<button @click=${() => this.#keepLeg(drawing, 'seen')}>I have seen it run there</button>
              <button @click=${() => this.#keepLeg(drawing, 'assumed')}>Take it to run there, assumed</button>`
            : html`<button class="main" @click=${() => this.#keep(this.#pin(drawing))}>Keep this way</button>`
        }
      </div>`;
  }

  /** With no corner left, what was recorded before can be taken back. */
  #recorded(drawing: DrawnWay): TemplateResult | typeof nothing {
    const { target, run } = drawing;
    if (!run.pinned) return nothing;
    const name = this.#name(drawing);
    return target.what === 'leg'
      ? html`<button @click=${() => this.#keep(forgetLegWay(target.legId, name))}>Its way is not known</button>`
      : html`<button @click=${() => this.#keep(this.#pin(drawing))}>Let it find its own way</button>`;
  }

  #keep(edit: JobEdit): void {
    send(this, 'job-edit', edit);
    send(this, 'way-drawn', { do: 'end' });
  }

  #keepLeg(drawing: DrawnWay, certainty: 'seen' | 'assumed'): void {
    const { target, via } = drawing;
    if (target.what === 'leg') this.#keep(setLegWay(target.legId, this.#name(drawing), { via, certainty }));
  }

  #pin(drawing: DrawnWay): JobEdit {
    const { run, via } = drawing;
    const worked = this.#worked(drawing);
    const at = { schemeId: worked.scheme?.id ?? '', connectionId: run.connectionId ?? '' };
    return pinRun(worked, at, { run, name: this.#name(drawing), via });
  }

  #ask(drawing: DrawnWay): void {
    this.asked = drawing.steps;
    const { target, via } = drawing;
    if (target.what === 'leg') {
      send(this, 'ways-asked', { do: 'what-if', legId: target.legId, via });
      return;
    }
    const { job } = this.view;
    const changed: Job = produce(job, (draft) => this.#pin(drawing).change(draft));
    const scheme = changed.schemes.find(({ id }) => id === target.schemeId);
    if (scheme !== undefined)
      send(this, 'ways-asked', { do: 'weigh', schemes: [{ ...scheme, id: drawnId(scheme.id) }] });
  }

  #legAnswer(labelOf: LabelOf): TemplateResult {
    const { ways, drawing } = this.view;
    const { status, answer } = ways.question;
    const isAsked = ways.asks === 'what-if' && this.asked === drawing?.steps;
    return html`${
      isAsked && drawing !== null
        ? laneLine(ways.question, { slow: 'Searching both ways…', again: () => this.#ask(drawing) })
        : nothing
    }
      <div role="status">
        ${
          isAsked && status === 'done' && answer?.what === 'what-if'
            ? whatIfWords(answer.answer, labelOf, wayOne(this.view)).map((words) => html`<p>${words}</p>`)
            : nothing
        }
      </div>`;
  }

  #runAnswer({ run, steps }: DrawnWay): TemplateResult {
    const before = this.view.scheme;
    const after = this.view.ways.weighed.get(drawnId(before?.id ?? ''));
    if (before === null || after === undefined || this.asked !== steps)
      return html`<div role="status"></div>`;
    const { words, worse, better } = pinnedChanges(before, after, run.id);
    const labelOf = labelsOf(after.worked);
    return html`<div role="status">
      <p>${words}</p>
      ${
        worse.length === 0
          ? html`<p>Checks would say nothing that they do not say now.</p>`
          : html`<p>Checks would say of it:</p>
            <ul>
              ${worse.map((finding) => html`<li><finding-card .finding=${finding} .subject=${labelOf(finding.subject)}></finding-card></li>`)}
            </ul>`
      }
      ${better.length === 0 ? nothing : html`<p>Checks would say no more: ${better.map(({ message }) => message).join(' ')}</p>`}
    </div>`;
  }
}

/** The id under which a scheme is worked out as if the drawn way were pinned. */
const drawnId = (schemeId: string): string => `${schemeId}--drawn`;

/** How long what is drawn is, and the whole with what is left to its end; beside it what was recorded of it. */
function lengthWords({ steps, via, drawnMm, restMm }: DrawnWay, recordedMm: number | null): string {
  const recorded = recordedMm === null ? '' : ` Recorded length: ${metres(recordedMm)}.`;
  if (steps.length === 0) return `No corner yet.${recorded}`;
  const rest =
    restMm < 10
      ? 'It is at its end.'
      : `${metres(restMm)} more to its end as found: ${metres(drawnMm + restMm)}.`;
  return `${metres(drawnMm)} drawn, ${counted(via.length, 'corner')}. ${rest}${recorded}`;
}

customElements.define('draw-way', DrawWay);
declare global {
  interface HTMLElementTagNameMap {
    'draw-way': DrawWay;
  }
}
