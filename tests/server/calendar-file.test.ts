import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { day } from '../../core/day/day.ts';
import type { AllDayEvent } from '../../core/season/all-day-events.ts';
import { calendarFile } from '../../server/season/calendar-file.ts';
import { openBench } from './fixtures/open-bench.ts';

const EVENTS: readonly AllDayEvent[] = [
  {
    uid: 'show:one',
    day: day('2026-03-29'),
    endExclusive: day('2026-03-30'),
    summary: 'Spring show; class 3, "regals"',
    description: 'Entered: Old Bramble, Quiet Tarn.\nPots to 150 mm.',
    place: 'Village hall, Alder Vale',
    reminderDaysBefore: 7,
  },
  {
    uid: 'stop:two',
    day: day('2026-10-20'),
    endExclusive: day('2026-11-03'),
    summary: 'Old Bramble: give the last stop',
    description: 'Window of a fortnight across the end of summer time.',
    place: null,
    reminderDaysBefore: 0,
  },
  {
    uid: 'work:three',
    day: day('2027-12-31'),
    endExclusive: day('2028-01-01'),
    summary: 'Look for breaks',
    description: 'x'.repeat(300),
    place: null,
    reminderDaysBefore: null,
  },
];

/**
 * Read back by ical.js, the parser that Thunderbird's calendar is built on: another program than the one that writes.
 * RFC 5545: lines end in CRLF and hold at most 75 octets; a DATE has no zone; DTEND is the day after the last.
 */
function readBack(text: string) {
  const file = new ICAL.Component(ICAL.parse(text));
  return file.getAllSubcomponents('vevent').map((component) => {
    const event = new ICAL.Event(component);
    return {
      uid: event.uid,
      summary: event.summary,
      description: event.description,
      place: event.location,
      isDate: [event.startDate.isDate, event.endDate.isDate],
      zone: event.startDate.zone?.tzid,
      day: event.startDate.toString(),
      endExclusive: event.endDate.toString(),
      reminders: component
        .getAllSubcomponents('valarm')
        .map((alarm) => String(alarm.getFirstPropertyValue('trigger'))),
    };
  });
}

const original = process.env.TZ;

describe.each(['America/New_York', 'Europe/London', 'Pacific/Auckland'])(
  'the calendar file, written and read in %s',
  (zone) => {
    it('keeps every day as it is', async () => {
      process.env.TZ = zone;
      try {
        // The zone must truly have changed: noon UTC is another hour in each.
        expect(new Date('2026-06-01T12:00:00Z').getHours()).toBe(
          { 'America/New_York': 8, 'Europe/London': 13, 'Pacific/Auckland': 0 }[zone],
        );
        const read = readBack(await calendarFile(EVENTS));
        expect(read.map(({ day: from, endExclusive }) => [from, endExclusive])).toEqual(
          EVENTS.map((event) => [event.day, event.endExclusive]),
        );
        expect(read.every(({ isDate, zone: of }) => isDate.every(Boolean) && of === 'floating')).toBe(true);
      } finally {
        if (original === undefined) delete process.env.TZ;
        else process.env.TZ = original;
      }
    });
  },
);

describe('the calendar file', () => {
  it('keeps words, places and names', async () => {
    expect(readBack(await calendarFile(EVENTS))).toMatchObject(
      EVENTS.map(({ uid, summary, description, place }) => ({
        uid: `${uid}@rondure`,
        summary,
        description,
        place,
      })),
    );
  });

  it('reminds at nine in the morning, so many days before', async () => {
    expect(readBack(await calendarFile(EVENTS)).map(({ reminders }) => reminders)).toEqual([
      ['-P6DT15H'],
      ['PT9H'],
      [],
    ]);
  });

  it('has lines of 75 octets at most that end in CRLF, and all that RFC 5545 asks of a file and an event', async () => {
    const text = await calendarFile(EVENTS);
    const lines = text.split('\r\n');
    expect(lines.slice(0, -1)).not.toContain('');
    expect(lines.every((line) => Buffer.byteLength(line) <= 75 && !line.includes('\n'))).toBe(true);
    for (const needed of ['VERSION:2.0', 'PRODID:', 'METHOD:PUBLISH']) expect(text).toContain(needed);
    expect(text.match(/^DTSTAMP:\d{8}T\d{6}Z\r$/gm)).toHaveLength(EVENTS.length);
    expect(text.match(/^DTSTART;VALUE=DATE:\d{8}\r$/gm)).toHaveLength(EVENTS.length);
  });

  it('has every event once, however many there are', async () => {
    const [first] = EVENTS as [(typeof EVENTS)[number]];
    const many = Array.from({ length: 45 }, (_, at) => ({ ...first, uid: `event-${at}` }));
    const read = readBack(await calendarFile(many));
    expect(read.map(({ uid }) => uid)).toEqual(many.map(({ uid }) => `${uid}@rondure`));
  });

  it('is a file without events while nothing is planned', async () => {
    expect(readBack(await calendarFile([]))).toEqual([]);
  });

  it('is served at an address that cannot be guessed', async () => {
    const { send, addPlant } = await openBench();
    await addPlant({ showDay: '2026-12-12' });
    const { subscribePath } = (await send('GET', '/api/calendar')).body;
    expect(subscribePath).toMatch(/^\/api\/calendar\/[\w-]{24}\.ics$/);
    const { status, headers, body } = await send('GET', subscribePath);
    expect([status, headers.get('content-type')]).toEqual([200, 'text/calendar; charset=utf-8']);
    const events = readBack(String(body));
    expect(events.map(({ summary }) => summary)).toContain('Show on 12 December 2026');
    expect(events.some(({ summary }) => summary.startsWith('Evening Bramble: Give the'))).toBe(true);
    expect((await send('GET', '/api/calendar/guessed.ics')).status).toBe(404);
  });
});
