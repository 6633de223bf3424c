import type { Day } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import { type NextTurn, nextTurn } from '../light/next-turn.ts';
import { LEAST_TURN_DEG } from '../light/turn-in-words.ts';
import { clockOfAzimuth } from '../turned/clock-of-azimuth.ts';
import type { TurnAdvice } from '../turned/turn-advice.ts';
import type { Advice } from './advice.ts';
import { newestSitting, newestTurned, type PlantHistory } from './plant-history.ts';
import { turnByOneView, weakSideOfView } from './turn-by-one-view.ts';

/**
 * Which side to turn to the light, and when.
 *
 * @returns one piece of advice at most; `null` when the plant is even, or was turned and is not due again
 *
 * Notes: a grower who records turns is reminded by the rhythm and not before. Else the newest turned sitting speaks, which knows the plant from
 * all round, and without one the newest photo, which knows left and right only. A turn that was recorded since then is taken for the answer.
 */
export function turnToLight(history: PlantHistory): Advice | null {
  const next = nextTurnOf(history);
  if (next !== null) return next.dueDay <= history.today ? dueTurn(next, history) : null;
  const plan = newestTurned(history);
  const toldOn = plan?.day ?? newestSitting(history)?.day ?? null;
  const turnedOn = history.lighting?.ledger.sinceDay ?? null;
  if (toldOn !== null && turnedOn !== null && turnedOn >= toldOn) return null;
  if (plan === null) return turnByOneView(history);
  return plan.turned.turn === null
    ? null
    : turnByPlan(plan.turned.turn, plan.day, plan.turned.plan.directions);
}

/** The next turn by rhythm, light and weak side; `null` while no turn is on record or no reminder is wanted. */
export function nextTurnOf(history: PlantHistory): NextTurn | null {
  const { lighting } = history;
  if (lighting === undefined) return null;
  const plan = newestTurned(history);
  const weak = plan === null ? weakSideOfView(history) : plan.turned.turn;
  return nextTurn({ ledger: lighting.ledger, weak, rhythm: lighting.rhythm });
}

function dueTurn({ dueDay, toLightAzimuthDeg, words, why, sure }: NextTurn, { today }: PlantHistory): Advice {
  return {
    kind: 'turn',
    urgency: 1,
    what: words,
    where: whereIs(toLightAzimuthDeg),
    howMuch: dueDay === today ? 'Due today.' : `Due since ${dayInWords(dueDay)}.`,
    why,
    sureness: sure,
    caution: null,
  };
}

function turnByPlan(
  { toLightAzimuthDeg, turnByDeg, words, why, sure }: TurnAdvice,
  day: Day,
  directions: number,
): Advice {
  const isTurned = turnByDeg !== null && Math.abs(turnByDeg) < LEAST_TURN_DEG;
  return {
    kind: 'turn',
    urgency: isTurned ? 0 : sure === 'sure' ? 2 : 1,
    what: words,
    where: whereIs(toLightAzimuthDeg),
    howMuch: `Seen from ${directions} directions on ${dayInWords(day)}.`,
    why,
    sureness: sure,
    caution: null,
  };
}

function whereIs(azimuthDeg: number): string {
  return `The side at ${clockOfAzimuth(azimuthDeg)} o’clock seen from above with the mark at 6.`;
}
