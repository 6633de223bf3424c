import { describe, expect, it } from 'vitest';
import { shareOpen } from '../../core/bloom/bloom-form.ts';
import { addDays, day, daysBetween } from '../../core/day/day.ts';
import type { PlantBloom } from '../../server/schemas/condition.ts';
import { inFlower, photographedPlant } from './fixtures/photographed-plant.ts';

const FIRST = day('2026-03-01');
const FORM = { kind: 'logistic', halfDays: 40, riseDays: 16, lastsDays: 21, fallDays: 20 } as const;

/** A plant photographed each week that comes into bloom: 5 % open on day 29, half on 40, four fifths on 45. */
function blooming(weeks: number, options: { plant?: object; today?: string; share?: number } = {}) {
  const { plant = {}, today = addDays(FIRST, 7 * weeks), share = 0.4 } = options;
  return photographedPlant({
    plant,
    today: () => today,
    photos: Array.from({ length: weeks }, (_, week) => [
      addDays(FIRST, 7 * week),
      inFlower(share * shareOpen(FORM, 7 * week)),
    ]),
  });
}

function told(bloom: PlantBloom | null): Extract<PlantBloom, { state: 'told' }> {
  if (bloom?.state !== 'told') throw new Error(JSON.stringify(bloom));
  return bloom;
}

const off = (found: string, days: number) => Math.abs(daysBetween(day(found), addDays(FIRST, days)));

describe('the bloom on a plant’s page', () => {
  it('says that no colour shows yet, with the readings so far', async () => {
    const { page } = await blooming(2);
    const { bloom } = await page();
    expect(bloom).toMatchObject({ state: 'none-yet', reason: 'no-colour', since: null });
    expect(bloom?.readings.map(({ plusMinus }) => plusMinus)).toEqual([0.012, 0.012]);
  });

  it('is null before a photo was measured', async () => {
    const { page } = await photographedPlant({ photos: [] });
    expect(await page()).toMatchObject({ bloom: null, leaf: null, fill: null, growth: null, wilt: null });
  });

  it('tells the days of a bloom and the curve to draw through them', async () => {
    const { page } = await blooming(9);
    const bloom = told((await page()).bloom);
    expect(bloom.stage).toBe('full');
    expect(off(bloom.half.day, 40)).toBeLessThanOrEqual(4);
    expect(off(bloom.full.day, 45)).toBeLessThanOrEqual(4);
    expect(bloom.curve[0]?.day).toBe(FIRST);
    expect(bloom.curve.at(-1)?.isForecast).toBe(true);
    expect(bloom.curve.length).toBeLessThanOrEqual(43);
    const newest = bloom.curve.find((point) => point.day === bloom.readings.at(-1)?.day);
    expect(newest?.isForecast).toBe(false);
    expect(Math.abs((newest?.share ?? 0) - 0.38)).toBeLessThan(0.05);
    expect(bloom.againstShow).toBeNull();
  });

  it('is set against the show that is to come', async () => {
    const { page } = await blooming(9, { plant: { showDay: addDays(FIRST, 90) } });
    const { againstShow } = told((await page()).bloom);
    expect(againstShow?.verdict).toBe('early');
    expect(againstShow?.words).toContain('early for the show on 30 May 2026');
  });

  it('is not set against a show of another bloom, nor by old photos', async () => {
    const later = await blooming(9, { plant: { showDay: addDays(FIRST, 190) } });
    expect(told((await later.page()).bloom).againstShow).toBeNull();
    const old = await blooming(9, { plant: { showDay: addDays(FIRST, 100) }, today: addDays(FIRST, 90) });
    expect(told((await old.page()).bloom).againstShow).toBeNull();
  });

  it('early for sure, is work with a last day, gone once the heads are off', async () => {
    const { send, plantId } = await blooming(8, { plant: { kind: 'other', showDay: addDays(FIRST, 100) } });
    const taking = async () =>
      (await send('GET', `/api/plants/${plantId}/season`)).body.work.filter(
        ({ kind }: { kind: string }) => kind === 'take-off-bloom',
      );
    const [work] = await taking();
    expect(work.what).toMatch(/^Take off the first heads until \d+ (May|June) 2026\.$/);
    expect(work.why).toContain('early for the show on 9 June 2026');
    await send('POST', `/api/plants/${plantId}/notes`, { day: addDays(FIRST, 50), kind: 'bloom-taken-off' });
    expect(await taking()).toEqual([]);
  });

  it('begins anew after heads were taken off', async () => {
    const { page, send, plantId } = await blooming(8);
    await send('POST', `/api/plants/${plantId}/notes`, {
      day: addDays(FIRST, 49),
      kind: 'bloom-taken-off',
    });
    const { bloom } = await page();
    expect(bloom).toMatchObject({
      state: 'none-yet',
      reason: 'no-sitting',
      since: { day: addDays(FIRST, 49), why: 'bloom-taken-off' },
    });
    expect(bloom?.readings).toHaveLength(8);
  });

  it('leaves out what the grower left out', async () => {
    const { page, send } = await blooming(9);
    const { sittings } = await page();
    await send('PATCH', `/api/sittings/${sittings[0]?.id}`, { leftOut: 'limp when photographed' });
    const { bloom, wilt } = await page();
    expect(bloom?.readings).toHaveLength(8);
    expect(wilt).toMatchObject({ state: 'not-told' });
  });
});

