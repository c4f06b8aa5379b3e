import { coveredDepthMm } from '../ways/joist-window.ts';
import { figures } from './figures.ts';
import { isNotched, joistCrossings } from './joist-size.ts';
import { rule } from './rule.ts';

/** A joist that a run goes through is deep enough for a hole in its middle with 50 mm over it. */
export const joistCover = rule({
  id: 'RT2',
  title: 'Depth of joists over the cable',
  source: 'BS 7671 522.6.201',
  messages: {
    deepEnough:
      'Joists of {actual} mm keep 50 mm over a {hole} mm hole in their middle ({limit} mm would do).',
    tooShallow:
      'Joists of {actual} mm cannot keep 50 mm over a {hole} mm hole in their middle: {limit} mm would be needed. An RCD is no cure.',
    notched:
      'Joists of {actual} mm cannot keep 50 mm over a {hole} mm hole in their middle ({limit} mm would): the run is notched into their tops where that is allowed, under steel plates.',
    depthUnknown: 'The depth of the joists is not known, so 50 mm over a hole cannot be shown.',
  },
  remedies: {
    tooShallow:
      'Clip the cable to the side of a joist or beneath the joists at least 50 mm down, or protect it with steel that nails and screws do not enter.',
    notched: 'Fit a steel plate over every notch, and mark the boards over it.',
    depthUnknown: 'Lift a board and measure the joists.',
  },
  // The way round (beside or beneath the joist) is the fitter's; a pinned run that is too shallow fails by its cover.
  couldFail: false,
  check: (facts) =>
    joistCrossings(facts).map(({ run, floor, holeMm }) => {
      const subject = { subjectId: run.id, origin: 'scheme' } as const;
      if (floor.joistDepthMm === undefined)
        return { ...subject, outcome: 'not-proven', messageId: 'depthUnknown' };
      const neededMm = coveredDepthMm(holeMm);
      const numbers = figures(floor.joistDepthMm, neededMm, 'mm', { hole: holeMm });
      if (floor.joistDepthMm >= neededMm)
        return { ...subject, outcome: 'passes', messageId: 'deepEnough', ...numbers };
      return isNotched(run)
        ? { ...subject, outcome: 'advice', messageId: 'notched', ...numbers }
        : { ...subject, outcome: 'decide', messageId: 'tooShallow', ...numbers };
    }),
});
