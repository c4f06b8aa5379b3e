import type { Supply } from '#model/installation.ts';
import type { Worked } from '../connections/worked.ts';
import { isGuess } from '../plan/is-guess.ts';
import { asbestosIsOpen, asbestosIsSuspected } from '../rules/asbestos.ts';
import { isMasonry } from '../ways/lay-in-wall.ts';
import { openedFloors } from '../ways/opened-floors.ts';

/** What a caution is about; each is said once, in this order. */
export const cautionSubjects = [
  'isolation',
  'other-sources',
  'colours',
  'asbestos',
  'services',
  'dust',
  'floors',
  'heated-floor',
  'loft',
  'local-rules',
] as const;
export type CautionSubject = (typeof cautionSubjects)[number];

/** One caution of a job. */
export interface Caution {
  readonly subject: CautionSubject;
  readonly words: string;
  /** The same in few words, for a drawing. */
  readonly short: string;
}

/**
 * The cautions that go with the papers of a scheme's work, by what is done and what the survey knows of the house. What nobody has
 * looked at is cautioned of. The usual ones of the trade: common practice, no source, save asbestos (Control of Asbestos
 * Regulations 2012) and proving dead (HSE GS38), both from memory.
 */
export function cautionsOf(worked: Worked): readonly Caution[] {
  const { job } = worked;
  const said: Readonly<Record<CautionSubject, Said | null>> = {
    isolation: [
      'Work dead: isolate, lock off and keep the key, prove the tester, prove dead at each place, prove the tester again. The tails stay live. Prove the ring before adding to it.',
      'Isolate, lock off, prove dead. The tails stay live.',
    ],
    'other-sources': otherSourcesSaid(job.supply),
    colours: coloursSaid(worked),
    asbestos: asbestosSaid(job),
    ...cuttingSaid(worked),
    'local-rules': [
      'For a competent person, who remains responsible. Local rules and licensed practice come first. Nothing here is a certificate, and nothing is called safe.',
      'For a competent person; local rules come first. No certificate: nothing here is called safe.',
    ],
  };
  return cautionSubjects.flatMap((subject) => {
    const own = said[subject];
    return own === null ? [] : [{ subject, words: own[0], short: own[1] }];
  });
}

/** A caution in full and in few words. */
type Said = readonly [words: string, short: string];

function asbestosSaid(job: Worked['job']): Said | null {
  if (asbestosIsSuspected(job))
    return [
      'Asbestos is suspected here: nothing is drilled, cut or lifted before it is sampled.',
      'Asbestos suspected: have it sampled first.',
    ];
  return asbestosIsOpen(job)
    ? [
        'There may be asbestos (coatings, boards by meters, fuse carriers, floor tiles): ask for the survey, stop at anything suspect.',
        'May hold asbestos: survey first, stop if suspect.',
      ]
    : null;
}

const sourceWords: Readonly<Record<Supply['otherSources'][number], string>> = {
  pv: 'solar panels',
  battery: 'a battery',
  ev: 'a vehicle that may feed back',
};

function otherSourcesSaid({ otherSources, certainty }: Supply): Said | null {
  const fed = otherSources.map((source) => sourceWords[source]).join(', ');
  if (otherSources.length > 0)
    return [
      `Other sources here: ${fed}. Isolate and lock each off at its own switch too; the main switch alone does not make it dead.`,
      `Other sources: ${fed}. Isolate each too.`,
    ];
  return isGuess(certainty?.otherSources)
    ? [
        'Nobody has looked whether panels or a battery feed this house too: look before isolating.',
        'Look for panels or a battery first.',
      ]
    : null;
}

function coloursSaid({ job, circuitIds }: Worked): Said | null {
  const found = job.circuits.filter(({ id }) => circuitIds.includes(id));
  if (found.some(({ colours }) => colours === 'old' || colours === 'mixed'))
    return [
      'Old colours: red is the line, black the neutral. Black of new three-phase cable and blue of old are lines: test, never trust a colour.',
      'Old colours: black is neutral. Test, never trust a colour.',
    ];
  return found.some(({ colours }) => colours === undefined)
    ? [
        'Colours of the cable found are not recorded: black may be a neutral or a line. Test, never trust a colour.',
        'Colours not recorded: test, never trust a colour.',
      ]
    : null;
}

/** What the work cuts and opens. */
function cuttingOf({ runs, plan, things }: Worked) {
  const segments = runs.flatMap((run) => run.segments);
  const opened = openedFloors(runs, plan);
  const hasNewBoxes = things.boxes.some(({ action }) => action === 'fit' || action === 're-box');
  const walls = segments.filter(({ medium }) => medium === 'wall-chase' || medium === 'through-wall');
  const joists = segments.some(({ joistsCrossed }) => joistsCrossed > 0);
  const studs = segments.some(({ studsCrossed }) => studsCrossed > 0);
  const isMasonryCut = walls.some(({ wallId }) => {
    const wall = plan.wallById.get(wallId ?? '');
    return wall !== undefined && isMasonry(wall);
  });
  return {
    anything: hasNewBoxes || walls.length > 0 || joists || studs || opened.length > 0,
    isDusty: isMasonryCut || hasNewBoxes,
    opensFloors: opened.length > 0 || joists,
    isHeated: opened.some(({ floor }) => floor?.heated === true),
    isInLoft: segments.some(({ medium }) => medium === 'loft'),
  };
}

/** What the cutting and opening asks for. */
function cuttingSaid(
  worked: Worked,
): Pick<Record<CautionSubject, Said | null>, 'services' | 'dust' | 'floors' | 'heated-floor' | 'loft'> {
  const { anything, isDusty, opensFloors, isHeated, isInLoft } = cuttingOf(worked);
  const when = (is: boolean, ...said: Said): Said | null => (is ? said : null);
  return {
    services: when(
      anything,
      'Gas, water and heating pipes, and other cables, run in walls and floors: trace them before cutting; know where gas and water are turned off.',
      'Trace gas, water and cables before cutting.',
    ),
    dust: when(
      isDusty,
      'Dust of brick, block and plaster harms lungs: extraction on the tool, a mask that fits, eyes covered, no dry sweeping.',
      'Dust: extraction, mask, eyes covered.',
    ),
    floors: when(
      opensFloors,
      'Open floors: tread on joists, cover or guard every opening that is left, take nails out.',
      'Tread on joists; cover every opening.',
    ),
    'heated-floor': when(
      isHeated,
      'A floor that is opened is heated: find its pipes or mats before anything is cut.',
      'Heated floor: find pipes or mats first.',
    ),
    loft: when(
      isInLoft,
      'Loft: boards across joists, light, nobody up there alone, not in the heat of the day; insulation harms lungs and skin.',
      'Loft: boards, light, nobody alone.',
    ),
  };
}
