import { Router } from 'express';
import type { Services } from '../services.ts';

/** Often enough that no proxy or sleeping laptop takes the silence for an end. */
const HEARTBEAT_MS = 20_000;

/** Server-sent events: how the views move on, and how far measuring anew is. */
export function eventRoutes({ progress, remeasuring }: Pick<Services, 'progress' | 'remeasuring'>): Router {
  const routes = Router();
  routes.get('/events', (request, response) => {
    response.set({
      'Content-Type': 'text/event-stream',
      'Cache-Control': 'no-store',
      'X-Accel-Buffering': 'no',
    });
    response.write('retry: 2000\n\n');
    const stop = progress.listen((step) => {
      response.write(`event: progress\ndata: ${JSON.stringify(step)}\n\n`);
    });
    const stopAnew = remeasuring.listen((step) => {
      response.write(`event: remeasuring\ndata: ${JSON.stringify(step)}\n\n`);
    });
    const heartbeat = setInterval(() => response.write(': still here\n\n'), HEARTBEAT_MS);
    heartbeat.unref();
    request.on('close', () => {
      stop();
      stopAnew();
      clearInterval(heartbeat);
    });
  });
  return routes;
}
