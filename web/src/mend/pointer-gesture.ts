import type { Point } from '../photo/points.ts';

/** What a pointer did, in CSS px from the stage's top left. */
export interface PointerStep {
  readonly what: 'down' | 'move' | 'up' | 'cancel';
  readonly id: number;
  readonly kind: 'mouse' | 'pen' | 'touch';
  readonly at: Point;
  readonly atMs: number;
  /** The larger side of the patch that touches the screen; 0 or 1 for a mouse. */
  readonly contactPx: number;
  /** True for a mouse button that moves the photo instead of painting. */
  readonly moves: boolean;
}

interface Pointer {
  readonly id: number;
  readonly kind: PointerStep['kind'];
  readonly at: Point;
}

export type Gesture = { readonly penAtMs: number } & (
  | { readonly name: 'rest' }
  | {
      readonly name: 'stroke';
      readonly pointer: Pointer;
      readonly startedAtMs: number;
      /** How far from its start the pointer has been. */
      readonly start: Point;
      readonly reachPx: number;
    }
  | { readonly name: 'move'; readonly pointer: Pointer }
  | { readonly name: 'pinch'; readonly pointers: readonly [Pointer, Pointer] }
);

/** What the stage has to do about a step. */
export type GestureAct =
  | { readonly what: 'begin' | 'draw' | 'finish'; readonly at: Point }
  | { readonly what: 'abandon' }
  | { readonly what: 'move'; readonly by: Point }
  | {
      readonly what: 'pinch';
      readonly from: readonly [Point, Point];
      readonly to: readonly [Point, Point];
    };

export const AT_REST: Gesture = { name: 'rest', penAtMs: Number.NEGATIVE_INFINITY };

/** A patch larger than this is the heel of a hand. */
const PALM_PX = 80;
/** A second finger this soon, or before the first has gone far, makes a pinch of the two. */
const PINCH_MS = 300;
const PINCH_REACH_PX = 16;
/** The hand that holds a pen rests on the glass this long after the pen has left it. */
const PEN_HAND_MS = 700;

/**
 * Tells strokes from pinches and resting hands. One pointer paints (or moves the photo when `painting` is
 * off); a second finger on a fresh stroke takes the stroke back and pinches; on a stroke well under way it
 * is a resting hand and heard no further. A pen comes before fingers. Pressure is never looked at.
 */
export function follow(
  gesture: Gesture,
  step: PointerStep,
  painting: boolean,
): { gesture: Gesture; acts: readonly GestureAct[] } {
  const penAtMs = step.kind === 'pen' ? step.atMs : gesture.penAtMs;
  const now: Gesture = { ...gesture, penAtMs };
  switch (step.what) {
    case 'down':
      return pressed(now, step, painting);
    case 'move':
      return moved(now, step);
    case 'up':
    case 'cancel':
      return lifted(now, step);
  }
}

function pressed(gesture: Gesture, step: PointerStep, painting: boolean) {
  const pointer: Pointer = { id: step.id, kind: step.kind, at: step.at };
  const isHand =
    step.kind === 'touch' && (step.contactPx > PALM_PX || step.atMs - gesture.penAtMs < PEN_HAND_MS);
  if (isHand) return { gesture, acts: [] };
  const begin = (): { gesture: Gesture; acts: GestureAct[] } =>
    painting && !step.moves
      ? {
          gesture: {
            name: 'stroke',
            penAtMs: gesture.penAtMs,
            pointer,
            startedAtMs: step.atMs,
            start: step.at,
            reachPx: 0,
          },
          acts: [{ what: 'begin', at: step.at }],
        }
      : { gesture: { name: 'move', penAtMs: gesture.penAtMs, pointer }, acts: [] };
  if (gesture.name === 'rest') return begin();
  if (gesture.name === 'pinch') return { gesture, acts: [] };
  if (step.kind === 'pen' && gesture.pointer.kind === 'touch') {
    const begun = begin();
    const abandon: GestureAct[] = gesture.name === 'stroke' ? [{ what: 'abandon' }] : [];
    return { gesture: begun.gesture, acts: [...abandon, ...begun.acts] };
  }
  if (step.kind !== 'touch' || gesture.pointer.kind !== 'touch') return { gesture, acts: [] };
  const pinch: Gesture = { name: 'pinch', penAtMs: gesture.penAtMs, pointers: [gesture.pointer, pointer] };
  if (gesture.name === 'move') return { gesture: pinch, acts: [] };
  const isFresh = step.atMs - gesture.startedAtMs < PINCH_MS || gesture.reachPx < PINCH_REACH_PX;
  return isFresh ? { gesture: pinch, acts: [{ what: 'abandon' as const }] } : { gesture, acts: [] };
}

function moved(gesture: Gesture, step: PointerStep): { gesture: Gesture; acts: GestureAct[] } {
  if (gesture.name === 'pinch') {
    const [first, second] = gesture.pointers;
    if (step.id !== first.id && step.id !== second.id) return { gesture, acts: [] };
    const next = [first, second].map((one) => (one.id === step.id ? { ...one, at: step.at } : one));
    const pointers = next as unknown as readonly [Pointer, Pointer];
    return {
      gesture: { ...gesture, pointers },
      acts: [{ what: 'pinch', from: [first.at, second.at], to: [pointers[0].at, pointers[1].at] }],
    };
  }
  if (gesture.name === 'rest' || gesture.pointer.id !== step.id) return { gesture, acts: [] };
  const pointer = { ...gesture.pointer, at: step.at };
  if (gesture.name === 'move') {
    const [fromX, fromY] = gesture.pointer.at;
    return {
      gesture: { ...gesture, pointer },
      acts: [{ what: 'move', by: [step.at[0] - fromX, step.at[1] - fromY] }],
    };
  }
  const reachPx = Math.max(
    gesture.reachPx,
    Math.hypot(step.at[0] - gesture.start[0], step.at[1] - gesture.start[1]),
  );
  return { gesture: { ...gesture, pointer, reachPx }, acts: [{ what: 'draw', at: step.at }] };
}

function lifted(gesture: Gesture, step: PointerStep): { gesture: Gesture; acts: GestureAct[] } {
  const rest: Gesture = { name: 'rest', penAtMs: gesture.penAtMs };
  if (gesture.name === 'pinch') {
    const left = gesture.pointers.find(({ id }) => id !== step.id);
    const isOurs = gesture.pointers.some(({ id }) => id === step.id);
    // The finger that stays goes on moving the photo: it must not begin a stroke by staying.
    return isOurs && left
      ? { gesture: { name: 'move', penAtMs: gesture.penAtMs, pointer: left }, acts: [] }
      : { gesture, acts: [] };
  }
  if (gesture.name === 'rest' || gesture.pointer.id !== step.id) return { gesture, acts: [] };
  if (gesture.name === 'move') return { gesture: rest, acts: [] };
  return {
    gesture: rest,
    acts: [step.what === 'up' ? { what: 'finish', at: step.at } : { what: 'abandon' }],
  };
}
