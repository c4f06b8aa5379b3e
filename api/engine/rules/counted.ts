/** A number with its noun, in the singular for one: "1 cable", "2 cables". */
export function counted(count: number, noun: string, many = `${noun}s`): string {
  return `${count} ${count === 1 ? noun : many}`;
}
