/**
 * An error as it may be logged. What wraps a failed statement carries it with its values, which are customers' data and
 * hashes of what opens the door; the error beneath says what is wrong, and no more.
 */
export function loggable(error: unknown): unknown {
  const isStatement = error instanceof Error && 'params' in error && 'query' in error;
  return isStatement ? (error.cause ?? new Error('A statement failed.')) : error;
}
