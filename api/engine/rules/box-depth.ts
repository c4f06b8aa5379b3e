import type { BackBox } from '../connections/things.ts';
import { counted } from './counted.ts';
import { figures } from './figures.ts';
import { type CheckResult, rule } from './rule.ts';

type Message =
  | 'enough'
  | 'framed'
  | 'tight'
  | 'newTooShallow'
  | 'tooShallow'
  | 'frameTooShallow'
  | 'assumed'
  | 'unknown';

/** Back boxes hold their accessory and its conductors without crushing. */
export const boxDepth = rule<Message>({
  id: 'BX1',
  title: 'Depth of back boxes',
  source: 'common practice; the accessory’s instruction sheet (BS 7671 134.1.1, 522.8)',
  messages: {
    enough: 'The box is {actual} mm deep; {limit} mm is wanted for {cables}.',
    framed:
      'With a spacer frame of {frame} mm the box found is {actual} mm deep; {limit} mm is wanted for {cables}. The plate stands {frame} mm further out.',
    frameTooShallow:
      'With a spacer frame of {frame} mm, the deepest there is, the box found is {actual} mm deep; with {cables} {limit} mm is wanted.',
    tight: 'The box is {actual} mm deep: enough, though {preferred} mm makes room to dress {cables}.',
    newTooShallow:
      'A new box of {actual} mm is less than the {limit} mm that its accessory with {cables} wants.',
    tooShallow: 'The box found is {actual} mm deep; with {cables} {limit} mm is wanted.',
    assumed:
      'The box found is assumed to be {actual} mm deep, not measured; with {cables} {limit} mm is wanted.',
    unknown: 'The depth of the box found is not known; with {cables} {limit} mm is wanted.',
  },
  remedies: {
    tight: 'Fit the deeper box where the wall allows.',
    newTooShallow: 'Fit a deeper box.',
    frameTooShallow: 'Exchange the box, or join on somewhere else.',
    tooShallow: 'Exchange the box, use a spacer frame, or join on somewhere else.',
    assumed: 'Take the plate off and measure; allow for exchanging the box.',
    unknown: 'Take the plate off and measure; allow for exchanging the box.',
  },
  // A maker's sheet and the fitter's judgement, not the wiring rules, give the depth.
  couldFail: false,
  check: (facts) => facts.things.boxes.map(judged),
});

function judged(box: BackBox): CheckResult<Message> {
  const numbers = (depthMm: number) =>
    figures(depthMm, box.minimumDepthMm, 'mm', {
      cables: counted(box.cables, 'cable'),
      preferred: box.preferredDepthMm,
      ...(box.frameMm !== undefined && { frame: box.frameMm }),
    });
  const subject = { subjectId: box.id, origin: 'scheme' } as const;
  const fix = box.pointId === null ? {} : { fix: { kind: 're-box', at: box.pointId } as const };
  if (box.action === 'unknown') {
    if (box.foundDepthMm !== null)
      return {
        ...subject,
        outcome: 'not-proven',
        messageId: 'assumed',
        ...numbers(box.foundDepthMm),
        ...fix,
      };
    const { limit, unit, values } = numbers(0);
    return { ...subject, outcome: 'not-proven', messageId: 'unknown', limit, unit, values, ...fix };
  }
  const depthMm = box.action === 'keep' ? (box.foundDepthMm ?? box.depthMm) : box.depthMm;
  const isFramed = box.action === 'frame';
  if (isFramed && depthMm < box.minimumDepthMm)
    return { ...subject, outcome: 'decide', messageId: 'frameTooShallow', ...numbers(depthMm), ...fix };
  if (depthMm < box.minimumDepthMm)
    return box.action === 'keep'
      ? { ...subject, outcome: 'decide', messageId: 'tooShallow', ...numbers(depthMm), ...fix }
      : { ...subject, outcome: 'decide', messageId: 'newTooShallow', ...numbers(depthMm) };
  if (depthMm < box.preferredDepthMm)
    return { ...subject, outcome: 'advice', messageId: 'tight', ...numbers(depthMm) };
  return { ...subject, outcome: 'passes', messageId: isFramed ? 'framed' : 'enough', ...numbers(depthMm) };
}
