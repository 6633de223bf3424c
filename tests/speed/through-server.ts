import pino from 'pino';
import { openHouse } from '../../server/house.ts';
import { serve } from '../../server/serve.ts';
import { client } from '../server/fixtures/client.ts';
import { asAnotherFile } from './camera-photos.ts';
import type { StepTimes } from './step-times.ts';

/** The whole way through the running server, its threads warm: until the POST is answered, and until the measures are there. */
export async function throughServer(
  photo: Buffer,
  { runs, home, label }: { runs: number; home: string; label: string },
  times: StepTimes,
): Promise<void> {
  const house = openHouse(home, pino({ level: 'error' }));
  const serving = await serve(house.services, { host: '127.0.0.1', port: 0, webFolder: home });
  try {
    const { addPlant, upload } = client(serving.url);
    const plant = await addPlant({ rimMm: 120 });
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
      if (run === 0) times.add('first photo after the start', measuredMs);
      else {
        times.add('upload to answer', answeredMs);
        times.add('upload to measures', measuredMs);
      }
    }
  } finally {
    await serving.close();
    await house.close();
  }
}
