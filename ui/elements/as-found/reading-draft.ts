import type { Reading } from '#model/installation.ts';

type Loop = Extract<Reading, { kind: 'loop' }>;
type Insulation = Extract<Reading, { kind: 'insulation' }>;

/** A reading while it is being written down: everything that any kind of reading tells, as far as it was told. */
export interface ReadingDraft {
  readonly kind: Reading['kind'];
  readonly circuit: string | null;
  readonly phase: Reading['phase'];
  readonly takenOn: string | null;
  readonly resolutionOhm: number | null;
  readonly nullOhm: number | null;
  readonly conductorC: number | null;
  readonly instrument: string | null;
  readonly certainty: Reading['certainty'] | null;
  readonly loop: Loop['loop'];
  readonly from: Loop['from'];
  readonly between: Insulation['between'];
  readonly at: string | null;
  readonly linkedAt: string | null;
  /** What the instrument showed: Ω, MΩ, kA or ms by the kind. */
  readonly shown: number | null;
  /** Test voltage of insulation, V. */
  readonly testV: number | null;
  /** Test current of an RCD, mA. */
  readonly testMa: number | null;
  readonly ok: boolean | null;
}

/** A reading of which nothing is written yet. Usual test values: 500 V for 230 V circuits (BS 7671 Table 64, from memory); 30 mA: common practice, no source. */
export const blankReading: ReadingDraft = {
  kind: 'loop',
  circuit: null,
  phase: 'before',
  takenOn: null,
  resolutionOhm: null,
  nullOhm: null,
  conductorC: null,
  instrument: null,
  certainty: null,
  loop: 'L-N',
  from: 'crossed',
  between: 'LN-cpc',
  at: null,
  linkedAt: null,
  shown: null,
  testV: 500,
  testMa: 30,
  ok: null,
};

/** A reading as it is changed. */
export function draftOf(reading: Reading): ReadingDraft {
  const { circuit, takenOn, resolutionOhm, nullOhm, conductorC, instrument, certainty } = reading;
  const common = {
    ...blankReading,
    kind: reading.kind,
    phase: reading.phase,
    circuit: circuit ?? null,
    takenOn: takenOn ?? null,
    resolutionOhm: resolutionOhm ?? null,
    nullOhm: nullOhm ?? null,
    conductorC: conductorC ?? null,
    instrument: instrument ?? null,
    certainty: certainty ?? null,
  };
  return { ...common, ...ownOf(reading) };
}

/** What readings of one kind alone tell. */
function ownOf(reading: Reading): Partial<ReadingDraft> {
  switch (reading.kind) {
    case 'loop': {
      const { loop, from, at, linkedAt, ohm } = reading;
      return { loop, from, at: at ?? null, linkedAt: linkedAt ?? null, shown: ohm };
    }
    case 'insulation':
      return {
        between: reading.between,
        at: reading.at ?? null,
        shown: reading.megohm,
        testV: reading.testV,
      };
    case 'zs':
    case 'ze':
      return { at: reading.at ?? null, shown: reading.ohm };
    case 'pfc':
      return { at: reading.at ?? null, shown: reading.kA };
    case 'rcd':
      return { at: reading.at ?? null, shown: reading.ms, testMa: reading.mA };
    case 'polarity':
      return { at: reading.at, ok: reading.ok };
    case 'rcd-button':
    case 'afdd-button':
    case 'spd-indicator':
      return { at: reading.at ?? null, ok: reading.ok };
  }
}

/** A group without what was not told. */
const told = <K extends string, V>(key: K, value: V | null): { readonly [P in K]?: V } => {
  const group: { [P in K]?: V } = {};
  if (value !== null) group[key] = value;
  return group;
};

/** The reading that a draft has come to; null while it lacks what such a reading must tell. */
export function readingOf(id: string, draft: ReadingDraft): Reading | null {
  const { phase, shown, loop, from, between, testV, testMa, at, ok } = draft;
  const common = {
    id,
    phase,
    ...told('circuit', draft.circuit),
    ...told('takenOn', draft.takenOn),
    ...told('resolutionOhm', draft.resolutionOhm),
    ...told('nullOhm', draft.nullOhm),
    ...told('conductorC', draft.conductorC),
    ...told('instrument', draft.instrument),
    ...told('certainty', draft.certainty),
  };
  if (draft.kind === 'polarity')
    return at === null || ok === null ? null : { ...common, kind: 'polarity', at, ok };
  if (draft.kind === 'rcd-button' || draft.kind === 'afdd-button' || draft.kind === 'spd-indicator')
    return ok === null ? null : { ...common, kind: draft.kind, ...told('at', at), ok };
  if (shown === null) return null;
  switch (draft.kind) {
    case 'loop': {
      const where = { ...told('at', at), ...told('linkedAt', draft.linkedAt) };
      return { ...common, kind: 'loop', loop, from, ...where, ohm: shown };
    }
    case 'insulation':
      return testV === null
        ? null
        : { ...common, kind: 'insulation', between, ...told('at', at), megohm: shown, testV };
    case 'zs':
    case 'ze':
      return { ...common, kind: draft.kind, ...told('at', at), ohm: shown };
    case 'pfc':
      return { ...common, kind: 'pfc', ...told('at', at), kA: shown };
    case 'rcd':
      return testMa === null ? null : { ...common, kind: 'rcd', ...told('at', at), mA: testMa, ms: shown };
  }
}
