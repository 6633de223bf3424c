import { useQuery } from '@tanstack/react-query';
import { Link } from 'wouter';
import { standsQuery } from '../api/queries.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import styles from './SampleStrip.module.css';

/** Asks for the stand while there is none; says nothing once there is. */
export function StandStrip() {
  const { data: stands } = useQuery(standsQuery);
  if (!stands || stands.length > 0) return null;
  return (
    <div className={styles.strip}>
      <p>
        <b>No stand yet.</b>{' '}
        <span>Five minutes for the place where you photograph, and every week can be compared.</span>
      </p>
      <Link href="/stands/new" className={buttons.quiet}>
        <Icon name="stand" /> Set up the stand
      </Link>
    </div>
  );
}
