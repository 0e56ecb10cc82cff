/** The four drawn patterns (plum is solid and needs none). Put once at the top of the document. */
export function ProducePatterns() {
  return (
    <svg className="sprite" width="0" height="0" aria-hidden="true">
      <pattern id="fill-dill" width="9" height="9" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect width="9" height="9" fill="var(--p-dill-wash)" />
        <rect width="4.5" height="9" fill="var(--p-dill)" />
      </pattern>
      <pattern id="fill-tomato" width="10" height="10" patternUnits="userSpaceOnUse">
        <rect width="10" height="10" fill="var(--p-tomato-wash)" />
        <circle cx="2.5" cy="2.5" r="2.1" fill="var(--p-tomato)" />
        <circle cx="7.5" cy="7.5" r="2.1" fill="var(--p-tomato)" />
      </pattern>
      <pattern id="fill-peach" width="7" height="7" patternUnits="userSpaceOnUse">
        <rect width="7" height="7" fill="var(--p-peach-wash)" />
        <rect width="3" height="7" fill="var(--p-peach)" />
      </pattern>
      <pattern id="fill-bean" width="9" height="9" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect width="9" height="9" fill="var(--p-bean-wash)" />
        <path d="M0 1.5H9M1.5 0V9" stroke="var(--p-bean)" strokeWidth="3" />
      </pattern>
    </svg>
  )
}
