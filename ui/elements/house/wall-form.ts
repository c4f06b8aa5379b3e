import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Face, Opening, Storey, Wall } from '#model/building.ts';
import {
  addOpening,
  changeThickness,
  type HouseEdit,
  openingWords,
  removeOpening,
  setFaceFacts,
  setWallFacts,
} from '../../edits/house.ts';
import { leftOfOpeningMm, openingPlace } from '../../house/opening-place.ts';
import type { RoomSide } from '../../house/room-sides.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { formCss } from '../as-found/form-styles.ts';
import { choicesOf, wallCores } from '../as-found/found-words.ts';
import { controlsCss } from '../shared-styles.ts';
import { houseFormCss } from './house-forms.ts';
import { choiceOf, lengthField } from './own-fields.ts';

const finishes = choicesOf<Face['finish']>({
  plaster: 'Plaster',
  plasterboard: 'Plasterboard',
  'lath-and-plaster': 'Lath and plaster',
  tile: 'Tiles',
  panelling: 'Panelling',
  bare: 'Bare',
});
const linings = choicesOf<Face['lining']>({
  none: 'Straight on the wall',
  'dot-and-dab': 'Dot and dab',
  battens: 'On battens',
});
const yesNo = choicesOf({ yes: 'Yes', no: 'No' });
const kinds = choicesOf(openingWords);

/** What openings usually measure, mm: common practice, no source. */
const usualOpenings: Readonly<Record<Opening['kind'], Pick<Opening, 'widthMm' | 'sillMm' | 'headMm'>>> = {
  door: { widthMm: 838, sillMm: 0, headMm: 2040 },
  window: { widthMm: 1200, sillMm: 900, headMm: 2100 },
  opening: { widthMm: 900, sillMm: 0, headMm: 2100 },
  breast: { widthMm: 1400, sillMm: 0, headMm: 2400 },
};

