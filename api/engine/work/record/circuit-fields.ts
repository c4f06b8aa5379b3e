import type { Device } from '#model/installation.ts';
import type { Certainty } from '#model/primitives.ts';
import type { NetworkCircuit } from '../../circuit/network.ts';
import { isGuess } from '../../plan/is-guess.ts';
import type { CircuitProof } from '../../proof/circuit-proof.ts';
import { circuitRcd } from '../../proof/rcd-cover.ts';
import { fitsDevice } from '../../rules/fitted-devices.ts';
import { answerOf, zdbField } from './installation-fields.ts';
import {
  type FieldFrom,
  type FieldHead,
  forPerson,
  notesOf,
  type RecordField,
  toldField,
} from './record-field.ts';
import { findingOf, type Recording, saidUnlessPassed } from './recording.ts';

/** A circuit whose particulars are recorded. */
interface Of {
  readonly recording: Recording;
  readonly circuit: NetworkCircuit;
  readonly proof: CircuitProof | undefined;
}

/** Board, device, RCD and limits of one circuit, as the form asks for them. */
export function circuitFields(
  recording: Recording,
  circuit: NetworkCircuit,
  proof: CircuitProof | undefined,
): readonly RecordField[] {
  const of = { recording, circuit, proof };
  return [
    ...boardFields(of),
    ...deviceFields(of),
    ...rcdFields(of),
    afddField(of),
    spdField(of),
    disconnectionField(of),
    ...zsFields(of),
  ];
}

function boardFields({ recording, circuit }: Of): readonly RecordField[] {
  const { board } = circuit;
  const make = board?.make === undefined ? '' : `, ${board.make}`;
  const designed = { certainty: undefined, from: circuit.isNew ? 'scheme' : 'survey' } as const;
  return [
    toldField(
      { id: 'board', label: 'Distribution board' },
      { value: board === null ? null : `${board.label}${make}`, certainty: undefined },
    ),
    zdbField(recording, board?.id ?? null),
    toldField(
      { id: 'circuit-number', label: 'Number of the circuit' },
      { value: circuit.circuit?.way, certainty: circuit.circuit?.certainty?.way },
    ),
    toldField({ id: 'circuit-name', label: 'Name of the circuit' }, { value: circuit.name, ...designed }),
  ];
}

/** Where the facts of a device are from, and how sure they are. */
function deviceOrigin({ recording, circuit }: Of): {
  readonly from: FieldFrom & ('scheme' | 'survey');
  readonly certainty: Certainty | undefined;
} {
  return fitsDevice(recording.worked, circuit.id)
    ? { from: 'scheme', certainty: 'assumed' }
    : { from: 'survey', certainty: circuit.circuit?.certainty?.device };
}

const standardWords = (standard: Device['standard']): string | null =>
  standard === undefined ? null : standard.replaceAll('-', '\u00a0').replace('88\u00a0', '88-');

function deviceFields(of: Of): readonly RecordField[] {
  const { device } = of.circuit;
  const origin = deviceOrigin(of);
  const each = (head: FieldHead, value: string | number | null | undefined): RecordField =>
    toldField(head, { value, ...origin });
  return [
    each({ id: 'device-standard', label: 'Overcurrent device, BS (EN)' }, standardWords(device?.standard)),
    each({ id: 'device-type', label: 'Overcurrent device, type' }, device?.curve),
    each({ id: 'device-rating', label: 'Overcurrent device, rating', unit: 'A' }, device?.ratingA),
    each(
      {
        id: 'device-breaking',
        label: 'Overcurrent device, breaking capacity',
        unit: 'kA',
        note: saidUnlessPassed(findingOf(of.recording, 'BC1', of.circuit.id)),
      },
      device?.breakingKA,
    ),
  ];
}

/** Points of the circuit, or what hangs from it, that have an RCD of their own. */
function localRcds({ recording: { worked }, proof }: Of): readonly string[] {
  const points = new Set((proof?.points ?? []).map(({ point }) => point.replace(/\/load$/, '')));
  const fitted = new Set(
    (worked.scheme?.remedies ?? []).flatMap(({ kind, at }) =>
      (kind === 'rcd-unit' || kind === 'rcd-outlet') && at !== undefined ? [at] : [],
    ),
  );
  return worked.job.points
    .filter(
      ({ id, unit, features }) =>
        points.has(id) && (fitted.has(id) || unit?.rcd === true || features.includes('rcd')),
    )
    .map(({ label }) => label);
}

