import { useSyncExternalStore } from 'react';

/** A value that outlives the screens that show it. */
export interface Store<Value> {
  read(): Value;
  write(next: Value): void;
  useValue(): Value;
}

export function createStore<Value>(first: Value): Store<Value> {
  let value = first;
  const listeners = new Set<() => void>();
  const read = () => value;
  const subscribe = (listener: () => void) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  };
  return {
    read,
    write(next) {
      value = next;
      for (const listener of listeners) listener();
    },
    useValue: () => useSyncExternalStore(subscribe, read),
  };
}

/** A store kept on this device under `key`; what cannot be read back falls to `first`. */
export function createKeptStore<Value>(
  key: string,
  first: Value,
  isValue: (kept: unknown) => kept is Value,
): Store<Value> {
  const store = createStore(readKept(key, first, isValue));
  return {
    ...store,
    write(next) {
      store.write(next);
      try {
        localStorage.setItem(key, JSON.stringify(next));
      } catch {
        // Private windows may refuse to keep it; the choice then lasts until the page closes.
      }
    },
  };
}

function readKept<Value>(key: string, first: Value, isValue: (kept: unknown) => kept is Value): Value {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? 'null');
    return isValue(kept) ? kept : first;
  } catch {
    return first;
  }
}
