import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { plantQuery } from '../api/queries.ts';
import { Fault } from '../parts/Fault.tsx';
import styles from './WithPlant.module.css';

/** What is drawn of a plant once it is here; until then that it is fetched, or why it cannot be. */
export function WithPlant({
  plantId,
  children,
}: {
  plantId: string;
  children: (page: PlantPage) => ReactNode;
}) {
  const { data: page, error, refetch, isPending } = useQuery(plantQuery(plantId));
  if (isPending) return <p className={styles.waiting}>Fetching the plant…</p>;
  if (!page) return <Fault fault={error} onAgain={() => refetch()} />;
  return (
    <>
      {error && <Fault fault={error} onAgain={() => refetch()} />}
      {children(page)}
    </>
  );
}
