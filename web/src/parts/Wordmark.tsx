/** The ball open where the pot hides it, over its pot, and the name. */
export function Wordmark() {
  return (
    <svg width="150" height="36" viewBox="0 0 150 36" role="img" aria-label="Rondure">
      <path
        d="M12.1 24.8a11 11 0 1 1 11.8 0"
        fill="none"
        stroke="var(--act)"
        strokeWidth="2.6"
        strokeLinecap="round"
      />
      <path d="M11 28h14l-1.7 5.5H12.7z" fill="var(--act)" />
      <text
        x="38"
        y="25"
        fill="currentColor"
        style={{ font: '650 25px var(--face-name)', letterSpacing: '0.01em' }}
      >
        Rondure
      </text>
    </svg>
  );
}
