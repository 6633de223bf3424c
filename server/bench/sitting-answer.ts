import type { LightPlace } from '../../core/turned/turn-advice.ts';
import { turnOfPlan } from '../../core/turned/turn-of-plan.ts';
import type { Sitting, View } from '../schemas/sitting.ts';
import type { SittingJoining } from '../store/joinings.ts';
import type { ViewRow } from '../store/views.ts';
import { viewAnswer } from './view-answer.ts';

/** What is known beside the views. */
interface KnownOfSittings {
  /** By the sitting's id. */
  readonly joinings: ReadonlyMap<string, SittingJoining>;
  /** Of the plant as it stands now; `null` when the light's side is not known. */
  readonly light: LightPlace | null;
}

/** Puts views that come sorted, newest day first, under their sittings, as the screen gets them. */
export function sittingAnswers(views: readonly ViewRow[], { joinings, light }: KnownOfSittings): Sitting[] {
  const sittings = new Map<string, ViewRow[]>();
  for (const view of views) {
    const together = sittings.get(view.sittingId);
    if (together) together.push(view);
    else sittings.set(view.sittingId, [view]);
  }
  let isNewestJoined = true;
  return [...sittings.values()].map((together) => {
    const { sittingId, plantId, day, standId, standVersion, leftOut } = together[0] as ViewRow;
    const answered = together.map(viewAnswer);
    const joined = joinedAnswer(answered, joinings.get(sittingId) ?? null);
    // How the pot stands now says how far to turn it by the newest plan; by an older one there is nothing to turn.
    const lightThen = isNewestJoined ? light : null;
    if (joined.turned !== null) isNewestJoined = false;
    return {
      id: sittingId,
      plantId,
      day,
      standId,
      standVersion,
      leftOut,
      views: answered,
      ...joined,
      turned: joined.turned && { ...joined.turned, turn: turnOfPlan(joined.turned.plan, lightThen) },
    };
  });
}

type Joined = Pick<Sitting, 'turned' | 'turnedState' | 'turnedViewIds'>;

/** The plan of before stays in sight while its views are joined anew, as long as all of them are there. */
function joinedAnswer(all: readonly View[], joining: SittingJoining | null): Joined {
  const views = all.filter(({ afterWork }) => !afterWork);
  if (views.length < 2) return { turned: null, turnedState: 'one-view', turnedViewIds: [] };
  const turnedState = stateOf(joining);
  const ids = joining?.viewIds ?? [];
  const shows = joining?.report != null && ids.every((id) => views.some((view) => view.id === id));
  return shows
    ? { turned: joining.report, turnedState, turnedViewIds: [...ids] }
    : { turned: null, turnedState, turnedViewIds: [] };
}

function stateOf(joining: SittingJoining | null): Joined['turnedState'] {
  if (joining === null || joining.isMeasuring || !joining.isCurrent) return 'waiting';
  return joining.state ?? 'waiting';
}
