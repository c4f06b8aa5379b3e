import type { RequestLine } from './request-log.ts';

/** Where the server writes what it has to say to whoever runs it. */
export interface Log {
  /** For people: where it is, why it does not start. */
  readonly say: (line: string) => void;
  /** With the error that was caught, for its stack, and the request that it happened in. */
  readonly complain: (line: string, error?: unknown, requestId?: string) => void;
  /** For programs: a request that was answered. */
  readonly request: (line: RequestLine) => void;
}

/** What was thrown and what it came of, for a log: names, messages and stacks. */
function stackOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const own = error.stack ?? `${error.name}: ${error.message}`;
  return error.cause === undefined ? own : `${own}\ncaused by ${stackOf(error.cause)}`;
}

interface Writing {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly now: () => Date;
}

/**
 * The log of a server: a line for people at its start, then a line of JSON for each request and for each error. What kept it
 * from starting is told to people too, without a stack.
 */
export function serverLog({ out, err, now }: Writing): Log {
  const line = (fields: object): string => `${JSON.stringify({ time: now().toISOString(), ...fields })}\n`;
  return {
    say: (words) => out(`${words}\n`),
    complain: (message, error, requestId) =>
      err(
        error === undefined
          ? `${message}\n`
          : line({
              level: 'error',
              ...(requestId === undefined ? {} : { requestId }),
              message,
              error: stackOf(error),
            }),
      ),
    request: (fields) => out(line(fields)),
  };
}
