import { useState } from 'react';
import { Refusal } from '../api/fetch-json.ts';

/** Runs a change once at a time and keeps what it was refused for. */
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
  return { busy, fault, fields, send };
}
