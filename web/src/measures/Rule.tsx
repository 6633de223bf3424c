import type { PhotoReport } from '../../../core/report.ts';
import styles from './Rule.module.css';
import type { Measure } from './reading.ts';
import { along, ruleScaleOf } from './rule-scale.ts';

/** A graduated rule as on a bench: the plus-minus as a bar, the number as a needle, the last sitting as a ring. */
export function Rule({
  measure,
  report,
  before,
}: {
  measure: Measure;
  report: PhotoReport;
  before: PhotoReport | null;
}) {
  const scale = ruleScaleOf(report, before, measure);
  if (!scale) return null;
  const share = (value: number) => `${(along(scale, value) * 100).toFixed(2)}%`;
  const ticks = Array.from(
    { length: (scale.to - scale.from) / scale.step + 1 },
    (_, i) => scale.from + i * scale.step,
  );
  const middle = (scale.from + scale.to) / 2;
  return (
    <svg className={styles.rule} aria-hidden="true">
      {ticks.map((tick) => (
        <line
          key={tick}
          x1={share(tick)}
          x2={share(tick)}
          y1="14"
          y2={tick === scale.from || tick === scale.to || tick === middle ? 24 : 19}
          className={styles.tick}
        />
      ))}
      <line x1="0" x2="100%" y1="14" y2="14" className={styles.tick} />
      <line
        x1={share(scale.value - scale.plusMinus)}
        x2={share(scale.value + scale.plusMinus)}
        y1="9"
        y2="9"
        className={styles.band}
      />
      {scale.before !== null && <circle cx={share(scale.before)} cy="9" r="4.5" className={styles.before} />}
      <line x1={share(scale.value)} x2={share(scale.value)} y1="1" y2="17" className={styles.needle} />
    </svg>
  );
}
