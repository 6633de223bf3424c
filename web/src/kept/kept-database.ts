import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

/** What a chosen photo is called and where it belongs; its bytes lie beside it, so that a list costs no pictures. */
export interface KeptPhoto {
  readonly key: string;
  readonly plantId: string;
  readonly plantName: string;
  readonly fileName: string;
  readonly type: string;
  /** What the grower says of it; `null` leaves it to the camera and to the collar. */
  readonly day: string | null;
  readonly turnDeg: number | null;
  /** Day and moment of choosing, by this device: it may wait for a week. */
  readonly chosenOn: string;
  readonly chosenAtMs: number;
  /** Times that it was sent; more than once when an answer was lost. */
  readonly tries: number;
  /** Why it cannot go as it is, in the server's words; `null` while it may. */
  readonly trouble: { readonly at: 'refused' | 'failed'; readonly detail: string } | null;
}

/** The last answer of an address of the interface as it came, JSON, for when the server is away. */
export interface KeptAnswer {
  readonly path: string;
  readonly atMs: number;
  readonly text: string;
}

/** Which open page sends at present; ends by itself if that page goes. */
export interface SendingLease {
  readonly id: 'sending';
  readonly owner: string;
  readonly untilMs: number;
}

interface Kept extends DBSchema {
  photos: { key: string; value: KeptPhoto };
  bytes: { key: string; value: ArrayBuffer };
  answers: { key: string; value: KeptAnswer; indexes: { byTime: number } };
  leases: { key: string; value: SendingLease };
}

export type KeptDatabase = IDBPDatabase<Kept>;

let opened: Promise<KeptDatabase> | null = null;

/** The one door to IndexedDB. Rejects where the browser keeps nothing, as private windows may. */
export async function keptDatabase(): Promise<KeptDatabase> {
  opened ??= openDB<Kept>('rondure', 1, {
    upgrade(database) {
      database.createObjectStore('photos', { keyPath: 'key' });
      database.createObjectStore('bytes');
      database.createObjectStore('answers', { keyPath: 'path' }).createIndex('byTime', 'atMs');
      database.createObjectStore('leases', { keyPath: 'id' });
    },
    // A newer page wants to change the form: let go, and open anew when next asked.
    blocking: (_from, _to, event) => {
      (event.target as IDBDatabase).close();
      opened = null;
    },
    terminated: () => {
      opened = null;
    },
  }).catch((fault: unknown) => {
    opened = null;
    throw fault;
  });
  return opened;
}
