import { useState } from 'react';
import { Refusal } from '../api/fetch-json.ts';

/** Runs a change once at a time and keeps what it was refused for: `fields` by entry, else `fault`. */
export function useSending() {
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<unknown>(null);

  async function send(change: () => Promise<void>): Promise<boolean> {
    setBusy(true);
    setFault(null);
    try {
      await change();
      return true;
    } catch (refused) {
      setFault(refused);
      return false;
    } finally {
      setBusy(false);
    }
  }

  const fields = fault instanceof Refusal ? fault.fields : {};
  // What stands beside its entry is not said twice.
  const allBeside = Object.keys(fields).length > 0 && Object.keys(fields).every((name) => name !== '');
  return { busy, fault: allBeside ? null : fault, fields, send };
}
