import type { ReactNode } from 'react'

/** Short answers under short questions. */
export function Facts({ facts }: { facts: readonly { label: string; value: ReactNode }[] }) {
  return (
    <dl className="facts">
      {facts.map((fact) => (
        <div key={fact.label}>
          <dt>{fact.label}</dt>
          <dd>{fact.value}</dd>
        </div>
      ))}
    </dl>
  )
}
