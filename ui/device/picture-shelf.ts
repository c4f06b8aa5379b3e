/** What is known of a picture on the device without reading it. */
export interface PictureHead {
  /** The SHA-256 of its bytes, hexadecimal. */
  readonly id: string;
  readonly mediaType: string;
  /** True once the server has it. */
  readonly isSent: boolean;
  /** When it was put here, by the device's clock, ISO. */
  readonly keptAt: string;
}

/** A picture whole. */
export interface KeptPicture {
  readonly head: PictureHead;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** Where a device keeps pictures past the page, each once under the hash of its bytes. Every call throws where the device refuses. */
export interface PictureShelf {
  /** Of every picture, by id. */
  readonly heads: () => Promise<readonly PictureHead[]>;
  /** Null where there is none by that id. */
  readonly read: (id: string) => Promise<KeptPicture | null>;
  /** Resolves once it is on the disk; one that was sent before stays sent. */
  readonly put: (picture: KeptPicture) => Promise<void>;
  /** The server has it; one that is gone meanwhile stays gone. */
  readonly markSent: (id: string) => Promise<void>;
  readonly drop: (ids: readonly string[]) => Promise<void>;
}

/** A shelf that lasts as long as the page: for browsers that give no other, and for tests. */
export function memoryShelf(): PictureShelf {
  const pictures = new Map<string, KeptPicture>();
  return {
    heads: async () =>
      [...pictures.values()].map(({ head }) => head).toSorted((a, b) => (a.id < b.id ? -1 : 1)),
    read: async (id) => structuredClone(pictures.get(id) ?? null),
    put: async ({ head, bytes }) => {
      const isSent = head.isSent || pictures.get(head.id)?.head.isSent === true;
      pictures.set(head.id, structuredClone({ head: { ...head, isSent }, bytes }));
    },
    markSent: async (id) => {
      const picture = pictures.get(id);
      if (picture !== undefined) pictures.set(id, { ...picture, head: { ...picture.head, isSent: true } });
    },
    drop: async (ids) => {
      for (const id of ids) pictures.delete(id);
    },
  };
}
