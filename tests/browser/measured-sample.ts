import type { Bench, PlantPage } from '../../server/schemas/pages.ts';
import type { View } from '../../server/schemas/sitting.ts';

/** Waits for the first sample plant whose newest photo is measured. */
export async function measuredSample(appUrl: string): Promise<{ plantId: string; view: View }> {
  for (;;) {
    const bench = (await (await fetch(`${appUrl}/api/bench`)).json()) as Bench;
    const row = bench.plants.find(({ newest }) => newest?.report?.status === 'measured');
    if (row) {
      const page = (await (await fetch(`${appUrl}/api/plants/${row.plant.id}`)).json()) as PlantPage;
      return { plantId: row.plant.id, view: page.sittings[0]?.views[0] as View };
    }
    await new Promise((resolve) => setTimeout(resolve, 1000));
  }
}

/** Waits until the newest photo of every sample plant is measured. */
export async function measuredBench(appUrl: string): Promise<Bench> {
  for (;;) {
    const bench = (await (await fetch(`${appUrl}/api/bench`)).json()) as Bench;
    if (bench.plants.length > 0 && bench.plants.every(({ newest }) => newest?.report != null)) return bench;
    await new Promise((resolve) => setTimeout(resolve, 1000));
  }
}

/** Waits until no photo of any sample plant waits for its measures any more, so that the machine rests. */
export async function wholeBench(appUrl: string): Promise<Bench> {
  const bench = await measuredBench(appUrl);
  for (const { plant } of bench.plants) {
    for (;;) {
      const page = (await (await fetch(`${appUrl}/api/plants/${plant.id}`)).json()) as PlantPage;
      const views = page.sittings.flatMap((sitting) => sitting.views);
      if (views.every(({ state }) => state === 'measured' || state === 'failed')) break;
      await new Promise((resolve) => setTimeout(resolve, 1000));
    }
  }
  return bench;
}
