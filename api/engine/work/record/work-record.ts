import type { Firm } from '#model/library.ts';
import type { Estimate, SchemeEstimate } from '../../schemes/estimate-result.ts';
import { cautionsOf } from '../cautions-of.ts';
import { type References, referencesOf } from '../references.ts';
import { testSheet } from '../tests/test-sheet.ts';
import { buildingControl } from './building-control.ts';
import { certificateDue } from './certificate-due.ts';
import { circuitFields } from './circuit-fields.ts';
import { describedWork } from './described-work.ts';
import { foundComments } from './found-comments.ts';
import { supplyFields } from './installation-fields.ts';
import { recordCables } from './record-cables.ts';
import type { CircuitRecord, Declaration, WorkRecord } from './record-shape.ts';
import { type Recording, withTested } from './recording.ts';
import { meansFields, testFields } from './test-fields.ts';
import { toSettle } from './to-settle.ts';
import { workFields } from './work-fields.ts';

/** What a record is made from. */
export interface RecordRequest {
  readonly estimate: Pick<Estimate, 'reference' | 'title' | 'date' | 'edition' | 'editionNote' | 'asFound'>;
  readonly scheme: Pick<SchemeEstimate, 'name' | 'worked' | 'proof' | 'findings'>;
  readonly firm: Firm;
  /** The name of the job's state. */
  readonly state: string;
}

/** Said on every record. */
export const NO_CERTIFICATE =
  'This is no certificate. The work has one only when a competent person has inspected and tested it and signed the proper form.';

/** The record of a scheme; unfinished jobs and untested work give a record with room to write. */
export function workRecord({ estimate, scheme, firm, state }: RecordRequest): WorkRecord {
  const worked = withTested(scheme.worked);
  const recording: Recording = {
    worked,
    proof: scheme.proof,
    findings: scheme.findings,
    findingsAsFound: estimate.asFound.findings,
    firm,
    sheet: testSheet({ worked, proof: scheme.proof }),
  };
  const circuits = circuitRecords(recording);
  const supply = supplyFields(recording);
  return {
    reference: estimate.reference,
    title: estimate.title,
    scheme: scheme.name,
    date: estimate.date,
    state,
    edition: estimate.edition,
    editionNote: estimate.editionNote,
    firm: { name: firm.name, address: firm.address },
    certificate: certificateDue(recording),
    noCertificate: NO_CERTIFICATE,
    toSettle: toSettle(recording, supply, circuits),
    lastReadOn: lastReadOn(recording),
    work: workFields(recording),
    supply,
    circuits,
    comments: foundComments(recording),
    buildingControl: buildingControl(recording),
    declaration: declarationOf(firm),
    cautions: cautionsOf(scheme.worked).map(({ words }) => words),
  };
}

function circuitRecords(recording: Recording): readonly CircuitRecord[] {
  const { worked, proof } = recording;
  if (worked.scheme === null) return [];
  const references: References = referencesOf(worked);
  return worked.circuitIds.flatMap((id) => {
    const circuit = worked.proposed.circuits.find((each) => each.id === id);
    if (circuit === undefined) return [];
    return [
      {
        circuitId: id,
        name: circuit.name,
        isNew: circuit.isNew,
        described: describedWork(worked, references, id),
        particulars: circuitFields(
          recording,
          circuit,
          proof.find((each) => each.circuit === id),
        ),
        cables: recordCables(worked, references, id),
        tests: testFields(recording, id),
        means: meansFields(recording, id),
      },
    ];
  });
}

function lastReadOn({ sheet }: Recording): string | null {
  const days = sheet.parts.flatMap(({ tests }) => tests.flatMap(({ reading }) => reading?.takenOn ?? []));
  return days.toSorted().at(-1) ?? null;
}

/** In our own words: the wording that is signed is that of the form. Source: what it declares, BS 7671 Appendix 6. */
const declarationOf = (firm: Firm): Declaration => ({
  intro: [
    'Declared on the proper form, and not here: that the work does not impair the safety of what was there, and that it was designed, built, inspected and tested to BS 7671 as amended to the date written below, but for the departures written above.',
  ],
  lines: [
    { label: 'BS 7671, as amended to', value: '' },
    { label: 'Name', value: '' },
    { label: 'Position', value: '' },
    { label: 'For', value: [firm.name, ...firm.address].filter((line) => line.trim() !== '').join(', ') },
    { label: 'Signature', value: '' },
    { label: 'Date', value: '' },
  ],
});