function rcdFields(of: Of): readonly RecordField[] {
  const { recording, circuit } = of;
  const cover = circuitRcd(recording.worked, circuit.id);
  const local = localRcds(of);
  const note = notesOf(
    local.length === 0 ? null : `With an RCD of their own: ${local.join(', ')}.`,
    saidUnlessPassed(findingOf(recording, 'RC2', circuit.id)),
  );
  const from = cover.from === 'scheme' ? 'scheme' : 'survey';
  const isInDevice = circuit.device?.rcd !== undefined;
  const hasNone = cover.type === null && (cover.state === 'none' || cover.state === 'assumed-none');
  const certainty = cover.state === 'assumed-none' ? 'assumed' : rcdCertainty(of, isInDevice);
  const standard = isInDevice ? standardWords(circuit.device?.standard) : null;
  return [
    toldField(
      { id: 'rcd-standard', label: 'RCD, BS (EN)', note },
      { value: hasNone ? 'none' : standard, certainty, from },
    ),
    toldField({ id: 'rcd-type', label: 'RCD, type' }, { value: cover.type, certainty, from }),
    toldField(
      { id: 'rcd-current', label: 'RCD, rated residual current IΔn', unit: 'mA' },
      { value: cover.mA, certainty, from },
    ),
  ];
}

const rcdCertainty = ({ circuit }: Of, isInDevice: boolean): Certainty | undefined =>
  isInDevice ? circuit.circuit?.certainty?.device : circuit.circuit?.certainty?.upstreamRcd;

function afddField({ recording, circuit }: Of): RecordField {
  const answer = answerOf(recording.worked.job, 'arc-fault-protection');
  const words = answer?.value === 'fitted' ? 'fitted' : answer?.value === 'not-fitted' ? 'none' : null;
  return toldField(
    {
      id: 'afdd',
      label: 'AFDD',
      note: saidUnlessPassed(findingOf(recording, 'PR1', circuit.id)),
    },
    { value: words, certainty: answer?.certainty },
  );
}

function spdField({ recording }: Of): RecordField {
  const answer = answerOf(recording.worked.job, 'surge-protection');
  const finding = findingOf(recording, 'PR2', 'supply');
  const head = { id: 'spd', label: 'SPD' };
  // A new board is counted with one.
  if (finding?.messageId === 'counted')
    return toldField(head, { value: 'fitted', certainty: undefined, from: 'scheme' });
  const note = finding?.messageId === 'declined' ? finding.message : null;
  const isNone = answer?.value === 'declined' || answer?.value === 'wanted';
  return toldField(
    { ...head, note },
    { value: answer?.value === 'fitted' ? 'fitted' : isNone ? 'none' : null, certainty: answer?.certainty },
  );
}

/** Worked out from what is only assumed a limit is no surer than that; from a device that is not there yet it is as designed. */
function limitOrigin(of: Of): { readonly from: 'scheme' | 'table'; readonly certainty: Certainty } {
  const { from, certainty } = deviceOrigin(of);
  const { earthing } = of.recording.worked.job.supply.certainty ?? {};
  if (isGuess(earthing) || (from === 'survey' && isGuess(certainty)))
    return { from: 'table', certainty: 'assumed' };
  return from === 'scheme' ? { from, certainty: 'assumed' } : { from: 'table', certainty: 'seen' };
}

const disconnectionField = (of: Of): RecordField =>
  toldField(
    {
      id: 'disconnection-time',
      label: 'Longest time to disconnect',
      unit: 's',
      note: 'BS 7671 Table 41.1.',
    },
    { value: of.proof?.tests.disconnectWithinS, ...limitOrigin(of) },
  );

/** Ω as a limit is written: cut off and not rounded up. */
const floored = (ohm: number): number => Math.floor(ohm * 100 + 1e-6) / 100;

function zsFields(of: Of): readonly RecordField[] {
  const limit = of.proof?.limit;
  const origin = limitOrigin(of);
  const each = (head: FieldHead, ohm: number | null | undefined): RecordField =>
    ohm === null || ohm === undefined
      ? forPerson(head)
      : {
          ...toldField(head, { value: floored(ohm), ...origin }),
          value: `${floored(ohm).toFixed(2)}\u00a0Ω`,
        };
  return [
    each(
      { id: 'zs-max', label: 'Highest Zs permitted', unit: 'Ω', note: limit?.words ?? null },
      limit?.maximumOhm,
    ),
    each(
      {
        id: 'zs-max-cold',
        label: 'Held to when read cold',
        unit: 'Ω',
        note: limit?.by === 'rcd' ? 'By the RCD, whatever the warmth.' : null,
      },
      limit?.coldOhm,
    ),
  ];
}
