import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ServerRefusal } from '../../../ui/controllers/api-client.ts';
import { DocumentSession, type Keeper } from '../../../ui/controllers/document-session.ts';

interface Doc {
  readonly text: string;
}

/** A server that a test switches off, lets lose answers, and lets others write to. */
class TestServer {
  revision = 1;
  text = 'start';
  away = false;
  loseNextAnswer = false;
  underWay = 0;
  mostUnderWay = 0;
  readonly saved: string[] = [];

  readonly keeper: Keeper<Doc> = {
    read: async () => {
      if (this.away) throw new ServerRefusal(0, {});
      return { value: { text: this.text }, revision: this.revision };
    },
    save: async (doc, base) => {
      this.underWay++;
      this.mostUnderWay = Math.max(this.mostUnderWay, this.underWay);
      await Promise.resolve();
      this.underWay--;
      if (this.away) throw new ServerRefusal(0, {});
      if (base !== this.revision)
        throw new ServerRefusal(412, { code: 'stale-revision', currentRevision: this.revision });
      this.write(doc.text);
      if (this.loseNextAnswer) {
        this.loseNextAnswer = false;
        throw new ServerRefusal(0, {});
      }
      return this.revision;
    },
  };

  write(text: string): void {
    this.revision++;
    this.text = text;
    this.saved.push(text);
  }
}

/** Timers that go off when a test says so. */
class TestTimers {
  #due: { then: () => void }[] = [];
  readonly wait = (_ms: number, then: () => void): (() => void) => {
    const timer = { then };
    this.#due.push(timer);
    return () => {
      this.#due = this.#due.filter((one) => one !== timer);
    };
  };
  get waiting(): number {
    return this.#due.length;
  }
  async goOff(): Promise<void> {
    const due = this.#due;
    this.#due = [];
    for (const { then } of due) then();
    for (let i = 0; i < 30; i++) await Promise.resolve();
  }
}

function begin(): {
  server: TestServer;
  timers: TestTimers;
  session: DocumentSession<Doc>;
  type: (text: string) => void;
} {
  const server = new TestServer();
  const timers = new TestTimers();
  const session = new DocumentSession<Doc>(
    { value: { text: 'start' }, revision: 1 },
    server.keeper,
    () => {},
    timers.wait,
  );
  const type = (text: string): void =>
    session.edit({
      label: text,
      change: (doc) => {
        doc.text = text;
      },
    });
  return { server, timers, session, type };
}

describe('a document session', () => {
  it('keeps the newest state once after a rest', async () => {
    const { server, timers, session, type } = begin();
    for (const text of ['a', 'ab', 'abc']) type(text);
    expect(session.keeping).toBe('keeping');
    expect(timers.waiting).toBe(1);
    await timers.goOff();
    expect(server.saved).toEqual(['abc']);
    expect(session.keeping).toBe('kept');
    expect(session.revision).toBe(2);
  });

  it('keeps nothing when everything was taken back', async () => {
    const { server, timers, session, type } = begin();
    type('a');
    session.undo();
    await timers.goOff();
    expect(session.now.text).toBe('start');
    expect(session.unkept === false || server.text === 'start').toBe(true);
  });

  it('goes on trying while the server is away, and says so', async () => {
    const { server, timers, session, type } = begin();
    server.away = true;
    type('a');
    await timers.goOff();
    expect(session.keeping).toBe('not-kept');
    expect(session.trouble).toMatch(/server/i);
    type('ab');
    await timers.goOff();
    server.away = false;
    await timers.goOff();
    expect(server.text).toBe('ab');
    expect(session.keeping).toBe('kept');
    expect(session.trouble).toBeNull();
  });

  it('knows its own save again when only the answer was lost', async () => {
    const { server, timers, session, type } = begin();
    server.loseNextAnswer = true;
    type('a');
    await timers.goOff();
    expect(session.keeping).toBe('not-kept');
    await timers.goOff();
    expect(session.keeping).toBe('kept');
    expect(session.revision).toBe(server.revision);
    expect(server.saved).toEqual(['a']);
  });

  it('stops at a revision of somebody else, and loses neither', async () => {
    const { server, timers, session, type } = begin();
    server.write('theirs');
    type('mine');
    await timers.goOff();
    expect(session.keeping).toBe('changed-elsewhere');
    expect(session.theirRevision).toBe(2);
    expect(server.text).toBe('theirs');
    type('mine, and more');
    await timers.goOff();
    expect(server.text).toBe('theirs');
    expect(session.now.text).toBe('mine, and more');
    await session.putMineOver();
    expect(server.saved).toEqual(['theirs', 'mine, and more']);
    expect(session.keeping).toBe('kept');
  });

  it('takes theirs when it is told to', async () => {
    const { server, timers, session, type } = begin();
    server.write('theirs');
    type('mine');
    await timers.goOff();
    await session.takeTheirs();
    expect(session.now.text).toBe('theirs');
    expect(session.keeping).toBe('kept');
    expect(session.revision).toBe(2);
  });

  it('has one save under way at most, and ends with the newest state kept, whatever happens', async () => {
    const act = fc.constantFrom('type', 'type', 'undo', 'redo', 'timers', 'by-hand', 'away', 'back', 'lose');
    await fc.assert(
      fc.asyncProperty(fc.array(act, { maxLength: 40 }), async (acts) => {
        const { server, timers, session, type } = begin();
        let typed = 0;
        for (const one of acts) {
          if (one === 'type') type(`text ${typed++}`);
          else if (one === 'undo') session.undo();
          else if (one === 'redo') session.redo();
          else if (one === 'timers') await timers.goOff();
          else if (one === 'by-hand') void session.keep('by-hand');
          else if (one === 'lose') server.loseNextAnswer = true;
          else server.away = one === 'away';
        }
        server.away = false;
        server.loseNextAnswer = false;
        for (let i = 0; i < 5; i++) await timers.goOff();
        expect(server.mostUnderWay).toBeLessThanOrEqual(1);
        expect(server.text).toBe(session.now.text);
        expect(session.keeping).toBe('kept');
      }),
      { numRuns: 300 },
    );
  });
});
