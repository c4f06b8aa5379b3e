import { html, LitElement, type nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Floor, Room, Storey } from '#model/building.ts';
import type { Certainty } from '#model/primitives.ts';
import { tellFloorShown } from '../../controllers/floor-shown.ts';
import type { FactValue } from '../../edits/facts.ts';
import { setRoomFloor, setRoomFloorCertainty, setRoomFloorFact } from '../../edits/room-floor.ts';
import type { FloorFact } from '../../edits/storeys.ts';
import { roomDirections } from '../../house/joist-directions.ts';
import type { RoomSide } from '../../house/room-sides.ts';
import { send } from '../../job-events.ts';
import { numberFact } from '../as-found/fact-fields.ts';
import { floorFields } from '../as-found/floor-fields.ts';
import { formCss } from '../as-found/form-styles.ts';
import { choicesOf, floorBuilds, floorCoverings } from '../as-found/found-words.ts';
import { controlsCss } from '../shared-styles.ts';
import { houseFormCss } from './house-forms.ts';
import { choiceOf } from './own-fields.ts';

const whose = choicesOf({ storey: 'As the storey’s', own: 'Its own' });

/** The floor of one room: the storey's, or one of its own where that differs (a solid kitchen floor, tiles, a heated bathroom). */
export class RoomFloor extends LitElement {
  static override properties: PropertyDeclarations = {
    storey: { attribute: false },
    room: { attribute: false },
    sides: { attribute: false },
  };
  static override styles = [controlsCss, formCss, houseFormCss];
  declare storey: Storey;
  declare room: Room;
  declare sides: readonly RoomSide[];

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    tellFloorShown(this.room.id, false);
  }

  override render(): TemplateResult {
    const { floor } = this.room;
    return html`<details
      class="less"
      @toggle=${(event: Event) => tellFloorShown(this.room.id, (event.currentTarget as HTMLDetailsElement).open)}
    >
      <summary>Floor: ${floor === undefined ? 'as the storey’s' : floorWords(floor)}</summary>
      <div class="fields">
        ${choiceOf({
          label: 'Its floor',
          options: whose,
          value: floor === undefined ? 'storey' : 'own',
          took: (value) => {
            if ((value === 'own') !== (this.room.floor !== undefined))
              send(this, 'job-edit', setRoomFloor(this.storey, this.room, value === 'own'));
          },
        })}
        ${floor === undefined ? html`<p class="hint">${this.storey.name}: ${floorWords(this.storey.floor)}. It is told of under House.</p>` : this.#own(floor)}
      </div>
    </details>`;
  }

  #own(floor: Floor): TemplateResult | typeof nothing {
    const { storey, room } = this;
    const facts = {
      thing: floor,
      certainty: floor.certainty,
      set: <K extends FloorFact>(fact: K, value: FactValue<Floor, K>) =>
        setRoomFloorFact(storey, room, fact, value),
      sure: (fact: FloorFact, certainty: Certainty) => setRoomFloorCertainty(storey, room, fact, certainty),
    };
    return html`${floorFields(facts, roomDirections(this.sides))}
      ${numberFact(facts, 'levelOffsetMm', { label: 'A step up from the storey’s floor', help: 'Less than nought: a step down', unit: 'mm', min: -5000, max: 5000 })}`;
  }
}

/** "Timber on joists, Tiles". */
function floorWords({ build, covering }: Floor): string {
  const word = (
    choices: readonly { readonly value: string; readonly label: string }[],
    value: string,
  ): string => choices.find((one) => one.value === value)?.label ?? value;
  return `${word(floorBuilds, build)}, ${word(floorCoverings, covering).toLowerCase()}`;
}
customElements.define('room-floor', RoomFloor);
declare global {
  interface HTMLElementTagNameMap {
    'room-floor': RoomFloor;
  }
}
