/** The four drawn patterns (plum is solid and needs none), in the produce's colour and in black for paper. Put once at the top of the document. */
export function ProducePatterns() {
  return (
    <svg className="sprite" width="0" height="0" aria-hidden="true">
      <FourPatterns prefix="fill" line={(produce) => `var(--p-${produce})`} ground={(produce) => `var(--p-${produce}-wash)`} />
      <FourPatterns prefix="paper" line={() => '#000'} ground={() => '#fff'} />
    </svg>
  )
}

type FourPatternsProps = { prefix: string; line: (produce: string) => string; ground: (produce: string) => string }

function FourPatterns({ prefix, line, ground }: FourPatternsProps) {
  return (
    <>
      <pattern id={`${prefix}-dill`} width="9" height="9" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect width="9" height="9" fill={ground('dill')} />
        <rect width="4.5" height="9" fill={line('dill')} />
      </pattern>
      <pattern id={`${prefix}-tomato`} width="10" height="10" patternUnits="userSpaceOnUse">
        <rect width="10" height="10" fill={ground('tomato')} />
        <circle cx="2.5" cy="2.5" r="2.1" fill={line('tomato')} />
        <circle cx="7.5" cy="7.5" r="2.1" fill={line('tomato')} />
      </pattern>
      <pattern id={`${prefix}-peach`} width="7" height="7" patternUnits="userSpaceOnUse">
        <rect width="7" height="7" fill={ground('peach')} />
        <rect width="3" height="7" fill={line('peach')} />
      </pattern>
      <pattern id={`${prefix}-bean`} width="9" height="9" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect width="9" height="9" fill={ground('bean')} />
        <path d="M0 1.5H9M1.5 0V9" stroke={line('bean')} strokeWidth="3" />
      </pattern>
    </>
  )
}
