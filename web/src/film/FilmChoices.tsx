import { useQuery } from '@tanstack/react-query';
import { standsQuery } from '../api/queries.ts';
import { Field } from '../parts/Field.tsx';
import { countWords } from '../words/plant-words.ts';
import styles from './FilmScreen.module.css';
import { sideWords } from './film-words.ts';

/** Which side of the plant is shown, and from which camera place, where there is a choice. */
export function FilmChoices({
  sides,
  side,
  places,
  place,
  onChoose,
}: {
  sides: readonly { readonly sideDeg: number; readonly days: number }[];
  side: number | null;
  places: readonly { readonly name: string; readonly days: number }[];
  place: string;
  onChoose: (name: 'side' | 'place', value: string) => void;
}) {
  const stands = useQuery({ ...standsQuery, enabled: places.length > 1 }).data ?? [];
  const placeWords = (name: string) => {
    if (name === 'none') return 'No stand';
    const [id, version] = name.split('/');
    const stand = stands.find((one) => one.id === id);
    return `${stand?.name ?? 'A stand'}, as set up the ${ordinal(Number(version))} time`;
  };
  if (sides.length < 2 && places.length < 2) return null;
  return (
    <div className={styles.choices}>
      {sides.length > 1 && (
        <Field label="Side">
          {(wiring) => (
            <select {...wiring} value={side ?? ''} onChange={(event) => onChoose('side', event.target.value)}>
              {sides.map(({ sideDeg, days }) => (
                <option key={sideDeg} value={sideDeg}>
                  {sideWords(sideDeg)} ({countWords(days, 'day')})
                </option>
              ))}
            </select>
          )}
        </Field>
      )}
      {places.length > 1 && (
        <Field label="Camera place">
          {(wiring) => (
            <select {...wiring} value={place} onChange={(event) => onChoose('place', event.target.value)}>
              {places.map(({ name, days }) => (
                <option key={name} value={name}>
                  {placeWords(name)} ({countWords(days, 'day')})
                </option>
              ))}
            </select>
          )}
        </Field>
      )}
    </div>
  );
}

function ordinal(count: number): string {
  return ['', 'first', 'second', 'third'][count] ?? `${count}th`;
}
