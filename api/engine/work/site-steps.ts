import type { Worked } from '../connections/worked.ts';
import type { Finding } from '../rules/finding.ts';
import { notifiedOf } from '../rules/notification.ts';
import { cautionsOf } from './cautions-of.ts';
import { floorPlaces } from './floors/floor-places.ts';
import { sealingSteps } from './sealing-steps.ts';
import { step, type TestStep } from './test-step.ts';

/** What of a scheme decides what is looked at and settled on site. */
export interface SiteRequest {
  readonly worked: Worked;
  readonly findings: readonly Pick<Finding, 'rule' | 'messageId' | 'outcome'>[];
}

/**
 * What is settled, traced, told apart, inspected and closed beside what is priced and what is tested: the steps that a list of prices does
 * not know. The usual ones of the trade: common practice, no source, save inspection before testing (BS 7671 642.1, from memory).
 */
export const siteSteps = (request: SiteRequest): readonly TestStep[] => [
  ...notified(request),
  ...instruments(request),
  ...settled(request),
  ...traced(request),
  ...barredJoists(request),
  ...toldApart(request),
  ...inspected(request),
  ...sealingSteps(request.worked),
  ...closed(request),
  ...labelled(request),
];

const notified = ({ findings }: SiteRequest): readonly TestStep[] =>
  findings.some((finding) => finding.rule === 'NT1' && notifiedOf(finding) === 'due')
    ? [
        step(
          'notify',
          'before',
          'Notify the work to building control before it begins, or be registered to certify it yourself.',
        ),
      ]
    : [];

/** Source: the instruments of BS EN 61557-2, -3, -4 and -6 and the tester of GS38, from memory. */
const instruments = ({ worked }: SiteRequest): readonly TestStep[] =>
  worked.circuitIds.length === 0
    ? []
    : [
        step(
          'instruments',
          'before',
          'At hand, checked and in date: two-pole voltage tester with its proving unit, low-resistance ohmmeter, insulation tester, loop and RCD tester, fused leads, lock and notice.',
        ),
      ];

const openOutcomes: ReadonlySet<string> = new Set(['fails', 'decide', 'not-proven']);

function settled({ findings }: SiteRequest): readonly TestStep[] {
  const open = findings.filter(({ outcome }) => openOutcomes.has(outcome)).length;
  if (open === 0) return [];
  return [
    step(
      'settle',
      'before',
      `Settle what fails, is to be decided or is not proven, ${open} in all: the pack’s first page and the checks on screen list it.`,
      {
        hold: 'Each settled, and the drawing put right where that moves it? Else stop: it is not worked on as drawn.',
      },
    ),
  ];
}

const traced = ({ worked }: SiteRequest): readonly TestStep[] =>
  cautionsOf(worked).some(({ subject }) => subject === 'services')
    ? [
        step(
          'trace-services',
          'open-up',
          'Trace pipes and cables wherever walls, floors and joists are cut: with a detector, and by what shows.',
          { hold: 'Traced and marked, nothing in the way? Else stop, and take another way.', isFirst: true },
        ),
      ]
    : [];

function barredJoists({ worked }: SiteRequest): readonly TestStep[] {
  const barred = floorPlaces(worked).joists.filter(({ hole }) => hole.judged === 'neither');
  if (barred.length === 0) return [];
  return [
    step(
      'joists-barred',
      'open-up',
      `${barred.map(({ mark }) => mark).join(', ')}: where the cable meets these joists neither hole nor notch is allowed.`,
      { hold: 'Another way found, or an engineer’s word? Else stop: nothing is cut there.', isFirst: true },
    ),
  ];
}

/** Before a cable that was found is cut, it is told from those that lie beside it. */
function toldApart({ worked: { found, proposed } }: SiteRequest): readonly TestStep[] {
  const foundIds = new Set(found.edges.map(({ id }) => id));
  const now = new Set(proposed.edges.map(({ id }) => id));
  const hasHalves = proposed.edges.some(
    ({ kind, state, id }) => kind === 'cable' && state === 'found' && !foundIds.has(id),
  );
  if (!hasHalves) return [];
  return [
    step(
      'tell-apart',
      'open-up',
      'Bare each cable that is cut and tell it from those beside it, by continuity or a tone from both ends; mark which end leads where.',
      {
        hold: 'The right cable, proved dead at this place, with slack for the joint? Else stop: joint and cable go elsewhere.',
        subjects: found.edges.filter(({ kind, id }) => kind === 'cable' && !now.has(id)).map(({ id }) => id),
      },
    ),
  ];
}

const inspected = ({ worked }: SiteRequest): readonly TestStep[] =>
  worked.circuitIds.length === 0
    ? []
    : [
        step(
          'inspect',
          'dead-tests',
          'Look all of it over before it is tested: connections tight, no bare copper, sleeves on, cores and sheaths sound, boxes and barriers closed.',
          { isFirst: true },
        ),
      ];

const closed = ({ worked }: SiteRequest): readonly TestStep[] =>
  floorPlaces(worked).boards.length === 0
    ? []
    : [
        step('relay-floors', 'close', 'Relay what was lifted, screwed down clear of cables and pipes.', {
          isFirst: true,
        }),
      ];

const labelledBy: ReadonlySet<string> = new Set(['rcbo', 'rcd-enclosure', 'new-board', 'lower-device']);

const labelled = ({ worked: { scheme } }: SiteRequest): readonly TestStep[] =>
  (scheme?.remedies ?? []).some(({ kind }) => labelledBy.has(kind))
    ? [
        step(
          'label',
          'record',
          'Label the circuit at the board, and put up the notices that the shopping list has.',
          { isFirst: true },
        ),
      ]
    : [];
