/** Where the server writes what it has to say to whoever runs it. */
export interface Log {
  readonly say: (line: string) => void;
  /** With the error that was caught, for its stack. */
  readonly complain: (line: string, error?: unknown) => void;
}
