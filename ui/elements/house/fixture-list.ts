import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Fixture, Room, Storey } from '#model/building.ts';
import { addFixture, placeFixture, removeFixture, setFixtureHeight } from '../../edits/fixtures.ts';
import type { HouseEdit } from '../../edits/house.ts';
import { type AlongSide, alongSide, roomHolding, sideBehind } from '../../house/along-side.ts';
import { fixtureWords, heightsRead, usualFixtures, usualHeightsOf } from '../../house/fixture-kinds.ts';
import type { HousePart } from '../../house/house-parts.ts';
import type { RoomSide } from '../../house/room-sides.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { formCss } from '../as-found/form-styles.ts';
import { choicesOf } from '../as-found/found-words.ts';
import { controlsCss } from '../shared-styles.ts';
import { type BoxChange, boxFields } from './box-fields.ts';
import { houseFormCss } from './house-forms.ts';
import { choiceOf, lengthField } from './own-fields.ts';
import { sideName } from './side-name.ts';

const kinds = choicesOf(fixtureWords);
const heightWords = { fromMm: 'Its foot above floor', toMm: 'Its top above floor' } as const;
type HeightFact = keyof typeof heightWords;

const heightFacts = (kind: Fixture['kind']): readonly HeightFact[] =>
  heightsRead[kind] === 'both' ? ['fromMm', 'toMm'] : heightsRead[kind] === 'top' ? ['toMm'] : [];

/**
 * What is fixed in a room and keeps points and cables away, or has them over it: each along a wall, a new one as usual.
 *
 * @fires part-taken, job-edit
 */
