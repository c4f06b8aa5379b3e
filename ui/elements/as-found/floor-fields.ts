import { html, type TemplateResult } from 'lit';
import type { Floor } from '#model/building.ts';
import type { Certainty, CertaintyByField } from '#model/primitives.ts';
import type { FactValue } from '../../edits/facts.ts';
import type { FloorFact } from '../../edits/storeys.ts';
import { isSameDirection, type JoistDirection } from '../../house/joist-directions.ts';
import type { JobEdit } from '../../job-events.ts';
import { choiceFact, mustChoice, mustNumber, numberFact, yesNoFact } from './fact-fields.ts';
import { floorBuilds, floorCoverings } from './found-words.ts';

/** A floor, a storey's or a room's own, with the edits that change it. */
export interface FloorSight {
  readonly thing: Floor;
  readonly certainty: CertaintyByField | undefined;
  readonly set: <K extends FloorFact>(fact: K, value: FactValue<Floor, K>) => JobEdit;
  readonly sure: (fact: FloorFact, certainty: Certainty) => JobEdit;
}

/**
 * The facts of a floor.
 *
 * @param directions the plain ways in which its joists may run.
 */
export function floorFields(facts: FloorSight, directions: readonly JoistDirection[]): TemplateResult {
  const inMm = { unit: 'mm', max: 1_000_000 };
  return html`${yesNoFact(facts, 'liftable', { label: 'Do the boards lift where cables run' })}
    ${mustChoice(facts, 'build', { label: 'Built', options: floorBuilds })}
    ${mustChoice(facts, 'covering', { label: 'Covered with', options: floorCoverings })}
    ${mustNumber(facts, 'voidMm', { label: 'Void under it, joists included', ...inMm })}
    ${
      facts.thing.build === 'suspended-timber'
        ? html`${joistDirection(facts, directions)}
          ${numberFact(facts, 'joistDepthMm', { label: 'Joist depth', ...inMm, min: 1 })}
          ${numberFact(facts, 'joistWidthMm', { label: 'Joist width', ...inMm, min: 1 })}
          ${numberFact(facts, 'joistSpacingMm', { label: 'Joist spacing, centre to centre', ...inMm, min: 1 })}`
        : ''
    }
    ${yesNoFact(facts, 'heated', { label: 'Heated floor' })}
    ${numberFact(facts, 'insulationMm', { label: 'Insulation in the void', ...inMm })}`;
}

/** Which way the joists run: in words, with the joists drawn on the plan; in degrees for what runs askew. */
function joistDirection(facts: FloorSight, directions: readonly JoistDirection[]): TemplateResult {
  const { joistsRunDeg } = facts.thing;
  const known = directions.map(({ deg, words }) => ({ value: String(deg), label: words }));
  const plain = directions.find(
    ({ deg }) => joistsRunDeg !== undefined && isSameDirection(deg, joistsRunDeg),
  );
  const isAskew = joistsRunDeg !== undefined && plain === undefined;
  const options = isAskew ? [...known, { value: 'askew', label: `At ${joistsRunDeg}°` }] : known;
  const shown = plain === undefined ? (isAskew ? 'askew' : undefined) : String(plain.deg);
  const inWords = {
    thing: { joistsRunDeg: shown },
    certainty: facts.certainty,
    sure: facts.sure,
    set: (fact: 'joistsRunDeg', word: string | null) =>
      facts.set(fact, word === null ? null : word === 'askew' ? (joistsRunDeg ?? null) : Number(word)),
  };
  return html`${choiceFact(inWords, 'joistsRunDeg', {
    label: 'Joists run',
    help: 'Shown on the plan. Boards run across them, nail lines along them.',
    options,
  })}
    <details class="less" ?open=${isAskew}>
      <summary>Joists that run askew</summary>
      ${numberFact({ thing: facts.thing, set: facts.set }, 'joistsRunDeg', {
        label: 'Joists run at (0 is across the plan, anticlockwise)',
        unit: '°',
        min: -360,
        max: 360,
      })}
    </details>`;
}
