/** What went wrong, in the words of whoever threw it. */
export const errorWords = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);
