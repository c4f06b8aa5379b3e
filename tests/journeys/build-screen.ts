import { build } from 'vite';

/** Builds the screen once before the tests: the journeys run what people get. */
export default async function buildScreen(): Promise<void> {
  await build({ configFile: '.vite.config.ts', logLevel: 'error' });
}
