import { useQuery } from '@tanstack/react-query';
import { Link } from 'wouter';
import { calendarQuery } from '../api/calendar.ts';
import { BloomsUnderWay } from '../parts/BloomsUnderWay.tsx';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { usePaper } from '../parts/use-paper.ts';
import styles from './CalendarScreen.module.css';
import { CalendarSheet } from './CalendarSheet.tsx';
import { CalendarSteps } from './CalendarSteps.tsx';
import { SubscribePanel } from './SubscribePanel.tsx';
import { useCalendarDays } from './use-calendar-days.ts';

/** The season of all plants on one page. */
export default function CalendarScreen() {
  const days = useCalendarDays();
  const { data, error, refetch, isPending } = useQuery(calendarQuery(days.from, days.to));
  usePaper('size: landscape; margin: 8mm');
  if (isPending) return <p className={styles.waiting}>Fetching the calendar…</p>;
  if (!data) return <Fault fault={error} onAgain={() => refetch()} />;
  return (
    <div className={styles.screen}>
      {error && <Fault fault={error} onAgain={() => refetch()} />}
      <header className={styles.head}>
        <h1>Calendar</h1>
        <button type="button" className={buttons.quiet} onClick={() => window.print()}>
          <Icon name="print" /> Print the page
        </button>
      </header>
      {data.plants.length === 0 ? (
        <p>
          No plant is on the bench. <Link href="/plants/new">Add a plant</Link>
        </p>
      ) : (
        <>
          <CalendarSteps days={days} />
          <BloomsUnderWay rows={data.plants} />
          <CalendarSheet calendar={data} />
        </>
      )}
      <SubscribePanel path={data.subscribePath} />
    </div>
  );
}
