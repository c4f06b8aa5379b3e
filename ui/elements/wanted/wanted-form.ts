import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { STOCK_DEPTHS_MM } from '#engine/connections/box-depth.ts';
import { plateFinish } from '#engine/connections/finish.ts';
import { buildPlan } from '#engine/plan/build-plan.ts';
import type { Point } from '#model/installation.ts';
import { nextLabel } from '../../edits/next-label.ts';
import { copyPoint, setPointFact, setPointKind } from '../../edits/points.ts';
import { removePoint } from '../../edits/remove-things.ts';
import { setReplaces } from '../../edits/replacements.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { newId } from '../../new-id.ts';
import { featureFields, fieldsOfKind, loadFields } from '../as-found/accessory-fields.ts';
import { choiceFact, edits, mustText } from '../as-found/fact-fields.ts';
import { pointFacts } from '../as-found/facts-of.ts';
import { formCss } from '../as-found/form-styles.ts';
import { finishWords, mounts, plateFinishes, pointKinds } from '../as-found/found-words.ts';
import '../as-found/place-fields.ts';
import type { PlaceChange } from '../as-found/place-fields.ts';
import { pointInRoom } from '../as-found/room-of-place.ts';
import { removeButton } from '../as-found/thing-row.ts';
import { firstHeightMm, usualHeights } from '../as-found/usual-heights.ts';
import { controlsCss } from '../shared-styles.ts';

type Box = NonNullable<Point['box']>;

