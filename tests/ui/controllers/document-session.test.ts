import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NO_CONNECTION, ServerRefusal } from '../../../ui/controllers/api-client.ts';
import { DocumentSession } from '../../../ui/controllers/document-session.ts';
import type { Keeper } from '../../../ui/controllers/keeper.ts';

interface Doc {
  readonly text: string;
  readonly note?: string;
}

/** A server that a test switches off, lets lose answers, and lets others write to. */
class TestServer {
  revision = 1;
  text = 'start';
  away = false;
  loseNextAnswer = false;
  /** What the next save is refused with. */
  nextRefusal: ServerRefusal | null = null;
  readRefused = false;
  readonly hows: string[] = [];
  underWay = 0;
  mostUnderWay = 0;
  readonly saved: string[] = [];

  readonly keeper: Keeper<Doc> = {
    read: async () => {
      if (this.away || this.readRefused) throw new ServerRefusal(0, {});
      return { value: this.doc, ...this.tags };
    },
    look: async (etag) => (etag === this.tags.etag ? null : { value: this.doc, ...this.tags }),
    save: async (doc, base, how) => {
      this.underWay++;
      this.mostUnderWay = Math.max(this.mostUnderWay, this.underWay);
      await Promise.resolve();
      this.underWay--;
      if (this.away) throw new ServerRefusal(0, {});
      if (this.nextRefusal !== null) {
        const refusal = this.nextRefusal;
        this.nextRefusal = null;
        throw refusal;
      }
      if (base !== this.tags.etag)
        throw new ServerRefusal(412, { code: 'stale-revision', currentRevision: this.revision });
      this.write(doc.text, doc);
      this.hows.push(how);
      if (this.loseNextAnswer) {
        this.loseNextAnswer = false;
        throw new ServerRefusal(0, {});
      }
      return this.tags;
    },
  };

  /** What is stored, as a reader of it gives it: with the keys in the reader's order. */
  get doc(): Doc {
    const { text, note } = this.#stored;
    return note === undefined ? { text } : { note, text };
  }

  #stored: Doc = { text: 'start' };

  get tags(): { readonly revision: number; readonly etag: string } {
    return { revision: this.revision, etag: `"${this.revision}-${this.text.length}"` };
  }

  write(text: string, doc: Doc = { text }): void {
    this.revision++;
    this.text = text;
    this.#stored = doc;
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
    { value: server.doc, ...server.tags },
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
    expect(session.trouble).toBe(NO_CONNECTION);
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

  it('knows its own save again though it is read with its keys in another order', async () => {
    const { server, timers, session } = begin();
    server.loseNextAnswer = true;
    session.edit({
      label: 'Note',
      change: (doc) => {
        doc.note = 'later';
      },
    });
    await timers.goOff();
    await timers.goOff();
    expect(JSON.stringify(server.doc)).not.toBe(JSON.stringify(session.now));
    expect(session.keeping).toBe('kept');
  });

  it('does not speak of a change elsewhere before it has read one', async () => {
    const { server, timers, session, type } = begin();
    server.loseNextAnswer = true;
    type('a');
    await timers.goOff();
    server.readRefused = true;
    await timers.goOff();
    expect(session.keeping).toBe('not-kept');
    expect(session.triesAgain).toBe(true);
    server.readRefused = false;
    await timers.goOff();
    expect(session.keeping).toBe('kept');
    expect(server.saved).toEqual(['a']);
  });

  it('says whether a save that did not get through is tried again by itself', async () => {
    const { server, timers, session, type } = begin();
    expect(session.triesAgain).toBe(false);
    server.away = true;
    type('a');
    expect(session.triesAgain).toBe(false);
    await timers.goOff();
    expect(session.triesAgain).toBe(true);
    server.away = false;
    server.nextRefusal = new ServerRefusal(413, { code: 'body-too-large', detail: 'Too large.' });
    await timers.goOff();
    expect(session.triesAgain).toBe(false);
    expect(session.keeping).toBe('not-kept');
    expect(timers.waiting).toBe(0);
    await session.keep('by-hand');
    expect(session.keeping).toBe('kept');
    expect(session.triesAgain).toBe(false);
  });

  it('keeps by hand, when asked, what it has kept by itself already; once', async () => {
    const { server, timers, session, type } = begin();
    type('a');
    await timers.goOff();
    await session.keep('by-hand');
    expect(server.hows).toEqual(['autosave']);
    await session.pin();
    await session.pin();
    expect(server.hows).toEqual(['autosave', 'by-hand']);
    expect(server.saved).toEqual(['a', 'a']);
    expect(session.revision).toBe(3);
    type('b');
    await session.pin();
    expect(server.hows).toEqual(['autosave', 'by-hand', 'by-hand']);
    expect(session.now.text).toBe('b');
    expect(session.undoLabel).toBe('b');
  });

  it('does not forget, while it tries again, that it was to keep by hand', async () => {
    const { server, timers, session, type } = begin();
    server.away = true;
    type('a');
    await session.keep('by-hand');
    server.away = false;
    await timers.goOff();
    expect(server.hows).toEqual(['by-hand']);
    expect(session.isPinned).toBe(true);
    type('b');
    await timers.goOff();
    expect(server.hows).toEqual(['by-hand', 'autosave']);
    expect(session.isPinned).toBe(false);
  });

  it('pins nothing over what somebody else saved', async () => {
    const { server, session } = begin();
    server.write('theirs');
    await session.pin();
    expect(server.saved).toEqual(['theirs']);
    expect(session.keeping).toBe('changed-elsewhere');
  });

  it('stops at a revision of somebody else, and loses neither', async () => {
    const { server, timers, session, type } = begin();
    server.write('theirs');
    type('mine');
    await timers.goOff();
    expect(session.keeping).toBe('changed-elsewhere');
    expect(session.theirs?.revision).toBe(2);
    expect(server.text).toBe('theirs');
    type('mine, and more');
    await timers.goOff();
    expect(server.text).toBe('theirs');
    expect(session.now.text).toBe('mine, and more');
    await session.putMineOver(await session.readTheirs());
    expect(server.saved).toEqual(['theirs', 'mine, and more']);
    expect(session.keeping).toBe('kept');
  });

  it('tells of what they saved last, when they save again before it is decided', async () => {
    const { server, timers, session, type } = begin();
    server.write('theirs');
    type('mine');
    await timers.goOff();
    expect(session.theirs?.value).toEqual({ text: 'theirs' });
    server.write('theirs, again');
    await session.lookAgain();
    expect(session.theirs?.value).toEqual({ text: 'theirs, again' });
    expect(session.theirs?.revision).toBe(3);
    server.write('theirs, a third time');
    type('mine, and more');
    await timers.goOff();
    expect(session.theirs?.value).toEqual({ text: 'theirs, a third time' });
    expect(session.now.text).toBe('mine, and more');
    expect(session.keeping).toBe('changed-elsewhere');
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
    const act = fc.constantFrom(
      'type',
      'type',
      'undo',
      'redo',
      'timers',
      'by-hand',
      'pin',
      'away',
      'back',
      'lose',
    );
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
          else if (one === 'pin') void session.pin();
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
