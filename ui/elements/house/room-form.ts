import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Room, Storey } from '#model/building.ts';
import {
  changeSide,
  type HouseEdit,
  partRoom,
  setRoomFact,
  takeRoom,
  uniteRooms,
} from '../../edits/house.ts';
import { type RoomSide, roomSides } from '../../house/room-sides.ts';
import { nextRoomName, roomUseWords } from '../../house/room-uses.ts';
import { usualInner } from '../../house/wall-kinds.ts';
import { otherSide, roomAt } from '../../house/wall-line.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { formCss } from '../as-found/form-styles.ts';
import { choicesOf } from '../as-found/found-words.ts';
import '../photos/photo-strip.ts';
import { controlsCss } from '../shared-styles.ts';
import { houseFormCss } from './house-forms.ts';
import { choiceOf, lengthField, nameField } from './own-fields.ts';
import './corner-form.ts';
import './fixture-list.ts';
import './room-floor.ts';
import { sideName } from './side-name.ts';
import './wall-form.ts';

const uses = choicesOf(roomUseWords);
/** A room of the survey: what it is, its sides as measured, its walls, a wall across it, one with the room beside it. */
export class RoomForm extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    storey: { attribute: false },
    room: { attribute: false },
    why: { state: true },
    acrossFrom: { state: true },
    acrossMm: { state: true },
    thickMm: { state: true },
  };
  static override styles = [controlsCss, formCss, houseFormCss];
  declare view: JobView;
  declare storey: Storey;
  declare room: Room;
  declare private why: string;
  declare private acrossFrom: number;
  declare private acrossMm: number | null;
  declare private thickMm: number;

  constructor() {
    super();
    this.why = '';
    this.acrossFrom = 0;
    this.acrossMm = null;
    this.thickMm = usualInner.thicknessMm;
  }

  override render(): TemplateResult {
    const { storey, room } = this;
    const sides = roomSides(storey, room, this.view.estimate.asFound.worked.plan.wallById);
    return html`<div class="fields">
        <div class="pair">
          ${choiceOf({ label: 'What room', options: uses, value: room.use, took: (use) => this.#set('use', use) })}
          ${nameField('Its name', room.name, (name) => {
            if (name.trim() !== '') this.#set('name', name.trim());
          })}
        </div>
        ${this.why === '' ? nothing : html`<p class="why" role="alert">${this.why}</p>`}
        <h4>Sides, plaster to plaster</h4>
        <div class="pair">${sides.map((side, at) => this.#side(sides, side, at))}</div>
      </div>
      ${sides.map(
        (side, at) =>
          html`<details class="less">
            <summary>${sideName(sides, at)}: wall, doors and windows</summary>
            <wall-form .view=${this.view} .storey=${storey} .side=${side}></wall-form>
          </details>`,
      )}
      <room-floor .storey=${storey} .room=${room} .sides=${sides}></room-floor>
      <details class="less">
        <summary>Fixtures: sinks, hobs, baths, radiators, gas</summary>
        <fixture-list .view=${this.view} .storey=${storey} .room=${room} .sides=${sides}></fixture-list>
      </details>
      <details class="less">
        <summary>Move one of its corners</summary>
        <corner-form .view=${this.view} .storey=${storey} .sides=${sides}></corner-form>
      </details>
      <h4>Photos</h4>
      <photo-strip .assets=${this.view.job.assets} .of=${{ kind: 'room', id: room.id }} .name=${room.name} .photos=${room.photos ?? []}></photo-strip>
      <details class="less">
        <summary>Put a wall across it</summary>
        ${this.#across(sides)}
      </details>
      <div class="buttons">
        ${this.#neighbours().map((other) => html`<button class="small" @click=${() => this.#do(uniteRooms(this.view.job, storey.id, room, other))}>Make one with ${other.name}</button>`)}
        <button class="small" @click=${() => this.#do(takeRoom(this.view.job, storey.id, room))}>Remove ${room.name}</button>
      </div>`;
  }

  #side(sides: readonly RoomSide[], { lengthMm }: RoomSide, at: number): TemplateResult {
    return lengthField({
      label: sideName(sides, at),
      value: Math.round(lengthMm * 10) / 10,
      needed: true,
      took: (mm) => {
        if (mm !== null) this.#do(changeSide(this.view.job, this.storey.id, this.room, { at, lengthMm: mm }));
      },
    });
  }

  #across(sides: readonly RoomSide[]): TemplateResult {
    const from = sides[this.acrossFrom];
    return html`<div class="fields">
      ${choiceOf({
        label: 'From',
        options: sides.map((_, at) => ({ value: String(at), label: sideName(sides, at) })),
        value: String(this.acrossFrom),
        took: (at) => {
          this.acrossFrom = Number(at);
        },
      })}
      <div class="pair">
        ${lengthField({
          label: 'From its left corner',
          help: 'Seen from in the room, to the new wall’s face',
          value: this.acrossMm,
          took: (mm) => {
            this.acrossMm = mm;
          },
        })}
        ${lengthField({
          label: 'How thick',
          value: this.thickMm,
          took: (mm) => {
            this.thickMm = mm ?? usualInner.thicknessMm;
          },
        })}
      </div>
      <div class="buttons">
        <button ?disabled=${from === undefined} @click=${() => this.#part(from)}>Put it there</button>
      </div>
    </div>`;
  }

  #part(from: RoomSide | undefined): void {
    if (this.acrossMm === null || from === undefined) {
      this.why = 'Say how far from the corner the wall stands.';
      return;
    }
    // The wall at the place, of several in one line.
    let alongMm = this.acrossMm;
    const wall = from.walls.toReversed().find(({ wallId }) => {
      const found = this.storey.walls.find(({ id }) => id === wallId);
      const mm =
        found === undefined ? 0 : Math.hypot(found.to[0] - found.from[0], found.to[1] - found.from[1]);
      if (alongMm <= mm) return true;
      alongMm -= mm;
      return false;
    });
    const { use } = this.room;
    this.#do(
      partRoom(this.view.job, this.storey.id, this.room, {
        wallId: wall?.wallId ?? from.walls[0]?.wallId ?? '',
        fromLeftMm: this.acrossMm,
        kind: { ...usualInner, thicknessMm: this.thickMm },
        name: nextRoomName(this.view.job.storeys, use),
        use,
      }),
    );
  }

  /** The rooms that share a wall with it, in the order of the file. */
  #neighbours(): readonly Room[] {
    const beside = new Set(
      this.room.walls.map(({ wall, side }) => roomAt(this.storey, wall, otherSide(side))?.id),
    );
    return this.storey.rooms.filter(({ id }) => beside.has(id) && id !== this.room.id);
  }

  #set<K extends 'name' | 'use'>(fact: K, value: Room[K]): void {
    send(this, 'job-edit', setRoomFact(this.storey.id, this.room, fact, value));
  }

  #do(made: HouseEdit): void {
    this.why = made.ok ? '' : made.why;
    if (made.ok) send(this, 'job-edit', made.edit);
    else this.requestUpdate();
  }
}
customElements.define('room-form', RoomForm);
declare global {
  interface HTMLElementTagNameMap {
    'room-form': RoomForm;
  }
}
