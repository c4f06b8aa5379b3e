/** Where a table's figures come from, and how they were looked at. */
export interface TableSource {
  /** The publication with its edition. */
  readonly ref: string;
  /** Table number, clause or page. */
  readonly where: string;
  /** How the figures were checked, and against what. */
  readonly checked: string;
}

/**
 * How a row is known: `seen` on a page that prints it, `derived` by arithmetic from seen figures,
 * `memory` by recollection of the trade, to be checked against a bought copy.
 */
export type RowStatus = 'seen' | 'derived' | 'memory';

/** One published table: its source and its rows, nothing else; look-ups live in the engine. */
export interface Table {
  readonly source: TableSource;
  readonly rows: readonly ({ readonly status: RowStatus } & Readonly<Record<string, unknown>>)[];
}
