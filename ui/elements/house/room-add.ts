import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Room, Storey } from '#model/building.ts';
import type { Place } from '#model/installation.ts';
import { ToolHold } from '../../controllers/tool-hold.ts';
import { drawRoom, type HouseEdit } from '../../edits/house.ts';
import type { Beside } from '../../house/beside.ts';
import { fittedRoom, type RoomBySides, rectangleOf } from '../../house/fitted-room.ts';
import { besideTap, freeWalls, hasShell } from '../../house/free-walls.ts';
import { freeCorners, type HouseCorner } from '../../house/house-corners.ts';
import { likelyRoomUse, nextRoomName, roomUseWords } from '../../house/room-uses.ts';
import { anticlockwise, sharedOut, type WalkedSide } from '../../house/room-walk.ts';
import type { Vector } from '../../house/vector.ts';
import { usualInner, usualOuter } from '../../house/wall-kinds.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { formCss } from '../as-found/form-styles.ts';
import { choicesOf } from '../as-found/found-words.ts';
import { onEnter } from '../fields/on-enter.ts';
import { controlsCss } from '../shared-styles.ts';
import { choiceOf, lengthField, nameField } from './own-fields.ts';
import './walked-sides.ts';
import { firstSideMm, wallBetween } from './wall-between.ts';

const uses = choicesOf(roomUseWords);

/** A corner of the outer walls, as a choice beside the walls that a room can stand at. */
const cornerChoice = ({ words }: HouseCorner) => ({
  value: `corner/${words}`,
  label: `in a corner of the outer walls: ${words}`,
});

