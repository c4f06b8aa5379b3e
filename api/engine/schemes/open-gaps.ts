import { SURGE_QUESTION } from '../connections/surge-device.ts';
import type { Worked } from '../connections/worked.ts';
import { gapOrder, type OpenGap, surveyGapsOf } from '../price/survey-gaps-of.ts';
import type { PriceTurn } from './turns/price-turn.ts';

/** What a question of the survey leaves open for a price; each bond has a question of its own. */
const gapOfQuestion: Readonly<Record<string, OpenGap>> = {
  'rcd-found': 'rcds',
  'rcbo-available': 'rcbos',
  'spare-ways': 'spare-ways',
  [SURGE_QUESTION]: 'surge',
  'wall-build': 'walls',
  asbestos: 'asbestos',
};

/** The gap that a turn leaves; a turn of a new kind has to be told here. */
export function gapOf({ question }: Pick<PriceTurn, 'question'>): OpenGap {
  const gap = question.startsWith('bond-') ? 'bonds' : gapOfQuestion[question];
  if (gap === undefined) throw new Error(`No gap is named for the question "${question}".`);
  return gap;
}

/**
 * All that nobody has looked at and that may make a scheme dearer, each kind once, in the order of the words: what its
 * quantities hang on, and what would turn it. What would only make it cheaper is no gap.
 *
 * @param turns what may still turn the scheme.
 */
export function openGaps(worked: Worked, turns: readonly PriceTurn[]): readonly OpenGap[] {
  const open = new Set<OpenGap>([
    ...surveyGapsOf(worked),
    ...turns.filter(({ dearer }) => dearer.length > 0).map(gapOf),
  ]);
  return gapOrder.filter((gap) => open.has(gap));
}
