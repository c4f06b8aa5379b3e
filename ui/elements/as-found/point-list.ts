import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { pointKindWords } from '#drawing/point-kind-words.ts';
import { buildPlan } from '#engine/plan/build-plan.ts';
import type { Point } from '#model/installation.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { addFoundPoints } from '../../edits/points.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { newId } from '../../new-id.ts';
import { controlsCss } from '../shared-styles.ts';
import { formCss } from './form-styles.ts';
import { newPoint } from './new-point.ts';
import { placeWords } from './place-words.ts';
import './point-form.ts';
import './points-by-room.ts';
import { thingRow } from './thing-row.ts';
import { wallChoices } from './wall-choices.ts';

/** The points that are there, each with its form, and the ways to list more. */
export class PointList extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    placing: { attribute: false },
    tapping: { attribute: false },
    listing: { state: true },
  };
  static override styles = [controlsCss, formCss];
  declare view: JobView;
  /** The point that the plan waits to be shown the place of. */
  declare placing: string | null;
  /** True while each tap on the plan makes a point. */
  declare tapping: boolean;
  /** Whether the list by room is open from the start: in a job that has no points yet, and on until it is shut. */
  declare private listing: boolean;

  constructor() {
    super();
    keepFocus(this);
    this.placing = null;
    this.tapping = false;
    this.listing = false;
  }

  override willUpdate(): void {
    if (!this.hasUpdated) this.listing = foundPoints(this.view).length === 0;
  }

  override render(): TemplateResult {
    const found = foundPoints(this.view);
    const wide = found.some(({ label }) => label.length > LONGEST_LABEL);
    const plan = buildPlan(this.view.job);
    const faces = wallChoices(plan);
    return html`${
      found.length === 0
        ? nothing
        : html`<ul class="list">
              ${found.map((point) =>
                thingRow(this.view, {
                  id: point.id,
                  name: point.label,
                  facts: pointKindWords[point.kind],
                  more: [placeWords(plan, faces, point.place)],
                  state: stateWords(point),
                  wide,
                  form: () => this.#form(point),
                }),
              )}
            </ul>`
    }
      <div class="buttons">
        <button class="small" @click=${() => this.#add()}>Add a point</button>
        <button class="small" aria-pressed=${this.tapping} @click=${() => this.#tap()}>
          ${this.tapping ? 'Tap each point; press here when done' : 'Tap points on the plan'}
        </button>
      </div>
      <details class="less" ?open=${this.listing}>
        <summary>List points by room</summary>
        <points-by-room .view=${this.view}></points-by-room>
      </details>`;
  }

  #add(): void {
    const id = newId();
    send(this, 'job-edit', addFoundPoints([newPoint(this.view.job, id)]));
    send(this, 'thing-chosen', { subjectId: id });
  }

  #tap(): void {
    this.dispatchEvent(new CustomEvent('points-wanted', { bubbles: true, composed: true }));
  }

  #form(point: Point): TemplateResult {
    return html`<point-form
      .view=${this.view}
      .point=${point}
      .waiting=${this.placing === point.id}
    ></point-form>`;
  }
}

/** Labels up to this many letters fit the narrow column before the line. */
const LONGEST_LABEL = 5;

const foundPoints = ({ job }: JobView): readonly Point[] =>
  job.points.filter(({ status }) => status !== 'wanted');

function stateWords({ status, asFound }: Point): string {
  if (status === 'removed') return 'taken out';
  if (status === 'replaced') return 'replaced';
  return asFound?.boxDepthMm === undefined ? 'box depth?' : '';
}
customElements.define('point-list', PointList);
declare global {
  interface HTMLElementTagNameMap {
    'point-list': PointList;
  }
}
