import { tsImport } from 'tsx/esm/api';

// A thread does not inherit that TypeScript is run as it is.
await tsImport('./batch-worker.ts', import.meta.url);
