import pino from 'pino';
import { openHouse } from '../../server/house.ts';
import { serve } from '../../server/serve.ts';
import { client } from '../server/fixtures/client.ts';
import { asAnotherFile } from './camera-photos.ts';
import type { StepTimes } from './step-times.ts';

interface Way {
  readonly runs: number;
  readonly home: string;
  /** Makes the files of one way unlike those of another. */
  readonly label: string;
  /** The photo of the empty stand; left out, there is none. */
  readonly empty?: Buffer;
  /** Said behind each step's name. */
  readonly suffix?: string;
}

/**
 * The whole way through the running server, its threads warm: until the POST is answered, and until the measures are there. A
 * photo that is refused would be quicker and is no measurement.
 */
export async function throughServer(
  photo: Buffer,
  { runs, home, label, empty, suffix = '' }: Way,
  times: StepTimes,
): Promise<void> {
  const house = openHouse(home, pino({ level: 'error' }));
  const serving = await serve(house.services, { host: '127.0.0.1', port: 0, webFolder: home });
  try {
    const { addPlant, upload, send } = client(serving.url);
    const plant = await addPlant({ rimMm: 120 });
    if (empty !== undefined) {
      const form = new FormData();
      form.append('photo', new Blob([new Uint8Array(empty)]), 'empty.jpg');
      const taken = await send('PUT', `/api/plants/${plant.id}/empty-photo`, form);
      if (taken.status !== 200) throw new Error(JSON.stringify(taken.body));
    }
    // The first finds the threads cold.
    for (let run = 0; run <= runs; run++) {
      const bytes = asAnotherFile(photo, `${label} ${run}`);
      const measured = new Promise<void>((resolve) => {
        const stop = house.services.progress.listen((step) => {
          if (!('viewId' in step) || (step.state !== 'measured' && step.state !== 'failed')) return;
          stop();
          resolve();
        });
      });
      const begun = performance.now();
      const answer = await upload(plant.id, [{ name: `${run}.jpg`, bytes }]);
      const answeredMs = performance.now() - begun;
      if (answer.body.photos[0].outcome !== 'kept') throw new Error(JSON.stringify(answer.body));
      await measured;
      const measuredMs = performance.now() - begun;
      const view = await send('GET', `/api/views/${answer.body.photos[0].view.id}`);
      if (view.body.report?.status !== 'measured') throw new Error(JSON.stringify(view.body.report));
      if (run === 0) times.add(`first photo after the start${suffix}`, measuredMs);
      else {
        times.add(`upload to answer${suffix}`, answeredMs);
        times.add(`upload to measures${suffix}`, measuredMs);
      }
    }
  } finally {
    await serving.close();
    await house.close();
  }
}
