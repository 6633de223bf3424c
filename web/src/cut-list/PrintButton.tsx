import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';

/** Prints the list on one page, with the drawn photo. */
export function PrintButton() {
  return (
    <button type="button" className={buttons.quiet} onClick={() => window.print()}>
      <Icon name="print" /> Print the list
    </button>
  );
}
