import { Copies } from '../../../ui/device/copies.ts';
import { type DeviceStore, memoryStore } from '../../../ui/device/device-store.ts';
import type { Tab } from '../../../ui/device/this-tab.ts';

/** A device whose tabs a test opens and closes; what is written lasts past them. */
export class TestDevice {
  readonly store: DeviceStore;
  readonly #open = new Set<string>();
  #count = 0;

  constructor(store: DeviceStore = memoryStore(true)) {
    this.store = store;
  }

  /** Opens a tab; `close` ends it as a crash would. */
  tab(): { readonly copies: Copies; readonly close: () => void } {
    const id = `tab-${++this.#count}`;
    this.#open.add(id);
    const tab: Tab = { id, isFree: async (owner) => owner !== id && !this.#open.has(owner) };
    return { copies: new Copies(Promise.resolve(this.store), tab), close: () => this.#open.delete(id) };
  }
}
