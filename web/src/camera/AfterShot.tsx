import { useEffect, useState } from 'react';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { View } from '../../../server/schemas/sitting.ts';
import { numberWords, plusMinusWords } from '../measures/reading.ts';
import buttons from '../parts/buttons.module.css';
import { isComparable } from '../photo/comparable.ts';
import { FrameWords } from '../photo/FrameWords.tsx';
import { SendingRow } from '../photos/SendingRow.tsx';
import { sendings } from '../photos/sending.ts';
import { PhotoNotes } from '../plant/PhotoTrouble.tsx';
import styles from './LiveCamera.module.css';

/** The shot, what became of it, and whether to take it again. */
export function AfterShot({
  page,
  file,
  sendingKey,
  onAgain,
  onDone,
}: {
  page: PlantPage;
  file: File;
  /** Its place among the photos on their way. */
  sendingKey: string;
  onAgain: () => void;
  onDone: () => void;
}) {
  const url = useObjectUrl(file);
  const sending = sendings.useValue().find(({ key }) => key === sendingKey);
  const viewId = sending && 'viewId' in sending.stage ? sending.stage.viewId : null;
  const view = page.sittings.flatMap(({ views }) => views).find(({ id }) => id === viewId) ?? null;
  const checked = view !== null && (view.state === 'measured' || view.state === 'failed');
  return (
    <>
      <div className={styles.stage}>
        {url && <img src={url} alt="As just taken" className={styles.shot} />}
      </div>
      <div className={styles.dock}>
        {checked ? (
          <Checked view={view} />
        ) : (
          sending && (
            <ul className={styles.sending}>
              <SendingRow sending={sending} view={view} />
            </ul>
          )
        )}
        <div className={styles.ways}>
          <button type="button" className={buttons.quiet} onClick={onAgain}>
            Take another
          </button>
          <button type="button" className={buttons.button} onClick={onDone}>
            Done
          </button>
        </div>
      </div>
    </>
  );
}

function Checked({ view }: { view: View }) {
  const { report, failure } = view;
  const good = report?.status === 'measured' && isComparable(view);
  return (
    <div role="status" className={styles.checked}>
      <p className={styles.verdict} data-good={good}>
        {good ? '● It will do.' : '▲ Better take it again.'}
      </p>
      <p>
        {report?.roundness
          ? `Measured: roundness ${numberWords(report.roundness.score, 'roundness')} ${plusMinusWords(report.roundness.plusMinus)}.`
          : (report?.hint ?? failure ?? 'It is kept, but it was not measured.')}
      </p>
      {report && <FrameWords report={report} />}
      <PhotoNotes view={view} />
    </div>
  );
}

function useObjectUrl(file: File): string | null {
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(file);
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [file]);
  return url;
}
