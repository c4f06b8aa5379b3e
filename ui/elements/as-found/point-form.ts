import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { buildPlan } from '#engine/plan/build-plan.ts';
import type { Point } from '#model/installation.ts';
import type { Certainty } from '#model/primitives.ts';
import { markableEntry } from '../../edits/marked.ts';
import { setFoundFact, setPointCertainty, setPointFact, setPointKind } from '../../edits/points.ts';
import { removePoint } from '../../edits/remove-things.ts';
import { setTakenAway } from '../../edits/replacements.ts';
import { type JobEdit, send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import '../photos/photo-strip.ts';
import { controlsCss } from '../shared-styles.ts';
import { featureFields, fieldsOfKind, loadFields } from './accessory-fields.ts';
import { circuitOfPoint } from './branch-tapping.ts';
import {
  certaintyEdits,
  choiceFact,
  edits,
  mustChoice,
  mustText,
  numberFact,
  yesNoFact,
} from './fact-fields.ts';
import { plateFacts, pointFacts } from './facts-of.ts';
import { formCss } from './form-styles.ts';
import { coreColours, foundRoles, mounts, pointKinds } from './found-words.ts';
import { nextPlate } from './next-point.ts';
import './place-fields.ts';
import type { PlaceChange } from './place-fields.ts';
import './plate-steps.ts';
import { removeButton } from './thing-row.ts';
import { foundHeightMm, usualHeights } from './usual-heights.ts';

/** A point as found: what it is and where, what was behind its plate, and whether it stays. */
export class PointForm extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    point: { attribute: false },
    waiting: { attribute: false },
  };
  static override styles = [controlsCss, formCss];
  declare view: JobView;
  declare point: Point;
  /** True while the plan waits to be shown where the point is. */
  declare waiting: boolean;

  constructor() {
    super();
    this.waiting = false;
  }

  override render(): TemplateResult {
    const { point } = this;
    const { circuits } = this.view.job;
    return html`<div class="fields">
      ${this.#kindField()}
      ${choiceFact(pointFacts(point), 'circuit', {
        label: 'Circuit',
        options: circuits.map(({ id, name }) => ({ value: id, label: name })),
      })}
      ${this.#plate()}
      <h4>Photos</h4>
      <photo-strip .assets=${this.view.job.assets} .of=${{ kind: 'point', id: point.id }} .name=${point.label} .photos=${point.photos}></photo-strip>
      <h4>Where it is</h4>
      <place-fields
        .job=${this.view.job}
        .place=${point.place}
        .name=${point.label}
        .heights=${usualHeights(point.kind, this.view.library.terms.heights)}
        .newHeightMm=${foundHeightMm(this.view.job.points, point.kind, this.view.library.terms.heights)}
        .waiting=${this.waiting}
        @place-change=${(event: CustomEvent<PlaceChange>) => send(this, 'job-edit', setPointFact(point, 'place', event.detail.place))}
      ></place-fields>
      ${choiceFact(pointFacts(point), 'mount', { label: 'Mounting', options: mounts })}
      ${yesNoFact(pointFacts(point), 'accessible', { label: 'It can be reached' })}
      ${fieldsOfKind(point, this.view.job.points)}
      <details class="less">
        <summary>Load, features, label</summary>
        <div class="fields">
          ${loadFields(point)} ${featureFields(point)}
          ${mustText('Label', point.label, (text) => setPointFact(point, 'label', text))}
        </div>
      </details>
      ${this.#spur()} ${this.#stays()}
      ${removeButton(point.label, (from) => send(from, 'job-edit', removePoint(point)))}
    </div>`;
  }

  /** What hangs on it by a cable of its own is tapped on the plan; of no circuit yet, nothing can. */
  #spur(): TemplateResult | typeof nothing {
    const { point } = this;
    if (circuitOfPoint(this.view.job, point) === null) return nothing;
    const detail = { pointId: point.id };
    return html`<div class="buttons">
      <button class="small" @click=${() => this.dispatchEvent(new CustomEvent('spur-wanted', { detail, bubbles: true, composed: true }))}>
        Spur from ${point.label}: tap what hangs on it
      </button>
    </div>`;
  }

  #kindField(): TemplateResult {
    const { point } = this;
    return mustChoice(
      {
        thing: point,
        certainty: point.certainty,
        set: (_: 'kind', kind: Point['kind']) => setPointKind(point, kind),
        sure: (_: 'kind', certainty) => setPointCertainty(point, 'kind', certainty),
      },
      'kind',
      { label: 'What it is', options: pointKinds },
    );
  }

  #plate(): TemplateResult {
    const { point, view } = this;
    const facts = plateFacts(point);
    const steps =
      point.kind === 'joint'
        ? nothing
        : html`<plate-steps
            data-fact="plate"
            .point=${point}
            .next=${nextPlate(view.job, buildPlan(view.job), point.id)}
          ></plate-steps>`;
    return html`<h4>Behind the plate</h4>
      ${steps}
      <details class="less">
        <summary>Other figures, and how sure they are</summary>
        <div class="fields">${this.#plateFigures(facts)}</div>
      </details>`;
  }

  #plateFigures(facts: ReturnType<typeof plateFacts>): TemplateResult {
    return html`${numberFact(facts, 'cablesSeen', { label: 'Cables seen', unit: '', max: 20, whole: true })}
      ${numberFact(facts, 'boxDepthMm', { label: 'Depth of the box', unit: 'mm', max: 1000 })}
      ${choiceFact(facts, 'role', { label: 'On the ring or a spur', options: foundRoles })}
      ${numberFact(facts, 'slackMm', { label: 'Slack of the cables', unit: 'mm', max: 10_000 })}
      ${choiceFact(facts, 'colours', { label: 'Colours of the cores', options: coreColours })}
      ${this.#lugs()} ${this.#shallow()}`;
  }

  /** What is done should the box be too shallow for what is added; a joint has none. */
  #shallow(): TemplateResult | typeof nothing {
    const { point } = this;
    if (point.kind === 'joint') return nothing;
    return html`<choice-field
      label="If the box is too shallow"
      help=${SHALLOW_HELP}
      .empty=${'A deeper box is let in'}
      .options=${[{ value: 'frame', label: 'A spacer frame goes over it' }]}
      .value=${point.shallowBox ?? null}
      @field-change=${edits<'frame' | null>((frame) => setPointFact(point, 'shallowBox', frame))}
    ></choice-field>`;
  }

  /** Lugs are sound, broken, or described in words by whoever looked; words stay until another answer is chosen. */
  #lugs(): TemplateResult {
    const lugs = this.point.asFound?.lugs;
    const own = typeof lugs === 'string' ? [{ value: 'words', label: lugs }] : [];
    const value = lugs === undefined ? null : typeof lugs === 'string' ? 'words' : String(lugs);
    const sure = (certainty: Certainty) => setPointCertainty(this.point, 'lugs', certainty);
    return html`<choice-field
      label="Lugs of the box"
      .certainty=${lugs === undefined ? null : (plateFacts(this.point).certainty.lugs ?? 'seen')}
      @certainty-change=${certaintyEdits(sure)}
      .options=${[{ value: 'true', label: 'Sound' }, { value: 'false', label: 'Broken: box to be replaced' }, ...own]}
      .value=${value}
      @field-change=${edits<string | null>((word) =>
        word === 'words' ? null : this.#setLugs(word === null ? null : word === 'true'),
      )}
    ></choice-field>`;
  }

  #setLugs(value: boolean | null): JobEdit {
    const edit = setFoundFact(this.point, 'lugs', value);
    return markableEntry(edit, value, (certainty) => setPointCertainty(this.point, 'lugs', certainty));
  }

  #stays(): TemplateResult {
    const { point } = this;
    if (point.status === 'replaced') {
      const by = this.view.job.points.find(({ replaces }) => replaces === point.id);
      return html`<p class="hint">${by?.label ?? 'A wanted point'} replaces it.</p>`;
    }
    return html`<tick-field
      label="To be taken away in this work"
      .value=${point.status === 'removed'}
      @field-change=${edits<boolean>((isTakenAway) => setTakenAway(point, isTakenAway))}
    ></tick-field>`;
  }
}
/** Where a frame serves better than another box, and what it leaves. */
const SHALLOW_HELP =
  'A frame is quick and spares tiles and wallpaper; the plate then stands 10 to 25 mm further out.';
customElements.define('point-form', PointForm);
declare global {
  interface HTMLElementTagNameMap {
    'point-form': PointForm;
  }
}
