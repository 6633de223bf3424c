import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import {
  addressesFor,
  isEveryAddress,
  isLoopback,
  type Machine,
  THIS_MACHINE,
} from './pairing/known-names.ts';
import { createApp } from './routes/app.ts';
import type { Services } from './services.ts';

/** Where the server listens, and the way to stop it. */
export interface Serving {
  /** For the machine itself. */
  readonly url: string;
  /** For other devices in the same network; empty when it listens to this machine only. */
  readonly forPhones: readonly string[];
  close(): Promise<void>;
}

/** The address cannot be taken; the message says what to do. */
export class AddressUnusable extends Error {}

const LOOPBACK = '127.0.0.1';

/**
 * Serves the app on `host` and `port`; port 0 takes any free one. On one address of the network it listens
 * on loopback too: that is the desk.
 */
export async function serve(
  services: Services,
  {
    host,
    port,
    webFolder,
    machine = THIS_MACHINE,
  }: {
    readonly host: string;
    readonly port: number;
    readonly webFolder: string;
    readonly machine?: Machine;
  },
): Promise<Serving> {
  const app = createApp(services, { webFolder, host, machine });
  const server = createServer(app);
  await listening(server, host, port);
  const servers = [server];
  const { port: taken } = server.address() as AddressInfo;
  const isDesk = isLoopback(host) || isEveryAddress(host);
  if (!isDesk) {
    const desk = createServer(app);
    servers.push(desk);
    await listening(desk, LOOPBACK, taken).catch(async (fault) => {
      await closed(server);
      throw fault;
    });
  }
  const deskName = isLoopback(host) ? host : LOOPBACK;
  return {
    url: `http://${deskName.includes(':') ? `[${deskName}]` : deskName}:${taken}`,
    forPhones: addressesFor(taken, host, machine),
    close: async () => {
      await Promise.all(servers.map(closed));
    },
  };
}

function closed(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    // Open event streams would hold the server for ever.
    server.closeAllConnections();
  });
}

function listening(server: Server, host: string, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', (fault: NodeJS.ErrnoException) => reject(addressFault(fault, host, port)));
    server.listen(port, host, () => resolve());
  });
}

function addressFault(fault: NodeJS.ErrnoException, host: string, port: number): Error {
  switch (fault.code) {
    case 'EADDRINUSE':
      return new AddressUnusable(
        `Port ${port} is already taken, perhaps by a Rondure that is still running. Stop that one, or start with another port: PORT=${port + 1} npm start`,
      );
    case 'EACCES':
      return new AddressUnusable(
        `Port ${port} is not open to this user. Start with another port: PORT=4170 npm start`,
      );
    case 'EADDRNOTAVAIL':
    case 'ENOTFOUND':
      return new AddressUnusable(`This machine has no address ${host}. Leave HOST out, or give one it has.`);
    default:
      return fault;
  }
}
