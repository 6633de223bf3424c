import { useEffect } from 'react';
import { useSearchParams } from 'wouter';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import styles from './SheetScreen.module.css';

const PAPERS = {
  A4: { words: 'A4', widthMm: 210, heightMm: 297, page: 'A4' },
  Letter: { words: 'Letter', widthMm: 215.9, heightMm: 279.4, page: 'letter' },
} as const;
type Paper = keyof typeof PAPERS;

/** The stand sheet: to look at, to print at true size, and how to check the print. */
export default function SheetScreen() {
  const [search, setSearch] = useSearchParams();
  const paper: Paper = search.get('paper') === 'Letter' ? 'Letter' : 'A4';
  const { widthMm, heightMm } = PAPERS[paper];
  usePrintedPage(paper);
  return (
    <div className={styles.screen}>
      <div className={styles.words}>
        <h1>The stand sheet</h1>
        <p>
          Its ring marks tell Rondure where the camera stands, how long a millimetre is and how the light
          colours the picture. Print it once for each stand.
        </p>
        <fieldset className={styles.papers}>
          <legend>Paper</legend>
          {(Object.keys(PAPERS) as Paper[]).map((one) => (
            <label key={one}>
              <input
                type="radio"
                name="paper"
                checked={one === paper}
                onChange={() => setSearch({ paper: one }, { replace: true })}
              />
              {PAPERS[one].words}
            </label>
          ))}
        </fieldset>
        <div className={buttons.row}>
          <button type="button" className={buttons.button} onClick={() => window.print()}>
            <Icon name="print" /> Print it
          </button>
          <a href={`/api/stand-sheet.pdf?paper=${paper}`} className={buttons.quiet}>
            <Icon name="file" /> As a PDF
          </a>
        </div>
        <section className={styles.part}>
          <h2>Print it at true size</h2>
          <ol>
            <li>Choose 100 % or “actual size” in the print window; not “fit to page”.</li>
            <li>Plain white matt paper. Gloss throws the light back.</li>
            <li>
              <b>Lay a ruler along the printed line: it must be 100 mm long.</b> Half a millimetre off makes
              all sizes 0.5 % wrong. If it is more, print again at 100 %.
            </li>
          </ol>
        </section>
        <section className={styles.part}>
          <h2>Put it up</h2>
          <ol>
            <li>Glue it flat on card, so that it cannot curl.</li>
            <li>Fix it upright on the backdrop, or flat on the bench.</li>
            <li>Where the plant never hides it and the camera sees all of it.</li>
            <li>Let its arrow point to the side the light comes from, and leave it there all season.</li>
          </ol>
        </section>
      </div>
      <img
        key={paper}
        className={styles.sheet}
        style={{ aspectRatio: `${widthMm} / ${heightMm}`, ['--sheet-width' as string]: `${widthMm}mm` }}
        src={`/api/stand-sheet.svg?paper=${paper}`}
        alt={`The stand sheet on ${PAPERS[paper].words}`}
      />
    </div>
  );
}

/** Tells the printer the page's size while this screen is open: CSS cannot do it for one screen alone. */
function usePrintedPage(paper: Paper): void {
  useEffect(() => {
    const style = document.createElement('style');
    style.textContent = `@page { size: ${PAPERS[paper].page} portrait; margin: 0; }`;
    document.head.append(style);
    document.documentElement.dataset.print = 'sheet';
    return () => {
      style.remove();
      delete document.documentElement.dataset.print;
    };
  }, [paper]);
}