describe('a date of the bloom that may go to the log', () => {
  const dates = async (send: Awaited<ReturnType<typeof blooming>>['send'], plantId: string, body: object) =>
    send('POST', `/api/plants/${plantId}/bloom-dates`, body);

  it('becomes an entry after a yes, is not offered again, and is undone', async () => {
    const { page, send, plantId } = await blooming(10);
    const { offers } = told((await page()).bloom);
    expect(offers.map(({ event, logKind, movesNoteId }) => [event, logKind, movesNoteId])).toEqual([
      ['first-colour', 'first-flower', null],
      ['full-bloom', 'full-bloom', null],
    ]);
    const full = offers[1];
    expect(full?.words).toContain('Put it into the log?');
    const answer = await dates(send, plantId, { event: 'full-bloom', day: full?.day, said: 'yes' });
    expect(answer.status).toBe(201);
    expect(answer.body.note).toMatchObject({ kind: 'full-bloom', day: full?.day });

    const after = await page();
    expect(after.notes).toMatchObject([{ kind: 'full-bloom', day: full?.day }]);
    expect(told(after.bloom).offers.map(({ event }) => event)).toEqual(['first-colour']);
    const again = await dates(send, plantId, { event: 'full-bloom', day: full?.day, said: 'yes' });
    expect(again.status).toBe(409);

    const path = `/api/plants/${plantId}/bloom-dates/full-bloom`;
    expect((await send('DELETE', path)).status).toBe(204);
    const undone = await page();
    expect(undone.notes).toEqual([]);
    expect(told(undone.bloom).offers).toHaveLength(2);
    expect((await send('DELETE', path)).status).toBe(404);
  });

  it('feeds the days to bloom that are learned', async () => {
    const { page, send, plantId } = await blooming(10);
    await send('POST', `/api/plants/${plantId}/stops`, { day: addDays(FIRST, -70), depth: 'tip' });
    const before = told((await page()).bloom);
    const full = before.offers.find(({ event }) => event === 'full-bloom');
    await dates(send, plantId, { event: 'full-bloom', day: full?.day, said: 'yes' });
    const { body } = await send('GET', `/api/plants/${plantId}/season`);
    expect(body.records).toMatchObject([
      { stopDay: addDays(FIRST, -70), fullBloomDay: full?.day, leftOut: null },
    ]);
    // The record that came of the curve does not move the curve.
    expect(told((await page()).bloom).full).toEqual(before.full);
  });

  it('is not asked for again after a no', async () => {
    const { page, send, plantId } = await blooming(10);
    const [first] = told((await page()).bloom).offers;
    const answer = await dates(send, plantId, { event: first?.event, day: first?.day, said: 'no' });
    expect(answer.body).toEqual({ event: 'first-colour', said: 'no', note: null });
    const { notes, bloom } = await page();
    expect(notes).toEqual([]);
    expect(told(bloom).offers.map(({ event }) => event)).toEqual(['full-bloom']);
  });

  it('gives way to what the grower wrote down', async () => {
    const { page, send, plantId } = await blooming(10);
    await send('POST', `/api/plants/${plantId}/notes`, { day: addDays(FIRST, 39), kind: 'full-bloom' });
    expect(told((await page()).bloom).offers.map(({ event }) => event)).toEqual(['first-colour']);
  });

  it('is refused with another day than the one that is offered', async () => {
    const { send, plantId } = await blooming(10);
    const { status, body } = await dates(send, plantId, { event: 'full-bloom', day: FIRST, said: 'yes' });
    expect(status).toBe(409);
    expect(body.detail).toContain('The date has moved to');
  });
});
