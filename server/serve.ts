import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { createApp } from './routes/app.ts';
import type { Services } from './services.ts';

/** Where the server listens, and the way to stop it. */
export interface Serving {
  readonly url: string;
  close(): Promise<void>;
}

/** The address cannot be taken; the message says what to do. */
export class AddressUnusable extends Error {}

/** Serves the app on `host` and `port`; port 0 takes any free one. */
export async function serve(
  services: Services,
  { host, port, webFolder }: { readonly host: string; readonly port: number; readonly webFolder: string },
): Promise<Serving> {
  const server = createServer(createApp(services, { webFolder, host }));
  await listening(server, host, port);
  const { port: taken } = server.address() as AddressInfo;
  const name = host.includes(':') ? `[${host}]` : host;
  return {
    url: `http://${name}:${taken}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        // Open event streams would hold the server for ever.
        server.closeAllConnections();
      }),
  };
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