/** The wall along a side of a room: how it is built, how it is lined on this side, what is in it. */
export class WallForm extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    storey: { attribute: false },
    side: { attribute: false },
    kind: { state: true },
    leftMm: { state: true },
    size: { state: true },
    why: { state: true },
  };
  static override styles = [controlsCss, formCss, houseFormCss];
  declare view: JobView;
  declare storey: Storey;
  declare side: RoomSide;
  declare private kind: Opening['kind'];
  declare private leftMm: number | null;
  /** As measured; null: as usual. */
  declare private size: Partial<Pick<Opening, 'widthMm' | 'sillMm' | 'headMm'>>;
  declare private why: string;

  constructor() {
    super();
    this.kind = 'door';
    this.leftMm = null;
    this.size = {};
    this.why = '';
  }

  get #walls(): readonly Wall[] {
    const ids = this.side.walls.map(({ wallId }) => wallId);
    return this.storey.walls.filter(({ id }) => ids.includes(id));
  }

  override render(): TemplateResult {
    const [wall] = this.#walls;
    if (wall === undefined) return html`<p class="hint">Nobody has told of this wall.</p>`;
    const [first] = this.side.walls.filter(({ wallId }) => wallId === wall.id);
    const face = wall.faces[first?.side ?? 'left'];
    return html`<div class="fields">
      ${wall.certainty?.core === 'assumed' ? html`<p class="hint">How it is built is assumed so far.</p>` : nothing}
      ${this.why === '' ? nothing : html`<p class="why" role="alert">${this.why}</p>`}
      <div class="pair">
        ${choiceOf({ label: 'Built of', options: wallCores, value: wall.core, took: (core) => this.#set({ core, ...(core === 'open' ? { external: false } : {}) }) })}
        ${lengthField({
          label: 'How thick, plaster to plaster',
          value: wall.thicknessMm,
          needed: true,
          took: (mm) => {
            if (mm !== null && first !== undefined)
              this.#do(
                changeThickness(this.view.job, this.storey.id, {
                  ...first,
                  kept: first.side,
                  thicknessMm: mm,
                }),
              );
          },
        })}
        ${this.#yesNo('An outer wall', wall.external, (external) => this.#set({ external }))}
        ${this.#yesNo('Shared with neighbours', wall.party, (party) => this.#set({ party }))}
        ${this.#yesNo('Carries floors above', wall.structural, (structural) => this.#set({ structural }))}
        ${this.#yesNo('Insulation in it', wall.insulated, (insulated) => this.#set({ insulated }))}
        ${choiceOf({ label: 'Finished on this side', options: finishes, value: face.finish, took: (finish) => this.#face({ finish }) })}
        ${choiceOf({ label: 'Lined on this side', options: linings, value: face.lining, took: (lining) => this.#face({ lining }) })}
      </div>
      ${wall.external ? html`<div class="buttons"><button class="small" @click=${() => this.#sameForOuter(wall)}>All outer walls are built so</button></div>` : nothing}
      ${this.#openings()} ${this.#newOpening()}
    </div>`;
  }

  #yesNo(label: string, value: boolean | undefined, took: (yes: boolean) => void): TemplateResult {
    const shown = value === undefined ? null : value ? 'yes' : 'no';
    return choiceOf({
      label,
      options: yesNo,
      value: shown,
      empty: 'Not known',
      took: (word) => took(word === 'yes'),
    });
  }

  #openings(): TemplateResult {
    const found = this.#walls.flatMap((wall) => wall.openings.map((opening) => ({ wall, opening })));
    if (found.length === 0) return html`<p class="hint">No door or window in it.</p>`;
    return html`<ul class="list">
      ${found.map(
        ({ wall, opening }) =>
          html`<li>
            <span>${openingWords[opening.kind]}, ${opening.widthMm} wide, ${leftOfOpeningMm(this.storey, this.side, wall.id, opening)} from the left corner</span>
            <button class="small" @click=${() => send(this, 'job-edit', removeOpening(this.storey.id, opening))}>Remove</button>
          </li>`,
      )}
    </ul>`;
  }

  #newOpening(): TemplateResult {
    const usual = usualOpenings[this.kind];
    const size = (key: 'widthMm' | 'sillMm' | 'headMm', label: string): TemplateResult =>
      lengthField({
        label,
        value: this.size[key] ?? usual[key],
        min: key === 'widthMm' ? 1 : 0,
        took: (mm) => {
          this.size = { ...this.size, [key]: mm ?? usual[key] };
        },
      });
    return html`<h4>A door, a window</h4>
      <div class="pair">
        ${choiceOf({
          label: 'What',
          options: kinds,
          value: this.kind,
          took: (kind) => {
            this.kind = kind;
            this.size = {};
          },
        })}
        ${lengthField({
          label: 'From the left corner',
          help: 'Seen from in the room, to its near edge',
          value: this.leftMm,
          min: 0,
          took: (mm) => {
            this.leftMm = mm;
          },
        })}
        ${size('widthMm', 'How wide')} ${this.kind === 'window' ? html`${size('sillMm', 'Sill above floor')}${size('headMm', 'Head above floor')}` : nothing}
      </div>
      <div class="buttons"><button @click=${() => this.#add()}>Put it in</button></div>`;
  }

  #add(): void {
    if (this.leftMm === null) {
      this.why = 'Say how far it is from the left corner.';
      return;
    }
    const size = { ...usualOpenings[this.kind], ...this.size };
    const place = openingPlace(this.storey, this.side, { leftMm: this.leftMm, widthMm: size.widthMm });
    if (place === null) {
      this.why = 'It reaches past the wall there, or over a place where walls meet.';
      return;
    }
    const inside = this.side.walls.find(({ wallId }) => wallId === place.wallId)?.side;
    const opening = {
      kind: this.kind,
      alongMm: place.alongMm,
      ...size,
      ...(this.kind === 'breast' && inside !== undefined ? { side: inside } : {}),
    };
    this.#do(addOpening(this.view.job, this.storey.id, place.wallId, opening));
    if (this.why === '') this.leftMm = null;
  }

  /** What was said of one outer wall of the storey counts for all. */
  #sameForOuter({ core, insulated }: Wall): void {
    const ids = this.storey.walls
      .filter(({ external, party }) => external && party !== true)
      .map(({ id }) => id);
    send(
      this,
      'job-edit',
      setWallFacts(this.storey.id, ids, { core, ...(insulated === undefined ? {} : { insulated }) }),
    );
  }

  #set(facts: Parameters<typeof setWallFacts>[2]): void {
    send(
      this,
      'job-edit',
      setWallFacts(
        this.storey.id,
        this.#walls.map(({ id }) => id),
        facts,
      ),
    );
  }

  #face(facts: Partial<Face>): void {
    send(this, 'job-edit', setFaceFacts(this.storey.id, this.side.walls, facts));
  }

  #do(made: HouseEdit): void {
    this.why = made.ok ? '' : made.why;
    if (made.ok) send(this, 'job-edit', made.edit);
    else this.requestUpdate();
  }
}
customElements.define('wall-form', WallForm);
declare global {
  interface HTMLElementTagNameMap {
    'wall-form': WallForm;
  }
}
