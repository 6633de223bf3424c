import { once } from 'node:events';
import { createServer, type RequestListener, type Server, type ServerResponse } from 'node:http';
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
  const main = closableServer(app);
  await listening(main.server, host, port);
  const servers = [main];
  const { port: taken } = main.server.address() as AddressInfo;
  const isDesk = isLoopback(host) || isEveryAddress(host);
  if (!isDesk) {
    const desk = closableServer(app);
    servers.push(desk);
    await listening(desk.server, LOOPBACK, taken).catch(async (fault) => {
      await main.close();
      throw fault;
    });
  }
  const deskName = isLoopback(host) ? host : LOOPBACK;
  return {
    url: `http://${deskName.includes(':') ? `[${deskName}]` : deskName}:${taken}`,
    forPhones: addressesFor(taken, host, machine),
    close: async () => {
      await Promise.all(servers.map((one) => one.close()));
    },
  };
}

/** How long requests under way are given to come to their end. */
const LAST_REQUESTS_MS = 1_000;

interface ClosableServer {
  readonly server: Server;
  /** Takes no more requests, gives those under way a moment, and ends what is still open. */
  close(): Promise<void>;
}

function closableServer(app: RequestListener): ClosableServer {
  const server = createServer(app);
  const answering = new Set<ServerResponse>();
  server.on('request', (_request, response: ServerResponse) => {
    answering.add(response);
    response.once('close', () => answering.delete(response));
  });
  return {
    server,
    async close() {
      const isClosed = new Promise<void>((resolve) => server.close(() => resolve()));
      server.closeIdleConnections();
      const ending = [...answering].filter((response) => !isStream(response));
      await Promise.race([
        Promise.all(ending.map((response) => once(response, 'close'))),
        new Promise((resolve) => setTimeout(resolve, LAST_REQUESTS_MS).unref()),
      ]);
      // Streams of events would hold the server for ever.
      server.closeAllConnections();
      await isClosed;
    },
  };
}

function isStream(response: ServerResponse): boolean {
  return String(response.getHeader('Content-Type')).startsWith('text/event-stream');
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
