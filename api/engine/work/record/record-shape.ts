import type { BuildingControl } from './building-control.ts';
import type { CertificateDue } from './certificate-due.ts';
import type { FoundComment } from './found-comments.ts';
import type { RecordCable } from './record-cables.ts';
import type { RecordField } from './record-field.ts';

/** What the record has of one circuit: a form of its own. */
export interface CircuitRecord {
  readonly circuitId: string;
  readonly name: string;
  /** True for a circuit that the scheme brings. */
  readonly isNew: boolean;
  /** What is done to it, a sentence each; empty where nothing is but its board exchanged. */
  readonly described: readonly string[];
  readonly particulars: readonly RecordField[];
  readonly cables: readonly RecordCable[];
  readonly tests: readonly RecordField[];
  /** With what it was tested, and what could not be. */
  readonly means: readonly RecordField[];
}

/** What whoever signs declares, and the lines that are filled in by hand. */
export interface Declaration {
  readonly intro: readonly string[];
  readonly lines: readonly { readonly label: string; readonly value: string }[];
}

/**
 * The data that a certificate for the work wants, as far as the job has them: plain data, in our own order. It is no certificate, and
 * nothing of it is measured but what says so.
 */
export interface WorkRecord {
  readonly reference: string;
  readonly title: string;
  readonly scheme: string;
  /** Of the record, ISO. */
  readonly date: string;
  readonly state: string;
  readonly edition: string;
  readonly editionNote: string;
  readonly firm: { readonly name: string; readonly address: readonly string[] };
  readonly certificate: CertificateDue;
  readonly noCertificate: string;
  /** Before anybody can sign, gravest first; empty: all that the tool knows of is settled. */
  readonly toSettle: readonly string[];
  /** The day of the last reading after the work, ISO; null where none has one. */
  readonly lastReadOn: string | null;
  readonly work: readonly RecordField[];
  readonly supply: readonly RecordField[];
  /** By circuit, in the order of their ids. */
  readonly circuits: readonly CircuitRecord[];
  /** On the existing installation. */
  readonly comments: readonly FoundComment[];
  readonly buildingControl: BuildingControl;
  readonly declaration: Declaration;
  readonly cautions: readonly string[];
}