export class FixtureList extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    storey: { attribute: false },
    room: { attribute: false },
    sides: { attribute: false },
    open: { state: true },
    kind: { state: true },
    at: { state: true },
    leftMm: { state: true },
    size: { state: true },
    heights: { state: true },
    why: { state: true },
  };
  static override styles = [controlsCss, formCss, houseFormCss];
  declare view: JobView;
  declare storey: Storey;
  declare room: Room;
  declare sides: readonly RoomSide[];
  /** The fixture whose fields are shown; null for none. */
  declare private open: string | null;
  declare private kind: Fixture['kind'];
  declare private at: number;
  declare private leftMm: number | null;
  /** As measured; what is absent is as usual. */
  declare private size: Partial<Omit<AlongSide, 'leftMm'>>;
  declare private heights: Pick<Fixture, HeightFact>;
  declare private why: string;

  constructor() {
    super();
    this.open = null;
    this.kind = 'sink';
    this.at = 0;
    this.why = '';
    this.#clear();
  }

  #clear(): void {
    this.leftMm = null;
    this.size = {};
    this.heights = {};
  }

  override render(): TemplateResult {
    const { sides } = this;
    if (sides.length === 0)
      return html`<p class="hint">Mend the walls of ${this.room.name} first: it does not close.</p>`;
    const map = this.view.estimate.asFound.worked.plan.wallById;
    const own = this.storey.fixtures.filter(
      ({ outline }) => roomHolding(this.storey, outline, map)?.id === this.room.id,
    );
    return html`<div class="fields">
      ${this.why === '' ? nothing : html`<p class="why" role="alert">${this.why}</p>`}
      ${
        own.length === 0
          ? html`<p class="hint">Sinks, hobs, baths, radiators and gas keep points and cables at a distance: none is noted yet.</p>`
          : html`<ul class="list">
              ${own.map((fixture) => this.#fixture(fixture))}
            </ul>`
      }
      ${this.#newOne()}
    </div>`;
  }

  #fixture(fixture: Fixture): TemplateResult {
    const at = sideBehind(this.sides, fixture.outline) ?? 0;
    const side = this.sides[at];
    if (side === undefined) return html``;
    const { leftMm, ...box } = alongSide(side, fixture.outline);
    const isOpen = this.open === fixture.id;
    const isAssumed = fixture.certainty?.outline === 'assumed';
    return html`<li data-thing=${fixture.id}>
      <button
        class="row wide"
        aria-expanded=${isOpen}
        @click=${() => {
          this.open = isOpen ? null : fixture.id;
        }}
      >
        <span class="name">${fixtureWords[fixture.kind]}</span>
        <span class="state size">${sideName(this.sides, at)}, ${Math.round(leftMm)}–${Math.round(leftMm + box.widthMm)}${isAssumed ? ' (assumed)' : ''}</span>
      </button>
      ${isOpen ? this.#open(fixture, at, { leftMm, ...box }) : nothing}
    </li>`;
  }

  #open(fixture: Fixture, at: number, box: AlongSide): TemplateResult {
    const put = (change: BoxChange): void => {
      const side = this.sides['at' in change ? change.at : at];
      if (side === undefined) return;
      this.#do(
        placeFixture(this.storey.id, fixture, { side, box: 'at' in change ? box : { ...box, ...change } }),
      );
    };
    return html`<div class="open fields">
      ${boxFields({ sides: this.sides, at, leftMm: box.leftMm, box, sizeHelp: '' }, put)}
      <div class="pair">
        ${heightFacts(fixture.kind).map((fact) =>
          lengthField({
            label: heightWords[fact],
            help: fixture.certainty?.[fact] === 'assumed' ? 'As usual: assumed' : '',
            value: fixture[fact] ?? null,
            min: 0,
            took: (mm) => send(this, 'job-edit', setFixtureHeight(this.storey.id, fixture, fact, mm)),
          }),
        )}
      </div>
      <div class="buttons">
        <button class="small" @click=${() => this.#moveOnPlan(fixture)}>Move it on the plan</button>
        <button class="small" @click=${() => send(this, 'job-edit', removeFixture(this.storey.id, fixture))}>
          Remove the ${fixtureWords[fixture.kind].toLowerCase()}
        </button>
      </div>
    </div>`;
  }

  #moveOnPlan({ id }: Fixture): void {
    const part = { part: 'fixture', fixtureId: id } as const;
    this.dispatchEvent(new CustomEvent('part-taken', { detail: { part }, bubbles: true, composed: true }));
  }

  #newOne(): TemplateResult {
    const { kind, sides } = this;
    const usual = usualFixtures[kind];
    const box = { offMm: 0, widthMm: usual.widthMm, depthMm: usual.depthMm, ...this.size };
    return html`<h4>Another</h4>
      ${choiceOf({
        label: 'What is fixed there',
        options: kinds,
        value: kind,
        took: (chosen) => {
          this.kind = chosen;
          this.#clear();
        },
      })}
      ${boxFields({ sides, at: this.at, leftMm: this.leftMm, box, sizeHelp: 'As usual until measured' }, (change) => this.#took(change))}
      <div class="pair">
        ${heightFacts(kind).map((fact) =>
          lengthField({
            label: heightWords[fact],
            help: 'As usual until measured',
            value: this.heights[fact] ?? usual[fact],
            min: 0,
            took: (mm) => {
              this.heights = { ...this.heights, [fact]: mm ?? usual[fact] };
            },
          }),
        )}
      </div>
      <div class="buttons"><button @click=${() => this.#add(box)}>Put the ${fixtureWords[kind].toLowerCase()} there</button></div>`;
  }

  #took(change: BoxChange): void {
    if ('at' in change) this.at = change.at;
    else if (change.leftMm === undefined) this.size = { ...this.size, ...change };
    else this.leftMm = change.leftMm;
  }

  #add(box: Omit<AlongSide, 'leftMm'>): void {
    const side = this.sides[this.at];
    if (this.leftMm === null || side === undefined) {
      this.why = 'Say how far it is from the left corner.';
      return;
    }
    const isMeasured = this.size.widthMm !== undefined && this.size.depthMm !== undefined;
    const usualFacts = heightFacts(this.kind).filter((fact) => this.heights[fact] === undefined);
    this.#do(
      addFixture(this.storey.id, {
        kind: this.kind,
        side,
        box: { leftMm: this.leftMm, ...box },
        heights: { ...usualHeightsOf(this.kind), ...this.heights },
        assumed: [...(isMeasured ? [] : (['outline'] as const)), ...usualFacts],
      }),
    );
    if (this.why === '') this.#clear();
  }

  #do(made: HouseEdit): void {
    this.why = made.ok ? '' : made.why;
    if (made.ok) send(this, 'job-edit', made.edit);
    else this.requestUpdate();
  }
}
customElements.define('fixture-list', FixtureList);
declare global {
  interface HTMLElementTagNameMap {
    'fixture-list': FixtureList;
  }
  interface HTMLElementEventMap {
    /** A part of the house is to be moved on the plan. */
    'part-taken': CustomEvent<{ readonly part: HousePart }>;
  }
}
