import { describe, expect, it } from 'vitest';
import { testApp } from '#tests/http/test-app.ts';
import { ApiClient } from '../../../ui/controllers/api-client.ts';
import { OpenLibrary } from '../../../ui/controllers/open-library.ts';
import type { LibraryEdit } from '../../../ui/library-events.ts';
import { TestClock } from './test-clock.ts';

/** A server, a way to it that can be cut or held up, and two windows on its library. */
async function begin() {
  const { app } = await testApp();
  const line: { cut: boolean; held: Promise<void> | null } = { cut: false, held: null };
  const api = new ApiClient(async (input, init) => {
    if (line.cut) throw new TypeError('Failed to fetch');
    const answer = await app.request(String(input), init);
    if (init?.method === 'GET') await line.held;
    return answer;
  });
  const clock = new TestClock();
  return {
    api,
    line,
    clock,
    mine: new OpenLibrary(api, clock.wait),
    theirs: new OpenLibrary(api, clock.wait),
  };
}

const named = (name: string): LibraryEdit => ({
  label: `Call the firm ${name}`,
  change: (library) => {
    library.firm.name = name;
  },
});

const nameAtServer = async (api: ApiClient): Promise<string> => (await api.readLibrary()).value.firm.name;

describe('the firm’s library in a window', () => {
  it('is one for all who open it, at once or later, with its steps back', async () => {
    const { mine } = await begin();
    const [first, second] = await Promise.all([mine.open(), mine.open()]);
    expect(second).toBe(first);
    first.edit(named('One'));
    await mine.keep();
    expect(await mine.open()).toBe(first);
    expect(first.undoLabel).toBe('Call the firm One');
  });

  it('goes on being tried when its page is left while the server is away', async () => {
    const { api, clock, line, mine } = await begin();
    const session = await mine.open();
    line.cut = true;
    session.edit(named('Typed in the cellar'));
    await mine.keep();
    expect(mine.unkept).toBe(true);
    expect(session.triesAgain).toBe(true);
    line.cut = false;
    await clock.settle(60_000);
    expect(mine.unkept).toBe(false);
    expect(await nameAtServer(api)).toBe('Typed in the cellar');
  });

  it('holds what was changed here and elsewhere until somebody decides, also when it is opened again', async () => {
    const { api, clock, mine, theirs } = await begin();
    const session = await mine.open();
    (await theirs.open()).edit(named('Theirs'));
    await theirs.keep();
    session.edit(named('Mine'));
    await clock.settle(1000);
    expect(session.keeping).toBe('changed-elsewhere');
    expect(mine.unkept).toBe(true);
    await mine.refresh();
    expect(await mine.open()).toBe(session);
    expect(session.now.firm.name).toBe('Mine');
    expect(await nameAtServer(api)).toBe('Theirs');
  });

  it('takes what somebody else saved when it looks again, and tells', async () => {
    const { mine, theirs } = await begin();
    const session = await mine.open();
    let told = 0;
    const end = mine.listen(() => {
      told++;
    });
    await mine.refresh();
    expect(told).toBe(0);
    (await theirs.open()).edit(named('Theirs'));
    await theirs.keep();
    await mine.refresh();
    expect(told).toBe(1);
    expect(session.now.firm.name).toBe('Theirs');
    end();
    session.edit(named('Mine'));
    expect(told).toBe(1);
  });

  it('stays as it is when there is no answer, or nobody has opened it', async () => {
    const { line, mine } = await begin();
    line.cut = true;
    await mine.refresh();
    expect(mine.session).toBeNull();
    line.cut = false;
    const { firm } = (await mine.open()).now;
    line.cut = true;
    await mine.refresh();
    expect(mine.session?.now.firm).toBe(firm);
    // What is open already can be worked on.
    expect((await mine.open()).now.firm).toBe(firm);
  });

  it('is not put back to what was read before a save that came in between', async () => {
    const { line, mine } = await begin();
    const session = await mine.open();
    let letGo = (): void => {};
    line.held = new Promise((resolve) => {
      letGo = resolve;
    });
    const looking = mine.refresh();
    await new Promise((resolve) => setTimeout(resolve, 50));
    session.edit(named('Mine'));
    await mine.keep();
    line.held = null;
    letGo();
    await looking;
    expect(session.now.firm.name).toBe('Mine');
    expect(session.undoLabel).toBe('Call the firm Mine');
  });
});
