/** Rows of a symmetric matrix below the diagonal, each from its first entry that is not nought to the diagonal. */
export interface Envelope {
  readonly size: number;
  /** By row: the column of the first entry kept. */
  readonly first: Int32Array;
  /** By row: what to add to a column for the place in `value`. */
  readonly offset: Int32Array;
  readonly value: Float64Array;
}

/** An envelope of noughts. */
export function newEnvelope(first: Int32Array): Envelope {
  const size = first.length;
  const offset = new Int32Array(size);
  let count = 0;
  for (let row = 0; row < size; row += 1) {
    offset[row] = count - (first[row] ?? 0);
    count += row - (first[row] ?? 0) + 1;
  }
  return { size, first, offset, value: new Float64Array(count) };
}

/** Adds to an entry; the row is at least the column, the column at least the row's first. */
export function addTo({ offset, value }: Envelope, row: number, column: number, amount: number): void {
  const at = (offset[row] ?? 0) + column;
  value[at] = (value[at] ?? 0) + amount;
}

/**
 * Replaces a positive definite matrix by its Cholesky factor, which keeps the envelope.
 *
 * Source: A. George and J. Liu, Computer Solution of Large Sparse Positive Definite Systems, chapter 4 (from memory).
 */
export function factorInPlace({ size, first, offset, value }: Envelope): void {
  for (let row = 0; row < size; row += 1) {
    const rowFirst = first[row] ?? 0;
    const rowAt = offset[row] ?? 0;
    let diagonal = value[rowAt + row] ?? 0;
    for (let column = rowFirst; column < row; column += 1) {
      const columnAt = offset[column] ?? 0;
      let entry = value[rowAt + column] ?? 0;
      for (let k = Math.max(rowFirst, first[column] ?? 0); k < column; k += 1)
        entry -= (value[rowAt + k] ?? 0) * (value[columnAt + k] ?? 0);
      entry /= value[columnAt + column] ?? 1;
      value[rowAt + column] = entry;
      diagonal -= entry * entry;
    }
    value[rowAt + row] = Math.sqrt(diagonal);
  }
}

/** Solves factor · y = x in place, for an x that is nought before a row. */
export function solveForward({ size, first, offset, value }: Envelope, x: Float64Array, start = 0): void {
  for (let row = start; row < size; row += 1) {
    const rowAt = offset[row] ?? 0;
    let sum = x[row] ?? 0;
    for (let k = Math.max(first[row] ?? 0, start); k < row; k += 1)
      sum -= (value[rowAt + k] ?? 0) * (x[k] ?? 0);
    x[row] = sum / (value[rowAt + row] ?? 1);
  }
}

/** Solves transposed factor · x = y in place. */
export function solveBackward({ size, first, offset, value }: Envelope, x: Float64Array): void {
  for (let row = size - 1; row >= 0; row -= 1) {
    const rowAt = offset[row] ?? 0;
    const solved = (x[row] ?? 0) / (value[rowAt + row] ?? 1);
    x[row] = solved;
    for (let k = first[row] ?? 0; k < row; k += 1) x[k] = (x[k] ?? 0) - (value[rowAt + k] ?? 0) * solved;
  }
}
