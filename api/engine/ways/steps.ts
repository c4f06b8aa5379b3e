import type { Cable } from '#model/cable.ts';
import type { Plan } from '../plan/plan.ts';
import { cutWords, joistsInWords } from './cut-words.ts';
import { lengthWords } from './length-words.ts';
import type { Segment } from './run.ts';
import type { StretchCuts } from './run-cuts.ts';

/** Stretches shorter than this are not worth a sentence. */
const WORTH_SAYING_MM = 15;

const coreWords: Readonly<Record<string, string>> = {
  brick: 'brick wall',
  'hard-brick': 'hard brick wall',
  block: 'block wall',
  'aerated-block': 'aerated block wall',
  concrete: 'concrete wall',
  'timber-stud': 'timber stud wall',
  'metal-stud': 'metal stud wall',
};

/** New cable, and what it cuts and opens stretch by stretch. */
export interface CutBy {
  readonly cuts: readonly StretchCuts[];
  readonly cable: Cable;
}

/**
 * A path in plain words, one step a stretch worth saying, lengths to 10 mm or 0.1 m. For new cable with the holes, notches, chases
 * and boards of each; of cable that is there already only what it passes.
 */
export function stepsOf(
  plan: Plan,
  segments: readonly Segment[],
  by: CutBy | null = null,
): readonly string[] {
  return segments.flatMap((segment, index) =>
    segment.lengthMm < WORTH_SAYING_MM ? [] : [stepWords(plan, segment, by, index)],
  );
}

function stepWords(plan: Plan, segment: Segment, by: CutBy | null, index: number): string {
  const cuts = by?.cuts[index];
  const cut = by === null || cuts === undefined ? joistWords(segment) : cutWords(plan, cuts, by.cable);
  const assumed = segment.certainty === 'assumed' ? ' (assumed)' : '';
  const isBehindBoard = cuts?.chase?.isBehindBoard === true;
  return `${wayWords(segment)} ${placeWords(plan, segment, isBehindBoard)}${cut}${studWords(segment)}${assumed}`;
}

function joistWords({ joistsCrossed }: Segment): string {
  return joistsCrossed === 0 ? '' : `, through ${joistsInWords(joistsCrossed)}`;
}

function studWords({ studsCrossed }: Segment): string {
  return studsCrossed === 0 ? '' : `, through ${studsCrossed} ${studsCrossed === 1 ? 'stud' : 'studs'}`;
}

function wayWords(segment: Segment): string {
  const length = lengthWords(segment.lengthMm);
  if (segment.direction !== 'vertical') return length;
  return `${segment.to.levelMm > segment.from.levelMm ? 'up' : 'down'} ${length}`;
}

/** Of a chase that several new cables lie in, that it is one. */
function withOthers({ oneChase }: Segment): string {
  if (oneChase === undefined) return '';
  return oneChase.cables === 2 ? ' with another cable' : ` with ${oneChase.cables - 1} other cables`;
}

function placeWords(plan: Plan, segment: Segment, isBehindBoard: boolean): string {
  const core = plan.wallById.get(segment.wallId ?? '')?.wall.core ?? '';
  const wall = coreWords[core] ?? 'wall';
  const words: Readonly<Record<Segment['medium'], string>> = {
    'void-along': 'under the floor along the joists',
    'void-across': 'under the floor across the joists',
    'void-open': segment.direction === 'vertical' ? 'between floor and ceiling' : 'above the hung ceiling',
    'wall-chase': `${isBehindBoard ? 'behind the board on' : 'chased into'} the ${wall}${withOthers(segment)}`,
    'stud-cavity': `inside the ${wall}`,
    'surface-clipped': 'clipped to the surface',
    'surface-channel': `in ${segment.inChannelOf === undefined ? 'channel' : 'the channel found'} on the ${wall}`,
    'through-wall': `through the ${wall}`,
    riser: 'in a riser through the storey',
    loft: 'in the loft',
    buried: 'buried',
    outside: 'outside',
  };
  return words[segment.medium];
}
