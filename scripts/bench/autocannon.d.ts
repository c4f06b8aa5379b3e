declare module 'autocannon' {
  /** As much of what a load run is asked and answers as is used here. */
  interface Options {
    readonly url: string;
    readonly connections: number;
    /** Seconds. */
    readonly duration: number;
  }
  interface Result {
    readonly requests: { readonly total: number };
    /** Milliseconds. */
    readonly latency: { readonly p99: number };
    /** Seconds that it really took. */
    readonly duration: number;
    readonly errors: number;
    readonly timeouts: number;
    readonly non2xx: number;
  }
  function autocannon(options: Options): Promise<Result>;
  export = autocannon;
}
