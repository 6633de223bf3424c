import { type ReactNode, useRef } from 'react';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import { todayHere } from '../words/day-words.ts';
import styles from './SavableChart.module.css';
import type { ChartFormat } from './save-chart.ts';

const FORMATS: readonly ChartFormat[] = ['svg', 'png'];

/** A chart with a way to save it as a file of its own: SVG or PNG, light, with title and days in it. */
export function SavableChart({
  plantName,
  what,
  lines = [],
  children,
}: {
  plantName: string;
  /** What the chart shows: "Roundness". */
  what: string;
  /** What stands under it in the file: the days it holds, what its numbers stand for. */
  lines?: readonly string[];
  children: ReactNode;
}) {
  const place = useRef<HTMLDivElement>(null);
  const { busy, fault, send } = useSending();
  const save = (format: ChartFormat) =>
    send(async () => {
      const { saveChart } = await import('./save-chart.ts');
      const fileName = `${plainName(plantName)}-${plainName(what)}-${todayHere()}`;
      const paper = { title: `${plantName}: ${what}`, lines };
      await saveChart(place.current as HTMLDivElement, format, paper, fileName);
    });
  return (
    <div className={styles.chart}>
      <div ref={place}>{children}</div>
      <div className={styles.acts}>
        {FORMATS.map((format) => (
          <button
            key={format}
            type="button"
            className={styles.act}
            disabled={busy}
            aria-label={`Save this chart (${what}) as ${format.toUpperCase()}`}
            onClick={() => save(format)}
          >
            <Icon name="save" size={18} /> {format.toUpperCase()}
          </button>
        ))}
      </div>
      {fault !== null && <Fault fault={fault} />}
    </div>
  );
}

function plainName(words: string): string {
  const plain = words
    .normalize('NFKD')
    .replace(/[^\w-]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return plain || 'chart';
}
