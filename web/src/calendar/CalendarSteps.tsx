import buttons from '../parts/buttons.module.css';
import { Choices } from '../parts/Choices.tsx';
import { Icon } from '../parts/Icon.tsx';
import styles from './CalendarScreen.module.css';
import type { useCalendarDays } from './use-calendar-days.ts';

const SPAN_WORDS = [
  { value: 'half', words: 'Half a year' },
  { value: 'year', words: 'A year' },
] as const;

/** Moves the page along the weeks, and makes it shorter or longer. */
export function CalendarSteps({ days }: { days: ReturnType<typeof useCalendarDays> }) {
  return (
    <div className={styles.steps}>
      <Choices
        legend="Weeks across"
        legendHidden
        options={SPAN_WORDS}
        chosen={days.span}
        onChoose={days.chooseSpan}
      />
      <div className={buttons.row}>
        <button type="button" className={buttons.quiet} onClick={days.earlier}>
          <Icon name="back" /> Earlier
        </button>
        <button type="button" className={buttons.quiet} disabled={days.isUsual} onClick={days.back}>
          Today
        </button>
        <button type="button" className={buttons.quiet} onClick={days.later}>
          Later <Icon name="onward" />
        </button>
      </div>
    </div>
  );
}
