import { describe, expect, it, vi } from 'vitest';
import { ScreenParts } from '../../../ui/controllers/screen-parts.ts';

/** Parts whose files come when the test says so. */
function begin() {
  const asked: string[] = [];
  const waiting = new Map<string, { readonly come: () => void; readonly fail: () => void }>();
  const load = (name: string) => () => {
    asked.push(name);
    return new Promise<void>((resolve, reject) => {
      waiting.set(name, { come: resolve, fail: () => reject(new Error('no connection')) });
    });
  };
  const parts = new ScreenParts({ job: load('job'), firm: load('firm'), papers: load('papers') });
  const told = vi.fn();
  const end = parts.watch(told);
  const settle = async (name: string, how: 'come' | 'fail'): Promise<void> => {
    waiting.get(name)?.[how]();
    await new Promise((resolve) => setTimeout(resolve));
  };
  return { asked, parts, told, end, settle };
}

/** Long enough for a page that has nothing to do. */
const idle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 80));

describe('parts of the screen', () => {
  it('are asked for once, when they are wanted first, and are there when their files are', async () => {
    const { asked, parts, told, settle } = begin();
    expect([parts.want('job'), parts.want('job'), asked]).toEqual(['coming', 'coming', ['job']]);
    expect(told).not.toHaveBeenCalled();
    await settle('job', 'come');
    expect([parts.want('job'), asked]).toEqual(['there', ['job']]);
    expect(told).toHaveBeenCalledOnce();
  });

  it('have failed where they cannot be had, stay so, and are asked for again on request', async () => {
    const { asked, parts, told, settle } = begin();
    parts.want('job');
    await settle('job', 'fail');
    expect([parts.want('job'), parts.want('job'), asked]).toEqual(['failed', 'failed', ['job']]);
    parts.again();
    expect([parts.want('job'), asked]).toEqual(['coming', ['job', 'job']]);
    await settle('job', 'come');
    expect(parts.want('job')).toBe('there');
    expect(told).toHaveBeenCalledTimes(3);
    parts.again();
    expect(asked).toHaveLength(2);
  });

  it('come by themselves one after another, but for what was wanted already', async () => {
    const { asked, parts, settle } = begin();
    parts.want('firm');
    void parts.rest();
    await idle();
    expect(asked).toEqual(['firm', 'job']);
    await settle('job', 'come');
    await idle();
    expect(asked).toEqual(['firm', 'job', 'papers']);
    await settle('papers', 'come');
    expect([parts.want('job'), parts.want('papers'), asked.length]).toEqual(['there', 'there', 3]);
    expect(parts.isWhole).toBe(false);
    await settle('firm', 'come');
    expect(parts.isWhole).toBe(true);
  });

  it('that came by themselves in vain are asked for anew by whoever wants them', async () => {
    const { asked, parts, settle } = begin();
    void parts.rest();
    await idle();
    await settle('job', 'fail');
    await idle();
    expect(asked).toEqual(['job', 'firm']);
    expect([parts.want('job'), asked]).toEqual(['coming', ['job', 'firm', 'job']]);
  });

  it('tell nobody once the watch has ended', async () => {
    const { parts, told, end, settle } = begin();
    parts.want('job');
    end();
    await settle('job', 'come');
    expect(told).not.toHaveBeenCalled();
  });
});
