/** The ball with one cut mark across its edge, and the name. */
export function Wordmark() {
  return (
    <svg width="150" height="36" viewBox="0 0 150 36" role="img" aria-label="Rondure">
      <circle cx="17" cy="19" r="12.5" fill="none" stroke="var(--act)" strokeWidth="3" />
      <path d="M21.5 11.5l9-8.5" stroke="var(--act)" strokeWidth="3.6" strokeLinecap="round" />
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
