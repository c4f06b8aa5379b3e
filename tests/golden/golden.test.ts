import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { golden } from './golden.ts';

const kept = (path: string): string => readFileSync(new URL(path, import.meta.url), 'utf8');

describe('our own output of the demo jobs', () => {
  const { figures, picture } = golden();

  it('has not moved unnoticed (npm run golden writes it anew)', () => {
    expect(JSON.parse(figures)).toEqual(JSON.parse(kept('figures.json')));
  });

  it('is what the picture in the README shows (npm run golden writes it anew)', () => {
    expect(picture).toBe(kept('../../data/pictures/saltglass-row-first-floor.svg'));
  });
});
