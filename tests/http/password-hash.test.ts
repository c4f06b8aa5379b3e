import { scryptSync } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { FULL_COST, scryptPasswords } from '../../api/http/sign-in/password-hash.ts';
import { TooMany, Turns } from '../../api/http/sign-in/turns.ts';

const cheap = { logN: 4, r: 8, p: 1 };

describe('passwords', () => {
  it('are kept at the cost that is advised for scrypt', () => {
    // Source: OWASP Password Storage Cheat Sheet: N = 2^17, r = 8, p = 1 (from memory).
    expect(FULL_COST).toEqual({ logN: 17, r: 8, p: 1 });
  });

  it('are hashed by scrypt as RFC 7914 has it, each with a salt of its own', async () => {
    const { hash } = scryptPasswords(cheap);
    const [one, other] = [await hash('copper and oak'), await hash('copper and oak')];
    expect(one).not.toBe(other);
    const [, , cost, salt = '', key] = one.split('$');
    expect(cost).toBe('ln=4,r=8,p=1');
    const expected = scryptSync('copper and oak', Buffer.from(salt, 'base64'), 32, { N: 16, r: 8, p: 1 });
    expect(Buffer.from(key ?? '', 'base64').equals(expected)).toBe(true);
    expect(one).not.toContain('copper');
  });

  it('match themselves alone, also as another keyboard writes them', async () => {
    const { hash, matches } = scryptPasswords(cheap);
    const stored = await hash('cafe\u0301 wires');
    expect((await matches('caf\u00e9 wires', stored)).isRight).toBe(true);
    for (const wrong of ['café wire', 'Café wires', '', 'café wires '])
      expect([wrong, (await matches(wrong, stored)).isRight]).toEqual([wrong, false]);
    expect((await matches('café wires', null)).isRight).toBe(false);
  });

  it('are known to be kept at another cost than today’s', async () => {
    const stored = await scryptPasswords(cheap).hash('copper and oak');
    const dearer = scryptPasswords({ ...cheap, logN: 5 });
    expect(await dearer.matches('copper and oak', stored)).toEqual({ isRight: true, isOutdated: true });
    expect((await scryptPasswords(cheap).matches('copper and oak', stored)).isOutdated).toBe(false);
  });

  it('take as long for nobody as for somebody', async () => {
    const dear = scryptPasswords({ logN: 14, r: 8, p: 1 });
    const stored = await dear.hash('copper and oak');
    const spent = async (against: string | null): Promise<number> => {
      const cpu = process.cpuUsage();
      for (let i = 0; i < 5; i += 1) await dear.matches('wrong', against);
      return process.cpuUsage(cpu).user;
    };
    const [known, unknown] = [await spent(stored), await spent(null)];
    expect(unknown / known).toBeGreaterThan(0.3);
    expect(unknown / known).toBeLessThan(3);
  });
});

describe('turns', () => {
  it('let a few run at once, the others after them, and refuse what is beyond', async () => {
    const turns = new Turns(2, 1);
    let running = 0;
    let most = 0;
    const ends: (() => void)[] = [];
    const task = () =>
      turns.take(async () => {
        running += 1;
        most = Math.max(most, running);
        await new Promise<void>((resolve) => ends.push(resolve));
        running -= 1;
      });
    const all = [task(), task(), task()];
    await expect(task()).rejects.toThrow(TooMany);
    while (ends.length > 0 || running > 0) {
      ends.shift()?.();
      await new Promise((resolve) => setTimeout(resolve, 1));
    }
    await Promise.all(all);
    expect(most).toBe(2);
    await Promise.all([turns.take(async () => 1), turns.take(async () => 2)]);
  });
});
