import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Room, Storey } from '#model/building.ts';
import type { HouseEdit } from '../../edits/house.ts';
import { addStairwell, placeStairwell, removeStairwell } from '../../edits/stairwells.ts';
import { type AlongSide, alongSide, roomHolding, sideBehind } from '../../house/along-side.ts';
import { type RoomSide, roomSides } from '../../house/room-sides.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { formCss } from '../as-found/form-styles.ts';
import { controlsCss } from '../shared-styles.ts';
import { type BoxChange, boxFields } from './box-fields.ts';
import { houseFormCss } from './house-forms.ts';
import { choiceOf } from './own-fields.ts';

/** A flight of stairs as most are, mm: common practice, no source. */
const USUAL = { offMm: 0, widthMm: 2400, depthMm: 850 } as const;

/** The openings in a storey's floor that stairs come up through: no cable crosses one. Each is measured from a side of a room. */
export class StairwellList extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    storey: { attribute: false },
    roomId: { state: true },
    at: { state: true },
    leftMm: { state: true },
    size: { state: true },
    why: { state: true },
  };
  static override styles = [controlsCss, formCss, houseFormCss];
  declare view: JobView;
  declare storey: Storey;
  /** The room that a new one is measured in; null: the first, a landing or a hall before others. */
  declare private roomId: string | null;
  declare private at: number;
  declare private leftMm: number | null;
  declare private size: Partial<Omit<AlongSide, 'leftMm'>>;
  declare private why: string;

  constructor() {
    super();
    this.roomId = null;
    this.at = 0;
    this.leftMm = null;
    this.size = {};
    this.why = '';
  }

  get #room(): Room | undefined {
    const { rooms } = this.storey;
    return (
      rooms.find(({ id }) => id === this.roomId) ??
      rooms.find(({ use }) => use === 'landing') ??
      rooms.find(({ use }) => use === 'hall') ??
      rooms[0]
    );
  }

  #sidesOf(room: Room): readonly RoomSide[] {
    return roomSides(this.storey, room, this.view.estimate.asFound.worked.plan.wallById);
  }

  override render(): TemplateResult {
    const { storey } = this;
    return html`<div class="fields">
      <p class="hint">The opening in this floor where stairs come up (${storey.name}). No cable is led across it.</p>
      ${this.why === '' ? nothing : html`<p class="why" role="alert">${this.why}</p>`}
      ${storey.stairwells.map((outline, at) => this.#well(outline, at))} ${this.#newOne()}
    </div>`;
  }

  #well(outline: Storey['stairwells'][number], index: number): TemplateResult {
    const { storey } = this;
    const room = roomHolding(storey, outline) ?? this.#room;
    const sides = room === undefined ? [] : this.#sidesOf(room);
    const at = sideBehind(sides, outline);
    const side = at === null ? undefined : sides[at];
    const name = storey.stairwells.length > 1 ? `Stairwell ${index + 1}` : 'Stairwell';
    const remove = html`<div class="buttons">
      <button class="small" @click=${() => send(this, 'job-edit', removeStairwell(storey.id, index))}>Remove the ${name.toLowerCase()}</button>
    </div>`;
    if (side === undefined || at === null || room === undefined) return html`<h4>${name}</h4>${remove}`;
    const box = alongSide(side, outline);
    const put = (change: BoxChange): void => {
      const chosen = sides['at' in change ? change.at : at];
      if (chosen === undefined) return;
      const asked = 'at' in change ? box : { ...box, ...change };
      this.#do(placeStairwell(storey.id, index, { side: chosen, box: asked }));
    };
    return html`<h4>${name}, measured in ${room.name}</h4>
      ${boxFields({ sides, at, leftMm: box.leftMm, box, sizeHelp: '' }, put)} ${remove}`;
  }

  #newOne(): TemplateResult {
    const room = this.#room;
    const sides = room === undefined ? [] : this.#sidesOf(room);
    if (room === undefined || sides.length === 0)
      return html`<p class="hint">Draw a room of the storey first: a stairwell is measured from one of its sides.</p>`;
    const at = Math.min(this.at, sides.length - 1);
    const box = { ...USUAL, ...this.size };
    return html`<h4>${this.storey.stairwells.length === 0 ? 'A stairwell' : 'Another stairwell'}</h4>
      ${choiceOf({
        label: 'Measured in',
        options: this.storey.rooms.map(({ id, name }) => ({ value: id, label: name })),
        value: room.id,
        took: (id) => {
          this.roomId = id;
          this.at = 0;
        },
      })}
      ${boxFields({ sides, at, leftMm: this.leftMm, box, sizeHelp: '' }, (change) => {
        if ('at' in change) this.at = change.at;
        else if (change.leftMm === undefined) this.size = { ...this.size, ...change };
        else this.leftMm = change.leftMm;
      })}
      <div class="buttons"><button @click=${() => this.#add(sides[at], box)}>Put the stairwell there</button></div>`;
  }

  #add(side: RoomSide | undefined, box: Omit<AlongSide, 'leftMm'>): void {
    if (this.leftMm === null || side === undefined) {
      this.why = 'Say how far it is from the left corner.';
      return;
    }
    this.#do(addStairwell(this.storey.id, side, { leftMm: this.leftMm, ...box }));
    if (this.why !== '') return;
    this.leftMm = null;
    this.size = {};
  }

  #do(made: HouseEdit): void {
    this.why = made.ok ? '' : made.why;
    if (made.ok) send(this, 'job-edit', made.edit);
    else this.requestUpdate();
  }
}
customElements.define('stairwell-list', StairwellList);
declare global {
  interface HTMLElementTagNameMap {
    'stairwell-list': StairwellList;
  }
}
