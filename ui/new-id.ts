const letters = 'abcdefghijkmnpqrstuvwxyz23456789';

/** A new id for a thing of the job: ten random characters, none easily mistaken for another. */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(10));
  return [...bytes].map((byte) => letters[byte % letters.length]).join('');
}
