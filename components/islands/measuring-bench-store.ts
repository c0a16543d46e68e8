import { readKept } from '../measuring/read-kept.ts';
import type { BenchRecord } from '../measuring/bench-record.ts';

const recordKey = 'lineament.bench';
const shelf = 'pictures';
const pictureKey = 'bench';

/** Keeps the record on this machine; false where the browser lets nothing be kept. */
export function keepRecord(record: BenchRecord): boolean {
  try {
    localStorage.setItem(recordKey, JSON.stringify(record));
    return true;
  } catch {
    return false;
  }
}

/** The record that was kept; undefined for none, or one that is not whole. */
export function keptRecord(): BenchRecord | undefined {
  try {
    return readKept(localStorage.getItem(recordKey));
  } catch {
    return undefined;
  }
}

/** Keeps the picture on this machine; false where the browser lets nothing be kept. */
export async function keepPicture(picture: Blob): Promise<boolean> {
  try {
    await within('readwrite', (pictures) => pictures.put(picture, pictureKey));
    return true;
  } catch {
    return false;
  }
}

/** The picture that was kept, if one was. */
export async function keptPicture(): Promise<Blob | undefined> {
  try {
    const kept: unknown = await within('readonly', (pictures) => pictures.get(pictureKey));
    return kept instanceof Blob ? kept : undefined;
  } catch {
    return undefined;
  }
}

/** Removes all that was kept. */
export async function forgetAll(): Promise<void> {
  try {
    localStorage.removeItem(recordKey);
    await within('readwrite', (pictures) => pictures.clear());
  } catch {
    // where nothing could be kept there is nothing to forget
  }
}

/** One request to the shelf of pictures, done when it is written. */
async function within<T>(
  mode: IDBTransactionMode,
  ask: (pictures: IDBObjectStore) => IDBRequest<T>,
): Promise<T> {
  const database = await openShelf();
  try {
    return await new Promise<T>((resolve, reject) => {
      const transaction = database.transaction(shelf, mode);
      const request = ask(transaction.objectStore(shelf));
      transaction.oncomplete = () => resolve(request.result);
      transaction.onerror = () => reject(transaction.error ?? new Error('the picture could not be kept'));
      transaction.onabort = transaction.onerror;
    });
  } finally {
    database.close();
  }
}

function openShelf(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open('lineament-bench', 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore(shelf);
    opening.onsuccess = () => resolve(opening.result);
    opening.onerror = () => reject(opening.error ?? new Error('the shelf of pictures could not be opened'));
  });
}
