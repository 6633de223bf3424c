import buttons from './buttons.module.css';

/** The two ways out of a form on a sheet. */
export function KeepOrCancel({ busy, onCancel }: { busy: boolean; onCancel: () => void }) {
  return (
    <div className={buttons.row}>
      <button type="submit" className={buttons.button} disabled={busy}>
        Keep
      </button>
      <button type="button" className={buttons.quiet} onClick={onCancel}>
        Cancel
      </button>
    </div>
  );
}
