/** The ball, what stands outside it, and the name. */
export function Wordmark() {
  return (
    <svg width="150" height="36" viewBox="0 0 150 36" role="img" aria-label="Rondure">
      <circle cx="15" cy="20" r="10.5" fill="none" stroke="var(--act)" strokeWidth="3" />
      <path
        d="M19.2 4.4a16.2 16.2 0 0 1 11.2 10.9"
        fill="none"
        stroke="var(--act)"
        strokeWidth="3.2"
        strokeLinecap="round"
      />
      <text
        x="41"
        y="25"
        fill="currentColor"
        style={{ font: '650 25px var(--face-name)', letterSpacing: '0.01em' }}
      >
        Rondure
      </text>
    </svg>
  );
}
