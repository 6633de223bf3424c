import type { Day } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import type { Bloom, BloomDate } from './bloom.ts';

type Told = Pick<
  Bloom,
  'stage' | 'half' | 'full' | 'fading' | 'readings' | 'restsOn' | 'fullShare' | 'sureness'
>;

/** A bloom as a grower would say it, and what it rests on. */
export function bloomWords(bloom: Told): { words: string; why: string } {
  return { words: stageWords(bloom), why: whyWords(bloom) };
}

function stageWords({ stage, half, full, fading, fullShare, sureness }: Told): string {
  if (sureness === 'unsure' && !full.isPast) {
    return `Colour shows, but full bloom cannot be told closer than ${rangeInWords(full.from90, full.to90)} yet: the next sittings tell more.`;
  }
  switch (stage) {
    case 'first-colour':
      return `The first colour shows. Half of the bloom is likely open about ${dated(half)}, full bloom about ${dated(full)}.`;
    case 'opening':
      return `Half of the bloom opened about ${dated(half)}. Full bloom is likely about ${dated(full)}.`;
    case 'full':
      return `In full bloom since about ${dated(full)}, with ${percent(fullShare.share)} of the canopy in flower as seen.`;
    case 'fading':
      return `Full bloom began about ${dated(full)} and fades since about ${dated(fading as BloomDate)}.`;
  }
}

function whyWords({ readings, restsOn }: Told): string {
  const coloured = readings.filter(({ share }) => share > 0).length;
  const sittings = coloured === 1 ? 'One sitting shows' : `${coloured} sittings show`;
  return `${sittings} flower; a curve that rises and falls runs through them. ${RESTS_ON[restsOn]}`;
}

const RESTS_ON: Readonly<Record<Bloom['restsOn'], string>> = {
  plant: 'Beside them counts how this plant bloomed before.',
  guess:
    'Beside them counts a guess of ours (15 days from first colour to full bloom, give or take a factor of 1.6): no published figure was found.',
};

function dated({ day, from90, to90 }: BloomDate): string {
  if (from90 === to90) return dayInWords(day);
  return `${dayInWords(day)} (${rangeInWords(from90, to90)})`;
}

/** "3–9 May 2026", "28 April to 9 May 2026". */
function rangeInWords(from: Day, to: Day): string {
  const [date, month, year] = dayInWords(from).split(' ') as [string, string, string];
  const [, toMonth, toYear] = dayInWords(to).split(' ') as [string, string, string];
  if (year !== toYear) return `${dayInWords(from)} to ${dayInWords(to)}`;
  return month === toMonth ? `${date}–${dayInWords(to)}` : `${date} ${month} to ${dayInWords(to)}`;
}

function percent(share: number): string {
  return `about ${Math.round(100 * share)} %`;
}
