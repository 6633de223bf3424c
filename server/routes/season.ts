import { type Request, Router } from 'express';
import { z } from 'zod';
import { addDays } from '../../core/day/day.ts';
import { DEFAULT_STOPS } from '../../core/season/default-stops.ts';
import { editableFigures, faultOfOwnFigure, withOwnFigures } from '../../core/season/own-defaults.ts';
import type { DayRange } from '../../core/season/work.ts';
import { type AimedPlant, aimedPlant } from '../bench/aimed-plant.ts';
import { facesAfterTurn } from '../bench/pages.ts';
import { isSameSecret } from '../pairing/same-secret.ts';
import { daySchema } from '../schemas/basics.ts';
import { type Defaults, manyRecordsSchema, ownFigureSchema } from '../schemas/season.ts';
import { workWordsSchema } from '../schemas/work.ts';
import { calendar, calendarAsFile } from '../season/calendar.ts';
import { plantYear } from '../season/plant-year.ts';
import { seasonAnswer } from '../season/season-answer.ts';
import { seasonFacts } from '../season/season-facts.ts';
import { workList } from '../season/work-list.ts';
import { yearCsv } from '../season/year-csv.ts';
import type { Services } from '../services.ts';
import { calendarKey } from '../store/calendar-key.ts';
import { addNote } from '../store/notes.ts';
import { ownFigures, setOwnFigure } from '../store/own-figures.ts';
import { plantById } from '../store/plants.ts';
import { addStop } from '../store/stops.ts';
import { addTurn } from '../store/turns.ts';
import { keepWorkWord, takeBackWorkWord } from '../store/work-words.ts';
import { sendPacked } from './packed-answers.ts';
import { found, noSuchAddress, RequestProblem, sent } from './problems.ts';

/** The calendar and the page of work reach so far when no days are asked for. */
const WEEK = 7;
const CALENDAR = { backDays: 12 * WEEK, aheadDays: 40 * WEEK };
/** A calendar program keeps what is past by itself. */
const SUBSCRIBED = { backDays: 4 * WEEK, aheadDays: 60 * WEEK };
const MOST_DAYS = 800;
/** A turn's note holds fewer letters than a line of the log. */
const MOST_TURN_NOTE = 500;

/** Plans, work, calendar, years and the table of stops. */
export function seasonRoutes({ db, blooms, today }: Services): Router {
  const routes = Router();
  const facts = () => seasonFacts(db, today());
  const plantOf = (request: Request): AimedPlant =>
    found('plant', aimedPlant(db, String(request.params.id), today()));

  routes.get('/plants/:id/season', async (request, response) => {
    await blooms.forPage(request.params.id);
    response.json(seasonAnswer(db, facts(), plantOf(request)));
  });

  routes.get('/plants/:id/year', (request, response) => {
    response.json(plantYear(db, facts(), plantOf(request), askedDays(request)));
  });

  routes.get('/plants/:id/year.csv', (request, response) => {
    const year = plantYear(db, facts(), plantOf(request), askedDays(request));
    response.type('text/csv; charset=utf-8').attachment(fileName(year, 'csv')).send(yearCsv(year));
  });

  routes.get('/plants/:id/year.json', (request, response) => {
    const year = plantYear(db, facts(), plantOf(request), askedDays(request));
    response.attachment(fileName(year, 'json')).json(year);
  });

  routes.get('/work', async (request, response) => {
    const range = rangeOf(request, { backDays: WEEK, aheadDays: 2 * WEEK });
    await sendPacked(db, { request, response }, blooms.facts, () => workList(db, blooms.facts, range));
  });

  routes.post('/work/words', (request, response) => {
    const { words } = sent(workWordsSchema, request.body);
    db.transaction(() => {
      for (const { plantId, word } of words) {
        found('plant', plantById(db, plantId));
        if (word.said === null) takeBackWorkWord(db, plantId, word.key);
        else keepWorkWord(db, plantId, word);
      }
    })();
    response.status(204).end();
  });

  routes.post('/records', (request, response) => {
    const { plantIds, record } = sent(manyRecordsSchema, request.body);
    if (record.type === 'note' && record.kind === 'note' && record.text === '') {
      throw new RequestProblem(422, 'Write the note first.', [
        { pointer: '/record/text', detail: 'Write the note first.' },
      ]);
    }
    const [ids, turnIds]: [string[], string[]] = [[], []];
    db.transaction(() => {
      const known = record.type === 'note' && record.kind === 'turned' ? facts() : null;
      for (const plantId of plantIds) {
        const plant = found('plant', aimedPlant(db, plantId, today()));
        const facesLightDeg = known && facesAfterTurn(db, plant, known);
        if (facesLightDeg !== null) {
          const note = record.type === 'note' ? record.text.slice(0, MOST_TURN_NOTE) : '';
          turnIds.push(addTurn(db, plantId, { day: record.day, facesLightDeg, note }));
        } else ids.push(record.type === 'stop' ? addStop(db, plantId, record) : addNote(db, plantId, record));
      }
    })();
    response.status(201).json({ type: record.type, ids, turnIds });
  });

  routes.get('/calendar', async (request, response) => {
    const [range, withWeekly] = [rangeOf(request, CALENDAR), request.query.weekly === 'yes'];
    await sendPacked(db, { request, response }, blooms.facts, () =>
      calendar(db, blooms.facts, range, withWeekly),
    );
  });

  routes.get('/calendar/:key.ics', async (request, response, next) => {
    if (!isSameSecret(request.params.key, calendarKey(db))) return noSuchAddress(request, response, next);
    await blooms.forAll();
    const withWeekly = request.query.weekly === 'yes';
    const file = await calendarAsFile(db, facts(), rangeOf(request, SUBSCRIBED), withWeekly);
    response.type('text/calendar; charset=utf-8').send(file);
  });

  routes.get('/defaults', (_request, response) => {
    response.json(defaultsAnswer());
  });

  routes.put('/defaults/:key', (request, response) => {
    const { key } = request.params;
    const { value } = sent(ownFigureSchema, request.body);
    const fault = value === null ? null : faultOfOwnFigure(DEFAULT_STOPS, key, value);
    if (fault !== null) throw new RequestProblem(422, fault, [{ pointer: '/value', detail: fault }]);
    setOwnFigure(db, key, value);
    response.json(defaultsAnswer());
  });

  function defaultsAnswer(): Defaults {
    const own = ownFigures(db);
    const figures = editableFigures(withOwnFigures(DEFAULT_STOPS, own));
    return { figures: figures.map((figure) => ({ ...figure, isOwn: own[figure.key] !== undefined })) };
  }

  function rangeOf(
    request: Request,
    usual: { readonly backDays: number; readonly aheadDays: number },
  ): DayRange {
    const now = today();
    const range = {
      from: addDays(now, -usual.backDays),
      to: addDays(now, usual.aheadDays),
      ...askedDays(request),
    };
    if (range.from > range.to) throw new RequestProblem(422, 'The first day comes after the last.');
    if (addDays(range.from, MOST_DAYS) < range.to) {
      throw new RequestProblem(422, `Ask for ${MOST_DAYS} days or fewer.`);
    }
    return range;
  }

  return routes;
}

const daysSchema = z.object({ from: daySchema, to: daySchema }).partial();

/** The days asked for in the address, those not asked for left out. */
function askedDays(request: Request): Partial<DayRange> {
  const { from, to } = sent(daysSchema, request.query);
  return { ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
}

function fileName({ name, to }: { name: string; to: string }, ending: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/[^\w-]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return `${plain || 'plant'}-${to.slice(0, 4)}.${ending}`;
}
