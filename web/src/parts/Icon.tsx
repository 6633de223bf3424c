import type { Advice } from '../../../core/advice/advice.ts';

const LEAF = 'M5 19c6 1.5 13-1.5 14-14-9 0-15 4-14 14zM5 19c2-4 4.5-6.5 8-8.5';

/** Line icons on a 24 px grid, 1.8 px round strokes. Always beside words, so never heard. */
const DRAWINGS = {
  bench: 'M3 15h18M5 15v5M19 15v5M8 15l-1-4h5l-1 4M9.5 11V8M15 15l-.7-3h4.4L18 15M16.5 12V6.5',
  add: 'M12 5v14M5 12h14',
  guide: 'M12 6.5C10 5 7 4.5 4 4.8v13.4c3-.3 6 .2 8 1.8 2-1.6 5-2.1 8-1.8V4.8c-3-.3-6 .2-8 1.7zM12 6.5V20',
  camera: 'M4 8h3.5L9 5.5h6L16.5 8H20v11H4zM12 10a3.2 3.2 0 1 0 0 6.4 3.2 3.2 0 0 0 0-6.4',
  file: 'M6 3.5h8l4 4V20.5H6zM14 3.5v4h4M9 16l2-2.5 2 2 1.5-1.5 1.5 2',
  edit: 'M5 19l.8-3.8L15.5 5.5l3 3-9.7 9.7zM13.5 7.5l3 3',
  remove: 'M5 7h14M9.5 7V4.5h5V7M7 7l.8 12.5h8.4L17 7M10.5 10.5v6M13.5 10.5v6',
  close: 'M6 6l12 12M18 6L6 18',
  back: 'M14.5 5.5L8 12l6.5 6.5',
  onward: 'M9.5 5.5L16 12l-6.5 6.5',
  undo: 'M8.5 5L4.5 9l4 4M4.5 9h9.5a5 5 0 0 1 0 10h-4',
  redo: 'M15.5 5l4 4-4 4M19.5 9H10a5 5 0 0 0 0 10h4',
  move: 'M12 3.5v17M3.5 12h17M9.5 6L12 3.5 14.5 6M9.5 18l2.5 2.5 2.5-2.5M6 9.5L3.5 12 6 14.5M18 9.5l2.5 2.5-2.5 2.5',
  mend: 'M4 17c2-5 4 1 6.5-3.5S15 9 16 5.5M13.5 16.5l6-6 1.7 1.7-6 6-2.3.6z',
  less: 'M5 12h14',
  stand: 'M4 9h5v6H4zM9 10.5l2-1v5l-2-1M6.5 15v5M4 20l2.5-5L9 20M20 4v16M15.5 20v-4M13 16h5',
  sheet:
    'M6 3.5h12v17H6zM9.5 6.5a1.6 1.6 0 1 0 0 3.2 1.6 1.6 0 0 0 0-3.2M14.5 6.5a1.6 1.6 0 1 0 0 3.2 1.6 1.6 0 0 0 0-3.2M9 17h6M9 15.8v2.4M15 15.8v2.4',
  print: 'M7 9V3.5h10V9M7 17H4V9h16v8h-3M7 14h10v6.5H7z',
  again: 'M19 12a7 7 0 1 1-2.2-5.1M19 4v4h-4',
  overlay: 'M9 4.5a6 6 0 1 0 0 12 6 6 0 0 0 0-12M15 7.5a6 6 0 1 1 0 12 6 6 0 0 1 0-12',
  photograph: 'M4 8h3.5L9 5.5h6L16.5 8H20v11H4zM12 10a3.2 3.2 0 1 0 0 6.4 3.2 3.2 0 0 0 0-6.4',
  turn: 'M5 14c0-2 3-3.5 7-3.5s7 1.5 7 3.5-3 3.5-7 3.5c-1 0-2-.1-2.9-.3M11.5 14.5L9 17.2l3 2.3M12 4v3M6.5 5.5l1.3 2.4M17.5 5.5l-1.3 2.4',
  shorten: 'M12 21V11M12 11c0-3 2-5 5-6M12 15c0-2.5-2-4.5-5-5M4.5 6.5l6 1.5M12.5 4l7 7',
  list: 'M4 5.5l1.5 1.5L8 4.5M4 12l1.5 1.5L8 11M4 18.5L5.5 20 8 17.5M11.5 6h8.5M11.5 12.5h8.5M11.5 19h8.5',
  wait: 'M7 4h10M7 20h10M8 4c0 4 3 5.5 4 8-1 2.5-4 4-4 8M16 4c0 4-3 5.5-4 8 1 2.5 4 4 4 8',
  plan: 'M4.5 6h15v13.5h-15zM4.5 10h15M8.5 3.5V7M15.5 3.5V7M12 13.5v3M10.5 15h3',
  show: 'M12 3.5a5.5 5.5 0 1 0 0 11 5.5 5.5 0 0 0 0-11M12 6.7a2.3 2.3 0 1 0 0 4.6 2.3 2.3 0 0 0 0-4.6M9 13.8L7.5 20.5l4.5-2.3 4.5 2.3-1.5-6.7',
  keep: 'M12 4.5a7.5 7.5 0 1 0 0 15 7.5 7.5 0 0 0 0-15M8.5 12.2l2.5 2.5 4.7-5',
  water: 'M12 3.5c3.5 4.3 5.5 7.2 5.5 10.2a5.5 5.5 0 0 1-11 0c0-3 2-5.9 5.5-10.2z',
  dry: 'M12 3.5c3.5 4.3 5.5 7.2 5.5 10.2a5.5 5.5 0 0 1-11 0c0-3 2-5.9 5.5-10.2zM4.5 4.5l15 15',
  air: 'M3.5 9.5h10a2.7 2.7 0 1 0-2.6-3.5M3.5 13.5h14a2.6 2.6 0 1 1-2.5 3.4M3.5 17.5h6',
  look: 'M2.5 12c2.5-4 5.7-6 9.5-6s7 2 9.5 6c-2.5 4-5.7 6-9.5 6s-7-2-9.5-6zM12 9.2a2.8 2.8 0 1 0 0 5.6 2.8 2.8 0 0 0 0-5.6',
  leaf: LEAF,
  clear: LEAF,
  bloom:
    'M12 9.6a2.4 2.4 0 1 0 0 4.8 2.4 2.4 0 0 0 0-4.8M12 9.6c-3.5-4 1-7 0-6 3.5-1 3.5 4 0 6M14.3 12c4-3.5 7 1 6 0 1 3.5-4 3.5-6 0M12 14.4c3.5 4-1 7 0 6-3.5 1-3.5-4 0-6M9.7 12c-4 3.5-7-1-6 0-1-3.5 4-3.5 6 0',
  feed: 'M6.5 9.5h11l-1 11h-9zM9 9.5C9 6 10.5 3.5 12 3.5s3 2.5 3 6M9.5 15h5',
  pot: 'M5 8h14M6.5 8l1.8 12h7.4L17.5 8M12 8V3.5M9.5 5.5L12 8l2.5-2.5',
  calendar: 'M4 6h16v14H4zM4 10.5h16M8 3.5V7M16 3.5V7M7.5 14h5M11 17h6',
  copy: 'M8.5 8.5h11v12h-11zM15.5 8.5v-5h-11v12h4',
  play: 'M7.5 5l11.5 7-11.5 7z',
  pause: 'M8 5.5v13M16 5.5v13',
  film: 'M3.5 5.5h17v13h-17zM3.5 9h17M3.5 15h17M8 5.5V9M13 5.5V9M18 5.5V9M6 15v3.5M11 15v3.5M16 15v3.5',
  save: 'M12 4v11M7.5 10.5L12 15l4.5-4.5M5 19.5h14',
  many: 'M4 5h5v5H4zM5.2 7.5l1.2 1.2 2-2.4M4 14h5v5H4zM12.5 7.5H20M12.5 16.5H20',
} satisfies Record<string, string> & Record<Advice['kind'], string>;

export type IconName = keyof typeof DRAWINGS;

export function Icon({ name, size = 22 }: { name: IconName; size?: number }) {
  return (
    <svg
      width={size}
      height={size}
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.8"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
      style={{ flex: 'none' }}
    >
      <path d={DRAWINGS[name]} />
    </svg>
  );
}
