import { setImmediate } from 'node:timers/promises';
import { createEvents, type DateArray, type EventAttributes } from 'ics';
import type { Day } from '../../core/day/day.ts';
import type { AllDayEvent } from '../../core/season/all-day-events.ts';

/** The one door to the iCalendar library. */

const NAME = 'Rondure';
/** Reminders come at nine in the morning of the reader's own clock; days begin at midnight. */
const NINE = 9;
/** The library takes milliseconds an event: so many are written before other requests get their turn. */
const AT_ONCE = 20;

/**
 * Events as an iCalendar file.
 *
 * @returns text with days as DATE values, which have no hour and no time zone, so that no program moves them
 *
 * Reference: RFC 5545, 3.3.4 (DATE), 3.6.1 (VEVENT), 3.6.6 (VALARM).
 */
export async function calendarFile(events: readonly AllDayEvent[]): Promise<string> {
  const end = 'END:VCALENDAR';
  const frame = written([]);
  let text = frame.slice(0, frame.indexOf(end));
  for (let from = 0; from < events.length; from += AT_ONCE) {
    const part = written(events.slice(from, from + AT_ONCE));
    text += part.slice(part.indexOf('BEGIN:VEVENT'), part.lastIndexOf(end));
    await setImmediate();
  }
  return text + frame.slice(frame.indexOf(end));
}

function written(events: readonly AllDayEvent[]): string {
  const { error, value } = createEvents(events.map(attributesOf), {
    productId: NAME,
    calName: NAME,
    method: 'PUBLISH',
  });
  if (error || value == null) {
    throw new Error(`The calendar file could not be written: ${error?.message ?? 'no reason given'}`);
  }
  return value;
}

function attributesOf(event: AllDayEvent): EventAttributes {
  const { uid, day, endExclusive, summary, description, place, reminderDaysBefore } = event;
  return {
    uid: `${uid}@rondure`,
    title: summary,
    description,
    start: dateOf(day),
    end: dateOf(endExclusive),
    busyStatus: 'FREE',
    ...(place === null ? {} : { location: place }),
    ...(reminderDaysBefore === null ? {} : { alarms: [reminder(summary, reminderDaysBefore)] }),
  };
}

function reminder(description: string, daysBefore: number) {
  return {
    action: 'display' as const,
    description,
    trigger:
      daysBefore === 0
        ? { before: false, hours: NINE }
        : { before: true, days: daysBefore - 1, hours: 24 - NINE },
  };
}

function dateOf(day: Day): DateArray {
  return day.split('-').map(Number) as [number, number, number];
}
