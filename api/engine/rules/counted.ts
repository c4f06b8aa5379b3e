/** A number with its noun, in the singular for one: "1 cable", "2 cables". */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