/** Draws a new room: what it is, its sides as measured, and beside which wall it stands. @fires job-edit, things-lit */
export class RoomAdd extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    storey: { attribute: false },
    use: { state: true },
    name: { state: true },
    how: { state: true },
    alongMm: { state: true },
    awayMm: { state: true },
    sides: { state: true },
    beside: { state: true },
    inMm: { state: true },
    betweenMm: { state: true },
    outerMm: { state: true },
    corner: { state: true },
    fitted: { state: true },
    why: { state: true },
  };
  static override styles = [
    controlsCss,
    formCss,
    css`
      :host {
        display: block;
      }
      .why {
        margin: 0;
        color: var(--fail);
        font-weight: 600;
      }
    `,
  ];
  declare view: JobView;
  declare storey: Storey;
  /** Null: the likeliest. */
  declare private use: Room['use'] | null;
  /** Null: as its use says. */
  declare private name: string | null;
  declare private how: 'two-sides' | 'wall-by-wall';
  declare private alongMm: number | null;
  declare private awayMm: number | null;
  declare private sides: readonly WalkedSide[];
  declare private beside: Beside | null;
  declare private inMm: number;
  declare private betweenMm: number;
  declare private outerMm: number;
  /** Null for none; the first room is always in one, where walls stand already. */
  declare private corner: HouseCorner | null;
  /** As the room would have no wall through it; null for none such. */
  declare private fitted: RoomBySides | null;
  declare private why: string;

  /** While it is held the plan waits for the wall that the room stands beside. */
  readonly #wall = new ToolHold(this, 'wall', {
    placed: (place) => {
      this.#wall.letGo();
      if ('wall' in place) this.#besideWall(place);
    },
  });

  constructor() {
    super();
    this.how = 'two-sides';
    this.betweenMm = usualInner.thicknessMm;
    this.outerMm = usualOuter.thicknessMm;
    this.#clear();
  }

  /** Ready for the next room. */
  #clear(): void {
    this.use = null;
    this.name = null;
    this.alongMm = null;
    this.awayMm = null;
    this.sides = [];
    this.beside = null;
    this.inMm = 0;
    this.why = '';
    this.corner = null;
    this.fitted = null;
  }

  /** The wall was tapped: a room whose sides are told is drawn there and then. */
  #besideWall(place: Extract<Place, { wall: string }>): void {
    const beside = besideTap(this.storey, place);
    if (beside === null) {
      this.why = 'A room is on both sides of that wall: tap one with nothing behind it.';
      return;
    }
    this.beside = beside;
    this.corner = null;
    this.inMm = 0;
    this.why = '';
    this.#light();
    if (this.#outline !== null) this.#draw();
  }

  /** The wall that the room is to stand beside is seen on the plan. */
  #light(): void {
    send(this, 'things-lit', { subjectIds: this.beside === null ? [] : [this.beside.wallId] });
  }

  get #outline(): readonly Vector[] | null {
    if (this.how === 'wall-by-wall') {
      if (this.sides.length < 3) return null;
      return anticlockwise(sharedOut(this.sides));
    }
    const { alongMm, awayMm } = this;
    if (alongMm === null || awayMm === null) return null;
    return rectangleOf({ alongMm, awayMm });
  }

  get #use(): Room['use'] {
    return this.use ?? likelyRoomUse(this.view.job.storeys, this.storey);
  }

  get #name(): string {
    return this.name ?? nextRoomName(this.view.job.storeys, this.#use);
  }

  override render(): TemplateResult {
    const isFirst = this.storey.rooms.length === 0;
    return html`<div class="fields" @keydown=${(event: KeyboardEvent) => void onEnter(event, () => this.#draw())}>
      <div class="pair">
        ${choiceOf({
          label: 'What room',
          options: uses,
          value: this.#use,
          took: (use) => {
            this.use = use;
          },
        })}
        ${nameField('Its name', this.#name, (text) => {
          this.name = text.trim() === '' ? null : text.trim();
        })}
      </div>
      <div class="buttons" role="group" aria-label="How it is measured">
        ${this.#segment('two-sides', 'Two sides')}${this.#segment('wall-by-wall', 'Wall by wall')}
      </div>
      ${isFirst ? nothing : this.#where()} ${this.how === 'two-sides' ? this.#twoSides(isFirst) : this.#walls()}
      ${isFirst ? this.#outer() : nothing}
      ${this.why === '' ? nothing : html`<p class="why" role="alert">${this.why}</p>`} ${this.#remedy()}
      <div class="buttons"><button class="main" @click=${() => this.#draw()}>Draw ${this.#name}</button></div>
    </div>`;
  }

  #segment(how: RoomAdd['how'], words: string): TemplateResult {
    return html`<button
      aria-pressed=${this.how === how}
      @click=${() => {
        this.how = how;
      }}
    >
      ${words}
    </button>`;
  }

  #twoSides(isFirst: boolean): TemplateResult {
    return html`<div class="pair">
      ${lengthField({
        label: isFirst ? 'Across the plan' : 'Along that wall',
        help: '3.62, 3620 or 11\' 10"',
        value: this.alongMm,
        took: (mm) => {
          this.alongMm = mm;
        },
      })}
      ${lengthField({
        label: isFirst ? 'Up the plan' : 'Away from it',
        help: 'Plaster to plaster',
        value: this.awayMm,
        took: (mm) => {
          this.awayMm = mm;
        },
      })}
    </div>`;
  }

  #walls(): TemplateResult {
    return html`<walked-sides
      .sides=${this.sides}
      @sides-walked=${(event: CustomEvent<{ readonly sides: readonly WalkedSide[] }>) => {
        event.stopPropagation();
        this.sides = event.detail.sides;
      }}
    ></walked-sides>`;
  }

  /** The first room: within walls that were copied from below in one of their corners, else what the outer walls are. */
  #outer(): TemplateResult | typeof nothing {
    const corners = freeCorners(this.storey);
    if (this.storey.walls.length > 0 && corners.length === 0) return nothing;
    if (this.storey.walls.length > 0)
      return choiceOf({
        label: 'In which corner of the outer walls',
        options: corners.map(({ words }) => ({ value: words, label: words })),
        value: this.#firstCorner?.words ?? null,
        took: (words) => {
          this.corner = corners.find((one) => one.words === words) ?? null;
        },
      });
    return lengthField({
      label: 'Outer walls, how thick',
      help: 'Counts as assumed until somebody says what it is.',
      value: this.outerMm,
      took: (mm) => {
        this.outerMm = mm ?? usualOuter.thicknessMm;
      },
    });
  }

  get #firstCorner(): HouseCorner | null {
    return this.corner ?? freeCorners(this.storey)[0] ?? null;
  }

  /** Within walls that no room has yet a room can go into a corner of theirs as well. */
  get #corners(): readonly HouseCorner[] {
    return hasShell(this.storey) ? freeCorners(this.storey) : [];
  }

  #where(): TemplateResult {
    const walls = freeWalls(this.storey);
    const { beside } = this;
    const chosen = walls.find(({ wallId, side }) => wallId === beside?.wallId && side === beside.side);
    return html`<div class="pair">
        ${choiceOf({
          label: 'Where',
          options: [
            ...walls.map(({ wallId, words }) => ({ value: wallId, label: words })),
            ...this.#corners.map(cornerChoice),
          ],
          value: this.corner === null ? (beside?.wallId ?? null) : cornerChoice(this.corner).value,
          empty: 'Choose, or tap the wall',
          took: (wallId) => {
            this.corner = this.#corners.find((one) => cornerChoice(one).value === wallId) ?? null;
            const wall = walls.find((one) => one.wallId === wallId);
            this.beside =
              wall === undefined
                ? null
                : { wallId: wall.wallId, side: wall.side, from: wall.ends[0]?.from ?? 'left', inMm: 0 };
            this.#light();
          },
        })}
        ${
          beside === null || chosen === undefined
            ? nothing
            : choiceOf({
                label: 'In line with',
                options: chosen.ends.map(({ from, words }) => ({ value: from, label: words })),
                value: beside.from,
                took: (from) => {
                  this.beside = { ...beside, from };
                },
              })
        }
      </div>
      <div class="pair">
        ${
          beside === null
            ? nothing
            : lengthField({
                label: 'In from that end',
                value: this.inMm,
                min: -20_000,
                took: (mm) => {
                  this.inMm = mm ?? 0;
                },
              })
        }
        ${
          beside === null
            ? nothing
            : wallBetween(
                {
                  storey: this.storey,
                  beside: { ...beside, inMm: this.inMm },
                  alongMm: firstSideMm(this.#outline) ?? this.alongMm,
                },
                {
                  value: this.betweenMm,
                  took: (mm) => {
                    this.betweenMm = mm;
                  },
                },
              )
        }
      </div>
      <div class="buttons">
        <button
          aria-pressed=${this.#wall.isHeld}
          @click=${() => (this.#wall.isHeld ? this.#wall.letGo() : this.#wall.ask({ tool: 'wall' }))}
        >
          ${this.#wall.isHeld ? 'Tap the wall; press here to give up' : 'Tap the wall it stands beside'}
        </button>
      </div>`;
  }

  #draw(): void {
    const outline = this.#outline;
    const isFirst = this.storey.rooms.length === 0;
    if (outline === null) {
      this.why = this.how === 'two-sides' ? 'Measure both sides first.' : 'Walk at least three walls first.';
      return;
    }
    if (!isFirst && this.beside === null && this.corner === null) {
      this.why = 'Choose the wall that it stands beside, or tap it on the plan.';
      return;
    }
    const made = this.#made(outline, this.inMm);
    if (!made.ok) {
      this.why = made.why;
      this.fitted = this.#fitting(made);
      return;
    }
    send(this, 'job-edit', made.edit);
    this.#clear();
    if (!isFirst) this.#light();
  }

  #made(outline: readonly Vector[], inMm: number): HouseEdit {
    const isFirst = this.storey.rooms.length === 0;
    const corner = isFirst ? this.#firstCorner : this.corner;
    return drawRoom(this.view.job, this.storey.id, {
      name: this.#name,
      use: this.#use,
      outline,
      beside: isFirst || this.beside === null ? null : { ...this.beside, inMm },
      ...(corner === null ? {} : { corner }),
      betweenMm: this.betweenMm,
      walls: hasShell(this.storey) ? usualInner : { ...usualOuter, thicknessMm: this.outerMm },
    });
  }

  /** A room of less, where a wall would run through it as it was told, and it could be drawn so. */
  #fitting(refused: Extract<HouseEdit, { ok: false }>): RoomBySides | null {
    const { how, alongMm, awayMm, inMm, beside } = this;
    if (how !== 'two-sides' || alongMm === null || awayMm === null) return null;
    const asked = { alongMm, awayMm, inMm };
    return (
      fittedRoom(asked, refused, beside?.from ?? null).find(
        (room) => this.#made(rectangleOf(room), room.inMm).ok,
      ) ?? null
    );
  }

  /** The remedy for a wall that would run through the room. */
  #remedy(): TemplateResult | typeof nothing {
    const { fitted } = this;
    if (fitted === null || this.why === '') return nothing;
    return html`<div class="buttons"><button
        @click=${() => {
          Object.assign(this, fitted);
          this.why = '';
          this.#draw();
        }}
      >Draw it ${fitted.alongMm} × ${fitted.awayMm} mm</button></div>`;
  }
}
customElements.define('room-add', RoomAdd);
declare global {
  interface HTMLElementTagNameMap {
    'room-add': RoomAdd;
  }
}
