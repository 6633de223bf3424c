import { describe, expect, it } from 'vitest';
import { addDays, day } from '../../../core/day/day.ts';
import { lightLedger } from '../../../core/light/light-ledger.ts';
import { nextTurn, type TurnRhythm, USUAL_RHYTHM } from '../../../core/light/next-turn.ts';

const START = day('2026-03-01');

/** The ledger on the seventh day after the last of weekly turns. */
function turned(...azimuths: number[]) {
  const turns = azimuths.map((facesLightDeg, k) => ({ day: addDays(START, 7 * k), facesLightDeg }));
  return lightLedger(turns, addDays(START, 7 * azimuths.length));
}

function next(
  ledger: ReturnType<typeof turned>,
  weakAt: number | null = null,
  rhythm: TurnRhythm = USUAL_RHYTHM,
) {
  const weak = weakAt === null ? null : { toLightAzimuthDeg: weakAt, sure: 'sure' as const };
  return nextTurn({ ledger, weak, rhythm });
}

describe('the next turn', () => {
  it('is a quarter clockwise after a week, where nothing else speaks', () => {
    const even = turned(0, 90, 180, 270);
    expect(next(even)).toMatchObject({
      dueDay: addDays(START, 28),
      turnByDeg: -90,
      toLightAzimuthDeg: 0,
      words: 'A quarter turn clockwise: bring the 6 o’clock side to the light.',
      sure: 'likely',
    });
  });

  it('goes round and lights all sides when it is followed', () => {
    let azimuths = [0];
    for (let week = 0; week < 7; week++) {
      azimuths = [...azimuths, next(turned(...azimuths))?.toLightAzimuthDeg ?? Number.NaN];
    }
    expect(turned(...azimuths).evenness).toBeGreaterThan(0.9);
  });

  it('keeps the grower’s own rhythm', () => {
    const even = turned(0, 90, 180, 270);
    const own = next(even, null, { everyDays: 4, byDeg: 90, way: 'anticlockwise' });
    expect(own).toMatchObject({ dueDay: addDays(START, 25), turnByDeg: 90, toLightAzimuthDeg: 180 });
    expect(next(even, null, { everyDays: 7, byDeg: 180, way: 'clockwise' })?.words).toBe(
      'Half a turn: bring the 3 o’clock side to the light.',
    );
  });

  it('brings the weak side to the light before the rhythm', () => {
    expect(next(turned(0, 90, 180, 270), 180)).toMatchObject({
      toLightAzimuthDeg: 180,
      turnByDeg: 90,
      words: 'A quarter turn anticlockwise: bring the 12 o’clock side to the light.',
      sure: 'likely',
    });
  });

  it('keeps to the rhythm when the weak side is unsure', () => {
    const weak = { toLightAzimuthDeg: 180, sure: 'unsure' as const };
    const ledger = turned(0, 90, 180, 270);
    expect(nextTurn({ ledger, weak, rhythm: USUAL_RHYTHM })?.toLightAzimuthDeg).toBe(0);
  });

  it('does not bring the best lit side to the light again', () => {
    // Three weeks on 0, then a quarter anticlockwise: the rhythm would go straight back.
    expect(next(turned(0, 0, 0, 270))).toMatchObject({ toLightAzimuthDeg: 90 });
  });

  it('turns by eighths where the rhythm does', () => {
    const rhythm = { everyDays: 4, byDeg: 45, way: 'clockwise' } as const;
    expect(next(turned(0, 45, 90, 135, 180, 225, 270, 315), null, rhythm)?.words).toBe(
      'An eighth of a turn clockwise: bring the 6 o’clock side to the light.',
    );
    expect(next(turned(0, 90, 180, 270), 180, rhythm)?.toLightAzimuthDeg).toBe(225);
  });

  it('says why: the last turn, the weak side, the light’s gap', () => {
    expect(next(turned(0), 90)?.why).toBe(
      'Last turned 7 days ago; your rhythm is every 7 days. The 3 o’clock side is the weak one. Since 1 March 2026 the 12 o’clock side has had the least light. How it stood before that is not known.',
    );
  });

  it('leaves a plant whose weak side faces the light, until another round is over', () => {
    const ledger = lightLedger(
      [0, 90, 180, 270].map((facesLightDeg, k) => ({ day: addDays(START, 7 * k), facesLightDeg })),
      addDays(START, 30),
    );
    expect(next(ledger, 270)).toMatchObject({
      turnByDeg: 0,
      dueDay: addDays(START, 35),
      words: 'Leave it as it stands: the 9 o’clock side already faces the light.',
    });
  });

  it('leaves it for one more round at most', () => {
    const ledger = lightLedger([{ day: START, facesLightDeg: 270 }], addDays(START, 14));
    expect(next(ledger, 270)?.turnByDeg).not.toBe(0);
    expect(next(ledger, 270)?.dueDay).toBe(addDays(START, 7));
  });

  it('is never due before the rhythm says so', () => {
    const ledger = lightLedger([{ day: START, facesLightDeg: 0 }], addDays(START, 2));
    expect(next(ledger, 180)?.dueDay).toBe(addDays(START, 7));
  });

  it('keeps silent without a turn on record, and when no reminder is wanted', () => {
    expect(next(lightLedger([], START))).toBeNull();
    expect(next(turned(0), 90, { ...USUAL_RHYTHM, everyDays: null })).toBeNull();
  });
});
