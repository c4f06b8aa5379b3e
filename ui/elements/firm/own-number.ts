/** A number of the firm's that may be left out, and what leaving it out means. */
export interface OwnNumber<K> {
  readonly key: K;
  readonly label: string;
  readonly unit: string;
  readonly help: string;
  readonly factor?: number;
}
