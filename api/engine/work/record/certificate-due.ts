import { findingOf, type Recording } from './recording.ts';

/** Which certificate the work ends with. */
export interface CertificateDue {
  /** `none`: no circuit is touched. */
  readonly kind: 'minor-works' | 'installation' | 'none';
  readonly title: string;
  readonly words: readonly string[];
}

const NONE: CertificateDue = {
  kind: 'none',
  title: 'Record for a certificate',
  words: ['This scheme touches no circuit: there is nothing to certify.'],
};

const ONE_FORM =
  'One circuit is altered: a minor electrical installation works certificate is the paper for it.';

const installation: CertificateDue = {
  kind: 'installation',
  title: 'Record for an installation certificate',
  words: [
    'A new circuit or a new board is not for a minor works certificate. It takes an electrical installation certificate with a schedule of inspections and a schedule of test results, signed for design, construction, inspection and testing.',
    'What is recorded here goes into those; the schedule of inspections is made on the spot.',
    // Items of the certificate's first pages and of its schedule, from memory.
    'They ask besides for what is not in this record: extent and limits of the work, main switch, greatest demand, how many points each circuit serves, and when to inspect next.',
  ],
};

/**
 * The certificate that a scheme ends with, by the check on it (NT2).
 * Source: BS 7671 644.1 and 644.4; Appendix 6, notes to the forms: one minor works form for each circuit, none for a new one.
 */
export function certificateDue(recording: Recording): CertificateDue {
  const circuits = recording.worked.scheme === null ? 0 : recording.worked.circuitIds.length;
  const messageId = findingOf(recording, 'NT2')?.messageId;
  if (circuits === 0 || messageId === undefined) return NONE;
  if (messageId === 'installation') return installation;
  const words =
    messageId === 'minorWork'
      ? [ONE_FORM]
      : [
          `${circuits} circuits are altered: a minor electrical installation works certificate for each of them, or one installation certificate for all.`,
        ];
  return { kind: 'minor-works', title: 'Record for a minor works certificate', words };
}