/** A wanted point: where it is, what it is, what hangs on it, the box to fit, and what it replaces. */
export class WantedForm extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    point: { attribute: false },
    waiting: { attribute: false },
  };
  static override styles = [controlsCss, formCss];
  declare view: JobView;
  declare point: Point;
  /** True while the plan waits to be shown where the point goes. */
  declare waiting: boolean;

  constructor() {
    super();
    this.waiting = false;
  }

  override render(): TemplateResult {
    const { point, view } = this;
    const { thing, set } = pointFacts(point);
    const facts = { thing, set };
    return html`<div class="fields">
      <choice-field
        label="What it is"
        .empty=${null}
        .options=${pointKinds}
        .value=${point.kind}
        @field-change=${edits<Point['kind']>((kind) => setPointKind(point, kind))}
      ></choice-field>
      <place-fields
        .job=${view.job}
        .place=${point.place}
        .name=${point.label}
        .heights=${usualHeights(point.kind, this.view.library.terms.heights)}
        .newHeightMm=${firstHeightMm(point.kind, this.view.library.terms.heights)}
        .waiting=${this.waiting}
        @place-change=${(event: CustomEvent<PlaceChange>) => send(this, 'job-edit', setPointFact(point, 'place', event.detail.place))}
      ></place-fields>
      ${fieldsOfKind(point, view.job.points)} ${loadFields(point)}
      ${choiceFact(facts, 'mount', { label: 'Mounting', options: mounts, empty: 'As the wall asks for' })}
      ${this.#box()} ${this.#finish()}
      <details class="less">
        <summary>Features, what it replaces, label</summary>
        <div class="fields">
          ${featureFields(point)} ${this.#replaces()}
          ${choiceFact(facts, 'circuit', {
            label: 'Circuit it should be on',
            options: view.job.circuits.map(({ id, name }) => ({ value: id, label: name })),
            empty: 'As the scheme joins it',
          })}
          ${mustText('Label', point.label, (text) => setPointFact(point, 'label', text))}
        </div>
      </details>
      <div class="buttons"><button class="small" @click=${() => this.#copy()}>Copy ${point.label}</button></div>
      ${removeButton(point.label, (from) => send(from, 'job-edit', removePoint(point)))}
    </div>`;
  }

  /** The box is worked out from what is fitted and what the wall is; depth and gangs given by hand go before that. */
  #box(): TemplateResult {
    const { box } = this.point;
    const workedOut = this.view.scheme?.boxes.find(({ pointId }) => pointId === this.point.id);
    const gangs = box?.gangs ?? workedOut?.gangs ?? (this.point.kind === 'socket-twin' ? 2 : 1);
    const put = (facts: Partial<Box>, depthMm: number) =>
      setPointFact(this.point, 'box', { depthMm, gangs, ...box, ...facts });
    const words =
      workedOut === undefined ? 'Automatic, once it is joined' : `Automatic: ${workedOut.depthMm} mm`;
    const depthMm = box?.depthMm ?? workedOut?.depthMm ?? 35;
    return html`<div class="pair">
      <choice-field
        label="Depth of the box"
        .empty=${words}
        .options=${depthsWith(box?.depthMm)}
        .value=${box === undefined ? null : String(box.depthMm)}
        @field-change=${edits<string | null>((depth) =>
          depth === null ? setPointFact(this.point, 'box', null) : put({ depthMm: Number(depth) }, depthMm),
        )}
      ></choice-field>
      <choice-field
        label="Gangs"
        .empty=${`Automatic: ${gangs}`}
        .options=${['1', '2', '3', '4'].map((value) => ({ value, label: value }))}
        .value=${box === undefined ? null : String(box.gangs)}
        @field-change=${edits<string | null>((count) =>
          count === null ? setPointFact(this.point, 'box', null) : put({ gangs: Number(count) }, depthMm),
        )}
      ></choice-field>
    </div>`;
  }

  /** How its plate looks: its own finish goes before the job's; what is weatherproof has none to choose. */
  #finish(): TemplateResult | typeof nothing {
    const { point } = this;
    if (point.kind === 'joint' || point.features.includes('ip66')) return nothing;
    const { job, library } = this.view;
    const ofJob = plateFinish({ features: point.features }, job.terms, library.terms);
    const whose = job.terms.finish === undefined && library.terms.finish !== undefined ? 'firm' : 'job';
    const words = ofJob === 'metal' ? 'Metal, of any look' : `As the ${whose}: ${finishWords(ofJob)}`;
    return html`<choice-field
      label="Finish of the plate"
      .empty=${words}
      .options=${plateFinishes}
      .value=${point.finish ?? null}
      @field-change=${edits<Point['finish'] | null>((finish) => setPointFact(point, 'finish', finish ?? null))}
    ></choice-field>`;
  }

  #replaces(): TemplateResult {
    const { points } = this.view.job;
    const plan = buildPlan(this.view.job);
    const others = points.filter(
      ({ id, status }) => id === this.point.replaces || (status !== 'wanted' && status !== 'replaced'),
    );
    return html`<choice-field
      label="It replaces"
      .empty=${'Nothing'}
      .options=${others.map((other) => ({ value: other.id, label: pointInRoom(plan, other) }))}
      .value=${this.point.replaces ?? null}
      help="Its cables pass to the new one; without a place of its own it stands where the old one was."
      @field-change=${edits<string | null>((id) => setReplaces(this.point, others.find((other) => other.id === id) ?? null))}
    ></choice-field>`;
  }

  #copy(): void {
    const id = newId();
    send(this, 'job-edit', copyPoint(this.point, id, nextLabel(this.view.job.points, true)));
    send(this, 'thing-chosen', { subjectId: id });
  }
}

/** The stocked depths, and the one that is asked for where it is none of them. */
function depthsWith(
  depthMm: number | undefined,
): readonly { readonly value: string; readonly label: string }[] {
  const depths: readonly number[] = STOCK_DEPTHS_MM;
  const all = depthMm === undefined || depths.includes(depthMm) ? depths : [depthMm, ...depths];
  return all.map((depth) => ({ value: String(depth), label: `${depth} mm` }));
}
customElements.define('wanted-form', WantedForm);
declare global {
  interface HTMLElementTagNameMap {
    'wanted-form': WantedForm;
  }
}
