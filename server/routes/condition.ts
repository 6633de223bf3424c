import { type Request, Router } from 'express';
import { z } from 'zod';
import { OFFERED_EVENTS } from '../../core/bloom/bloom-offers.ts';
import { dayInWords } from '../../core/day/day-in-words.ts';
import { type AimedPlant, aimedPlant } from '../bench/aimed-plant.ts';
import { bloomOffersOf } from '../condition/bloom-answer.ts';
import { answerOffer, takeBackWord } from '../condition/bloom-words.ts';
import { learnedLeaf } from '../condition/learned-leaf.ts';
import { daySchema } from '../schemas/basics.ts';
import { type BloomDateAnswer, bloomDateFormSchema, healthyDayFormSchema } from '../schemas/condition.ts';
import { seasonFacts } from '../season/season-facts.ts';
import type { Services } from '../services.ts';
import { setHealthyDay } from '../store/healthy-days.ts';
import { daysWithLook, settleNormalLeaf } from '../store/normal-leaf.ts';
import { noteById } from '../store/notes.ts';
import { found, RequestProblem, sent } from './problems.ts';

const healthyPath = z.object({ day: daySchema });
const bloomPath = z.object({ event: z.enum(OFFERED_EVENTS) });

/** What the grower says of a plant's leaf and of the dates of its bloom. */
export function conditionRoutes({ db, queue, today }: Services): Router {
  const routes = Router();
  const plantOf = (request: Request): AimedPlant =>
    found('plant', aimedPlant(db, String(request.params.id), today()));

  routes.put('/plants/:id/healthy-days/:day', (request, response) => {
    const plant = plantOf(request);
    const { day } = sent(healthyPath, { day: request.params.day });
    const { healthy } = sent(healthyDayFormSchema, request.body);
    if (healthy && !daysWithLook(db, plant.id).some((look) => look.day === day)) {
      throw new RequestProblem(
        422,
        `No photo of ${dayInWords(day)} can teach what is normal: none was measured with its white known. Photograph the plant on its stand, with the empty stand’s photo or the stand sheet.`,
      );
    }
    db.transaction(() => {
      setHealthyDay(db, plant.id, day, healthy);
      settleNormalLeaf(db, plant.id);
    })();
    queue.wake();
    response.json(learnedLeaf(db, plant.id));
  });

  routes.post('/plants/:id/bloom-dates', (request, response) => {
    const plant = plantOf(request);
    const { event, day, said } = sent(bloomDateFormSchema, request.body);
    const offer = bloomOffersOf(db, seasonFacts(db, today()), plant).find((one) => one.event === event);
    if (offer === undefined) {
      throw new RequestProblem(
        409,
        'That date is not offered any more: it is in the log, or it was answered. Look at the page again.',
      );
    }
    if (offer.day !== day) {
      throw new RequestProblem(
        409,
        `The date has moved to ${dayInWords(offer.day)} meanwhile. Look at it again.`,
      );
    }
    const noteId = db.transaction(() => answerOffer(db, plant.id, offer, said))();
    const answer: BloomDateAnswer = { event, said, note: noteId === null ? null : noteById(db, noteId) };
    response.status(201).json(answer);
  });

  routes.delete('/plants/:id/bloom-dates/:event', (request, response) => {
    const plant = plantOf(request);
    const { event } = sent(bloomPath, { event: request.params.event });
    if (!db.transaction(() => takeBackWord(db, plant.id, event))()) {
      throw new RequestProblem(404, 'Nothing was said of that date, so there is nothing to take back.');
    }
    response.status(204).end();
  });

  return routes;
}
