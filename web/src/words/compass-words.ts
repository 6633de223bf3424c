import { wholeTurn } from '../../../core/turned/circular-statistics.ts';

const COMPASS = [
  'north',
  'north-north-east',
  'north-east',
  'east-north-east',
  'east',
  'east-south-east',
  'south-east',
  'south-south-east',
  'south',
  'south-south-west',
  'south-west',
  'west-south-west',
  'west',
  'west-north-west',
  'north-west',
  'north-north-west',
] as const;

/** "south-south-west" of compass degrees. */
export function compassWords(bearingDeg: number): string {
  return COMPASS[Math.round(wholeTurn(bearingDeg) / 22.5) % 16] as string;
}
