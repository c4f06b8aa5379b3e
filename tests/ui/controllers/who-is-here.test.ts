import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { ServerRefusal } from '../../../ui/controllers/api-client.ts';
import { type Session, WhoIsHere } from '../../../ui/controllers/who-is-here.ts';
import { deviceNameOf, rememberWho, whoWasHere } from '../../../ui/device/who-was-here.ts';
import { mayChange, setRole } from '../../../ui/rights.ts';

/** What a browser keeps by name. */
function textStore(): Storage {
  const kept = new Map<string, string>();
  return {
    get length() {
      return kept.size;
    },
    clear: () => kept.clear(),
    getItem: (key) => kept.get(key) ?? null,
    key: (at) => [...kept.keys()][at] ?? null,
    removeItem: (key) => void kept.delete(key),
    setItem: (key, value) => void kept.set(key, value),
  };
}

beforeEach(() => {
  vi.stubGlobal('localStorage', textStore());
  vi.stubGlobal('sessionStorage', textStore());
});
afterEach(() => {
  vi.unstubAllGlobals();
  setRole('owner');
});

const nobody: Session = { signIn: true, firm: null, role: null, person: null, publicOrigin: null };
const somebody = (firm: string, role: Session['role'] = 'owner'): Session => ({
  ...nobody,
  firm,
  role,
  person: { id: 'p', name: 'P', email: 'p@x.example' },
});

/** A server that says who is signed in; null: it is not reached. */
function served(first: Session | null) {
  const asked: { readonly path: string; readonly headers: Record<string, string> }[] = [];
  const server = { session: first, isRefusing: false };
  const fetcher: typeof fetch = async (input, init) => {
    const path = String(input);
    asked.push({ path, headers: { ...(init?.headers as Record<string, string>) } });
    if (server.session === null) throw new TypeError('not reached');
    if (path !== '/api/session')
      return new Response(null, { status: server.session.firm === null ? 401 : 200 });
    if (init?.method === 'POST' && server.isRefusing)
      return new Response(JSON.stringify({ code: 'sign-in-refused' }), { status: 401 });
    return new Response(JSON.stringify(server.session), { status: 200 });
  };
  const reload = vi.fn();
  return { here: new WhoIsHere({ fetch: fetcher, reload }), server, asked, reload };
}

describe('who is here', () => {
  it('is nobody before somebody signs in, and who it is then', async () => {
    const { here, server } = served(nobody);
    await here.start();
    expect(here.presence).toBe('out');
    server.session = somebody('north', 'read-only');
    await here.signIn('p@x.example', 'x');
    expect([here.presence, here.firm, mayChange()]).toEqual(['here', 'north', false]);
    expect(whoWasHere()).toEqual({ firm: 'north', role: 'read-only', name: 'P', isOut: false });
  });

  it('is the owner on one’s own machine, and without a connection who was here last', async () => {
    const own = served({ ...nobody, signIn: false, firm: 'own', role: 'owner' });
    await own.here.start();
    expect([own.here.presence, own.here.firm]).toEqual(['here', 'own']);
    rememberWho({ firm: 'north', role: 'estimator', name: 'P', isOut: false });
    const away = served(null);
    await away.here.start();
    expect([away.here.presence, away.here.firm, away.here.role]).toEqual(['here', 'north', 'estimator']);
  });

  it('is nobody without a connection once they signed out', async () => {
    rememberWho({ firm: 'north', role: 'owner', name: null, isOut: true });
    const { here } = served(null);
    await here.start();
    expect(here.presence).toBe('out');
  });

  it('goes on working when the session is over, and again once they sign in', async () => {
    const { here, server, asked, reload } = served(somebody('north'));
    await here.start();
    const told = vi.fn();
    here.watch(told);
    server.session = nobody;
    await here.fetch('/api/jobs');
    await expect.poll(() => here.presence).toBe('over');
    expect(told).toHaveBeenCalled();
    expect(asked.at(1)?.headers['ringwright-firm']).toBe('north');
    server.session = somebody('north');
    await here.signIn('p@x.example', 'x');
    expect([here.presence, reload.mock.calls.length]).toEqual(['here', 0]);
  });

  it('begins the page anew for another firm or another role, and keeps nothing typed for it', async () => {
    const { here, server, reload } = served(somebody('north'));
    await here.start();
    localStorage.setItem('typed', 'a reason');
    server.session = somebody('south');
    await here.signIn('q@x.example', 'x');
    expect([reload.mock.calls.length, whoWasHere()?.firm, localStorage.getItem('typed')]).toEqual([
      1,
      'south',
      null,
    ]);
    const again = served(somebody('south'));
    await again.here.start();
    again.server.session = somebody('south', 'read-only');
    await again.here.signIn('r@x.example', 'x');
    expect(again.reload).toHaveBeenCalledTimes(1);
  });

  it('says when a sign-in is refused, and stays out', async () => {
    const { here, server } = served(nobody);
    await here.start();
    server.isRefusing = true;
    await expect(here.signIn('p@x.example', 'x')).rejects.toBeInstanceOf(ServerRefusal);
    expect(here.presence).toBe('out');
  });

  it('signs out with the server, and not without it', async () => {
    const { here, server, reload } = served(somebody('north'));
    await here.start();
    server.session = null;
    await expect(here.signOut(true)).rejects.toBeInstanceOf(ServerRefusal);
    expect(whoWasHere()?.isOut).toBe(false);
    server.session = somebody('north');
    await here.signOut(true);
    expect([whoWasHere()?.isOut, reload.mock.calls.length]).toEqual([true, 1]);
  });
});

describe('a device', () => {
  it('has a place of its own for each firm, and the one that there was for one’s own', () => {
    expect(deviceNameOf('own')).toBe('ringwright');
    expect(new Set(['own', 'north', 'south'].map(deviceNameOf)).size).toBe(3);
  });
});
