import { hostname, networkInterfaces } from 'node:os';

/** What this machine is called and where it can be reached; tests bring one of their own. */
export interface Machine {
  readonly hostName: string;
  /** Asked anew each time: a laptop changes its address. Loopback is left out. */
  addresses(): readonly string[];
}

export const THIS_MACHINE: Machine = {
  hostName: hostname(),
  addresses: () =>
    Object.values(networkInterfaces())
      .flatMap((all) => all ?? [])
      // Link-local addresses need a zone that no browser takes in an address.
      .filter(({ internal, address }) => !internal && !address.startsWith('fe80:'))
      .map(({ address }) => address),
};

const LOOPBACK_NAMES = new Set(['localhost', '127.0.0.1', '[::1]']);

/** Whether an address or the name in a Host header is this machine's own loopback. */
export function isLoopback(host: string): boolean {
  return host === '::1' || LOOPBACK_NAMES.has(host) || /^(::ffff:)?127(\.\d{1,3}){3}$/.test(host);
}

/** Whether a server bound to this address takes connections on every address of the machine. */
export function isEveryAddress(host: string): boolean {
  return host === '0.0.0.0' || host === '::';
}

/**
 * Names under which a server bound to `boundTo` answers, beside the loopback ones: any other was made to
 * point here by someone else (DNS rebinding).
 */
export function isOwnName(name: string, boundTo: string, machine: Machine): boolean {
  if (isLoopback(name)) return true;
  if (isLoopback(boundTo)) return false;
  const bare = name.startsWith('[') ? name.slice(1, -1) : name;
  return machineNames(machine).includes(bare) || machine.addresses().includes(bare);
}

/** Addresses to open on a phone in the same network: numbers first, they need no name service. */
export function addressesFor(port: number, boundTo: string, machine: Machine): string[] {
  if (isLoopback(boundTo)) return [];
  const numbers = isEveryAddress(boundTo)
    ? machine.addresses().filter((address) => boundTo === '::' || !address.includes(':'))
    : [boundTo];
  const names = [...numbers, localName(machine)];
  return names.map((name) => `http://${name.includes(':') ? `[${name}]` : name}:${port}`);
}

function machineNames(machine: Machine): string[] {
  const whole = machine.hostName.toLowerCase();
  return [whole, whole.split('.')[0] ?? whole, localName(machine)];
}

/** Its name in the home network by multicast DNS (RFC 6762). */
function localName({ hostName }: Machine): string {
  return `${hostName.toLowerCase().split('.')[0]}.local`;
}
