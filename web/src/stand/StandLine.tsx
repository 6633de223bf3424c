import { useQuery } from '@tanstack/react-query';
import { Link } from 'wouter';
import type { Plant } from '../../../server/schemas/plant.ts';
import { standsQuery } from '../api/queries.ts';
import { Icon } from '../parts/Icon.tsx';
import type { SheetName } from '../plant/PlantSheets.tsx';
import { LIGHT_WORDS } from '../words/stand-words.ts';
import styles from './StandLine.module.css';

/** On which stand a plant is photographed and from where its light comes; or the way to set one up. */
export function StandLine({ plant, onOpen }: { plant: Plant; onOpen: (sheet: SheetName) => void }) {
  const { data: stands } = useQuery(standsQuery);
  if (!stands) return null;
  const stand = stands.find(({ id }) => id === plant.standId);
  const choosable = stands.some(({ putAway }) => !putAway);
  return (
    <p className={styles.line}>
      <Icon name="stand" />
      {stand ? (
        <>
          <Link href={`/stands/${stand.id}`}>{stand.name}</Link>
          {stand.lightSide && <span>light {LIGHT_WORDS[stand.lightSide]}</span>}
          {!stand.emptyPhoto && (
            <Link href={`/stands/${stand.id}/set-up?step=empty&plant=${plant.id}`}>Take its empty photo</Link>
          )}
        </>
      ) : (
        <>
          <span>No stand yet.</span>
          {choosable && (
            <button type="button" className={styles.choose} onClick={() => onOpen({ name: 'plant' })}>
              Choose its stand
            </button>
          )}
          <Link href={`/stands/new?plant=${plant.id}`}>Set up the stand</Link>
        </>
      )}
    </p>
  );
}
